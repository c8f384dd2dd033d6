import { minorDigits } from './currencies.ts';
import { NUMBER, sameDimension } from './dimension.ts';
import { displayStep } from './display.ts';
import { composedSymbol } from './names.ts';
import { convert, isProblem } from './quantity.ts';
import type { FormatOptions, MeasureSystem, Quantity } from './types.ts';

/** Shown in place of a number that is none. */
export const BEYOND_RECKONING = 'beyond reckoning';

const NUMBER_DIGITS = 4;
const QUANTITY_DIGITS = 3;
const SMALLEST_PLAIN = 1e-4;
const LARGEST_PLAIN = 1e12;
/** Shown in words rather than by a symbol, so they have a singular. */
const COUNTED = /^(day|week|month|year)s$/;
/** Ratios are shown as they were typed. */
const RATIO_UNITS: ReadonlySet<string> = new Set(['%', 'phr', 'ppm']);

/**
 * A quantity as the trade would write it: unit by dimension and magnitude, three to four digits, `680 g/m2`,
 * `12.5 mm (0.492 in)`. For people only: figures that machines read are SI numbers.
 */
export function formatQuantity(quantity: Quantity, options: FormatOptions = {}): string {
  if (!Number.isFinite(quantity.si)) return BEYOND_RECKONING;
  if (options.unit !== undefined) {
    const forced = inUnit(quantity, options.unit, options, QUANTITY_DIGITS);
    if (forced !== undefined) return forced;
  }
  if (options.system !== 'both') return inSystem(quantity, options.system ?? 'si', options);
  const [si, us] = [inSystem(quantity, 'si', options), inSystem(quantity, 'us', options)];
  return si === us ? si : `${si} (${us})`;
}

function inSystem(quantity: Quantity, system: MeasureSystem, options: FormatOptions): string {
  if (sameDimension(quantity.dimension, NUMBER)) {
    const typed = quantity.unit !== undefined && RATIO_UNITS.has(quantity.unit) ? quantity.unit : '';
    const shown = typed === '' ? undefined : inUnit(quantity, typed, options, QUANTITY_DIGITS);
    return shown ?? formatNumber(quantity.si, options);
  }
  const { currency = 'EUR' } = quantity;
  const step = displayStep(quantity.dimension, quantity.si, system, quantity.difference === true);
  const unit = (step?.unit ?? composedSymbol(quantity.dimension, currency)).replaceAll('¤', currency);
  const each = quantity.unit?.endsWith('/each') === true ? '/each' : '';
  return (
    inUnit(quantity, unit + each, options, step?.digits ?? QUANTITY_DIGITS) ??
    `${formatNumber(quantity.si, options)} ${unit}`
  );
}

function inUnit(quantity: Quantity, unit: string, options: FormatOptions, digits: number): string | undefined {
  const converted = convert(quantity, unit);
  if (isProblem(converted)) return undefined;
  const { value } = converted;
  const text =
    quantity.currency === undefined || options.digits !== undefined
      ? formatNumber(value, { ...options, digits: options.digits ?? digits })
      : formatPrice(value, quantity.currency, options);
  return `${text} ${text === '1' && COUNTED.test(unit) ? unit.slice(0, -1) : unit}`;
}

/** Whole prices as they are, others to the cent, those below ten cents to two digits. */
function formatPrice(value: number, currency: string, options: FormatOptions): string {
  const decimals = minorDigits(currency);
  const rounded = Number(value.toFixed(decimals));
  if (value !== 0 && Math.abs(value) < 10 ** (1 - decimals)) return formatNumber(value, { ...options, digits: 2 });
  return localNumber(rounded, Number.isInteger(rounded) ? 0 : decimals, decimals, options.locale);
}

/**
 * Significant digits without trailing zeros; digits before the decimal mark are never rounded away. Powers of ten only
 * below 1e-4 and from 1e12 on.
 */
export function formatNumber(value: number, options: Pick<FormatOptions, 'digits' | 'locale'> = {}): string {
  if (!Number.isFinite(value)) return BEYOND_RECKONING;
  const digits = Math.min(Math.max(Math.trunc(options.digits ?? NUMBER_DIGITS), 1), 15);
  const size = Math.abs(value);
  if (size !== 0 && (size < SMALLEST_PLAIN || size >= LARGEST_PLAIN)) {
    const [mantissa = '', exponent = ''] = value.toExponential(digits - 1).split('e');
    return `${localNumber(Number(mantissa), 0, digits - 1, options.locale)}e${exponent.replace('+', '')}`;
  }
  const decimals = size === 0 ? 0 : Math.max(digits - 1 - Math.floor(Math.log10(size)), 0);
  return localNumber(value, 0, decimals, options.locale);
}

const formats = new Map<string, Intl.NumberFormat>();

function localNumber(value: number, least: number, most: number, locale: string | undefined): string {
  if (locale === undefined) return plainNumber(value, least, most);
  const key = `${locale} ${least} ${most}`;
  const known = formats.get(key) ?? localFormat(locale, least, most);
  if (known === undefined) return plainNumber(value, least, most);
  formats.set(key, known);
  return known.format(value + 0);
}

/** undefined for what is no locale, so that a wrong setting never stops a page */
function localFormat(locale: string, least: number, most: number): Intl.NumberFormat | undefined {
  try {
    return new Intl.NumberFormat(locale, { minimumFractionDigits: least, maximumFractionDigits: most });
  } catch {
    return undefined;
  }
}

function plainNumber(value: number, least: number, most: number): string {
  const fixed = value.toFixed(most);
  const text = least === most || !fixed.includes('.') ? fixed : fixed.replace(/\.?0+$/, '');
  return /^-0(\.0*)?$/.test(text) ? text.slice(1) : text;
}
