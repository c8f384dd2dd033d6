import { isKnown } from '../../../calc/figure/index.ts';
import { type Amount, type AtCondition, type Fact, UNKNOWN } from '../../../calc/model/index.ts';
import { workTemperature } from '../../../calc/resin/time.figure.ts';
import { viscosityAt } from '../../../calc/resin/viscosity.ts';
import type { RecipeContext } from '../rule.ts';

/** How thick the resin of the process is at the temperature of the process, Pa s, with the fact that says it. */
export function resinViscosity(
  context: RecipeContext,
): { readonly value: number; readonly fact: Fact<AtCondition>; readonly temperature: Amount['si'] } | undefined {
  const name = context.recipe.process?.resin;
  const facts = name === undefined ? undefined : context.bench.material(name)?.viscosity;
  const temperature = context.ask(workTemperature);
  const fact = facts?.[0];
  if (facts === undefined || fact === undefined || !isKnown(temperature)) return undefined;
  const readings = facts.flatMap(({ value }) =>
    value === UNKNOWN ? [] : [{ temperature: value.temperature?.si ?? temperature.value, value: value.value.si }],
  );
  const found = viscosityAt(readings, temperature.value);
  return 'problem' in found ? undefined : { value: found.value, fact, temperature: temperature.value };
}
