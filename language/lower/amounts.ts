import { text, type Words } from '../../calc/figure/figure.ts';
import { type Amount, UNKNOWN, type Unknown } from '../../calc/model/index.ts';
import {
  bareNumber,
  type Dimension,
  type DimensionName,
  describeDimension,
  describeQuantity,
  isProblem,
  makeQuantity,
  namedDimension,
  type Quantity,
  sameDimension,
  unitsOf,
} from '../../calc/quantity/index.ts';
import { editDistance } from '../../calc/quantity/nearest.ts';
import { wordAt } from '../words/index.ts';
import { shopCurrency } from './currency.ts';
import type { Lowering } from './lowering.ts';
import type { Span } from './places.ts';

/** Words that only say what is counted: `5 coats`, `8 holes`. */
export const countWords: ReadonlySet<string> = new Set(
  'coat coats pass passes layer layers ply plies bolt bolts hole holes piece pieces pull pulls part parts person people grit pot pots'.split(
    ' ',
  ),
);

const form = /^(-?)(\d+,\d+|\d+(?:\.\d+)?(?:[eE][+-]?\d+)?)(.*)$/s;

/** What reads without a word, by its text: a workshop types the same sizes again and again. */
const wellTyped = new Map<string, Quantity>();
const mostKept = 4096;

/** Reads `12 mm`, `1,5 m`, `5 coats`, `?`. Undefined after a problem that leaves no value. */
export function readQuantity(
  low: Lowering,
  typed: string,
  where: Span | undefined,
  expected?: DimensionName,
): Quantity | Unknown | undefined {
  if (typed === '?') return UNKNOWN;
  const kept = expected === undefined ? wellTyped.get(typed) : undefined;
  if (kept !== undefined) return kept;
  const read = readAnew(low, typed, where, expected);
  // a decimal comma is read and told of, each time
  if (read !== undefined && expected === undefined && !typed.includes(',')) {
    if (wellTyped.size >= mostKept) wellTyped.clear();
    wellTyped.set(typed, read);
  }
  return read;
}

function readAnew(
  low: Lowering,
  typed: string,
  where: Span | undefined,
  expected: DimensionName | undefined,
): Quantity | undefined {
  const parts = form.exec(typed);
  if (parts === null) return undefined;
  const [, sign, digits, unit] = parts as unknown as [string, string, string, string];
  if (digits.includes(',')) reportDecimalComma(low, digits, where);
  const number = Number(`${sign}${digits.replace(',', '.')}`);
  if (countWords.has(unit)) {
    return Number.isFinite(number) ? { ...bareNumber(number), unit } : reportNotFinite(low, where);
  }
  const measured = unit === '' ? undefined : measuredBefore(unit);
  if (measured !== undefined && expected === undefined)
    return reportSwallowed(low, `${sign}${digits}`, unit, measured, where);
  const read = makeQuantity(number, unit, expected === undefined ? undefined : namedDimension(expected));
  if (!isProblem(read)) return read;
  if (read.problem === 'not-finite') return reportNotFinite(low, where);
  const rule =
    read.problem === 'ambiguous-unit'
      ? 'unit/ambiguous-ounce'
      : read.problem === 'unknown-unit'
        ? 'unit/unknown'
        : 'unit/suspicious';
  const choices = read.choices.slice(0, 3);
  const at = where === undefined ? undefined : { offset: where.end - unit.length, end: where.end };
  low.problem(
    rule,
    where,
    read.message,
    at === undefined
      ? []
      : choices.map((choice) => ({
          title: text('Write {what}', { what: choice }),
          edits: [{ offset: at.offset, end: at.end, text: choice }],
        })),
  );
  return undefined;
}

/** `60 outside`, `80 past edge`: a word of the notation behind the number is no unit; what it measures stands before it. */
function measuredBefore(word: string): DimensionName | undefined {
  const take = wordAt(word, 'clause of step')?.takes?.find((each) => each.before === true);
  return take === undefined || take.dimension === 'count' ? undefined : (take.dimension as DimensionName);
}

function reportSwallowed(
  low: Lowering,
  number: string,
  word: string,
  expected: DimensionName,
  where: Span | undefined,
): undefined {
  const units = usualUnits(expected);
  const bare = where === undefined ? undefined : { offset: where.offset, end: where.offset + number.length };
  low.problem(
    'unit/missing',
    bare,
    text('{number} {word} carries no unit: expected {wanted}, for instance {number} {unit} {word}', {
      number,
      word,
      wanted: describeDimension(expected),
      unit: units[0] ?? '',
    }),
    bare === undefined
      ? []
      : units.map((unit) => ({
          title: text('Write {what} {unit}', { what: number, unit }),
          edits: [{ offset: bare.end, end: bare.end, text: ` ${unit}` }],
        })),
  );
  return undefined;
}

function reportNotFinite(low: Lowering, where: Span | undefined): undefined {
  low.problem('unit/suspicious', where, 'the number is too large to reckon with');
  return undefined;
}

function reportDecimalComma(low: Lowering, digits: string, where: Span | undefined): void {
  const point = digits.replace(',', '.');
  const at = where === undefined ? undefined : { offset: where.offset, end: where.offset + digits.length };
  low.problem(
    'unit/decimal-comma',
    where,
    text('numbers are written with a decimal point: {point}', { point }),
    at === undefined
      ? []
      : [{ title: text('Write {what}', { what: point }), edits: [{ offset: at.offset, end: at.end, text: point }] }],
  );
}

/** Checks the dimension as a type is checked; a count passes as a bare number. */
export function checked(
  low: Lowering,
  quantity: Quantity,
  expected: DimensionName,
  where: Span | undefined,
): Quantity | undefined {
  const wanted = namedDimension(expected);
  if (isDifferenceExpected(expected) && sameDimension(quantity.dimension, wanted))
    return { ...quantity, difference: true };
  if (expected === 'temperature' && quantity.difference === true) {
    low.problem(
      'unit/wrong-dimension',
      where,
      text('expected a temperature, found a temperature difference ({found})', { found: quantity }),
    );
    return undefined;
  }
  if (sameDimension(quantity.dimension, wanted)) return quantity;
  const bare = quantity.unit === undefined && sameDimension(quantity.dimension, namedDimension('number'));
  const usual = unitsOf(expected, shopCurrency)[0]?.symbol;
  if (bare && usual !== undefined) {
    low.problem(
      'unit/missing',
      where,
      text('{number} carries no unit: expected {wanted}, for instance {number} {unit}', {
        number: quantity.si,
        wanted: describeDimension(expected),
        unit: usual,
      }),
      where === undefined
        ? []
        : usualUnits(expected).map((unit) => ({
            title: text('Write {what} {unit}', { what: String(quantity.si), unit }),
            edits: [{ offset: where.end, end: where.end, text: ` ${unit}` }],
          })),
    );
    return undefined;
  }
  const fixes = sameLetters(quantity, wanted, where);
  low.problem(
    'unit/wrong-dimension',
    where,
    text('expected {wanted}, found {kind} ({found})', {
      wanted: describeDimension(expected),
      kind: describeQuantity(quantity),
      found: quantity.unit === undefined ? quantity.si : quantity,
    }),
    fixes,
  );
  return undefined;
}

const isDifferenceExpected = (expected: DimensionName): boolean => expected === 'temperature difference';

function usualUnits(expected: DimensionName): string[] {
  return unitsOf(expected, shopCurrency)
    .slice(0, 2)
    .map((unit) => unit.symbol);
}

/** `12 m2` where a length is wanted is usually `12 m`: offers the unit of the right dimension that is spelled nearest. */
function sameLetters(
  quantity: Quantity,
  wanted: Dimension,
  where: Span | undefined,
): { title: Words; edits: { offset: number; end: number; text: string }[] }[] {
  const unit = quantity.unit;
  if (unit === undefined || where === undefined) return [];
  const near = unitsOf(wanted, shopCurrency)
    .map((u) => u.symbol)
    .filter((symbol) => editDistance(symbol, unit) <= 1 || symbol.startsWith(unit) || isHeadOf(symbol, unit))
    .sort((a, b) => Number(unit.startsWith(b)) - Number(unit.startsWith(a)));
  return near.slice(0, 2).map((symbol) => ({
    title: text('Write {what}', { what: symbol }),
    edits: [{ offset: where.end - unit.length, end: where.end, text: symbol }],
  }));
}

/** `m` of `m2` and `g` of `g/m2`, but no `d` of `degC`: there another word goes on. */
const isHeadOf = (symbol: string, unit: string): boolean =>
  unit.startsWith(symbol) && !/[A-Za-z]/.test(unit.charAt(symbol.length));

export const isAmount = (value: Amount | Unknown | undefined): value is Amount =>
  value !== undefined && value !== UNKNOWN;
