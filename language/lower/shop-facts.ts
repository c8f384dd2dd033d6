import { text } from '../../calc/figure/figure.ts';
import type { Habit, Shop } from '../../calc/model/index.ts';
import { CURRENCIES } from '../../calc/quantity/index.ts';
import { wordAt as wordIn, wordsAt } from '../words/index.ts';
import { nearestWords } from '../words/nearest.ts';
import { amountOf, countOf, firstAmount, known, type Read, spanOfRead, wordAt, wordsOf } from './arguments.ts';
import {
  amountReader,
  append,
  type FactLine,
  type FactReader,
  factFrom,
  firstRead,
  incomplete,
  needBasis,
  put,
} from './facts.ts';
import type { Lowering } from './lowering.ts';

type Reader = FactReader<Shop>;

const currency: Reader = (low, line, into) => {
  const code = wordAt(line.points[0]?.values ?? []);
  if (code === undefined) return incomplete(low, line, 'currency EUR');
  if (!CURRENCIES.has(code))
    low.problem(
      'unit/unknown',
      line.node,
      text('`{code}` is no currency of ISO 4217: three capital letters, as EUR', { code }),
    );
  else put(into, 'currency', factFrom(low, line, code));
};

const people: Reader = (low, line, into) => {
  const count = countOf(low, line.points[0] && firstRead(line.points[0]));
  if (count === undefined) return line.points.length === 0 ? incomplete(low, line, 'people 2') : undefined;
  if (count === 0) low.problem('unit/suspicious', line.node, 'somebody has to do the work: people is 1 or more');
  else put(into, 'people', factFrom(low, line, count));
};

/** `humidity 55 % RH` */
const humidity: Reader = (low, line, into) => {
  const read = line.points[0] && firstRead(line.points[0]);
  const amount = known(amountOf(low, read, 'ratio'));
  if (read === undefined) return incomplete(low, line, 'humidity 55 % RH');
  if (amount === undefined) return;
  if (amount.basis !== 'RH')
    low.problem('unit/no-basis', read.node, 'the humidity of air is said as RH: humidity 55 % RH');
  if (amount.si > 1) low.problem('unit/suspicious', read.node, 'air holds 100 % RH at the most');
  else put(into, 'humidity', factFrom(low, line, amount));
};

/** `oven 2400 mm by 1200 mm by 900 mm, limit 140 degC` */
const oven: Reader = (low, line, into) => {
  const [first, ...rest] = line.points;
  if (first === undefined) return incomplete(low, line, 'oven 2400 mm by 1200 mm by 900 mm, limit 140 degC');
  const size = [...first.values, ...first.parts.filter((p) => p.word === 'by').flatMap((p) => p.values)]
    .map((read: Read) => known(amountOf(low, read, 'length')))
    .filter((length) => length !== undefined);
  const limited = rest.find((point) => wordAt(point.values) === 'limit');
  const limit = limited && known(firstAmount(low, limited.values, 'temperature'));
  put(into, 'oven', factFrom(low, line, { size, ...(limit === undefined ? {} : { limit }) }));
};

function reportHabit(low: Lowering, line: FactLine, name: string): void {
  const span = spanOfRead(line.points[0]?.values[0]);
  const near = nearestWords(
    name,
    wordsAt('value of habit').map(({ word }) => word),
  );
  low.problem(
    'line/not-understood',
    span ?? line.node,
    near.length === 0
      ? text('no figure and no rule takes a habit called {name}', { name })
      : text('no figure and no rule takes a habit called {name}: is {near} meant?', { name, near: near.join(' or ') }),
    span === undefined
      ? []
      : near.map((word) => ({
          title: text('Write {what}', { what: word }),
          edits: [{ offset: span.offset, end: span.end, text: word }],
        })),
  );
}

/** `habit leak 5 mbar in 10 min`: a threshold of a rule, in its own words. */
const habit: Reader = (low, line, into) => {
  const point = line.points[0];
  const name = point === undefined ? undefined : wordAt(point.values);
  if (point === undefined || name === undefined) return incomplete(low, line, 'habit leak 5 mbar in 10 min');
  if (wordIn(name, 'value of habit') === undefined) return reportHabit(low, line, name);
  const all = [...point.values, ...point.parts.flatMap((p) => p.values)];
  const amounts = all.flatMap(({ argument }) => (argument.kind === 'amount' ? [argument.amount] : []));
  const within = point.parts.find((p) => p.word === 'in')?.values[0]?.argument;
  const value: Habit = {
    amounts: within?.kind === 'amount' ? amounts.slice(0, -1) : amounts,
    words: wordsOf(all).slice(1),
    ...(within?.kind === 'amount' ? { within: within.amount } : {}),
  };
  put(into, 'habits', { ...into.habits, [name]: factFrom(low, line, value) });
};

/** `stores epoxy_slow 12 kg on 2026-05-01` */
const stores: Reader = (low, line, into) => {
  const point = line.points[0];
  const material = point === undefined ? undefined : wordAt(point.values);
  const amount = point?.values.find(({ argument }) => argument.kind === 'amount')?.argument;
  if (point === undefined || material === undefined || amount?.kind !== 'amount')
    return incomplete(low, line, 'stores epoxy_slow 12 kg on 2026-05-01');
  const date = point.parts.find((p) => p.word === 'on')?.values[0]?.argument;
  append(into, 'stores', [
    factFrom(low, line, { material, amount: amount.amount, ...(date?.kind === 'text' ? { date: date.text } : {}) }),
  ]);
};

/** `pump 15 mbar absolute` */
const pump: Reader = (low, line, into) => {
  const read = line.points[0] && firstRead(line.points[0]);
  const amount = known(amountOf(low, read, 'pressure'));
  if (read === undefined) return incomplete(low, line, 'pump 15 mbar absolute');
  if (amount === undefined) return;
  needBasis(low, amount, 'vacuum', read);
  put(into, 'pump', factFrom(low, line, amount));
};

/** Every word of the `shop` block. */
export const shopFacts: Readonly<Record<string, Reader>> = {
  currency,
  people,
  humidity,
  oven,
  habit,
  stores,
  pump,
  labour: amountReader('labour', 'wage', 'labour 34 EUR/h'),
  overhead: amountReader('overhead', 'ratio', 'overhead 12 %'),
  ambient: amountReader('ambient', 'temperature', 'ambient 21 degC'),
  elevation: amountReader('elevation', 'length', 'elevation 340 m'),
  scale: amountReader('scale', 'mass', 'scale 0.1 g'),
};
