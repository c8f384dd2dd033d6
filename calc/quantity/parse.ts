import { CURRENCIES } from './currencies.ts';
import { dimension, dimensionKey, NUMBER, sameDimension, TEMPERATURE, timesPower } from './dimension.ts';
import { nearestUnits } from './nearest.ts';
import type { AmbiguousSpelling } from './spellings.ts';
import { ALIASES, AMBIGUOUS, AMBIGUOUS_ATOMS, glueWords, plainSpelling, unglueWords } from './spellings.ts';
import type { Dimension, Unit, UnitResult } from './types.ts';
import type { UnitAtom } from './units.ts';
import { UNIT_ATOMS } from './units.ts';

const ATOMS: ReadonlyMap<string, UnitAtom> = new Map(
  UNIT_ATOMS.flatMap((atom) =>
    [atom.symbol.replaceAll(' ', '_'), ...(atom.spellings ?? [])].map((spelling) => [spelling, atom] as const),
  ),
);

// an editor sees the same few units again and again; the bound is for texts that hold rubbish
const CACHE_LIMIT = 4096;
const LONGEST_UNIT = 40;
const cache = new Map<string, UnitResult>();

/**
 * Reads a unit: one atom (`mm`), or a product of atoms with powers and at most one stroke (`mPa.s`, `g/m2`, `W/m.K`;
 * all that follows the stroke divides). `expected` decides spellings that mean several things (`oz`).
 */
export function parseUnit(text: string, expected?: Dimension): UnitResult {
  if (text.length > LONGEST_UNIT) return { unknown: text, nearest: [] };
  const key = expected === undefined ? text : `${text}\n${dimensionKey(expected)}`;
  const known = cache.get(key);
  if (known !== undefined) return known;
  const result = readUnit(text, expected);
  if (cache.size >= CACHE_LIMIT) cache.clear();
  cache.set(key, result);
  return result;
}

function readUnit(text: string, expected: Dimension | undefined): UnitResult {
  const plain = plainSpelling(text);
  const ambiguous = AMBIGUOUS.get(plain);
  if (ambiguous !== undefined) return chooseSpelling(plain, ambiguous, expected);
  const read = readCompound(glueWords(ALIASES.get(plain) ?? plain));
  if (read === undefined) return { unknown: text, nearest: nearestUnits(plain, isUnit) };
  return 'ambiguous' in read ? { ...read, ambiguous: text } : read;
}

function isUnit(text: string): boolean {
  const read = readCompound(glueWords(text));
  return read !== undefined && 'unit' in read;
}

function chooseSpelling(text: string, spelling: AmbiguousSpelling, expected: Dimension | undefined): UnitResult {
  const fitting =
    expected === undefined
      ? undefined
      : spelling.expected?.find((row) => sameDimension(row.dimension, expected))?.means;
  const [only, ...others] = fitting ?? [];
  if (only !== undefined && others.length === 0) return parseUnit(only);
  return { ambiguous: text, choices: fitting ?? spelling.choices };
}

interface Factor {
  readonly atom: UnitAtom;
  readonly power: number;
  readonly currency?: string;
}

function readCompound(text: string): UnitResult | undefined {
  const strokes = text.split('/');
  const [above, below] = strokes;
  if (strokes.length > 2 || above === undefined || text === '' || text === '/') return undefined;
  const factors: Factor[] = [];
  for (const [side, sign] of [
    [above, 1],
    [below, -1],
  ] as const) {
    // "/K" and "1/K" have nothing above the stroke
    if (side === undefined || (sign === 1 && below !== undefined && (side === '' || side === '1'))) continue;
    for (const word of withoutBrackets(side).split('.')) {
      const match = /^([A-Za-z_%$]+)(?:(\d)|\^(-?\d))?$/.exec(word);
      const name = match?.[1];
      if (name === undefined) return undefined;
      const power = sign * Number(match?.[2] ?? match?.[3] ?? 1);
      const ambiguous = AMBIGUOUS_ATOMS.get(name);
      if (ambiguous !== undefined) {
        const choices = ambiguous.choices.map((choice) => unglueWords(text.replace(name, () => choice)));
        return { ambiguous: text, choices };
      }
      const atom = ATOMS.get(name);
      const isMoney = atom === undefined && CURRENCIES.has(name);
      if (power === 0 || (atom === undefined && !isMoney)) return undefined;
      factors.push({ atom: atom ?? moneyAtom(name), power, ...(isMoney ? { currency: name } : {}) });
    }
  }
  return compose(factors);
}

const withoutBrackets = (side: string): string => (/^\([^()]*\)$/.test(side) ? side.slice(1, -1) : side);

function moneyAtom(code: string): UnitAtom {
  return { symbol: code, dimension: dimension({ money: 1 }), up: 1, down: 1, source: 'ISO 4217' };
}

function compose(factors: readonly Factor[]): UnitResult | undefined {
  const [first] = factors;
  if (first === undefined) return undefined;
  const currencies = new Set(factors.flatMap((factor) => factor.currency ?? []));
  if (currencies.size > 1) return undefined;
  let [up, down, of] = [1, 1, NUMBER];
  for (const { atom, power } of factors) {
    up *= power > 0 ? atom.up ** power : atom.down ** -power;
    down *= power > 0 ? atom.down ** power : atom.up ** -power;
    of = timesPower(of, atom.dimension, power);
  }
  const alone = factors.length === 1 && first.power === 1;
  const system =
    factors.find((factor) => factor.atom.system === 'us')?.atom.system ??
    factors.find((factor) => factor.atom.system === 'si')?.atom.system;
  const offset = alone ? first.atom.offset : undefined;
  const [currency] = of.money === 0 ? [] : currencies;
  const unit: Unit = {
    symbol: symbolOf(factors),
    dimension: of,
    up,
    down,
    ...(system === undefined ? {} : { system }),
    ...(currency === undefined ? {} : { currency }),
    ...(offset === undefined ? {} : { offset }),
    ...(offset === undefined && sameDimension(of, TEMPERATURE) ? { difference: true } : {}),
  };
  return { unit };
}

/** Alone, an ounce says that it weighs; inside a compound, degrees are steps of their scale. */
const ALONE: ReadonlyMap<string, string> = new Map([['oz', 'oz av']]);
const IN_COMPOUND: ReadonlyMap<string, string> = new Map([
  ['degC', 'K'],
  ['degF difference', 'degF'],
]);

function symbolOf(factors: readonly Factor[]): string {
  const isAlone = factors.length === 1 && factors[0]?.power === 1;
  const write = ({ atom, power }: Factor): string => {
    const symbol = (isAlone ? ALONE : IN_COMPOUND).get(atom.symbol) ?? atom.symbol;
    return Math.abs(power) === 1 ? symbol : `${symbol}${Math.abs(power)}`;
  };
  const above = factors
    .filter((factor) => factor.power > 0)
    .map(write)
    .join('.');
  const below = factors
    .filter((factor) => factor.power < 0)
    .map(write)
    .join('.');
  return below === '' ? above : `${above}/${below}`;
}
