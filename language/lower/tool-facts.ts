import { text } from '../../calc/figure/figure.ts';
import type { Amount, Tool } from '../../calc/model/index.ts';
import { amountOf, countOf, firstAmount, known, partOf, spanOfRead, textOf, wordsOf } from './arguments.ts';
import { amountReader, byLengths, type FactReader, factFrom, firstRead, flagReader, incomplete, put } from './facts.ts';
import { aboveZero } from './plausible.ts';

type Reader = FactReader<Tool>;

const flat: Reader = (low, line, into) => {
  const { first, second } = byLengths(low, line.points[0]);
  if (first === undefined || second === undefined) return incomplete(low, line, 'flat 1600 mm by 700 mm');
  if (
    aboveZero(low, first, spanOfRead(line.points[0]?.values[0])) &&
    aboveZero(low, second, spanOfRead(line.points[0]?.parts[0]?.values[0]))
  ) {
    put(into, 'flat', factFrom(low, line, { length: first, width: second }));
  }
};

/** `curved along 2.4 m, across 0.6 m crowned`: radii of the face, hollow where nothing is said */
const curved: Reader = (low, line, into) => {
  const found: { along?: Amount; across?: Amount } = {};
  const crowned: ('along' | 'across')[] = [];
  for (const point of line.points) {
    const [way, ...more] = wordsOf(point.values);
    const radius = known(firstAmount(low, point.values, 'length'));
    if ((way === 'along' || way === 'across') && more.every((word) => word === 'hollow' || word === 'crowned')) {
      const typed = point.values.find(({ argument }) => argument.kind === 'amount');
      if (radius === undefined || !aboveZero(low, radius, spanOfRead(typed))) continue;
      found[way] = radius;
      if (more.includes('crowned')) crowned.push(way);
    } else
      low.problem(
        'line/not-understood',
        line.node,
        'a tool is curved along, across or both, hollow or crowned: curved along 2.4 m, across 0.6 m crowned',
      );
  }
  if (line.points.length === 0) return incomplete(low, line, 'curved along 2.4 m');
  put(into, 'curved', factFrom(low, line, { ...found, ...(crowned.length === 0 ? {} : { crowned }) }));
};

const file: Reader = (low, line, into) => {
  const name = line.points[0] && textOf(line.points[0].values);
  if (name === undefined) incomplete(low, line, 'file "moulds/deck.stl"');
  else put(into, 'file', factFrom(low, line, name));
};

const count: Reader = (low, line, into) => {
  const number = countOf(low, line.points[0] && firstRead(line.points[0]));
  if (number === undefined) return line.points.length === 0 ? incomplete(low, line, 'count 2') : undefined;
  put(into, 'count', factFrom(low, line, number));
};

/** `cost 900 EUR over 150 parts` */
const cost: Reader = (low, line, into) => {
  const point = line.points[0];
  const amount = point && known(firstAmount(low, point.values, 'money'));
  if (point === undefined || amount === undefined)
    return point === undefined ? incomplete(low, line, 'cost 900 EUR over 150 parts') : undefined;
  const parts = partOf(point, 'over')?.values[0];
  const number = countOf(low, parts);
  if (number === 0)
    low.problem(
      'unit/suspicious',
      parts?.node,
      text('a mould that makes no part costs nothing a part: {example}', { example: 'cost 900 EUR over 150 parts' }),
    );
  put(
    into,
    'cost',
    factFrom(low, line, { amount, ...(number === undefined || number === 0 ? {} : { parts: number }) }),
  );
};

const source: Reader = (_low, line, into) => put(into, 'source', line.points[0] && textOf(line.points[0].values));

/** Temperature that the tool stands, also behind a comma. */
const limit: Reader = (low, line, into) =>
  put(into, 'limit', factFrom(low, line, amountOf(low, line.points[0] && firstRead(line.points[0]), 'temperature')));

/** Every word of a `tool` block. */
export const toolFacts: Readonly<Record<string, Reader>> = {
  flat,
  curved,
  file,
  count,
  cost,
  source,
  limit,
  flange: amountReader('flange', 'length', 'flange 110 mm'),
  draft: amountReader('draft', 'angle', 'draft 3 deg'),
  depth: amountReader('depth', 'length', 'depth 120 mm'),
  expands: amountReader('expands', 'thermal expansion', 'expands 23e-6 /K'),
  handed: flagReader('handed'),
};
