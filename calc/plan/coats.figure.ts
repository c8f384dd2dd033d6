import { sheetArea } from '../bag/bag.figure.ts';
import { FLANGE } from '../bag/habits.ts';
import {
  type Bench,
  defineFigure,
  type Figure,
  factOf,
  ifKnown,
  known,
  type MaterialFacts,
  quantity,
  type Reason,
  reason,
  siOf,
  text,
  type Usual,
  usual,
  whenKnown,
} from '../figure/index.ts';
import { factPlace, materialAt } from '../laminate/fraction.figure.ts';
import type { Step } from '../model/index.ts';
import { inRecipe, outlinePerimeter, partArea } from '../outline/part.figure.ts';
import { AREAL_WEIGHT, MASS, type Quantity, VOLUME } from '../quantity/index.ts';
import { clauseWith, countOf, flat, hasWord, head, subject } from './reading.ts';
import type { Coats, StepItem } from './step-item.ts';

const RELEASE_UPTAKE: Usual = {
  habit: 'release',
  what: 'release agent for one coat',
  value: quantity(0.02, AREAL_WEIGHT),
  source: 'from memory: 10 to 30 g/m2 a coat',
};
const PAINT_UPTAKE: Usual = {
  habit: 'paint_coat',
  what: 'primer or paint for one coat',
  value: quantity(0.1, AREAL_WEIGHT),
  source: 'from memory: 80 to 150 g/m2 a coat',
};

/** The face of the mould with its flange, m2. */
export const mouldArea = defineFigure<number>('mould_area', (bench) => {
  const { stack } = bench.recipe;
  const flange = stack?.tool === undefined ? undefined : bench.tool(stack.tool)?.flange;
  const width = flange === undefined ? usual(bench, FLANGE) : siOf(factOf(flange, 'the flange of the tool', flange.at));
  return whenKnown({ area: bench.ask(partArea), perimeter: bench.ask(outlinePerimeter), width }, (v, reasons) =>
    known(
      v.area + v.perimeter * v.width + Math.PI * v.width * v.width,
      reason('computed', 'the part and the flange round it', { reasons }),
    ),
  );
});

/** Coats where none are typed: four of wax or semi-permanent, one of a film, as the table of verbs says; of paint one. */
function usualCoats(bench: Bench, step: Step): number {
  const name = subject(step) ?? '';
  return step.verb !== 'release' || FILM.test(`${name.replaceAll('_', ' ')} ${bench.material(name)?.title ?? ''}`)
    ? 1
    : 4;
}

/** A release that dries to a film, by how it is called: the notation has one kind of release. */
const FILM = /\b(?:pva|film)\b/i;

/** `5 coats new, 1 coat every 4 pulls`: what the first part takes, and the average of the order. */
export function coatsOf(bench: Bench, step: Step): Coats {
  const again = clauseWith(step, 'every');
  const first = step.clauses.find((c) => c !== again && hasWord(flat(c), 'coat', 'coats'));
  const coats = countOf(first === undefined ? head(step) : flat(first)) ?? usualCoats(bench, step);
  const { quantity: parts } = bench.recipe;
  if (again === undefined || !(parts >= 1)) return { first: coats, average: coats };
  const counts = flat(again).flatMap((a) => (a.kind === 'count' ? [a.count] : []));
  const [more = 1, pulls = 1] = counts.length >= 2 ? counts : [1, counts[0]];
  return { first: coats, average: (coats + more * Math.floor((parts - 1) / Math.max(1, pulls))) / parts };
}

/** Release agent for the average part. */
export function released(bench: Bench, step: Step): Figure<StepItem> {
  const agent = materialAt(bench, subject(step), 'the release agent', inRecipe(bench, step.path));
  return whenKnown({ agent, area: bench.ask(mouldArea) }, ({ agent, area }, reasons) =>
    covering(
      bench,
      { what: 'release', agent, area: area * coatsOf(bench, step).average, uptake: RELEASE_UPTAKE },
      reasons,
    ),
  );
}

/** Primer or paint on the face of the part; nothing where none is named. */
export function painted(bench: Bench, step: Step): Figure<StepItem>[] {
  if (step.material === undefined) return [];
  const agent = materialAt(bench, step.material, 'the paint', inRecipe(bench, step.path));
  return [
    whenKnown({ agent, area: bench.ask(partArea) }, ({ agent, area }, reasons) =>
      covering(bench, { what: 'paint', agent, area: area * coatsOf(bench, step).first, uptake: PAINT_UPTAKE }, reasons),
    ),
  ];
}

/** Release on the face of a caul: `release semi_permanent 3 coats`. The plate itself comes off again. */
export function onCaul(bench: Bench, step: Step): Figure<StepItem>[] {
  const clause = clauseWith(step, 'release');
  const said = clause === undefined ? [] : flat(clause);
  const name = said.find((each) => each.kind === 'word' && each.word !== 'release');
  if (name?.kind !== 'word') return [];
  const agent = materialAt(bench, name.word, 'the release agent', inRecipe(bench, step.path));
  return [
    whenKnown({ agent, area: bench.ask(sheetArea, step.path) }, ({ agent, area }, reasons) =>
      covering(bench, { what: 'release', agent, area: area * (countOf(said) ?? 1), uptake: RELEASE_UPTAKE }, reasons),
    ),
  ];
}

interface Covering {
  readonly what: string;
  readonly agent: MaterialFacts;
  /** m2, of all coats together */
  readonly area: number;
  /** where the material does not say its coverage */
  readonly uptake: Usual;
}

/** What covers an area, by its coverage: m2 to the kg or the litre, or weight for each m2. */
function covering(bench: Bench, { what, agent, area, uptake }: Covering, reasons: readonly Reason[]): Figure<StepItem> {
  const put = (amount: Quantity, more: readonly Reason[]) =>
    known({ what, material: agent.name, amount, bought: true }, ...more, ...reasons);
  if (agent.coverage === undefined)
    return ifKnown(usual(bench, uptake), (each, more) => put(quantity(area * each, MASS), more));
  return ifKnown(
    factOf(agent.coverage, text('the coverage of {agent}', { agent: agent.name }), factPlace(agent, 'coverage')),
    (coverage, more) => {
      const { mass, length } = coverage.dimension;
      if (mass === 1) return put(quantity(area * coverage.si, MASS), more);
      return put(quantity(coverage.si > 0 ? area / coverage.si : 0, mass === -1 && length === 2 ? MASS : VOLUME), more);
    },
  );
}
