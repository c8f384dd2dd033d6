import { text } from '../../calc/figure/figure.ts';
import { either } from '../../calc/figure/listed.ts';
import type { Edge, Part, PlacedShape, PlacePoint, Zone } from '../../calc/model/index.ts';
import type { Clause, OutlineLine, PartBlock, Zone as ZoneNode } from '../grammar/generated/ast.ts';
import { nearestWords } from '../words/nearest.ts';
import { amountOf, firstAmount, known, lowerSaid, partOf, type Said, wordAt } from './arguments.ts';
import { clauseWord } from './clauses.ts';
import { type FactReader, incomplete, lowerFacts, type Mutable, put } from './facts.ts';
import type { Lowering } from './lowering.ts';
import { propertySpan } from './places.ts';
import { lowerRemarks } from './remarks.ts';
import { lowerShape } from './shapes.ts';
import { slopeOf } from './slope.ts';

type PartFacts = Pick<Part, 'edge' | 'ends' | 'trimAllowance' | 'sides' | 'cosmetic' | 'anglesFromToolFace'>;
type Reader = FactReader<PartFacts>;

/** `edge square`, `edge round 8 mm`, `edge chamfer 45 deg` */
const edge: Reader = (low, line, into) => {
  const point = line.points[0];
  const kind = point && wordAt(point.values);
  const read = point?.values[1];
  let found: Edge | undefined;
  if (kind === 'square') found = { kind };
  else if (kind === 'round') {
    const radius = known(amountOf(low, read, 'length'));
    if (read === undefined) incomplete(low, line, 'edge round 8 mm');
    if (radius !== undefined) found = { kind, radius };
  } else if (kind === 'chamfer') {
    const slope = slopeOf(point?.values.slice(1) ?? []);
    const isAngle =
      slope !== undefined || (read?.argument.kind === 'amount' && read.argument.amount.dimension.angle === 1);
    const amount = slope ?? known(amountOf(low, read, isAngle ? 'angle' : 'length'));
    found = { kind, ...(amount === undefined ? {} : isAngle ? { angle: amount } : { depth: amount }) };
  } else low.problem('line/not-understood', line.node, 'the edge is square, round or chamfer: edge round 8 mm');
  put(into, 'edge', found);
};

/** `ends heel to nose`: x runs from the heel to the nose */
const ends: Reader = (low, line, into) => {
  const point = line.points[0];
  const from = point && wordAt(point.values);
  const to = point && wordAt(partOf(point, 'to')?.values ?? []);
  if (from === undefined || to === undefined) incomplete(low, line, 'ends heel to nose');
  else put(into, 'ends', { from, to });
};

/** `trim allowance 25 mm` */
const trim: Reader = (low, line, into) => {
  const point = line.points[0];
  const amount = point && firstAmount(low, point.values, 'length');
  if (point === undefined || point.values.length < 2 || wordAt(point.values) !== 'allowance')
    incomplete(low, line, 'trim allowance 25 mm');
  else put(into, 'trimAllowance', amount);
};

/** `sides 110 mm at 5 deg, radius 12 mm` */
const sides: Reader = (low, line, into) => {
  const point = line.points[0];
  const height = point && known(firstAmount(low, point.values, 'length'));
  if (point === undefined || height === undefined)
    return point === undefined ? incomplete(low, line, 'sides 110 mm at 5 deg, radius 12 mm') : undefined;
  const angle = known(firstAmount(low, partOf(point, 'at')?.values ?? [], 'angle'));
  const rounded = line.points.find((p) => wordAt(p.values) === 'radius');
  const radius = rounded && known(firstAmount(low, rounded.values, 'length'));
  put(into, 'sides', {
    height,
    ...(angle === undefined ? {} : { angle }),
    ...(radius === undefined ? {} : { radius }),
  });
};

/** `cosmetic tool face` */
const cosmetic: Reader = (low, line, into) => {
  const word = line.points[0] && wordAt(line.points[0].values);
  if (word === 'tool' || word === 'bag') put(into, 'cosmetic', `${word} face` as const);
  else incomplete(low, line, 'cosmetic tool face');
};

/** `angles from tool face` */
const angles: Reader = (low, line, into) => {
  const from = line.points[0] && partOf(line.points[0], 'from');
  const word = from && wordAt(from.values);
  if (word === 'tool') put(into, 'anglesFromToolFace', true);
  else if (word !== 'bag') incomplete(low, line, 'angles from tool face');
};

const partFacts: Readonly<Record<string, Reader>> = { edge, ends, trim, sides, cosmetic, angles };

/** `replaced`: the outline that a size gives in its place. */
export function lowerPart(low: Lowering, block: PartBlock, path: string, replaced: OutlineLine | undefined): Part {
  low.placeHead(path, block);
  const facts: Mutable<PartFacts> = {};
  lowerFacts(
    low,
    block.items.filter((item) => item.$type === 'Fact'),
    partFacts,
    facts,
    'a part',
    `${path}.`,
  );
  const remarks = lowerRemarks(
    low,
    path,
    block.remarks,
    block.items.filter((item) => item.$type === 'Note'),
    true,
  );
  const outlines = block.items.filter((item) => item.$type === 'OutlineLine');
  const line = replaced ?? outlines[0];
  if (outlines[1] !== undefined)
    low.problem('name/duplicate', outlines[1], 'a part has one outline; this is the second');
  const outline = lowerOutline(low, `${path}.outline`, line);
  const cutouts = block.items
    .filter((item) => item.$type === 'CutoutLine')
    .map((item, i) => {
      const at = low.place(`${path}.cutouts.${i}`, item);
      if (item.shape === undefined)
        low.problem(
          'line/not-understood',
          item,
          'a cutout needs its shape: cutout circle 60 mm, centred at (0 mm, 0 mm)',
        );
      lowerRemarks(low, at, item.clauses);
      reportPlacing(low, item.clauses, 'cutout');
      return placedShape(low, at, lowerShape(low, item.shape), item.clauses);
    });
  const zones = block.items
    .filter((item) => item.$type === 'Zone')
    .flatMap((zone, i) => lowerZone(low, `${path}.zones.${i}`, zone));
  return { path, ...(outline === undefined ? {} : { outline }), cutouts, zones, ...facts, ...remarks };
}

function lowerOutline(low: Lowering, path: string, line: OutlineLine | undefined) {
  if (line === undefined) return undefined;
  low.place(path, line);
  lowerRemarks(low, path, line.clauses);
  if (line.shape === undefined)
    low.problem(
      'line/not-understood',
      line,
      'the outline needs its shape: outline rounded 800 mm by 400 mm corner 60 mm',
    );
  return lowerShape(low, line.shape);
}

function lowerZone(low: Lowering, path: string, zone: ZoneNode): Zone[] {
  low.place(path, zone);
  const remarks = lowerRemarks(low, path, zone.clauses);
  reportPlacing(low, zone.clauses, 'zone');
  if (zone.name === undefined || zone.shape === undefined) {
    low.problem(
      'line/not-understood',
      zone,
      'a zone has a name and a shape: zone mount rounded 260 mm by 180 mm corner 40 mm, centred at (0 mm, 0 mm)',
    );
    if (zone.name === undefined) return [];
  }
  const clamped = zone.clauses.find((clause) => clauseWord(clause) === 'clamped');
  if (clamped !== undefined) low.placeClause(`${path}.clamped`, clamped);
  return [
    {
      name: zone.name,
      ...placedShape(low, path, lowerShape(low, zone.shape), zone.clauses),
      ...(clamped === undefined ? {} : { clamped: true }),
      ...remarks,
    },
  ];
}

/** Words that may begin a clause of a zone or a cutout. */
const PLACING: Readonly<Record<'zone' | 'cutout', readonly string[]>> = {
  zone: ['centred', 'clamped'],
  cutout: ['centred'],
};

function reportPlacing(low: Lowering, clauses: readonly Clause[], kind: 'zone' | 'cutout'): void {
  for (const clause of clauses) {
    if (clause.$type !== 'Phrase' || PLACING[kind].includes(clause.word)) continue;
    const span = propertySpan(clause, 'word');
    const near = nearestWords(clause.word, PLACING[kind]);
    low.problem(
      'line/not-understood',
      span,
      near.length === 0
        ? text('`{word}` is no clause of {kind}', { word: clause.word, kind })
        : text('`{word}` is no clause of {kind}: is {near} meant?', {
            word: clause.word,
            kind,
            near: either(near),
          }),
      span === undefined
        ? []
        : near.map((word) => ({
            title: text('Write {what}', { what: word }),
            edits: [{ offset: span.offset, end: span.end, text: word }],
          })),
    );
  }
}

function placedShape(
  low: Lowering,
  path: string,
  shape: PlacedShape['shape'],
  clauses: readonly Clause[],
): PlacedShape {
  const centre = centreOf(low, clauses);
  return { path, ...(shape === undefined ? {} : { shape }), ...(centre === undefined ? {} : { centre }) };
}

/** `centred at (210 mm from heel, 0 mm)` */
export function centreOf(low: Lowering, clauses: readonly Clause[]): PlacePoint | undefined {
  const clause = clauses.find((c) => c.$type === 'Phrase' && c.word === 'centred');
  if (clause?.$type !== 'Phrase') return undefined;
  return pointIn(low, lowerSaid(low, clause), clause);
}

export function pointIn(low: Lowering, said: Said, clause: Clause): PlacePoint | undefined {
  const argument = (partOf(said, 'at')?.values ?? said.values)[0]?.argument;
  if (argument?.kind === 'point') return argument.point;
  low.problem(
    'line/not-understood',
    clause,
    text('`{word}` is followed by a place: centred at (210 mm from heel, 0 mm)', { word: clauseWord(clause) }),
  );
  return undefined;
}
