import { type AstNode, AstUtils } from 'langium';
import { text } from '../../calc/figure/figure.ts';
import { either } from '../../calc/figure/listed.ts';
import { onceFor } from '../../calc/kept.ts';
import type { Amount } from '../../calc/model/index.ts';
import { type Dimension, type DimensionName, namedDimension, sameDimension } from '../../calc/quantity/index.ts';
import { type Clause, isProcess, isRecipe } from '../grammar/generated/ast.ts';
import {
  ANY_STEP,
  type Argument,
  senses,
  type Verb,
  verb as verbNamed,
  verbSpelled,
  verbs,
  type Word,
  wordAt,
  wordsAt,
} from '../words/index.ts';
import { nearestWords } from '../words/nearest.ts';
import { checked } from './amounts.ts';
import { type Read, type Said, spanOfRead } from './arguments.ts';
import { needBasis } from './facts.ts';
import type { Lowering } from './lowering.ts';
import { nodeSpan, propertySpan, type Span, withComma } from './places.ts';

/*
 * Steps are data: what may stand in one is said by the table of verbs and clause words. A word that the table lacks is let
 * through where it can be a name; a number is held against the dimensions that its word takes.
 */

const noDimension: ReadonlySet<string> = new Set([
  'name',
  'text',
  'point',
  'date',
  'shape',
  'word',
  'test',
  'expression',
]);

function dimensionOf({ dimension }: Argument): DimensionName | undefined {
  if (dimension === 'count') return 'number';
  return noDimension.has(dimension) ? undefined : (dimension as DimensionName);
}

interface Numbered {
  readonly read: Read;
  readonly amount: Amount;
  /** the connective, or the word, that leads to it */
  readonly after?: string;
}

/** The numbers of a clause, each with what leads to it: `15 min every 3 plies`, `4 of 40 mm`. */
function numbersOf(said: Said): Numbered[] {
  const found: Numbered[] = [];
  const walk = (values: readonly Read[], lead?: string): void => {
    let after = lead;
    for (const read of values) {
      if (read.argument.kind === 'word') after = read.argument.word;
      else if (read.argument.kind === 'amount')
        found.push({ read, amount: read.argument.amount, ...(after === undefined ? {} : { after }) });
    }
  };
  walk(said.values);
  for (const part of said.parts) walk(part.values, part.word);
  return found;
}

/** Parts of a row of the table, which are asked for at every step of every recipe. */
const measuredOf = onceFor((takes: readonly Argument[]) => takes.filter((take) => dimensionOf(take) !== undefined));
const takenBehind = onceFor((takes: readonly Argument[]) => takes.filter((take) => take.before !== true));
const takenBefore = onceFor((takes: readonly Argument[]) => takes.filter((take) => take.before === true));

/** Holds the numbers of a line or a clause against what its word takes. */
function checkNumbers(low: Lowering, said: Said, takes: readonly Argument[]): void {
  const measured = measuredOf(takes);
  if (measured.length === 0) return;
  for (const { read, amount, after } of numbersOf(said)) {
    const led = measured.filter((take) => take.after === after);
    const fits = (list: readonly Argument[]) => list.find((take) => isOf(amount.dimension, dimensionOf(take)));
    const take = led.length > 0 ? fits(led) : fits(measured);
    if (take === undefined) {
      const expected = dimensionOf((led[0] ?? measured[0]) as Argument);
      if (expected !== undefined) checked(low, amount, expected, spanOfRead(read));
    } else if (take.basisOptional !== true && take.basis?.includes('by weight') === true)
      needBasis(low, amount, 'mixture', read);
    else if (take.basisOptional !== true && take.basis?.includes('absolute') === true)
      needBasis(low, amount, 'vacuum', read);
  }
}

function isOf(dimension: Dimension, expected: DimensionName | undefined): boolean {
  return expected !== undefined && sameDimension(dimension, namedDimension(expected));
}

/** What stands between the verb and the first comma. */
export function checkHead(low: Lowering, said: Said, name: string): void {
  const verb = verbNamed(name);
  if (verb?.takes !== undefined) checkNumbers(low, said, verb.takes);
  const states = verb?.takes?.find((take) => take.after === 'until')?.words;
  if (states !== undefined) checkStates(low, said, states);
  const when = verb?.takes?.find((take) => take.after === 'when');
  if (when?.words !== undefined) checkCondition(low, said, when.words);
}

/** `when f2 is dancing` is nothing that can be seen at a line: unread it would be clamped at any time. */
function checkCondition(low: Lowering, said: Said, states: readonly string[]): void {
  const part = said.parts.find(({ word }) => word === 'when');
  if (
    part === undefined ||
    part.values.some(
      ({ argument }) => argument.kind === 'point' || (argument.kind === 'word' && states.includes(argument.word)),
    )
  )
    return;
  low.problem(
    'line/not-understood',
    nodeSpan(part.node),
    text(
      'this is nothing that a line is shut or opened at: when full, when f2 is running, or when front at (300 mm, 0 mm)',
      {},
    ),
  );
}

/** `until full` is no state that the bench can wait for: unread it would say nothing, and the vacuum would seem held. */
function checkStates(low: Lowering, said: Said, states: readonly string[]): void {
  for (const { word, values } of said.parts) if (word === 'until') checkState(low, values, states);
}

function checkState(low: Lowering, values: readonly Read[], states: readonly string[]): void {
  const [first] = values;
  if (first === undefined || first.argument.kind !== 'word' || states.includes(first.argument.word)) return;
  const span = spanOfRead(first);
  low.problem(
    'line/not-understood',
    span,
    text('`{word}` is no state to wait for: until {states}', { word: first.argument.word, states: either(states) }),
    span === undefined
      ? []
      : states.map((state) => ({
          title: text('Write {what}', { what: state }),
          edits: [{ offset: span.offset, end: span.end, text: state }],
        })),
  );
}

/**
 * A verb that the table lacks stays a step without a meaning: it is said, and `do "..."` is offered. A spelling of other shops
 * (`demold`) is said too, and read as what it means.
 */
export function knownVerb(low: Lowering, name: string, where: Span | undefined): string {
  if (verbNamed(name) !== undefined) return name;
  const meant = verbSpelled(name)?.word;
  // `seal` alone: all that it goes on with, however much longer they are
  const begun = verbs.flatMap(({ word }) => (word.startsWith(`${name} `) ? [word] : []));
  const near =
    meant !== undefined
      ? [meant]
      : begun.length > 0
        ? begun
        : nearestWords(
            name,
            verbs.map(({ word }) => word),
          );
  low.problem(
    'line/not-understood',
    where,
    near.length === 0
      ? text('`{word}` is no step of the notation; do "..." puts it on the sheet in your own words', { word: name })
      : text('`{word}` is no step of the notation: is {near} meant? do "..." puts any step on the sheet', {
          word: name,
          near: either(near),
        }),
    where === undefined
      ? []
      : near.map((word) => ({
          title: text('Write {what}', { what: word }),
          edits: [{ offset: where.offset, end: where.end, text: word }],
        })),
  );
  return meant ?? name;
}

/** A clause of a step: its numbers, and whether its word means anything. */
export function checkStepClause(low: Lowering, clause: Clause, said: Said, verbName: string): void {
  const verb = verbNamed(verbName);
  if (clause.$type === 'Phrase') {
    const row = wordAt(clause.word, 'clause of step');
    if (isOutOfPlace(row, verb)) reportOutOfPlace(low, clause, clause.word, verb, propertySpan(clause, 'word'));
    if (row?.takes !== undefined) checkNumbers(low, said, takenBehind(row.takes));
    else if (row === undefined && senses(clause.word).length === 0)
      reportUnknownWord(low, clause.word, propertySpan(clause, 'word'), verb, said);
  } else if (clause.$type === 'AmountClause') {
    const first = said.values.find(({ argument }) => argument.kind === 'word') ?? said.parts[0];
    const word = first === undefined ? undefined : wordOf(first);
    const row = clauseRow(word ?? countedIn(said));
    if (row !== undefined && isOutOfPlace(row, verb))
      reportOutOfPlace(low, clause, row.word, verb, first === undefined ? nodeSpan(clause) : spanOfWord(first));
    const before = row?.takes === undefined ? [] : takenBefore(row.takes);
    if (before.length > 0) checkNumbers(low, { ...said, values: said.values.slice(0, 1), parts: [] }, before);
    else if (word !== undefined && !isRead(word, verb))
      reportClause(
        low,
        word,
        first === undefined ? undefined : spanOfWord(first),
        nearestWords(word, commonWords(verb)),
      );
  } else if (clause.$type === 'PartClause') {
    const [part] = said.parts;
    const row = wordAt(part?.word ?? '', 'clause of step');
    if (part !== undefined && isOutOfPlace(row, verb))
      reportOutOfPlace(low, clause, part.word, verb, nodeSpan(part.node));
    if (row?.takes !== undefined) checkNumbers(low, said, takenBehind(row.takes));
    const states = wordAt('until', 'clause of step')?.takes?.[0]?.words;
    if (states !== undefined) checkStates(low, said, states);
  }
}

const wordOf = (first: Said['parts'][number] | Read): string | undefined =>
  'word' in first ? first.word : first.argument.kind === 'word' ? first.argument.word : undefined;

/** What a bare number counts: `80 grit`, `2 coats`. */
function countedIn({ values }: Said): string | undefined {
  const argument = values[0]?.argument;
  return argument?.kind === 'amount' && isOf(argument.amount.dimension, 'number') ? argument.amount.unit : undefined;
}

const clauseRow = (word: string | undefined): Word | undefined =>
  word === undefined ? undefined : wordAt(word, 'clause of step');

/** A clause that says nothing in this step: read over, it would seem to be done. */
const isOutOfPlace = (row: Word | undefined, verb: Verb | undefined): boolean =>
  row?.at.includes('clause of step') === true &&
  verb !== undefined &&
  !OWN_WORDS.has(verb.word) &&
  !takenBy(verb).has(row.word);

/** The clause words of a verb with the words behind them, and those that its head takes: `dry body, 2 h at 80 degC`. */
const takenBy = onceFor(({ clauses, mistaken = [], takes = [] }: Verb): ReadonlySet<string> => {
  const own = [...ANY_STEP, ...clauses, ...mistaken];
  const behind = own.flatMap((clause) => wordAt(clause, 'clause of step')?.takes ?? []);
  const words = [...takes, ...behind].flatMap(({ after, words: known = [] }) =>
    after === undefined ? known : [after, ...known],
  );
  return new Set([...own, ...words]);
});

/** Steps in the words of the shop. */
const OWN_WORDS: ReadonlySet<string> = new Set(['do', 'check']);

function reportOutOfPlace(
  low: Lowering,
  clause: Clause,
  word: string,
  verb: Verb | undefined,
  where: Span | undefined,
): void {
  const whole = nodeSpan(clause);
  const source = clause.$cstNode?.root.fullText;
  low.problem(
    'line/not-understood',
    where,
    text('`{word}` is not used on a line of `{verb}`', { word, verb: verb?.word ?? '' }),
    whole === undefined || source === undefined
      ? []
      : [{ title: text('Take the clause out', {}), edits: [{ ...withComma(whole, source), text: '' }] }],
  );
}

/** A word that some reader of steps knows: of a clause, of this verb, or a connective with a sense of its own. */
const isRead = (word: string, verb: Verb | undefined): boolean =>
  senses(word).length > 0 ||
  (verb?.takes ?? []).some((take) => take.after === word || take.words?.includes(word) === true);

const commonWords = (verb: Verb | undefined): string[] => [
  ...(verb?.clauses ?? []),
  ...wordsAt('clause of step').map((row) => row.word),
];

const spanOfWord = (first: Said['parts'][number] | Read): Span | undefined =>
  'word' in first ? nodeSpan(first.node) : spanOfRead(first);

/** A lone word may be the name of a layer, a zone or a line of its recipe: only what is none of these is reported. */
function reportUnknownWord(
  low: Lowering,
  word: string,
  where: Span | undefined,
  verb: Verb | undefined,
  said: Said,
): void {
  const near = nearestWords(word, commonWords(verb));
  const alone = said.values.length === 0 && said.parts.length === 0;
  const named = alone ? isNamed(said.node, word) : false;
  if (named === true || (named === undefined && near.length === 0)) return;
  reportClause(low, word, where, near);
}

/**
 * Whether something of the recipe that a clause stands in is called so: a layer, a zone, a line, an end, a material. It cannot be
 * told (undefined) where a recipe or a process has the names of another one.
 */
function isNamed(node: AstNode, word: string): boolean | undefined {
  const process = AstUtils.getContainerOfType(node, isProcess);
  const recipe = AstUtils.getContainerOfType(node, isRecipe);
  if (recipe === undefined) return undefined;
  for (const each of AstUtils.streamAst(recipe)) {
    if ('name' in each && each.name === word) return true;
    const inProcess = AstUtils.getContainerOfType(each, isProcess) !== undefined;
    for (const value of inProcess ? [] : Object.values(each)) if (isReferenceTo(value, word)) return true;
  }
  return recipe.base === undefined && process?.base === undefined ? false : undefined;
}

const isReferenceTo = (value: unknown, word: string): boolean =>
  typeof value === 'object' && value !== null && '$refText' in value && value.$refText === word;

function reportClause(low: Lowering, word: string, where: Span | undefined, near: readonly string[]): void {
  low.problem(
    'line/not-understood',
    where,
    near.length === 0
      ? text('`{word}` is no clause of a step', { word })
      : text('`{word}` is no clause of a step: is {near} meant?', { word, near: either(near) }),
    where === undefined
      ? []
      : near.map((each) => ({
          title: text('Write {what}', { what: each }),
          edits: [{ offset: where.offset, end: where.end, text: each }],
        })),
  );
}
