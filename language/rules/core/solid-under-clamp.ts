import { text } from '../../../calc/figure/index.ts';
import { zonePlaced } from '../../../calc/outline/part.figure.ts';
import { insertsOf, piecesBeside } from '../../../calc/stack/order.ts';
import { bareUnder } from '../kit/bare-under.ts';
import { coresOf } from '../kit/cores.ts';
import { footprintOf } from '../kit/geometry.ts';
import { layersOf, valueOf } from '../kit/layers.ts';
import { about, share } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const coreSolidUnderClamp = rule({
  name: 'core/solid-under-clamp',
  severity: 'warning',
  title: 'something is clamped on a core with nothing solid in it',
  on: 'recipe',
  check(context) {
    const layers = layersOf(context);
    for (const zone of context.recipe.part?.zones ?? []) {
      if (zone.clamped !== true) continue;
      const placed = valueOf(context.ask(zonePlaced, zone.name));
      if (placed === undefined) continue;
      for (const core of coresOf(context)) {
        const own = footprintOf(context.bench, core);
        const solid = piecesBeside(layers, core)
          .flatMap((piece) => insertsOf(layers, piece))
          .flatMap((insert) => footprintOf(context.bench, insert) ?? []);
        const bare = own === undefined ? 0 : bareUnder(placed, own, solid);
        if (bare === 0) continue;
        const shown = { zone: zone.name, core: core.name, bare: share(about(bare)) };
        context.report({
          at: `${zone.path}.clamped`,
          message:
            bare > 1 - 1e-9
              ? text(
                  '{zone} is clamped on {core} with nothing solid in it: the core creeps and crushes under the clamp; put an insert there, or end the core short of it',
                  shown,
                )
              : text(
                  '{bare} of {zone} lies on bare {core}: the core creeps and crushes under the clamp there; carry the insert under all of it',
                  shown,
                ),
          related: [
            { at: { entry: context.recipe.entry, path: core.path }, message: text('{core} lies under it', shown) },
          ],
        });
      }
    }
  },
});
