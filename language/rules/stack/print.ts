import { hottest } from '../../../calc/cure/equivalent.ts';
import { text } from '../../../calc/figure/figure.ts';
import { isKnown, type MaterialFacts, type Usual, usual } from '../../../calc/figure/index.ts';
import { firstClause, subject } from '../../../calc/plan/reading.ts';
import { materialsThatCure, spansOf } from '../kit/cures.ts';
import { transitionReached } from '../kit/glass-transition.ts';
import { clauseAt, layersOf, materialOf, ofKind } from '../kit/layers.ts';
import { kelvin } from '../kit/shown.ts';
import { allOf, stepsOf } from '../kit/steps.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** How hot a dark face gets in the sun. */
const IN_THE_SUN: Usual = {
  habit: 'sun',
  what: 'a dark face in the sun',
  value: kelvin(273.15 + 65),
  source: 'common practice',
};

export const stackPrint = rule({
  name: 'stack/print',
  severity: 'warning',
  title: 'a dark face on a resin that softens in the sun',
  on: 'recipe',
  check(context) {
    const dark = darkFace(context);
    if (dark === undefined) return;
    const sun = usual(context.bench, IN_THE_SUN);
    const cures = allOf(stepsOf(context), 'cure', 'postcure');
    const spans = spansOf(context, cures);
    const peak = isKnown(spans) ? hottest(spans.value) : undefined;
    const last = cures.at(-1);
    if (!isKnown(sun) || peak === undefined || last === undefined) return;
    const softest = materialsThatCure(context)
      .filter(({ kind }) => kind !== 'gelcoat')
      .map((resin) => ({ resin, reached: transitionReached(context.bench, resin, peak) }))
      .sort((a, b) => a.reached - b.reached)[0];
    if (softest === undefined || softest.reached >= sun.value - 1e-6) return;
    const { resin, reached } = softest;
    const shown = {
      what: dark.what,
      sun: kelvin(sun.value),
      resin: resin.name,
      reached: kelvin(reached),
      peak: kelvin(peak),
    };
    context.report({
      at: dark.at,
      message: text(
        '{what} is dark and comes to {sun} in the sun; {resin} has a glass transition of {reached} by this cure: it softens, and cloth and core print through; postcure it, or take a light colour',
        shown,
      ),
      related: [
        ...(dark.said === undefined ? [] : [{ at: dark.said, message: text('{what} is a dark colour', shown) }]),
        {
          at: { entry: context.recipe.entry, path: last.step.path },
          message: text('{peak} is the hottest of the cure', shown),
        },
      ],
    });
  },
});

/** The first dark coat, paint or tint, and where it says that it is dark. */
function darkFace(
  context: RecipeContext,
):
  | { readonly what: string; readonly at: string; readonly said?: NonNullable<MaterialFacts['dark']>['at'] }
  | undefined {
  for (const coat of ofKind(layersOf(context), 'coat')) {
    const fact = materialOf(context, coat)?.dark;
    if (coat.layer.dark === true) return { what: coat.name, at: clauseAt(coat, 'dark') };
    if (fact !== undefined) return { what: coat.name, at: coat.path, said: fact.at };
  }
  for (const { step } of allOf(stepsOf(context), 'paint', 'tint')) {
    const name = subject(step);
    const fact = name === undefined ? undefined : context.bench.material(name)?.dark;
    const clause = firstClause(step, 'dark');
    if (clause !== undefined) return { what: name ?? 'the paint', at: clause.path };
    if (fact !== undefined && name !== undefined) return { what: name, at: step.path, said: fact.at };
  }
  return undefined;
}
