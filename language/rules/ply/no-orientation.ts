import { text } from '../../../calc/figure/index.ts';
import { layerCloth } from '../../../calc/laminate/fraction.figure.ts';
import { isCloth } from '../../../calc/stack/order.ts';
import { layersOf, onePerLine, valueOf } from '../kit/layers.ts';
import { rule } from '../rule.ts';

export const plyNoOrientation = rule({
  name: 'ply/no-orientation',
  severity: 'warning',
  title: 'the direction of a cloth is not said',
  on: 'recipe',
  check(context) {
    for (const laid of onePerLine(layersOf(context).filter(isCloth))) {
      const cloth = valueOf(context.ask(layerCloth, laid.key));
      if (laid.layer.angle !== undefined || cloth === undefined || cloth.style === 'random') continue;
      // a direction that cannot be read is told of where it is read
      if (context.edit.span(`${laid.path}.angle`) !== undefined) continue;
      const at = `${laid.path}.material`;
      context.report({
        at,
        message: text('{material} has a direction, and the line does not say how {ply} lies: at 0 deg, at 45 deg ...', {
          material: laid.layer.material ?? '',
          ply: laid.name,
        }),
        fixes: [context.edit.replace('Write at 0 deg', at, `${laid.layer.material} at 0 deg`)],
      });
    }
  },
});
