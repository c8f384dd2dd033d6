import { processSteps } from '../bag/bag.figure.ts';
import {
  allKnown,
  type Bench,
  type Figure,
  ifKnown,
  isKnown,
  known,
  knownBy,
  quantity,
  reason,
  text,
  typed,
  whenKnown,
} from '../figure/index.ts';
import { layerResinName } from '../laminate/fraction.figure.ts';
import { type Step, UNKNOWN } from '../model/index.ts';
import { inRecipe } from '../outline/part.figure.ts';
import { dimension, TEMPERATURE, TIME } from '../quantity/index.ts';
import { gelTime, gelTimeAt, workTemperature } from '../resin/time.figure.ts';
import { durationOf, WAIT_UNTIL } from './durations.ts';
import { fromTable, laidBy, rowOf, times } from './rates.ts';
import { allSaid, amountOf, clauseWith, countOf, flat, hasWord, head, subject, typedTime } from './reading.ts';
import { layersNamed } from './worked-on.figure.ts';

const RAMP = dimension({ temperature: 1, time: -1 });

const SCHEDULES = ['cure', 'postcure', 'ramp', 'cool', 'hold'];

/** Time in which a step needs nobody, s, without the lines of its block. */
export function ownStanding(bench: Bench, step: Step): Figure<number> {
  const row = rowOf(bench, step);
  if (step.verb === 'wait') return waiting(bench, step);
  if (SCHEDULES.includes(step.verb)) return schedule(bench, step);
  if (step.verb === 'infuse') return untilGel(bench, step);
  const extra = step.clauses.length === 0 ? 0 : clauseTime(bench, step);
  if (step.verb === 'release') return drying(bench, step, extra);
  const said = typedTime(step) ?? windowOf(step);
  if (row.typed === 'standing' && said !== undefined) {
    const count = said.each ? times(bench, step) : 1;
    return known(
      said.amount.si * count + extra,
      reason('typed', text('{time}', { time: said.amount }), { at: inRecipe(bench, said.path) }),
    );
  }
  const told = ofItsData(bench, step);
  if (told !== undefined) return told;
  const standing = row.standing === undefined ? 0 : row.standing.minutes * 60;
  return known(standing + extra, ...(standing > 0 ? [fromTable(step, row)] : []));
}

/** What is dried or thawed stands as long as its material says. */
function ofItsData(bench: Bench, step: Step): Figure<number> | undefined {
  if (step.verb !== 'dry' && step.verb !== 'thaw') return undefined;
  const name = step.material ?? layersNamed(bench, step)[0]?.layer.material ?? subject(step);
  const material = name === undefined ? undefined : bench.material(name);
  const fact = step.verb === 'dry' ? material?.dry : material?.thaw;
  if (material === undefined || fact === undefined || fact.value === UNKNOWN) return undefined;
  const time = 'time' in fact.value ? fact.value.time : fact.value;
  return known(
    time.si,
    reason(material.origin === 'stock' ? 'stock' : 'typed', text('{name}: {time}', { name: material.name, time }), {
      at: fact.at,
      source: fact.source,
    }),
  );
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
    sum +=
      time.si * (every === undefined ? 1 : Math.max(1, Math.ceil(laidBy(bench, step).length / Math.max(1, every))));
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
  const why =
    said !== undefined
      ? reason(
          'typed',
          count === 1
            ? text('1 coat, {time}', { time: said.amount })
            : text('{count} coats, {time} each', { count, time: said.amount }),
          { at: inRecipe(bench, said.path) },
        )
      : own !== undefined && agent?.dry !== undefined
        ? reason(
            agent.origin === 'stock' ? 'stock' : 'typed',
            count === 1
              ? text('1 coat, dries {time}', { time: own })
              : text('{count} coats, each dries {time}', { count, time: own }),
            { at: agent.dry.at, source: agent.dry.source },
          )
        : fromTable(step, row);
  return known(one * count + extra, why);
}

function waiting(bench: Bench, step: Step): Figure<number> {
  const at = inRecipe(bench, step.path);
  const said = typedTime(step);
  if (said !== undefined) return known(said.amount.si, reason('typed', text('{time}', { time: said.amount }), { at }));
  const state = Object.keys(WAIT_UNTIL).find((word) => hasWord(head(step), word));
  if (state === undefined)
    return typed<number>(undefined, 'how long to wait, or until what (tacky, gel, cool, hard)', at);
  const usual = WAIT_UNTIL[state];
  const own = state === 'tacky' || state === 'gel' ? ofMaterial(bench, step, state) : undefined;
  if (own !== undefined && isKnown(own)) return own;
  const seconds = (usual?.minutes ?? 0) * 60;
  return known(
    seconds,
    reason('trade', text('about {time} until {state}', { time: quantity(seconds, TIME), state }), {
      source: usual?.why,
    }),
  );
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
      return known(
        value.si,
        reason('typed', text('{name} may be laid on after {time}', { name: name.value, time: value }), {
          at: window.at,
          source: window.source,
        }),
      );
    }
  }
  return before === undefined ? undefined : gelTimeAt(bench, name.value, before.path);
}

/** An infusion stands under vacuum until the resin gels. */
function untilGel(bench: Bench, step: Step): Figure<number> {
  const holds = (step.steps ?? []).some((s) => hasWord(allSaid(s), 'gel'));
  return holds || step.steps === undefined ? bench.ask(gelTime, '') : known(0);
}

/** Ramps, holds and coolings one after the other, from the temperature of the process. */
function schedule(bench: Bench, step: Step): Figure<number> {
  const lines = step.steps === undefined ? [step] : step.steps;
  return ifKnown(bench.ask(workTemperature), (start) => {
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
          whenKnown(
            {
              rate: typed(rate, text('how fast to {verb}', { verb: line.verb }), at),
              target: typed(target, text('the temperature to {verb} to', { verb: line.verb }), at),
            },
            (v) => {
              const seconds = v.rate.si === 0 ? 0 : Math.abs((v.target.si - from) / v.rate.si);
              return known(
                seconds,
                reason(
                  'typed',
                  text('{rate} from {from} to {target}', {
                    rate: v.rate,
                    from: quantity(from, TEMPERATURE),
                    target: v.target,
                  }),
                  { at },
                ),
              );
            },
          ),
        );
      } else {
        const time = typedTime(line);
        const optional = line.steps === undefined && lines.length > 1 && line.verb !== 'hold';
        if (time === undefined && optional) continue;
        parts.push(
          ifKnown(typed(time?.amount, text('how long to {verb}', { verb: line.verb }), at), (time, reasons) =>
            knownBy(time.si, reasons),
          ),
        );
      }
      if (target !== undefined) temperature = target.si;
    }
    return ifKnown(allKnown(parts), (parts, reasons) =>
      known(
        parts.reduce((sum, t) => sum + t, 0),
        reason('computed', 'ramps and holds one after the other', { at: inRecipe(bench, step.path), reasons }),
      ),
    );
  });
}
