/** Names of files from names of others. */
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apart, fileName } from '../../../language/export/file-name.ts';
import { hostileName } from '../../harness/flat-pieces.ts';

describe('a name of a file', () => {
  it('says what it says, in letters that any disk takes', () => {
    expect(fileName('sled_deck-outer 2/3')).toBe('sled_deck-outer-2-of-3');
    expect(fileName('Ørsted größe')).toBe('Orsted-grosse');
    expect(fileName('peel (2)')).toBe('peel-2');
    expect(fileName('日本')).toBe('unnamed');
  });

  it('leads nowhere else and is no device', () => {
    for (const name of [
      '../../etc/passwd',
      '..\\..\\x',
      'C:\\x',
      '/etc/passwd',
      '.',
      '..',
      '~',
      hostileName,
      '\\\\host\\share',
    ])
      expect(path.basename(fileName(name))).toBe(fileName(name));
    for (const name of ['con', 'NUL', 'com1', 'lpt9.txt', 'Aux.svg', 'prn', 'conin$'])
      expect(fileName(name)).not.toMatch(/^(con|nul|com\d|lpt\d|aux|prn)(\.|$)/i);
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (words) => {
        const name = fileName(words);
        expect(name).toMatch(/^[A-Za-z0-9_][A-Za-z0-9_.-]*$/);
        expect(name).not.toMatch(/\.\.|[.-]$/);
        expect(name.length).toBeLessThanOrEqual(90);
      }),
    );
  });

  it('is another one for each, also where capitals do not count', () => {
    expect(apart(['outer', 'Outer', 'inner', 'outer'])).toEqual(['outer', 'Outer-2', 'inner', 'outer-3']);
    fc.assert(
      fc.property(fc.array(fc.constantFrom('a', 'A', 'a-2', 'b')), (names) => {
        expect(new Set(apart(names).map((name) => name.toLowerCase())).size).toBe(names.length);
      }),
    );
  });
});
