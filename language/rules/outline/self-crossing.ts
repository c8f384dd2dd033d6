import { text } from '../../../calc/figure/index.ts';
import type { Outline } from '../../../calc/model/index.ts';
import { faultWords, polygonFault } from '../../../calc/outline/polygon-fault.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const outlineSelfCrossing = rule({
  name: 'outline/self-crossing',
  severity: 'error',
  title: 'an outline crosses itself',
  on: 'recipe',
  check(context) {
    const { part } = context.recipe;
    if (part === undefined) return;
    const shapes: readonly (readonly [string, Outline | undefined])[] = [
      [`${part.path}.outline`, part.outline],
      ...part.cutouts.map(({ path, shape }) => [path, shape] as const),
      ...part.zones.map(({ path, shape }) => [path, shape] as const),
    ];
    for (const [at, shape] of shapes) {
      const fault = shape?.kind === 'polygon' ? polygonFault(shape.points) : undefined;
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
  },
});
