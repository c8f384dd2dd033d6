import type { Amount, Argument, Phrase, Step, StepClause } from '../../../calc/model/index.ts';
import {
  filletRadius,
  flat,
  hasWord,
  head,
  namedBehind,
  pastEdge,
  subject,
  typedTime,
} from '../../../calc/plan/reading.ts';
import { LENGTH, sameDimension, TEMPERATURE, TIME } from '../../../calc/quantity/index.ts';
import { type Verb, verb, wordAt } from '../../words/index.ts';
import { showAmount } from '../figures.ts';
import { testWords } from '../report/expects.ts';
import { argumentWords, stepWords } from '../step-words.ts';
import { type Style, safe, say, show } from '../text.ts';
import { translated } from '../translation.ts';

/**
 * What to do, as a sentence: the sheet line of the verb with what the step says put in. A part of the sentence for which
 * the step says nothing is left out; where nothing of it would be left, the step is told as the recipe says it.
 * `usual` is what the shop does where the step says nothing.
 */
export function instructionOf(step: Step, style: Style, usual: Said = {}): string {
  const row = verb(step.verb);
  if (row === undefined) return sentence(stepWords(step, style));
  const template = translated(row.sheet);
  const said = { ...usual, ...defined(valuesOf(step, row, style)) };
  const filled: string[] = [];
  for (const [i, part] of template.split(/(?<=[,:;])/).entries()) {
    const whole = filledIn(part, said);
    if (whole !== undefined) filled.push(whole);
    else if (i === 0)
      return sentence(row.alone !== undefined && isBare(step) ? translated(row.alone) : stepWords(step, style));
  }
  return sentence(safe(template.endsWith(':') ? filled.join('') : filled.join('').replace(/[,;:]$/, '')));
}

/** Only what is said. */
const defined = (said: Said): Said =>
  Object.fromEntries(Object.entries(said).filter(([, words]) => words !== undefined && words !== ''));

/** What is put in for each name in braces. */
export type Said = Readonly<Record<string, string | undefined>>;

/** Only the verb: `cut`, `leak test`. */
const isBare = (step: Step): boolean => step.material === undefined && head(step).length === 0;

/** Where a line or a body lies: `perimeter`, `from (90 mm from heel, 0 mm) to (90 mm from nose, 0 mm)`. */
function placeWords(step: Step, style: Style): string | undefined {
  const places = head(step).filter((each, i, list) => each.kind !== 'count' && (i > 0 || !isName(step, list[0])));
  return places.length === 0 ? undefined : worded(places, style);
}

const isName = (step: Step, each: Argument | undefined): boolean =>
  each?.kind === 'word' && each.word === subject(step);

/** Everything that stands behind the first comma, clause by clause, as the recipe says it. */
export function clauseWords(step: Step, style: Style): string[] {
  return step.clauses.map((clause) => safe(worded(flat(clause), style))).filter((words) => words !== '');
}

function filledIn(part: string, said: Said): string | undefined {
  let whole = true;
  const filled = part.replace(/\{(\w+)\}/g, (_, name: string) => {
    const value = said[name];
    if (value === undefined || value === '') whole = false;
    return value ?? '';
  });
  return whole ? filled : undefined;
}

function sentence(words: string): string {
  const first = words.charAt(0).toUpperCase() + words.slice(1);
  return /[.:!?"]$/.test(first) ? first : `${first}.`;
}

function valuesOf(step: Step, row: Verb, style: Style): Said {
  // `part above 117 degC`, `part within 5 K` say when the part is there, and not how warm it is held
  const all = [...head(step), ...step.clauses.map(flat).filter((list) => !hasWord(list, 'part'))].flat();
  const temperature = amountsOf(all).find(
    ({ dimension, difference }) => sameDimension(dimension, TEMPERATURE) && difference !== true,
  );
  const typed = typedTime(step)?.amount;
  const time = typed && showAmount(typed, style);
  const until = phraseOf(step, ['until'], style);
  return {
    material:
      step.material ?? (row.takes?.some(({ after }) => after === 'with') ? namedBehind(step, 'with') : subject(step)),
    what: whatOf(step),
    how: phraseOf(step, ['on'], style) ?? subject(step),
    name: step.name,
    text: step.text ?? (step.test === undefined ? undefined : testWords(step.test, style)),
    time,
    temperature: temperature && showAmount(temperature, style),
    amount: amountWords(step, style),
    edge: edgeWords(step, style),
    fillet: filletWords(step, style),
    until,
    wait: [time, until].filter((part) => part !== undefined).join(' '),
    look: lookFor(step),
    when: phraseOf(step, ['when', 'below', 'after'], style),
    place: placeWords(step, style),
    coats: clauseOf(step, ['coats', 'coat'], style),
    layers: clauseOf(step, ['layers', 'layer'], style),
    pleats: clauseOf(step, ['pleats', 'pleat'], style),
  };
}

function whatOf(step: Step): string | undefined {
  const { lay } = step;
  if (lay === undefined) return namedBehind(step, 'in') ?? runOf(step);
  if (lay.what === 'kit') return say('the kit');
  if (lay.what === 'rest') return say('the rest');
  if (lay.what === 'stack') return say('the whole stack');
  return lay.first === undefined || lay.last === undefined
    ? (lay.first ?? lay.last)
    : say('{first} to {last}', { first: lay.first, last: lay.last });
}

/** `cut outer to inner`: one name, or a run of them. */
function runOf(step: Step): string | undefined {
  const first = step.material === undefined ? subject(step) : undefined;
  const last = namedBehind(step, 'to');
  return first === undefined || last === undefined ? first : say('{first} to {last}', { first, last });
}

/** How far a sheet goes beyond the edge of the part, or ends before it or before its dam. */
function edgeWords(step: Step, style: Style): string | undefined {
  const past = pastEdge(step);
  if (past === undefined) return undefined;
  return past < 0 && step.clauses.some((clause) => hasWord(flat(clause), 'dam'))
    ? say('{length} short of the dam', { length: { si: -past, dimension: LENGTH } }, style)
    : pastWords(past, style);
}

/** `50 mm past the edge`, `40 mm short of the edge`. */
export function pastWords(past: number, style: Style): string {
  const length = { si: Math.abs(past), dimension: LENGTH };
  return past < 0
    ? say('{length} short of the edge', { length }, style)
    : say('{length} past the edge', { length }, style);
}

/** By what the bench knows the state that it waits for: `it sticks, but the glove comes away clean`. */
function lookFor(step: Step): string | undefined {
  const state = namedBehind(step, 'until');
  const meaning = state === undefined ? undefined : wordAt(state, 'value of until')?.meaning;
  const look = meaning === undefined ? '' : translated(meaning).replace(/\.$/, '');
  return look === '' ? undefined : `${look.charAt(0).toLowerCase()}${look.slice(1)}`;
}

function filletWords(step: Step, style: Style): string | undefined {
  const radius = filletRadius(step);
  return radius === undefined ? undefined : show({ si: radius, dimension: LENGTH }, style);
}

/** What is neither a time nor a temperature: of the head, else of the first clause that has one. */
function amountWords(step: Step, style: Style): string | undefined {
  const past = pastEdge(step);
  if (past !== undefined) return show({ si: Math.abs(past), dimension: LENGTH }, style);
  for (const list of [head(step).filter((each) => each.kind !== 'point'), ...step.clauses.map(flat)]) {
    const own = list.filter(isMeasure);
    if (own.length > 0)
      return worded(
        list.filter((each, i) => isMeasure(each) || counted(list, i)),
        style,
      );
  }
  return undefined;
}

const isMeasure = (each: Argument): boolean =>
  each.kind === 'count' ||
  each.kind === 'ratio' ||
  (each.kind === 'amount' && ![TIME, TEMPERATURE].some((other) => sameDimension(each.amount.dimension, other)));

/** The word behind a bare number says what is counted: `8 holes`. */
const counted = (list: readonly Argument[], i: number): boolean =>
  list[i]?.kind === 'word' && list[i - 1]?.kind === 'count';

function phraseOf(step: Step, words: readonly string[], style: Style): string | undefined {
  const phrases: (Phrase | StepClause)[] = [...step.phrases, ...step.clauses];
  const found = phrases.find((phrase) => words.includes(phrase.word) || hasWord(flat(phrase).slice(0, 1), ...words));
  return found && worded(flat(found), style);
}

function clauseOf(step: Step, words: readonly string[], style: Style): string | undefined {
  const found = step.clauses.find((clause) => hasWord(flat(clause), ...words));
  return found && worded(flat(found), style);
}

const amountsOf = (list: readonly Argument[]): Amount[] =>
  list.flatMap((each) => (each.kind === 'amount' ? [each.amount] : []));

function worded(list: readonly Argument[], style: Style): string {
  return list
    .filter((each, i) => !isMarker(each, i) && !isTwice(each, list[i - 1]))
    .map((each) => (each.kind === 'count' ? show(each.count, style) : argumentWords(each, style)))
    .filter((word) => word !== '')
    .join(' ');
}

/** A clause that begins with its number has no word of its own; reading calls it by what it holds. */
const isMarker = (each: Argument, i: number): boolean => i === 0 && each.kind === 'word' && each.word === 'amount';

const isTwice = (each: Argument, before: Argument | undefined): boolean =>
  each.kind === 'word' && before?.kind === 'word' && each.word === before.word;
