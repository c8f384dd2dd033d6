import { text } from '../../calc/figure/figure.ts';
import { either } from '../../calc/figure/listed.ts';
import { type Amount, type Fact, UNKNOWN, type Unknown } from '../../calc/model/index.ts';
import type { AtCondition } from '../../calc/model/material.ts';
import type { Basis, DimensionName } from '../../calc/quantity/index.ts';
import type { Fact as FactNode, MaterialFact } from '../grammar/generated/ast.ts';
import { nearestWords } from '../words/nearest.ts';
import { amountOf, firstAmount, lowerSaid, partOf, type Read, type Said, spanOfRead, wordAt } from './arguments.ts';
import { reportHalfLine } from './half-line.ts';
import type { Lowering } from './lowering.ts';
import { propertySpan } from './places.ts';
import { lowerRemarks } from './remarks.ts';

/** One fact line, read but not yet understood. */
export interface FactLine {
  readonly key: string;
  readonly path: string;
  readonly points: readonly Said[];
  readonly material?: string;
  readonly source?: string;
  readonly node: FactNode | MaterialFact;
}

/** Understands a line and puts what it says into the entry; false where the line says nothing that can be used. */
export type FactReader<T> = (low: Lowering, line: FactLine, into: Mutable<T>) => void;
export type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/** Reads the facts of an entry by a table of readers; a word that the table lacks is reported with the nearest ones. */
export function lowerFacts<T>(
  low: Lowering,
  nodes: readonly (FactNode | MaterialFact)[],
  readers: Readonly<Record<string, FactReader<T>>>,
  into: Mutable<T>,
  what: string,
  under = '',
): void {
  const counts = new Map<string, number>();
  for (const node of nodes) {
    const before = counts.get(node.key) ?? 0;
    counts.set(node.key, before + 1);
    const path = `${under}${before === 0 ? node.key : `${node.key}.${before}`}`;
    low.place(path, node);
    const remarks = lowerRemarks(low, path, node.remarks);
    const reader = Object.hasOwn(readers, node.key) ? readers[node.key] : undefined;
    if (reader === undefined) {
      if (reportHalfLine(low, node, what)) continue;
      const near = nearestWords(node.key, Object.keys(readers));
      low.problem(
        'line/not-understood',
        propertySpan(node, 'key') ?? node,
        near.length === 0
          ? text('`{word}` is no word of {what}', { word: node.key, what })
          : text('`{word}` is no word of {what}: is {near} meant?', { word: node.key, what, near: either(near) }),
        near.map((word) => ({ title: text('Write {what}', { what: word }), edits: editsFor(node, word) })),
      );
      continue;
    }
    const material = node.$type === 'MaterialFact' ? node.material?.$refText : undefined;
    const points = node.points.map((point) => lowerSaid(low, point));
    reader(low, { key: node.key, path, points, node, material, source: remarks.source }, into);
  }
}

function editsFor(node: FactNode | MaterialFact, word: string): { offset: number; end: number; text: string }[] {
  const span = propertySpan(node, 'key');
  return span === undefined ? [] : [{ offset: span.offset, end: span.end, text: word }];
}

export function factFrom<T>(low: Lowering, line: FactLine, value: T | Unknown | undefined): Fact<T> | undefined {
  if (value === undefined) return undefined;
  return { value, at: low.at(line.path), source: line.source };
}

/** A line with a word but without its value. */
export function incomplete(low: Lowering, line: FactLine, example: string): void {
  low.problem(
    'line/not-understood',
    line.node,
    text('`{word}` lacks its value: {example}', { word: line.key, example }),
  );
}

export type BasisKind = 'mixture' | 'vacuum' | 'none';

/** `density 80 kg/m3`: one amount of a dimension; a share of a mixture must say by what. */
export function amountReader<T>(
  field: keyof T & string,
  expected: DimensionName,
  example: string,
  basis: BasisKind = 'none',
): FactReader<T> {
  return (low, line, into) => {
    const said = line.points[0];
    const read = said === undefined ? undefined : firstRead(said);
    const amount = amountOf(low, read, expected);
    if (read === undefined) return incomplete(low, line, example);
    if (amount !== undefined) needBasis(low, amount, basis, read);
    put(into, field, factFrom(low, line, amount));
  };
}

/** The first amount of a line, also behind `<=` and the like. */
export function firstRead(said: Said): Read | undefined {
  return [...said.values, ...said.parts.flatMap((p) => p.values)].find(
    ({ argument }) => argument.kind === 'amount' || argument.kind === 'unknown',
  );
}

export function needBasis(low: Lowering, amount: Amount | Unknown, kind: BasisKind, read: Read | undefined): void {
  if (amount === UNKNOWN || kind === 'none' || amount.basis !== undefined) return;
  const end = spanOfRead(read)?.end;
  const write = (words: string) => ({
    title: text('Write {what}', { what: words }),
    edits: end === undefined ? [] : [{ offset: end, end, text: ` ${words}` }],
  });
  if (kind === 'mixture') {
    low.problem(
      'unit/no-basis',
      read?.node,
      text('{share} of a mixture says by what: by weight or by volume', { share: amount }),
      [write('by weight'), write('by volume')],
    );
  } else {
    low.problem(
      'unit/no-reference',
      read?.node,
      text('a vacuum of {pressure} says from where it is counted: absolute or gauge', { pressure: amount }),
      [write('absolute'), write('gauge')],
    );
  }
}

/** A list of values with the condition they hold at: `gel 18 min at 20 degC with 1.5 % by weight`, one fact a line or a comma. */
export function conditionReader<T>(field: keyof T & string, expected: DimensionName, example: string): FactReader<T> {
  return (low, line, into) => {
    const read: Fact<AtCondition>[] = [];
    for (const point of line.points) {
      // `ramp 1 K/min to 3 K/min` behind a cure is a datum of its own
      if (wordAt(point.values) !== undefined) continue;
      const value = firstAmount(low, point.values, expected);
      if (value === undefined) continue;
      const fact = factFrom<AtCondition>(
        low,
        line,
        value === UNKNOWN ? UNKNOWN : conditionOf(low, point, value, expected),
      );
      if (fact !== undefined) read.push(fact);
    }
    if (line.points.length === 0) incomplete(low, line, example);
    if (read.length > 0) append(into, field, read);
  };
}

function conditionOf(low: Lowering, point: Said, value: Amount, expected: DimensionName): AtCondition {
  const found: Mutable<AtCondition> = { value };
  for (const part of point.parts) {
    const read = part.values[0];
    const argument = read?.argument;
    if (part.word === 'to') {
      const high = amountOf(low, read, expected);
      if (high !== undefined && high !== UNKNOWN) found.high = high;
    } else if (argument?.kind === 'amount') {
      placeCondition(low, found, part.word, read as Read, argument.amount);
    }
  }
  const per = wordAt(point.values, 1);
  return per === undefined ? found : { ...found, per };
}

function placeCondition(low: Lowering, found: Mutable<AtCondition>, word: string, read: Read, amount: Amount): void {
  const length = amount.dimension.length;
  const known = (value: Amount | Unknown | undefined): Amount | undefined => (value === UNKNOWN ? undefined : value);
  if (word === 'at' && length === 1) found.thickness = known(amountOf(low, read, 'length'));
  else if (word === 'at' && amount.unit === '%') found.fibreFraction = known(amountOf(low, read, 'ratio'));
  else if (word === 'at') found.temperature = known(amountOf(low, read, 'temperature'));
  else if (word === 'for') found.mass = known(amountOf(low, read, 'mass'));
  else if (word === 'with') {
    found.catalyst = known(amountOf(low, read, 'ratio'));
    if (found.catalyst !== undefined) needBasis(low, found.catalyst, 'mixture', read);
  } else if (word === 'after') found.after = known(amountOf(low, read, 'time'));
}

export function wordReader<T>(field: keyof T & string, example: string, list = false): FactReader<T> {
  return (low, line, into) => {
    const words = line.points
      .flatMap((p) => p.values)
      .flatMap(({ argument }) => (argument.kind === 'word' ? [argument.word] : []));
    const word = words[0] ?? line.material;
    if (word === undefined) return incomplete(low, line, example);
    if (list)
      append(
        into,
        field,
        words.map((w) => factFrom(low, line, w)),
      );
    else put(into, field, factFrom(low, line, word));
  };
}

export function flagReader<T>(field: keyof T & string): FactReader<T> {
  return (low, line, into) => put(into, field, factFrom(low, line, true));
}

/** `1270 mm by 50 m` */
export function byLengths(low: Lowering, said: Said | undefined): { first?: Amount; second?: Amount } {
  if (said === undefined) return {};
  const lengths = [
    firstAmount(low, said.values, 'length'),
    firstAmount(low, partOf(said, 'by')?.values ?? [], 'length'),
  ];
  const [first, second] = lengths.map((length) => (length === UNKNOWN ? undefined : length));
  return { first, second };
}

export function put<T>(into: Mutable<T>, field: keyof T & string, value: unknown): void {
  if (value !== undefined) (into as Record<string, unknown>)[field] = value;
}

export function append<T>(into: Mutable<T>, field: keyof T & string, values: readonly unknown[]): void {
  const target = into as Record<string, unknown[] | undefined>;
  target[field] = [...(target[field] ?? []), ...values.filter((value) => value !== undefined)];
}

export const basisOf = (amount: Amount | Unknown | undefined): Basis | undefined =>
  amount === undefined || amount === UNKNOWN ? undefined : amount.basis;
