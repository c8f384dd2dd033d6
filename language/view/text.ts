import { isText, type Shown, text, type Words } from '../../calc/figure/figure.ts';
import { formatNumber, formatQuantity } from '../../calc/quantity/index.ts';
import { translated, usedLocale } from './translation.ts';

/** How figures are shown: the unit system, and the locale of the reader (none: as the notation is typed). */
export interface Style {
  readonly units: 'si' | 'us' | 'both';
  readonly locale?: string;
}

export const plainStyle: Style = { units: 'si' };

/** Control characters and direction marks of names never reach a screen. */
const unsafe = /[\u0000-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;

export const safe = (words: string): string => words.replace(unsafe, '');

export function show(value: Shown, style: Style = plainStyle): string {
  if (typeof value === 'string') return safe(value.includes(' ') ? translated(value) : value);
  if (isText(value)) return sayText(value, style);
  const locale = style.locale ?? usedLocale();
  const written = locale === undefined ? {} : { locale };
  return typeof value === 'number'
    ? formatNumber(value, written)
    : formatQuantity(value, { system: style.units, ...written });
}

/** The words of a text in the language of the reader, with its figures put in. */
export function sayText(words: Words, style: Style = plainStyle): string {
  const { template, figures } = typeof words === 'string' ? text(words) : words;
  return translated(template).replace(/\{(\w+)\}/g, (whole, name: string) => {
    const value = figures[name];
    return value === undefined ? whole : show(value, style);
  });
}

/** Words of a view: `say('{mass} wet', { mass })`. The template is a literal: it is the key of its translations. */
export const say = (template: string, figures: Readonly<Record<string, Shown>> = {}, style?: Style): string =>
  sayText(text(template, figures), style);
