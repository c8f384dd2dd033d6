import { TESTED } from '../../calc/expect/evaluate.ts';
import { text } from '../../calc/figure/figure.ts';
import { either } from '../../calc/figure/listed.ts';
import { type Expectation, type Load, type Test, UNKNOWN } from '../../calc/model/index.ts';
import type { Expect, Load as LoadNode, Test as TestNode } from '../grammar/generated/ast.ts';
import { wordAt } from '../words/index.ts';
import { nearestWords } from '../words/nearest.ts';
import { readQuantity } from './amounts.ts';
import { amountOf, firstAmount, known, lowerArgument, type Read, type Said } from './arguments.ts';
import { type FactReader, firstRead, incomplete, lowerFacts, type Mutable } from './facts.ts';
import { evaluate } from './lets.ts';
import type { Lowering } from './lowering.ts';
import { propertySpan } from './places.ts';
import { lowerRemarks } from './remarks.ts';

type Into = Load;
type Reader = FactReader<Into>;

const dimensions = { force: 'force', weight: 'mass', pressure: 'pressure' } as const;

/** `weight 95 kg over 120 mm at middle`, `force 900 N at (0 mm, 0 mm)`, `pressure 6 kPa` */
function acting(kind: keyof typeof dimensions): Reader {
  return (low, line, into) => {
    const point = line.points[0];
    const amount = point && known(firstAmount(low, point.values, dimensions[kind]));
    if (point === undefined || point.values.length === 0)
      return incomplete(low, line, 'weight 95 kg over 120 mm at middle');
    if (amount === undefined) return;
    const over = point.parts
      .filter((p) => p.word === 'over' || p.word === 'by')
      .flatMap((p) => p.values)
      .map((read: Read) => known(amountOf(low, read, 'length')))
      .filter((length) => length !== undefined);
    const place = placeOf(point);
    into.loads = [...into.loads, { kind, amount, over, path: line.path, ...(place === undefined ? {} : { place }) }];
  };
}

function placeOf(point: Said): Load['loads'][number]['place'] {
  const read = point.parts.find((p) => p.word === 'at')?.values[0];
  if (read?.argument.kind === 'point') return read.argument.point;
  return read?.argument.kind === 'word' && read.argument.word === 'middle' ? 'middle' : undefined;
}

const supports: Reader = (low, line, into) => {
  const read = line.points[0] && firstRead(line.points[0]);
  if (read === undefined) return incomplete(low, line, 'supports 760 mm apart');
  const span = known(amountOf(low, read, 'length'));
  if (span !== undefined) into.supports = span;
};

const factor: Reader = (low, line, into) => {
  const read = line.points[0] && firstRead(line.points[0]);
  const amount = known(amountOf(low, read, 'number'));
  if (read === undefined) return incomplete(low, line, 'factor 3');
  if (amount === undefined) return;
  if (amount.si >= 1) into.factor = amount.si;
  else
    low.problem('unit/suspicious', read.node, 'a factor below 1 takes strength away instead of keeping some: factor 2');
};

const clamped: Reader = (_low, _line, into) => {
  into.clamped = true;
};

type MutableLoad = Mutable<Load>;
const loadFacts: Readonly<Record<string, Reader>> = {
  force: acting('force'),
  weight: acting('weight'),
  pressure: acting('pressure'),
  supports,
  factor,
  clamped,
};

export function lowerLoad(low: Lowering, node: LoadNode, path: string): Load | undefined {
  low.placeHead(path, node);
  if (node.name === undefined) {
    low.problem(
      'line/not-understood',
      low.places.get(path),
      'a load has a name, by which `expect` asks for it: load rider {',
    );
  }
  const load: MutableLoad = {
    name: node.name ?? '',
    path,
    loads: [],
    ...lowerRemarks(
      low,
      path,
      node.remarks,
      node.items.filter((item) => item.$type === 'Note'),
      true,
    ),
  };
  lowerFacts(
    low,
    node.items.filter((item) => item.$type === 'Fact'),
    loadFacts,
    load,
    'a load',
    `${path}.`,
  );
  return node.name === undefined ? undefined : load;
}

export function lowerExpect(low: Lowering, node: Expect, path: string): Expectation | undefined {
  low.place(path, node);
  const remarks = lowerRemarks(low, path, node.clauses);
  if (node.test === undefined) {
    low.problem('line/not-understood', node, 'what is expected? expect mass <= 2.3 kg');
    return undefined;
  }
  return { path, test: lowerTest(low, node.test, `${path}.test`), ...remarks };
}

function reportUnknownTest(low: Lowering, node: TestNode): void {
  if (node.what === undefined || TESTED.includes(node.what)) return;
  const near = nearestWords(node.what, TESTED);
  const span = propertySpan(node, 'what');
  low.problem(
    'line/not-understood',
    span,
    near.length === 0
      ? text('`{word}` is nothing that can be expected: mass, thickness, fibre, cost and the like', { word: node.what })
      : text('`{word}` is nothing that can be expected: is {near} meant?', {
          word: node.what,
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

export function lowerTest(low: Lowering, node: TestNode, path: string): Test {
  low.place(path, node);
  const test: Mutable<Test> = { what: node.what };
  reportUnknownTest(low, node);
  if (node.load !== undefined) {
    test.under = node.load.$refText;
    low.place(`${path}.under`, propertySpan(node, 'load'));
  }
  const place = node.place === undefined ? undefined : lowerArgument(low, node.place);
  if (place?.kind === 'point') test.at = place.point;
  else if (place?.kind === 'word') test.at = place.word;
  if (node.layer !== undefined) test.on = node.layer.$refText;
  if (node.of !== undefined) test.of = node.of;
  if (node.basis !== undefined) test.basis = `by ${node.basis}`;
  if (node.comparison !== undefined) test.comparison = node.comparison;
  if (node.limit !== undefined) {
    low.place(`${path}.limit`, node.limit);
    const limit = evaluate(low, node.limit);
    if (limit !== undefined) test.limit = limit;
  }
  const least = node.low === undefined ? undefined : readQuantity(low, node.low, propertySpan(node, 'low'));
  const high = node.high === undefined ? undefined : readQuantity(low, node.high, propertySpan(node, 'high'));
  if (least !== undefined && least !== UNKNOWN) test.low = least;
  if (high !== undefined && high !== UNKNOWN) test.high = high;
  if (
    (node.comparison === undefined && node.low === undefined) ||
    (node.comparison !== undefined && node.limit === undefined) ||
    (node.low !== undefined && node.high === undefined)
  ) {
    low.problem(
      'line/not-understood',
      node,
      text('how much {what} is right? {example}', {
        what: node.what,
        example:
          (node.what === undefined ? undefined : wordAt(node.what, 'value of expect')?.example) ??
          'expect mass <= 2.3 kg, or expect thickness at middle 20 mm to 21 mm',
      }),
    );
  }
  return test;
}
