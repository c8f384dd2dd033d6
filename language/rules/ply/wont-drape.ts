import { LEAST_EXCESS } from '../../../calc/cloth/habits.ts';
import { type Drape, layerDrape } from '../../../calc/curve/drape.figure.ts';
import { quantity } from '../../../calc/figure/figure.ts';
import { text } from '../../../calc/figure/index.ts';
import { ANGLE } from '../../../calc/quantity/index.ts';
import { isCloth } from '../../../calc/stack/order.ts';
import { habitOf } from '../kit/habit.ts';
import { layersOf, onePerLine, valueOf } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const plyWontDrape = rule({
  name: 'ply/wont-drape',
  severity: 'warning',
  title: 'a tool curved both ways asks more of a cloth than it shears',
  on: 'recipe',
  check(context) {
    const least = habitOf(context.bench, LEAST_EXCESS);
    for (const laid of onePerLine(layersOf(context).filter(isCloth))) {
      const drape = valueOf(context.ask(layerDrape, laid.key));
      if (drape === undefined || Math.abs(drape.left) <= least) continue;
      context.report({ at: laid.path, message: wontDrape(laid.name, drape) });
    }
  },
});

function wontDrape(ply: string, { excess, shear, locks, left, darts, widest }: Drape) {
  const shown = {
    ply,
    shear: quantity(shear, ANGLE),
    locks: quantity(locks, ANGLE),
    left: metres(Math.abs(left)),
    excess: metres(Math.abs(excess)),
    darts,
    widest: metres(widest),
  };
  if (excess > 0)
    return darts === 1
      ? text(
          'the tool is curved both ways: {ply} would have to shear by {shear} and takes {locks}. Of {excess} too much at its edge {left} stay in folds: a dart of {widest}, or pieces, or a cloth that shears more',
          shown,
        )
      : text(
          'the tool is curved both ways: {ply} would have to shear by {shear} and takes {locks}. Of {excess} too much at its edge {left} stay in folds: {darts} darts of {widest}, or pieces, or a cloth that shears more',
          shown,
        );
  return darts === 1
    ? text(
        'the tool is a saddle: {ply} would have to shear by {shear} and takes {locks}. Of {excess} too little at its edge {left} stay bridged: a slit that opens by {widest}, or pieces, or a cloth that shears more',
        shown,
      )
    : text(
        'the tool is a saddle: {ply} would have to shear by {shear} and takes {locks}. Of {excess} too little at its edge {left} stay bridged: {darts} slits that open by {widest}, or pieces, or a cloth that shears more',
        shown,
      );
}
