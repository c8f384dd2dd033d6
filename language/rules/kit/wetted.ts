import { equivalentTime } from '../../../calc/cure/equivalent.ts';
import {
  allKnown,
  definePick,
  type Figure,
  ifKnown,
  isKnown,
  known,
  knownBy,
  type MaterialFacts,
  whenKnown,
} from '../../../calc/figure/index.ts';
import { layerResinName } from '../../../calc/laminate/fraction.figure.ts';
import { type AtCondition, type Fact, UNKNOWN } from '../../../calc/model/index.ts';
import { hasWord, head } from '../../../calc/plan/reading.ts';
import { stepWorkingTime } from '../../../calc/plan/step.figure.ts';
import { workTemperature } from '../../../calc/resin/time.figure.ts';
import { timeByFactor } from '../../../calc/resin/working-time.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import type { RecipeContext } from '../rule.ts';
import { spansOf } from './cures.ts';
import { between, stepsOf, type WorkedStep, workedSteps } from './steps.ts';

/** A coat or a piece of cloth with the resin that wets it, in the order in which they are laid. */
export interface Wetted {
  readonly worked: WorkedStep;
  readonly laid: LaidLayer;
  readonly resin: MaterialFacts;
}

const wetted = definePick<readonly Wetted[]>('wetted_layers', (bench) =>
  ifKnown(bench.ask(workedSteps), (steps) => {
    const found: Wetted[] = [];
    for (const worked of steps) {
      if (worked.inside !== undefined) continue;
      for (const laid of worked.layers) {
        if (laid.layer.kind === 'core' || laid.layer.kind === 'insert') continue;
        const name = bench.ask(layerResinName, laid.key);
        const resin = isKnown(name) ? bench.material(name.value) : undefined;
        if (resin !== undefined) found.push({ worked, laid, resin });
      }
    }
    return known(found);
  }),
);

export function wettedLayers(context: RecipeContext): readonly Wetted[] {
  const found = context.ask(wetted);
  return isKnown(found) ? found.value : [];
}

/** The chemistry of a resin; a paste made in the shop has that of the resin it is made from. */
export function familyOf(context: RecipeContext, material: MaterialFacts | undefined): string | undefined {
  const family = material?.family?.value;
  if (family !== undefined && family !== UNKNOWN) return family;
  const from = material?.madeFrom?.value;
  const base = from === undefined || from === UNKNOWN ? undefined : context.bench.material(from);
  return base === material || base?.madeFrom !== undefined ? undefined : familyOf(context, base);
}

/** What peroxide starts, with styrene in it. */
export const hasStyrene = (family: string | undefined): boolean => family === 'polyester' || family === 'vinyl_ester';

export function peopleOf(context: RecipeContext): number {
  const people = context.bench.shop?.people?.value;
  return people === undefined || people === UNKNOWN || !(people >= 1) ? 1 : people;
}

/** A window of a data sheet brought to the temperature of the process; s. */
export interface Window {
  readonly low: number;
  readonly high?: number;
  readonly fact: Fact<AtCondition>;
}

export function windowOf(context: RecipeContext, facts: readonly Fact<AtCondition>[] | undefined): Window | undefined {
  const fact = facts?.find(({ value }) => value !== UNKNOWN);
  if (fact === undefined || fact.value === UNKNOWN) return undefined;
  const temperature = context.ask(workTemperature);
  if (!isKnown(temperature)) return undefined;
  const { value, high, temperature: at } = fact.value;
  const bring = (time: number) =>
    timeByFactor({ temperature: at?.si ?? temperature.value, value: time }, temperature.value);
  const [low, late] = [bring(value.si), high === undefined ? undefined : bring(high.si)];
  return typeof low !== 'number' ? undefined : { low, fact, ...(typeof late === 'number' ? { high: late } : {}) };
}

/** What happens between two steps. */
export interface Gap {
  /** time at the temperature of the process that does as much, s */
  readonly time: number;
  /** somebody waits for a state and not by the clock */
  readonly untilState: boolean;
  readonly steps: readonly WorkedStep[];
}

export function gapBetween(context: RecipeContext, from: WorkedStep, to: WorkedStep): Figure<Gap> {
  const steps = between(stepsOf(context), from, to).filter(({ inside }) => inside === undefined);
  const working = allKnown(steps.map(({ step }) => context.ask(stepWorkingTime, step.path)));
  return whenKnown(
    { spans: spansOf(context, steps), working, temperature: context.ask(workTemperature) },
    (v, reasons) => {
      const stood = equivalentTime(v.spans, v.temperature);
      const worked = v.working.reduce((sum, time) => sum + time, 0) / peopleOf(context);
      const untilState = steps.some(
        ({ step }) => step.verb === 'wait' && hasWord(head(step), 'tacky', 'gel', 'cool', 'hard'),
      );
      return knownBy({ time: (typeof stood === 'number' ? stood : 0) + worked, untilState, steps }, reasons);
    },
  );
}

/** Steps that give a cured face its key again. */
export const keyed = (steps: readonly WorkedStep[]): boolean =>
  steps.some(({ step }) => step.verb === 'sand' || step.verb === 'pull peel');
