/** One of a thing is told of as one: no `1 darts`. */
import { describe, expect, it } from 'vitest';
import { cutInWords } from '../../../calc/piece/dart-words.ts';
import type { CutsLaid } from '../../../calc/piece/flat-piece.ts';
import { cutsLaidWords } from '../../../language/view/piece-words.ts';
import { plainStyle } from '../../../language/view/text.ts';
import { deck } from '../../harness/flat-pieces.ts';
import { inWords } from '../../harness/words.ts';

describe('one is told of as one', () => {
  it.each([
    [0, 0, undefined],
    [1, 0, '1 dart'],
    [0, 1, '1 slit'],
    [3, 1, '3 darts and 1 slit'],
    [1, 2, '1 dart and 2 slits'],
    [0, 4, '4 slits'],
  ])('%i darts and %i slits in a piece', (darts, slits, expected) => {
    const words = cutInWords(darts, slits);
    expect(words === undefined ? undefined : inWords(words)).toBe(expected);
  });

  it.each([
    ['dart', 1, 'not drawn: one dart of 20 mm, cut where it folds as laid'],
    ['slit', 1, 'not drawn: one slit of 20 mm, cut where it bridges as laid'],
    ['dart', 3, 'not drawn: up to 3 darts of 20 mm, cut where it folds as laid'],
    ['slit', 2, 'not drawn: up to 2 slits of 20 mm, cut where it bridges as laid'],
  ] as const)('a %s of %i that is cut as the piece is laid', (kind, count, expected) => {
    const cutsLaid: CutsLaid = { kind, count, width: 0.02 };
    expect(cutsLaidWords({ ...deck, cutsLaid }, plainStyle)).toEqual([expected]);
  });
});
