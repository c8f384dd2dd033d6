import { text } from '../../../calc/figure/figure.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { head, subject } from '../../../calc/plan/reading.ts';
import { planOf, readingsOf } from '../kit/record-plan.ts';
import { stepsOf } from '../kit/steps.ts';
import { type RecipeContext, rule } from '../rule.ts';

export const recordUnknownLot = rule({
  name: 'record/unknown-lot',
  severity: 'warning',
  title: 'a lot of something that the recipe does not use',
  on: 'record',
  check(context) {
    const plan = planOf(context);
    // `differs` says that something else was built in
    if (plan === undefined || plan.recipe.stack === undefined || readingsOf(context.record, 'differs').length > 0)
      return;
    let used: ReadonlySet<string> | undefined;
    for (const lot of context.record.lots) {
      // nearly always it is the resin, which needs no looking through the steps
      if (lot.material === plan.recipe.process?.resin || context.book.material(lot.material) === undefined) continue;
      used ??= usedIn(plan);
      if (used.has(lot.material)) continue;
      context.report({
        at: `${lot.path}.material`,
        message: text(
          '{recipe} uses no {material}: is another lot meant, or was something else built in? Then say so with `differs`',
          { recipe: plan.recipe.name, material: lot.material },
        ),
      });
    }
  },
});

/** Every name that stands in the recipe, and what those materials name in turn: fibre, catalyst, the resin of a paste. */
function usedIn(plan: RecipeContext): ReadonlySet<string> {
  const names = new Set<string>();
  const add = (name: string | undefined): void => {
    if (name === undefined || names.has(name)) return;
    names.add(name);
    const material = plan.bench.material(name);
    const [from, catalyst] = [material?.madeFrom?.value, material?.catalyst?.value];
    if (from !== undefined && from !== UNKNOWN) add(from);
    if (catalyst !== undefined && catalyst !== UNKNOWN) add(catalyst.material);
    for (const { value } of material?.fillers ?? []) if (value !== UNKNOWN) add(value.material);
  };
  add(plan.recipe.process?.resin);
  for (const { step, layers } of stepsOf(plan)) {
    add(subject(step));
    add(step.lay?.resin);
    const said = [
      ...head(step),
      ...step.clauses.flatMap((clause) => [
        ...clause.arguments,
        ...clause.phrases.flatMap((phrase) => phrase.arguments),
      ]),
    ];
    for (const each of said) if (each.kind === 'word') add(each.word);
    for (const { layer } of layers)
      for (const name of [layer.material, layer.wetResin, layer.bedded?.material]) add(name);
  }
  return names;
}
