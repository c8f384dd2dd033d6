import { text } from '../../../calc/figure/index.ts';
import { layerThickness } from '../../../calc/laminate/thickness.figure.ts';
import { coresOf } from '../kit/cores.ts';
import { factValue, valueOf } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const coreThickerThanSheet = rule({
  name: 'core/thicker-than-sheet',
  severity: 'info',
  title: 'a core is thicker than its material is sold',
  on: 'recipe',
  check(context) {
    for (const core of coresOf(context)) {
      const thickness = valueOf(context.ask(layerThickness, core.key));
      const sold =
        (core.layer.material === undefined ? undefined : (context.bench.prices(core.layer.material) ?? [])) ?? [];
      const sheets = sold.flatMap((fact) => factValue(fact)?.thickness?.si ?? []);
      const most = Math.max(...sheets);
      if (thickness === undefined || sheets.length === 0 || thickness <= most + 1e-6) continue;
      context.report({
        at: `${core.path}.thickness`,
        message: text(
          '{core} is {thickness} thick; the thickest sheet of {material} with a price is {most}: glue {count} sheets, or give its price',
          {
            core: core.name,
            thickness: metres(thickness),
            material: core.layer.material ?? '',
            most: metres(most),
            count: Math.ceil(thickness / most - 1e-9),
          },
        ),
      });
    }
  },
});
