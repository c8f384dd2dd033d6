import { text } from '../../../calc/figure/index.ts';
import { faultWords, polygonFault } from '../../../calc/outline/polygon-fault.ts';
import { reportDrawn, typedShapes } from '../kit/outlines.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const outlineSelfCrossing = rule({
  name: 'outline/self-crossing',
  severity: 'error',
  title: 'an outline crosses itself',
  on: 'recipe',
  check(context) {
    for (const { at, shape } of typedShapes(context)) {
      const fault = shape.kind === 'polygon' ? polygonFault(shape.points) : undefined;
      if (fault === undefined) continue;
      const place = 'at' in fault ? { x: metres(fault.at.x), y: metres(fault.at.y) } : undefined;
      context.report({
        at,
        message:
          place === undefined
            ? text('{fault}', { fault: faultWords(fault) })
            : text('{fault}, at ({x}, {y})', { fault: faultWords(fault), ...place }),
      });
    }
    reportDrawn(context, 'self-crossing');
  },
});
