import { CURRENCIES } from '../../calc/quantity/index.ts';
import { NAMED } from '../../calc/quantity/names.ts';
import { UNIT_ATOMS } from '../../calc/quantity/units.ts';
import { stock } from '../../language/book/generated/stock-texts.ts';
import { connectives } from '../../language/grammar/connectives.ts';
import { rules } from '../../language/rules/generated/rules.ts';
import { hazards } from '../../language/words/cautions.ts';
import { words } from '../../language/words/index.ts';
import { citations } from '../setup/catalogue.mjs';

const quoted = /"((?:[^"\\\n]|\\.)*)"/g;
const comment = /\/\/.*$/gm;
const word = /[A-Za-z][\w]*/g;

/** What may be shown in any language: names, units and words of the notation; `phrases` are what people wrote, and titles of works. */
export interface Vocabulary {
  readonly words: ReadonlySet<string>;
  readonly phrases: readonly string[];
}

/** All that the given recipes, the stock library and the notation itself say. */
export function vocabularyOf(files: Readonly<Record<string, string>>): Vocabulary {
  const known = new Set<string>();
  const phrases = new Set<string>();
  const add = (notation: string): void => {
    for (const [, phrase = ''] of notation.matchAll(quoted)) phrases.add(phrase);
    for (const [found] of notation.replace(quoted, ' ').matchAll(word)) {
      known.add(found);
      // a digit ends a unit or begins a name: `m2`, `x2`
      for (const part of found.split('_')) known.add(part);
    }
  };
  for (const text of [...Object.values(files), ...Object.values(stock)]) {
    // a // inside of quotes is no comment; there is none in what tests read
    add(text.replace(comment, ''));
  }
  for (const name of [...Object.keys(files), ...Object.keys(stock)]) add(name.replaceAll('-', ' '));
  for (const currency of CURRENCIES) add(currency);
  for (const { example, word: own, default: usual, source, takes = [] } of words) {
    for (const { words: choices = [] } of takes) for (const each of choices) add(each);
    add(example);
    add(own);
    add(usual ?? '');
    if (source !== undefined) phrases.add(source);
  }
  for (const { units } of NAMED) add(units);
  for (const { symbol, spellings = [], source } of UNIT_ATOMS)
    for (const each of [symbol, source, ...spellings]) add(each);
  // the program, its chapters and what it cites for units
  add('laybook notation units steps materials rules cautions SP section');
  for (const { source } of hazards) phrases.add(source);
  // limits in the air
  add('mg/m3 ppm');
  for (const each of connectives) add(each);
  for (const { name } of rules) add(name);
  for (const each of citations()) phrases.add(each);
  return {
    words: known,
    phrases: [...phrases].filter((each) => /[A-Za-z]{2}/.test(each)).sort((a, b) => b.length - a.length),
  };
}

/** Stretches of a text in nobody's language but ours. */
export function english(text: string, { words: known, phrases }: Vocabulary): string[] {
  let rest = text
    // notation in a frame, addresses of links, code of pictures
    .replace(/```[\s\S]*?```/g, ' ')
    .replace(/\]\([^)\s]*\)/g, '] ')
    .replace(/\\(?=[\W_])/g, '')
    .replace(/&amp;/g, '&')
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&#39;/g, "'")
    // the place of a figure, where a page tells of a template
    .replace(/\{\w+\}/g, ' ');
  for (const phrase of phrases) if (rest.includes(phrase)) rest = rest.replaceAll(phrase, ' ');
  return [...rest.matchAll(/(?<![\p{L}\d_.])[A-Za-z][A-Za-z_\d]*(?![\p{L}])/gu)]
    .map(([found]) => found)
    .filter(
      (found) =>
        /[A-Za-z]{2}/.test(found) &&
        ![found, found.replace(/_?\d+$/, ''), found.charAt(0).toLowerCase() + found.slice(1)].some((each) =>
          known.has(each),
        ),
    );
}
