import { text } from '../../calc/figure/figure.ts';
import { either } from '../../calc/figure/listed.ts';
import type { Amount, BuildRecord, Reading, RecordedLot } from '../../calc/model/index.ts';
import { wrongDate } from '../../calc/record/date.ts';
import type { Fact, Lot, BuildRecord as RecordNode } from '../grammar/generated/ast.ts';
import { nearestWords } from '../words/nearest.ts';
import { lowerSaid, type Read, textOf, wordsOf } from './arguments.ts';
import { type Mutable, needBasis } from './facts.ts';
import type { Lowering } from './lowering.ts';
import { propertySpan, type Span } from './places.ts';
import { lowerRemarks, reportOpenText } from './remarks.ts';

/** Words that begin a line of a record. */
export const recordWords = [
  'revision',
  'vacuum',
  'leak',
  'resin',
  'fill',
  'mass',
  'ambient',
  'barcol',
  'mixed',
  'out',
  'batch',
  'thickness',
  'by',
  'differs',
  'photo',
  'step',
  'log',
  'lot',
  'note',
] as const;

/** Stands where nothing is written down yet: words that say `"?"` say nothing. */
const BLANK = '?';

export function lowerRecord(low: Lowering, node: RecordNode): BuildRecord {
  low.placeHead('', node);
  const date = node.date ?? node.brokenDate;
  const record: Mutable<BuildRecord> = {
    entry: low.entry,
    lots: [],
    readings: [],
    ...lowerRemarks(
      low,
      '',
      node.remarks,
      node.items.filter((item) => item.$type === 'Note'),
      true,
    ),
  };
  if (node.recipe === undefined)
    low.problem(
      'line/not-understood',
      low.places.get(''),
      'a record names its recipe and the day: record sled_deck 2026-05-14 "no. 31" {',
    );
  else {
    record.recipe = node.recipe.$refText;
    low.place('recipe', propertySpan(node, 'recipe'));
  }
  if (node.size !== undefined) {
    record.size = node.size.$refText;
    low.place('size', propertySpan(node, 'size'));
  }
  if (node.title !== undefined) record.title = node.title;
  if (date === undefined) {
    if (node.recipe !== undefined)
      low.problem('line/not-understood', low.places.get(''), 'a record says the day: record sled_deck 2026-05-14 {');
  } else if (goodDate(low, date, propertySpan(node, node.date === undefined ? 'brokenDate' : 'date')))
    record.date = date;
  record.lots = node.items.filter((item) => item.$type === 'Lot').flatMap((lot, i) => lowerLot(low, lot, `lots.${i}`));
  record.readings = node.items
    .filter((item) => item.$type === 'Fact')
    .flatMap((fact, i) => lowerReading(low, fact, `readings.${i}`));
  const revision = record.readings.find((r) => r.key === 'revision')?.amounts[0];
  if (revision !== undefined) record.revision = revision.si;
  return record;
}

/** ISO 8601, and a day that the calendar has. */
export function goodDate(low: Lowering, date: string, where: Span | undefined): boolean {
  const wrong = wrongDate(date);
  if (wrong === undefined) return true;
  low.problem('record/impossible', where, wrong);
  return false;
}

function lowerLot(low: Lowering, lot: Lot, path: string): RecordedLot[] {
  low.place(path, lot);
  lowerRemarks(low, path, lot.remarks);
  if (lot.code !== undefined) reportOpenText(low, lot);
  if (lot.material === undefined || lot.code === undefined) {
    low.problem(
      'line/not-understood',
      lot,
      'a lot names the material and its number: lot epoxy_slow "A-1182" expires 2026-11-30',
    );
    return [];
  }
  low.place(`${path}.material`, propertySpan(lot, 'material'));
  if (lot.code === BLANK) return [];
  const expires = lot.date ?? lot.brokenDate;
  const good =
    expires !== undefined && goodDate(low, expires, propertySpan(lot, lot.date === undefined ? 'brokenDate' : 'date'));
  return [{ material: lot.material.$refText, code: lot.code, path, ...(good ? { expires } : {}) }];
}

function lowerReading(low: Lowering, fact: Fact, path: string): Reading[] {
  low.place(path, fact);
  lowerRemarks(low, path, fact.remarks);
  if (!(recordWords as readonly string[]).includes(fact.key)) {
    const near = nearestWords(fact.key, recordWords);
    low.problem(
      'line/not-understood',
      fact,
      near.length === 0
        ? text('`{word}` is no word of a record; `differs "..."` says what was done otherwise', { word: fact.key })
        : text('`{word}` is no word of a record: is {near} meant?', { word: fact.key, near: either(near) }),
    );
    return [];
  }
  const points = fact.points.map((point) => lowerSaid(low, point));
  const reads: Read[] = points.flatMap((p) => [...p.values, ...p.parts.flatMap((part) => part.values)]);
  const amounts: Amount[] = reads.flatMap(({ argument }) => (argument.kind === 'amount' ? [argument.amount] : []));
  if (fact.key === 'vacuum' && amounts[0] !== undefined)
    needBasis(
      low,
      amounts[0],
      'vacuum',
      reads.find(({ argument }) => argument.kind === 'amount'),
    );
  if (points.length === 0)
    low.problem('line/not-understood', fact, text('`{word}` lacks its value', { word: fact.key }));
  for (const point of points) if (textOf(point.values) !== undefined) reportOpenText(low, point.node);
  const texts = reads.flatMap(({ argument }) => (argument.kind === 'text' ? [argument.text] : []));
  if (texts.length > 0 && texts.every((each) => each === BLANK)) return [];
  return [
    {
      key: fact.key,
      amounts,
      words: wordsOf(reads),
      texts,
      path,
    },
  ];
}
