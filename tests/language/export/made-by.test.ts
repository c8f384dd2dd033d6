/** What was written by us and is unchanged may be written over; nothing else. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { madeByLaybook, mark, sealed } from '../../../language/export/made-by.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

describe('the mark of a file', () => {
  it('is known again, and not once a byte has changed', () => {
    fc.assert(
      fc.property(fc.string(), fc.string({ minLength: 1 }), fc.nat(), (before, after, where) => {
        const file = sealed(`${before}${mark}${after}`);
        expect(madeByLaybook(file)).toBe(true);
        const changed = file.slice();
        const at = where % changed.length;
        changed[at] = (changed[at] ?? 0) ^ 1;
        expect(madeByLaybook(changed)).toBe(false);
      }),
    );
  });

  it('is missed in files of others, also where they speak of it', () => {
    expect(madeByLaybook(bytes('<svg/>'))).toBe(false);
    expect(madeByLaybook(bytes(`<!-- ${mark} -->`))).toBe(false);
    expect(madeByLaybook(new Uint8Array())).toBe(false);
    expect(() => sealed('<svg/>')).toThrow('without its mark');
  });

  it('keeps the size of the file and all its other bytes', () => {
    const file = new TextDecoder().decode(sealed(`é${mark}日`));
    expect(file.replace(/[0-9a-f]{14}/, '0'.repeat(14))).toBe(`é${mark}日`);
  });
});
