import type { AstNode } from 'langium';
import { text } from '../../calc/figure/figure.ts';
import { type Amount, type Argument, type Phrase, UNKNOWN, type Unknown } from '../../calc/model/index.ts';
import type { Basis, DimensionName, Quantity } from '../../calc/quantity/index.ts';
import type { Amount as AmountNode, Arg, Part } from '../grammar/generated/ast.ts';
import { checked, readQuantity } from './amounts.ts';
import { evaluate } from './lets.ts';
import type { Lowering } from './lowering.ts';
import { nodeSpan, propertySpan, type Span } from './places.ts';
import { plausible } from './plausible.ts';
import { lowerPoint } from './shapes.ts';

/** An argument with the node that it came from, for messages. */
export interface Read {
  readonly argument: Argument;
  readonly node: AstNode;
}

/** What follows a word: its values, and the phrases behind (`at 23 degC`, `past edge`, `of 40 mm`). */
export interface Said {
  readonly values: readonly Read[];
  readonly parts: readonly { readonly word: string; readonly values: readonly Read[]; readonly node: AstNode }[];
  readonly node: AstNode;
}

/** `turned over`, `vacuum on` */
const mayStandAlone: ReadonlySet<string> = new Set(['over', 'on']);

const bases: ReadonlySet<string> = new Set(['absolute', 'gauge', 'wet', 'dry', 'RH']);

interface Speaking {
  readonly $type: string;
  readonly values: readonly Arg[];
  readonly parts: readonly Part[];
}

export function lowerSaid(low: Lowering, node: AstNode & Speaking): Said {
  return sayAll(low, node, node.values, node.parts);
}

/** Reads values and phrases; a basis (`absolute`, `by weight`) is put to the amount that it follows. */
export function sayAll(low: Lowering, node: AstNode, values: readonly Arg[], parts: readonly Part[]): Said {
  const read = readAll(low, values);
  if (parts.length === 0) return { values: read, parts: noParts, node };
  const said: { word: string; values: Read[]; node: AstNode }[] = [];
  for (const part of parts) {
    const of = part.prep === 'by' ? basisOf(part) : undefined;
    const before = of === undefined ? undefined : (said.at(-1)?.values ?? read);
    if (of !== undefined && before !== undefined && giveBasis(before, of)) {
      // `1 % to 2.5 % by weight`: the basis holds for both ends of the range
      if (said.at(-1)?.word === 'to') giveBasis(said.length > 1 ? (said.at(-2)?.values ?? read) : read, of);
      (said.at(-1)?.values ?? read).push(...readAll(low, part.values.slice(1)));
      continue;
    }
    if (part.values.length === 0 && !mayStandAlone.has(part.prep)) {
      low.problem('line/not-understood', part, text('something is missing behind `{word}`', { word: part.prep }));
    }
    said.push({ word: part.prep, values: readAll(low, part.values), node: part });
  }
  return { values: read, parts: said, node };
}

const noParts: Said['parts'] = [];

function basisOf(part: Part): Basis | undefined {
  const first = part.values[0];
  if (first?.$type !== 'WordArg') return undefined;
  const word = first.word.$refText;
  return word === 'weight' ? 'by weight' : word === 'volume' ? 'by volume' : undefined;
}

function giveBasis(read: Read[], basis: Basis): boolean {
  const index = read.length - 1;
  const last = read[index];
  if (last?.argument.kind !== 'amount') return false;
  read[index] = { ...last, argument: { kind: 'amount', amount: { ...last.argument.amount, basis } } };
  return true;
}

function readAll(low: Lowering, values: readonly Arg[]): Read[] {
  let out: Read[] | undefined;
  for (const node of values) {
    if (
      out !== undefined &&
      node.$type === 'WordArg' &&
      bases.has(node.word.$refText) &&
      giveBasis(out, node.word.$refText as Basis)
    )
      continue;
    const argument = lowerArgument(low, node);
    if (argument === undefined) continue;
    // most are one value: a list that is begun with it takes no more room than that
    if (out === undefined) out = [{ argument, node }];
    else out.push({ argument, node });
  }
  return out ?? [];
}

export function lowerArgument(low: Lowering, node: Arg | AmountNode): Argument | undefined {
  switch (node.$type) {
    case 'Amount': {
      const span = propertySpan(node, 'value');
      const value = readQuantity(low, node.value, span);
      if (value === undefined) return undefined;
      if (value === UNKNOWN) return { kind: 'unknown', value };
      const tolerance =
        node.tolerance === undefined ? undefined : readQuantity(low, node.tolerance, propertySpan(node, 'tolerance'));
      return {
        kind: 'amount',
        amount: tolerance === undefined || tolerance === UNKNOWN ? value : { ...value, tolerance },
      };
    }
    case 'RatioArg': {
      const parts = node.ratio.split(':').map(Number);
      if (parts.every(Number.isFinite)) return { kind: 'ratio', parts };
      low.problem('unit/suspicious', node, 'the number is too large to reckon with');
      return undefined;
    }
    case 'TextArg':
      return { kind: 'text', text: node.text };
    case 'DateArg':
      return { kind: 'text', text: node.date };
    case 'PointArg':
      return { kind: 'point', point: lowerPoint(low, node.point) };
    case 'CalculatedArg':
      return fromValue(evaluate(low, node.value));
    case 'WordArg': {
      const word = node.word.$refText;
      if (low.lets?.has(word) === true) return fromValue(low.lets.valueOf(word));
      return { kind: 'word', word };
    }
    default:
      return undefined;
  }
}

function fromValue(value: Quantity | Unknown | undefined): Argument | undefined {
  if (value === undefined) return undefined;
  return value === UNKNOWN ? { kind: 'unknown', value } : { kind: 'amount', amount: value };
}

/** Where an argument stands; a basis that follows is not part of it. */
export const spanOfRead = (read: Read | undefined): Span | undefined => nodeSpan(read?.node);

/** An amount that is told; none where `?` stands. */
export const known = (amount: Amount | Unknown | undefined): Amount | undefined =>
  amount === UNKNOWN ? undefined : amount;

/** The amount of an argument, its dimension checked; words and texts in its place are a problem. */
export function amountOf(low: Lowering, read: Read | undefined, expected: DimensionName): Amount | Unknown | undefined {
  if (read === undefined) return undefined;
  const { argument } = read;
  if (argument.kind === 'unknown') return UNKNOWN;
  if (argument.kind !== 'amount') return undefined;
  const span = spanOfRead(read);
  const quantity = checked(low, argument.amount, expected, span);
  if (quantity === undefined || plausible(low, quantity, expected, span) === undefined) return undefined;
  return quantity === argument.amount ? argument.amount : { ...argument.amount, ...quantity };
}

export function firstAmount(
  low: Lowering,
  reads: readonly Read[],
  expected: DimensionName,
): Amount | Unknown | undefined {
  return amountOf(
    low,
    reads.find((r) => r.argument.kind === 'amount' || r.argument.kind === 'unknown'),
    expected,
  );
}

export function wordAt(reads: readonly Read[], index = 0): string | undefined {
  const argument = reads[index]?.argument;
  return argument?.kind === 'word' ? argument.word : undefined;
}

export function wordsOf(reads: readonly Read[]): string[] {
  return reads.flatMap(({ argument }) => (argument.kind === 'word' ? [argument.word] : []));
}

export function textOf(reads: readonly Read[]): string | undefined {
  const found = reads.find(({ argument }) => argument.kind === 'text')?.argument;
  return found?.kind === 'text' ? found.text : undefined;
}

/** A bare whole number, as in `coats`, `parts`; one with a unit other than a count is a problem. */
export function countOf(low: Lowering, read: Read | undefined): number | undefined {
  const amount = amountOf(low, read, 'number');
  if (amount === undefined || amount === UNKNOWN) return undefined;
  if (Number.isInteger(amount.si) && amount.si >= 0) return amount.si;
  low.problem('unit/suspicious', spanOfRead(read), 'a count is a whole number and not below zero');
  return undefined;
}

export function partOf(said: Said, ...words: readonly string[]): Said['parts'][number] | undefined {
  return said.parts.find((part) => words.includes(part.word));
}

export function plain(reads: readonly Read[]): readonly Argument[] {
  if (reads.length === 0) return noArguments;
  const list: Argument[] = [];
  for (const { argument } of reads) list.push(argument);
  return list;
}

export function phrasesOf({ parts }: Said): readonly Phrase[] {
  if (parts.length === 0) return noPhrases;
  const list: Phrase[] = [];
  for (const { word, values } of parts) list.push({ word, arguments: plain(values) });
  return list;
}

const noArguments: readonly Argument[] = [];
const noPhrases: readonly Phrase[] = [];
