import { pleatsNeeded } from '../../../calc/bag/bag.figure.ts';
import { isKnown, type Text, text } from '../../../calc/figure/figure.ts';
import { type Usual, usual } from '../../../calc/figure/index.ts';
import { stackHeight } from '../../../calc/laminate/height.figure.ts';
import { isImpossible } from '../../../calc/outcome.ts';
import { partFrame } from '../../../calc/outline/part.figure.ts';
import { turns } from '../../../calc/outline/turns.ts';
import { countOf, firstClause, flat } from '../../../calc/plan/reading.ts';
import type { Quantity } from '../../../calc/quantity/index.ts';
import { valueOf } from '../kit/layers.ts';
import { mendText } from '../kit/mend-text.ts';
import { metres } from '../kit/shown.ts';
import { allOf, stepsOf } from '../kit/steps.ts';
import { type RecipeContext, rule } from '../rule.ts';
import { filmBridges } from './bridges.ts';

/** A pleat on either side of each corner, from this height of the stack on. */
const CORNERS_FROM: Usual = {
  habit: 'corner',
  what: 'height from which a corner wants its own pleats',
  value: metres(0.01),
  source: 'common practice',
};
const PER_CORNER = 2;

/** From this turn on a point of an outline is a corner for the film, rad; a curve drawn in short straights has none. */
const SHARP = Math.PI / 4;

function corners(context: RecipeContext): number {
  const { outline } = context.recipe.part ?? {};
  if (outline?.kind === 'rectangle' || outline?.kind === 'rounded') return 4;
  const frame = outline?.kind === 'polygon' ? valueOf(context.ask(partFrame)) : undefined;
  const found = frame === undefined ? [] : turns(frame.shape);
  return isImpossible(found) ? 0 : found.filter(({ kind, turn }) => kind === 'corner' && turn >= SHARP - 1e-9).length;
}

interface Shown {
  readonly [figure: string]: number | Quantity;
}

const ofOne = (shown: Shown, cornered: boolean): Text =>
  cornered
    ? text('1 pleat: a stack {height} high wants {wanted}, one on either side of each of its {corners} corners', shown)
    : text('1 pleat: the film comes down beside a stack {height} high with {wanted}', shown);

const ofMany = (shown: Shown, cornered: boolean): Text =>
  cornered
    ? text(
        '{count} pleats: a stack {height} high wants {wanted}, one on either side of each of its {corners} corners',
        shown,
      )
    : text('{count} pleats: the film comes down beside a stack {height} high with {wanted}', shown);

export const bagFewPleats = rule({
  name: 'bag/few-pleats',
  severity: 'warning',
  title: 'too few pleats for the film to reach down all round',
  on: 'recipe',
  check(context) {
    const needed = context.ask(pleatsNeeded);
    const height = context.ask(stackHeight);
    const from = usual(context.bench, CORNERS_FROM);
    for (const { step } of allOf(stepsOf(context), 'bag')) {
      const clause = firstClause(step, 'pleats');
      const count = clause === undefined ? undefined : countOf(flat(clause));
      if (clause === undefined || count === undefined || !isKnown(needed) || !isKnown(height) || !isKnown(from))
        continue;
      const cornered = height.value >= from.value ? PER_CORNER * corners(context) : 0;
      const wanted = Math.max(needed.value, cornered);
      // film that does not reach the foot of the sides is told of as that
      if (count >= wanted || filmBridges(context) !== undefined) continue;
      const shown = { count, wanted, height: metres(height.value), corners: cornered / PER_CORNER };
      context.report({
        at: clause.path,
        message: count === 1 ? ofOne(shown, cornered > needed.value) : ofMany(shown, cornered > needed.value),
        fixes: [mendText(context, text('Fold {what} pleats', { what: wanted }), clause.path, /\d+/, String(wanted))],
      });
    }
  },
});
