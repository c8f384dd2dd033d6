import { AREAL_WEIGHT, MASS, VOLUME } from './dimension.ts';
import type { Dimension } from './types.ts';

/** Units that have a name of their own in the trade but are compounds here. */
export const ALIASES: ReadonlyMap<string, string> = new Map([
  ['gsm', 'g/m2'],
  ['pcf', 'lb/ft3'],
  ['oz av', 'oz'],
]);

/**
 * One spelling, several units of the trade. What is expected may decide: an ounce where a mass is asked is the ounce of
 * the balance, where an areal weight is asked it stays open (mat is sold per square foot, cloth per square yard).
 */
export interface AmbiguousSpelling {
  readonly choices: readonly string[];
  /** the choices left where this dimension is expected; a single one decides */
  readonly expected?: readonly { readonly dimension: Dimension; readonly means: readonly string[] }[];
}

const GALLONS: AmbiguousSpelling = { choices: ['US gal', 'UK gal'] };
const PINTS: AmbiguousSpelling = { choices: ['US pt', 'UK pt'] };
const CUPS: AmbiguousSpelling = { choices: ['US cup', 'ml'] };
const FLUID_OUNCES: AmbiguousSpelling = { choices: ['US fl oz', 'UK fl oz'] };
const OUNCES: AmbiguousSpelling = {
  choices: ['oz/yd2', 'oz/ft2', 'oz av', 'US fl oz', 'UK fl oz'],
  expected: [
    { dimension: AREAL_WEIGHT, means: ['oz/yd2', 'oz/ft2'] },
    { dimension: VOLUME, means: FLUID_OUNCES.choices },
    { dimension: MASS, means: ['oz av'] },
  ],
};

/** As the whole unit. */
export const AMBIGUOUS: ReadonlyMap<string, AmbiguousSpelling> = new Map<string, AmbiguousSpelling>([
  ['oz', OUNCES],
  ['ounce', OUNCES],
  ['ounces', OUNCES],
]);

/** As the whole unit and inside a compound: `lb/gal`. */
export const AMBIGUOUS_ATOMS: ReadonlyMap<string, AmbiguousSpelling> = new Map<string, AmbiguousSpelling>([
  ['gal', GALLONS],
  ['gallon', GALLONS],
  ['gallons', GALLONS],
  ['pt', PINTS],
  ['pint', PINTS],
  ['pints', PINTS],
  ['cup', CUPS],
  ['cups', CUPS],
  ['fl_oz', FLUID_OUNCES],
  ['floz', FLUID_OUNCES],
  ['ton', { choices: ['t', 'US ton', 'UK ton'] }],
  ['tons', { choices: ['t', 'US ton', 'UK ton'] }],
  ['$', { choices: ['USD', 'CAD', 'AUD', 'NZD'] }],
]);

/** What is often typed and is no unit here, with what was most likely meant. */
export const MEANT: ReadonlyMap<string, readonly string[]> = new Map<string, readonly string[]>([
  ['C', ['degC']],
  ['F', ['degF']],
  ['RH', ['% RH']],
  ['%RH', ['% RH']],
  ['mic', ['um']],
  ['mu', ['um']],
  // the key beside; the shift key would make a meganewton of it
  ['mn', ['mm', 'min']],
  ['sqm', ['m2']],
  ['sqft', ['ft2']],
  ['sqyd', ['yd2']],
  ['cbm', ['m3']],
  ['osy', ['oz/yd2']],
  ['opsy', ['oz/yd2']],
  ['"', ['in']],
  ["'", ['ft']],
  ['#', ['lb']],
  ['mPas', ['mPa.s']],
  ['Pas', ['Pa.s']],
  ['wt%', ['% by weight']],
  ['vol%', ['% by volume']],
  ['pct', ['%']],
  ['rpm', ['/min']],
  ['psf', ['lbf/ft2']],
  ['pli', ['lbf/in']],
]);

const REPLACED: readonly (readonly [RegExp, string])[] = [
  [/[°º˚]\s*(?=[CF](?![A-Za-z]))/g, 'deg'],
  [/℃/g, 'degC'],
  [/℉/g, 'degF'],
  [/[°º˚]/g, 'deg'],
  [/[µμ]/g, 'u'],
  [/[·⋅∙]/g, '.'],
  [/⁻/g, '^-'],
  [/¹/g, '1'],
  [/²/g, '2'],
  [/³/g, '3'],
  [/⁴/g, '4'],
  [/€/g, 'EUR'],
  [/£/g, 'GBP'],
  [/¥/g, 'JPY'],
  [/℅/g, '%'],
  [/\s+/g, ' '],
  [/\bsq (yd|ft|in|m)\b/g, '$12'],
  [/\s*([/.()])\s*/g, '$1'],
];

/** One spelling for what the keyboard, a data sheet or a spreadsheet may give: `°C`, `m²`, `µm`, `kJ·kg⁻¹`. */
export function plainSpelling(text: string): string {
  let plain = text.trim();
  for (const [pattern, by] of REPLACED) plain = plain.replace(pattern, by);
  return plain;
}

/** Names of two or three words hold together inside a compound: `EUR/US gal`. */
export function glueWords(text: string): string {
  return text
    .replace(/\b(US|UK) (gal|qt|pt|cup|fl oz|ton)\b/g, (name) => name.replaceAll(' ', '_'))
    .replace(/\bfl oz\b/g, 'fl_oz')
    .replace(/\boz av\b/g, 'oz_av')
    .replace(/\bdeg([CF]) difference\b/g, 'deg$1_difference');
}

export const unglueWords = (text: string): string => text.replaceAll('_', ' ');
