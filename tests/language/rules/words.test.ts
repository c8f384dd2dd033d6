import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { reason, text } from '../../../calc/figure/index.ts';
import { withReasons } from '../../../language/rules/kit/words.ts';
import { sayText } from '../../../language/view/text.ts';

const part = fc
  .record({ word: fc.stringMatching(/^[a-z]{1,8}$/), value: fc.stringMatching(/^[A-Za-z0-9 ]{0,8}$/) })
  .map(({ word, value }) => text(`the ${word} is {${word}}`, { [word]: value }));

describe('texts put together', () => {
  it('say the same as each by itself, however their figures are called', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(part, { minLength: 1, maxLength: 3, selector: (each) => JSON.stringify(each) }),
        (parts) => {
          const said = withReasons(
            text('it'),
            parts.map((each) => reason('typed', each)),
          );
          expect(sayText(said)).toBe(`it: ${parts.map((each) => sayText(each)).join('; ')}`);
        },
      ),
    );
  });

  it('tell the first reasons, each once, and how many more there are', () => {
    const reasons = ['a', 'b', 'b', 'c', 'd'].map((name) => reason('typed', text('{name} is missing', { name })));
    expect(sayText(withReasons(text('it cannot be told'), reasons))).toBe(
      'it cannot be told: a is missing; b is missing; c is missing; and 1 more',
    );
  });
});
