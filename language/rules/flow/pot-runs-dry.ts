import { isKnown, text } from '../../../calc/figure/figure.ts';
import { amountOf, clauseWith, countOf, flat, head, mixedName } from '../../../calc/plan/reading.ts';
import { MASS } from '../../../calc/quantity/index.ts';
import { resinToMix } from '../../../calc/resin/needs.figure.ts';
import { mendText } from '../kit/mend-text.ts';
import { about, asTyped, kilograms } from '../kit/shown.ts';
import { allOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const flowPotRunsDry = rule({
  name: 'flow/pot-runs-dry',
  severity: 'error',
  title: 'less resin is mixed than the part drinks',
  on: 'recipe',
  check(context) {
    const { process } = context.recipe;
    if (process?.kind !== 'infusion') return;
    const mixes = allOf(stepsOf(context), 'mix').filter(({ step }) => {
      const name = mixedName(step);
      return name === undefined || name === process.resin;
    });
    const masses = mixes.map(({ step }) => amountOf(head(step), MASS)?.si);
    const first = mixes[0];
    if (first === undefined || masses.includes(undefined)) return;
    const need = context.ask(resinToMix, '');
    if (!isKnown(need)) return;
    // a mass with batches is the whole of them
    const mixed = masses.reduce<number>((sum, mass) => sum + (mass ?? 0), 0);
    const drinks = need.value.total - need.value.allowance;
    if (mixed >= drinks * 0.99) return;
    const right = asTyped(kilograms(Math.ceil(need.value.total * 20) / 20));
    const clause = clauseWith(first.step, 'batches');
    const pots = clause === undefined ? 1 : (countOf(flat(clause)) ?? 1);
    const shown = {
      mixed: kilograms(mixed),
      drinks: kilograms(about(drinks)),
      with_allowance: kilograms(about(need.value.total)),
      pots,
    };
    context.report({
      at: first.step.path,
      message: text(
        '{mixed} in the pot: part, mesh, peel ply and lines drink {drinks}, then air comes through the feed and the part is lost; mix {with_allowance}',
        shown,
      ),
      fixes:
        mixes.length > 1
          ? []
          : [
              mendText(
                context,
                text('Mix {what}', { what: right }),
                first.step.path,
                /\d+(?:\.\d+)?\s*(?:kg|g|lb)\b/,
                right,
              ),
            ],
    });
  },
});
