import { type Bench, type Figure, type FigureDefinition, type Reason, allKnown, defineFigure, isKnown, known, quantity, reason, text, typed, whenKnown } from '../figure/index.ts';
import type { Step } from '../model/index.ts';
import { pleats, processSteps, stepAt, tapeLength } from '../bag/bag.figure.ts';
import { layerResinName } from '../laminate/fraction.figure.ts';
import { inRecipe } from '../outline/part.figure.ts';
import { AREA, LENGTH, NUMBER, TEMPERATURE, TIME, dimension, sameDimension } from '../quantity/index.ts';
import { gelTime, workTemperature } from '../resin/time.figure.ts';
import { mouldArea, stepAmount } from './amount.figure.ts';
import { COAT_LAY, DURATION_SOURCE, type Duration, type Rate, WAIT_UNTIL, WET_LAY, durationOf } from './durations.ts';
import { layPlan } from './lay.figure.ts';
import { amountOf, clauseWith, countOf, flat, hasWord, head, subject, typedTime } from './reading.ts';

const RAMP = dimension({ temperature: 1, time: -1 });

/** What the rates of a duration are counted by. */
interface Measures {
  readonly m2: number;
  readonly m: number;
  readonly pieces: number;
  readonly coats: number;
  readonly holes: number;
  readonly pleats: number;
}

const total = (rates: readonly Rate[], of: Measures): number =>
  60 * rates.reduce((sum, { per, minutes }) => sum + minutes * { step: 1, m2: of.m2, m: of.m, piece: of.pieces, coat: of.coats, 'coat m2': of.coats * of.m2, hole: of.holes, pleat: of.pleats }[per], 0);

/** Sizes that a step works on. What cannot be told yet holds up the time, as it holds up the amount. */
function measures(bench: Bench, step: Step): Figure<Measures> {
  return whenKnown({ amount: bench.ask(stepAmount, step.path), length: lengthOf(bench, step), mould: step.verb === 'release' ? mouldArea(bench) : known(0) }, ({ amount, length, mould }, reasons) => {
    const sum = (of: typeof AREA) => amount.items.reduce((s, i) => (sameDimension(i.amount.dimension, of) ? s + i.amount.si : s), 0);
    const layers = laidBy(bench, step);
    const p = bench.ask(pleats);
    const coats = step.verb === 'release' ? (amount.coats?.first ?? 1) : layers.reduce((most, l) => Math.max(most, l.layer.coats ?? 1), 1);
    // a kit goes into the tool in one piece, as large as its largest layer
    const kit = step.lay?.what === 'kit';
    const largest = amount.items.reduce((most, i) => (sameDimension(i.amount.dimension, AREA) ? Math.max(most, i.amount.si) : most), 0);
    return known({
      m2: mould > 0 ? mould : kit ? largest : sum(AREA), m: length ?? sum(LENGTH), pieces: kit || step.lay === undefined ? 1 : layers.length, coats,
      holes: sum(NUMBER), pleats: step.verb === 'bag' && isKnown(p) ? p.value.count : 0,
    }, ...reasons);
  });
}

function lengthOf(bench: Bench, step: Step): Figure<number | undefined> {
  return step.verb === 'bag' ? bench.ask(tapeLength) : known(undefined);
}

function laidBy(bench: Bench, step: Step) {
  const plan = bench.ask(layPlan);
  return isKnown(plan) ? (plan.value.layersOf.get(step.path) ?? []) : [];
}

/** The row of the table that a step goes by. */
function rowOf(bench: Bench, step: Step): Duration {
  if (step.lay === undefined) return durationOf(step.verb);
  const layers = laidBy(bench, step);
  if (layers.length > 0 && layers.every((l) => l.layer.kind === 'coat')) return COAT_LAY;
  const { process } = bench.recipe;
  const wet = step.lay.resin !== undefined || process?.kind === 'hand' || process?.kind === 'bagged';
  return wet && step.lay.what !== 'kit' ? WET_LAY : durationOf('lay');
}

/** How often a time that is said for each is taken: each coat, each piece. */
function times(bench: Bench, step: Step): number {
  const layers = laidBy(bench, step);
  if (step.verb === 'release') {
    const amount = bench.ask(stepAmount, step.path);
    return isKnown(amount) ? (amount.value.coats?.first ?? 1) : 1;
  }
  return Math.max(1, layers.reduce((sum, l) => sum + (l.layer.coats ?? 1), 0));
}

/** Hands-on time of one pair of hands, s; on a new mould where that matters. */
export const stepWorkingTime: FigureDefinition<number> = defineFigure<number>('step_working_time', (bench, path) =>
  whenKnown({ step: bench.ask(stepAt, path) }, ({ step }) => {
    const inside = BLOCKS_AT_WORK.includes(step.verb) ? (step.steps ?? []) : [];
    return whenKnown({ own: ownWork(bench, step), inside: allKnown(inside.map((s) => bench.ask(stepWorkingTime, s.path))) }, (v, reasons) =>
      known(v.own + v.inside.reduce((sum, t) => sum + t, 0), ...reasons),
    );
  }),
);

/** Blocks whose lines are work of their own; what stands in `infuse` and `cure` is part of the one step. */
const BLOCKS_AT_WORK = ['kit'];

function ownWork(bench: Bench, step: Step): Figure<number> {
  const row = rowOf(bench, step);
  const said = typedTime(step);
  if (row.typed === 'working' && said !== undefined) {
    const count = said.each ? times(bench, step) : 1;
    return known(said.amount.si * count, reason('typed', count > 1 ? text('{time} each, {count} times', { time: said.amount, count }) : text('{time}', { time: said.amount }), { at: inRecipe(bench, said.path) }));
  }
  if (row.working.length === 0) return known(0);
  if (row.working.every((rate) => rate.per === 'step')) return known(total(row.working, NOTHING), fromTable(step, row));
  return whenKnown({ m: measures(bench, step) }, ({ m }, reasons) => known(total(row.working, m), fromTable(step, row, reasons)));
}

const NOTHING: Measures = { m2: 0, m: 0, pieces: 1, coats: 1, holes: 0, pleats: 0 };

const fromTable = (step: Step, row: Duration, reasons: readonly Reason[] = []): Reason =>
  reason('trade', text('{verb}: {why}', { verb: step.verb, why: row.why || 'usual time' }), { source: DURATION_SOURCE, reasons });

/** Time in which nobody is needed, s: drying, gelling, curing, holding. */
export const stepStandingTime: FigureDefinition<number> = defineFigure<number>('step_standing_time', (bench, path) =>
  whenKnown({ step: bench.ask(stepAt, path) }, ({ step }) => {
    const more = whenKnown({ inside: allKnown((step.verb === 'kit' ? (step.steps ?? []) : []).map((s) => bench.ask(stepStandingTime, s.path))) }, ({ inside }) =>
      known(inside.reduce((sum, t) => sum + t, 0)),
    );
    return whenKnown({ own: ownStanding(bench, step), more }, (v, reasons) => known(v.own + v.more, ...reasons));
  }),
);

function ownStanding(bench: Bench, step: Step): Figure<number> {
  const row = rowOf(bench, step);
  const extra = clauseTime(bench, step);
  if (step.verb === 'wait') return waiting(bench, step);
  if (['cure', 'postcure', 'ramp', 'cool', 'hold'].includes(step.verb)) return schedule(bench, step);
  if (step.verb === 'infuse') return untilGel(bench, step);
  if (step.verb === 'release') return drying(bench, step, extra);
  const said = typedTime(step) ?? windowOf(step);
  if (row.typed === 'standing' && said !== undefined) {
    const count = said.each ? times(bench, step) : 1;
    return known(said.amount.si * count + extra, reason('typed', text('{time}', { time: said.amount }), { at: inRecipe(bench, said.path) }));
  }
  const standing = row.standing === undefined ? 0 : row.standing.minutes * 60;
  return known(standing + extra, ...(standing > 0 ? [fromTable(step, row)] : []));
}

/** `leak test 5 mbar in 10 min` */
function windowOf(step: Step): ReturnType<typeof typedTime> {
  const within = step.verb === 'leak test' ? amountOf(head(step), TIME) : undefined;
  return within === undefined ? undefined : { each: false, amount: within, path: step.path };
}

/** `bake 30 min at 120 degC`, `debulk 15 min every 3 plies` on another step, s. */
function clauseTime(bench: Bench, step: Step): number {
  let sum = 0;
  for (const word of ['bake', 'debulk']) {
    const clause = step.verb === word ? undefined : clauseWith(step, word);
    const time = clause === undefined ? undefined : amountOf(flat(clause), TIME);
    if (clause === undefined || time === undefined) continue;
    const every = hasWord(flat(clause), 'every') ? (countOf(flat(clause)) ?? 1) : undefined;
    sum += time.si * (every === undefined ? 1 : Math.max(1, Math.ceil(laidBy(bench, step).length / Math.max(1, every))));
  }
  return sum;
}

/** Each coat of release dries: as typed, as its data say, else as is usual. */
function drying(bench: Bench, step: Step, extra: number): Figure<number> {
  const count = times(bench, step);
  const said = typedTime(step);
  const name = step.material ?? subject(step);
  const agent = name === undefined ? undefined : bench.material(name);
  const dry = agent?.dry?.value;
  const row = durationOf('release');
  const own = typeof dry === 'object' ? dry.time : undefined;
  const one = said?.amount.si ?? own?.si ?? (row.standing?.minutes ?? 0) * 60;
  const why = said !== undefined
    ? reason('typed', text('{count} coats, {time} each', { count, time: said.amount }), { at: inRecipe(bench, said.path) })
    : own !== undefined && agent?.dry !== undefined
      ? reason(agent.origin === 'stock' ? 'stock' : 'typed', text('{count} coats, each dries {time}', { count, time: own }), { at: agent.dry.at, source: agent.dry.source })
      : fromTable(step, row);
  return known(one * count + extra, why);
}

function waiting(bench: Bench, step: Step): Figure<number> {
  const at = inRecipe(bench, step.path);
  const said = typedTime(step);
  if (said !== undefined) return known(said.amount.si, reason('typed', text('{time}', { time: said.amount }), { at }));
  const state = Object.keys(WAIT_UNTIL).find((word) => hasWord(head(step), word));
  if (state === undefined) return typed<number>(undefined, 'how long to wait, or until what (tacky, gel, cool, hard)', at);
  const usual = WAIT_UNTIL[state];
  const own = state === 'tacky' || state === 'gel' ? ofMaterial(bench, step, state) : undefined;
  if (own !== undefined && isKnown(own)) return own;
  const seconds = (usual?.minutes ?? 0) * 60;
  return known(seconds, reason('trade', text('about {time} until {state}', { time: quantity(seconds, TIME), state }), { source: usual?.why }));
}

/** What was laid last before a step tells how long it takes to get tacky or to gel. */
function ofMaterial(bench: Bench, step: Step, state: 'tacky' | 'gel'): Figure<number> | undefined {
  const steps = bench.ask(processSteps);
  if (!isKnown(steps)) return undefined;
  const before = steps.value.slice(0, steps.value.indexOf(step)).findLast((s) => laidBy(bench, s).length > 0);
  const last = before === undefined ? undefined : laidBy(bench, before).at(-1);
  const name = last === undefined ? undefined : bench.ask(layerResinName, last.key);
  if (name === undefined || !isKnown(name)) return undefined;
  if (state === 'tacky') {
    const material = bench.material(name.value);
    const window = material?.laminate?.[0];
    if (window !== undefined && typeof window.value === 'object') {
      const { value } = window.value;
      return known(value.si, reason('typed', text('{name} may be laid on after {time}', { name: name.value, time: value }), { at: window.at, source: window.source }));
    }
  }
  return bench.ask(gelTime, name.value);
}

/** An infusion stands under vacuum until the resin gels. */
function untilGel(bench: Bench, step: Step): Figure<number> {
  const holds = (step.steps ?? []).some((s) => hasWord([...head(s), ...s.clauses.flatMap(flat)], 'gel'));
  return holds || step.steps === undefined ? bench.ask(gelTime, '') : known(0);
}

/** Ramps, holds and coolings one after the other, from the temperature of the process. */
function schedule(bench: Bench, step: Step): Figure<number> {
  const lines = step.steps === undefined ? [step] : step.steps;
  return whenKnown({ start: bench.ask(workTemperature) }, ({ start }) => {
    let temperature = start;
    const parts: Figure<number>[] = [];
    for (const line of lines) {
      const said = head(line);
      const at = inRecipe(bench, line.path);
      const target = amountOf(said, TEMPERATURE);
      if (line.verb === 'ramp' || line.verb === 'cool') {
        const rate = amountOf(said, RAMP);
        const from = temperature;
        parts.push(
          whenKnown({ rate: typed(rate, `how fast to ${line.verb}`, at), target: typed(target, `the temperature to ${line.verb} to`, at) }, (v) => {
            const seconds = v.rate.si === 0 ? 0 : Math.abs((v.target.si - from) / v.rate.si);
            return known(seconds, reason('typed', text('{rate} from {from} to {target}', { rate: v.rate, from: quantity(from, TEMPERATURE), target: v.target }), { at }));
          }),
        );
      } else {
        const time = typedTime(line);
        const optional = line.steps === undefined && lines.length > 1 && line.verb !== 'hold';
        if (time === undefined && optional) continue;
        parts.push(whenKnown({ time: typed(time?.amount, `how long to ${line.verb}`, at) }, (v, reasons) => known(v.time.si, ...reasons)));
      }
      if (target !== undefined) temperature = target.si;
    }
    return whenKnown({ parts: allKnown(parts) }, (v, reasons) => known(v.parts.reduce((sum, t) => sum + t, 0), reason('computed', 'ramps and holds one after the other', { at: inRecipe(bench, step.path), reasons })));
  });
}

/** Steps that count in a sum: what is in a block counts with its block. */
const outermost = (bench: Bench): Figure<readonly Step[]> => {
  const { process } = bench.recipe;
  return whenKnown({ process: typed(process, 'the process', inRecipe(bench, '')) }, (v) => known(v.process.steps));
};

const sumOver = (bench: Bench, of: typeof stepWorkingTime, how: string): Figure<number> =>
  whenKnown({ steps: outermost(bench) }, ({ steps }) =>
    whenKnown({ each: allKnown(steps.map((s) => bench.ask(of, s.path))) }, ({ each }, reasons) => known(each.reduce((sum, t) => sum + t, 0), reason('computed', how, { reasons }))),
  );

/** Hands-on time of the first part on a new mould, person-seconds. */
export const workingTime = defineFigure<number>('working_time', (bench) => sumOver(bench, stepWorkingTime, 'working time of all steps, one pair of hands'));

/** Time in which the part waits, one step after the other, s. */
export const standingTime = defineFigure<number>('standing_time', (bench) => sumOver(bench, stepStandingTime, 'standing time of all steps'));

/** Hands-on time of the average part of the order: a mould is not released anew for every part; person-seconds. */
export const averageWorkingTime = defineFigure<number>('average_working_time', (bench) =>
  whenKnown({ all: bench.ask(workingTime), steps: bench.ask(processSteps) }, ({ all, steps }, reasons) => {
    const releases = steps.filter((s) => s.verb === 'release');
    return whenKnown({ less: allKnown(releases.map((s) => savedOnRelease(bench, s))) }, ({ less }) =>
      known(Math.max(0, all - less.reduce((sum, t) => sum + t, 0)), reason('computed', 'working time, with the release coats of the average part', { reasons })),
    );
  }),
);

function savedOnRelease(bench: Bench, step: Step): Figure<number> {
  return whenKnown({ amount: bench.ask(stepAmount, step.path), time: bench.ask(stepWorkingTime, step.path) }, ({ amount, time }) => {
    const coats = amount.coats;
    return known(coats === undefined || coats.first <= 0 ? 0 : time * (1 - coats.average / coats.first));
  });
}
