import { text } from '../../calc/figure/figure.ts';
import {
  type ClothLayer,
  type ClothStyle,
  type Material,
  type Price,
  type PricePer,
  UNKNOWN,
} from '../../calc/model/index.ts';
import { amountOf, firstAmount, known, partOf, spanOfRead, wordAt } from './arguments.ts';
import { append, byLengths, type FactReader, factFrom, firstRead, incomplete, put } from './facts.ts';
import { aboveZero } from './plausible.ts';

type Reader = FactReader<Material>;

const styles: ReadonlySet<string> = new Set(['random', 'woven', 'stitched', 'uni', 'braid']);

/** `layers stitched 0 deg 280 g/m2, 45 deg 200 g/m2`; without a style one direction is `uni`, more are `stitched`. */
export const layers: Reader = (low, line, into) => {
  const directions: ClothLayer[] = [];
  const word = wordAt(line.points[0]?.values ?? []);
  if (word !== undefined && !styles.has(word)) {
    low.problem(
      'line/not-understood',
      line.node,
      text('`{word}` is no way to make cloth: random, woven, stitched, uni or braid', { word }),
    );
  }
  for (const point of line.points) {
    const amounts = point.values.filter(({ argument }) => argument.kind === 'amount');
    const angled = amounts.find(({ argument }) => argument.kind === 'amount' && argument.amount.dimension.angle === 1);
    const weight = known(
      amountOf(
        low,
        amounts.find((a) => a !== angled),
        'areal weight',
      ),
    );
    const angle = known(amountOf(low, angled, 'angle'));
    if (weight !== undefined)
      directions.push(angle === undefined ? { arealWeight: weight } : { angle, arealWeight: weight });
  }
  if (directions.length === 0) {
    if (line.points.length === 0) incomplete(low, line, 'layers woven 0 deg 100 g/m2, 90 deg 100 g/m2');
    return;
  }
  const style = (styles.has(word ?? '') ? word : directions.length === 1 ? 'uni' : 'stitched') as ClothStyle;
  if (style !== 'random' && directions.some((d) => d.angle === undefined)) {
    if (style !== 'uni')
      low.problem(
        'line/not-understood',
        line.node,
        text(
          'a {style} cloth says the direction of each of its layers: layers {style} 0 deg 100 g/m2, 90 deg 100 g/m2',
          { style },
        ),
      );
  }
  put(into, 'cloth', factFrom(low, line, { style, layers: directions }));
};

export const roll: Reader = (low, line, into) => {
  const { first, second } = byLengths(low, line.points[0]);
  if (first === undefined) return line.points.length === 0 ? incomplete(low, line, 'roll 1270 mm by 50 m') : undefined;
  if (
    !aboveZero(low, first, spanOfRead(line.points[0]?.values[0])) ||
    !aboveZero(low, second, spanOfRead(line.points[0]?.parts[0]?.values[0]))
  )
    return;
  put(into, 'roll', factFrom(low, line, { width: first, ...(second === undefined ? {} : { length: second }) }));
};

export const sleeve: Reader = (low, line, into) => {
  const { first, second } = byLengths(low, line.points[0]);
  if (first !== undefined)
    put(into, 'sleeve', factFrom(low, line, { bore: first, ...(second === undefined ? {} : { length: second }) }));
};

export const sheet: Reader = (low, line, into) => {
  const { first, second } = byLengths(low, line.points[0]);
  if (first === undefined || second === undefined) return incomplete(low, line, 'sheet 1220 mm by 2440 mm');
  if (
    aboveZero(low, first, line.points[0] && spanOfRead(line.points[0].values[0])) &&
    aboveZero(low, second, spanOfRead(line.points[0]?.parts[0]?.values[0]))
  ) {
    put(into, 'sheet', factFrom(low, line, { length: first, width: second }));
  }
};

const perLength: Readonly<Record<number, PricePer>> = { 0: 'piece', [-1]: 'length', [-2]: 'area', [-3]: 'volume' };

/** `9.80 EUR/m2`, `21 EUR/m2 at 12 mm`, `0.60 EUR/m`, `?` */
export const price: Reader = (low, line, into) => {
  const prices = line.points.flatMap((point) => {
    const read = firstRead(point);
    const argument = read?.argument;
    if (argument?.kind === 'unknown') return [factFrom<Price>(low, line, UNKNOWN)];
    if (argument?.kind !== 'amount') return [];
    const { dimension } = argument.amount;
    const per: PricePer | undefined =
      dimension.mass === -1 && dimension.length === 0
        ? 'mass'
        : dimension.mass === 0
          ? perLength[dimension.length]
          : undefined;
    if (dimension.money !== 1 || per === undefined || dimension.time !== 0) {
      low.problem(
        'unit/wrong-dimension',
        read?.node,
        text('expected a price, for instance 5.10 EUR/m2, 15 EUR/kg or 2 EUR/each; found {found}', {
          found: argument.amount,
        }),
      );
      return [];
    }
    const checked = known(amountOf(low, read, per === 'piece' ? 'price per piece' : `price per ${per}`));
    const thickness = known(firstAmount(low, partOf(point, 'at')?.values ?? [], 'length'));
    if (checked === undefined) return [];
    return [factFrom<Price>(low, line, { amount: checked, per, ...(thickness === undefined ? {} : { thickness }) })];
  });
  if (line.points.length === 0) return incomplete(low, line, 'price 5.10 EUR/m2');
  if (prices.length > 0) append(into, 'prices', prices);
};
