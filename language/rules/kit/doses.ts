import { isKnown, type MaterialFacts } from '../../../calc/figure/index.ts';
import { layerResinName } from '../../../calc/laminate/fraction.figure.ts';
import { type Amount, type AmountRange, type CatalystDose, type Fact, UNKNOWN } from '../../../calc/model/index.ts';
import { amountOf, firstClause, flat, head } from '../../../calc/plan/reading.ts';
import { NUMBER } from '../../../calc/quantity/index.ts';
import { weightDoseOf } from '../../../calc/resin/catalyst.ts';
import type { RecipeContext } from '../rule.ts';
import { stepsOf, type WorkedStep } from './steps.ts';

/** A dose of catalyst as it is typed on a step, with the resin that it goes into. */
export interface TypedDose {
  readonly worked: WorkedStep;
  readonly resin: MaterialFacts;
  readonly amount: Amount;
  /** of the clause, or of the step where the dose stands in its head */
  readonly path: string;
}

/** `lay gel, catalyst 2 % by weight` and `catalyse mekp_50 1.5 % by weight`. */
export function typedDoses(context: RecipeContext): readonly TypedDose[] {
  const doses: TypedDose[] = [];
  for (const worked of stepsOf(context)) {
    const { step } = worked;
    const clause = step.verb === 'catalyse' ? undefined : firstClause(step, 'catalyst');
    if (step.verb !== 'catalyse' && clause === undefined) continue;
    const amount = amountOf(clause === undefined ? head(step) : flat(clause), NUMBER);
    if (amount === undefined) continue;
    const path = clause?.path ?? step.path;
    for (const resin of resinsOf(context, worked)) doses.push({ worked, resin, amount, path });
  }
  return doses;
}

/** The catalysed resins that a step lays; a step that lays nothing works on the resin of the process. */
export function resinsOf(context: RecipeContext, { layers }: WorkedStep): readonly MaterialFacts[] {
  const names = new Set(
    layers.flatMap(({ key }) => {
      const name = context.ask(layerResinName, key);
      return isKnown(name) ? [name.value] : [];
    }),
  );
  const own = context.recipe.process?.resin;
  if (layers.length === 0 && own !== undefined) names.add(own);
  return [...names].flatMap((name) => {
    const material = context.bench.material(name);
    return material?.catalyst === undefined ? [] : [material];
  });
}

/** How a typed dose by weight (kg/kg) stands to the range that the resin takes; none where that cannot be told. */
export function againstRange(
  context: RecipeContext,
  { resin, amount }: TypedDose,
):
  | { readonly fact: Fact<CatalystDose>; readonly range: AmountRange; readonly dose: number; readonly off: number }
  | undefined {
  const fact = resin.catalyst;
  if (fact === undefined || fact.value === UNKNOWN || fact.value.range === undefined || amount.basis === undefined)
    return undefined;
  const { range, material } = fact.value;
  const [own, of] = [context.bench.material(material)?.density?.value, resin.density?.value];
  const byVolume = amount.basis === 'by volume' && range.low.basis !== 'by volume';
  const dose = !byVolume
    ? amount.si
    : own === undefined || own === UNKNOWN || of === undefined || of === UNKNOWN
      ? undefined
      : weightDoseOf(amount.si, own.si, of.si);
  if (typeof dose !== 'number') return undefined;
  const off = dose < range.low.si - 1e-6 ? dose - range.low.si : dose > range.high.si + 1e-6 ? dose - range.high.si : 0;
  return { fact, range, dose, off };
}
