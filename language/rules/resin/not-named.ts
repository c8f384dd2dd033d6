import { isCannot, text } from '../../../calc/figure/index.ts';
import { layerResinName } from '../../../calc/laminate/fraction.figure.ts';
import { isCloth } from '../../../calc/stack/order.ts';
import { layersOf, materialOf } from '../kit/layers.ts';
import { mendText } from '../kit/mend-text.ts';
import { rule } from '../rule.ts';

export const resinNotNamed = rule({
  name: 'resin/not-named',
  severity: 'warning',
  title: 'cloth is laid, and nothing says in which resin',
  on: 'recipe',
  check(context) {
    const { process } = context.recipe;
    if (process?.kind === undefined || process.kind === 'prepreg' || process.resin !== undefined) return;
    const dry = layersOf(context).find(
      (laid) =>
        isCloth(laid) && materialOf(context, laid) !== undefined && isCannot(context.ask(layerResinName, laid.key)),
    );
    if (dry === undefined) return;
    const resin = process.kind === 'infusion' ? 'epoxy_infusion_slow' : 'epoxy_laminating_medium';
    context.report({
      at: process.path,
      message: text(
        'no resin: nothing says what wets {layer}, so the part has no mass, nothing to mix and no price; for instance `process {kind} with {resin}`',
        { layer: dry.name, kind: process.kind, resin },
      ),
      related: [
        { at: { entry: context.recipe.entry, path: dry.path }, message: text('the first cloth without resin') },
      ],
      fixes: [
        mendText(
          context,
          text('Write {what}', { what: `with ${resin}` }),
          process.path,
          /^process\s+\w+/,
          `process ${process.kind} with ${resin}`,
        ),
      ],
    });
  },
});
