import type { IToken } from 'chevrotain';
import type { Place, Word } from '../../words/index.ts';
import { headWord } from '../statements.ts';
import type { Offers } from './completion.ts';
import type { Cursor } from './cursor.ts';
import { localNames } from './local-names.ts';
import type { LocalName, NamesPort } from './names-port.ts';

/** All that the offers for one cursor are made from. */
export interface Scene {
  readonly cursor: Cursor;
  readonly place: Place;
  readonly offers: Offers;
  readonly names: NamesPort;
  readonly rules: () => readonly RuleName[];
  /** the word that the entry begins with */
  readonly entry: string;
  /** names of the recipe that is being typed, in the order of the lines */
  readonly locals: () => readonly LocalName[];
  /** the words before the cursor, whole line */
  readonly before: readonly IToken[];
  /** the word that the line begins with */
  readonly head?: Word;
}

export interface RuleName {
  readonly name: string;
  readonly title?: string;
}

export function sceneAt(
  cursor: Cursor,
  place: Place,
  offers: Offers,
  names: NamesPort,
  rules: () => readonly RuleName[],
  head?: Word,
): Scene {
  let known: readonly LocalName[] | undefined;
  const locals = (): readonly LocalName[] => (known ??= localNames(cursor.statements, names));
  return {
    cursor,
    place,
    offers,
    names,
    rules,
    entry: headWord(cursor.blocks[0]),
    locals,
    before: cursor.before,
    ...(head === undefined ? {} : { head }),
  };
}
