import { expect, it } from 'vitest';
import { readSize } from '../../extension/new/size.ts';

it.each([
  ['720 by 520', 0.72, 0.52],
  ['520 mm x 720 mm', 0.72, 0.52],
  ['72 cm by 0.52 m', 0.72, 0.52],
  ['28 x 20 in', 0.7112, 0.508], // an inch is 25.4 mm exactly: NIST SP 811, appendix B
  ['600 mm', 0.6, 0.6],
])('reads %s', (text, length, width) => {
  const size = readSize(text);
  expect(size?.length).toBeCloseTo(length, 9);
  expect(size?.width).toBeCloseTo(width, 9);
});

it.each(['', 'large', '720 by', '720 by 20', '9 m by 1 m', '-720 by 520'])('takes "%s" for no size', (text) => {
  expect(readSize(text)).toBeUndefined();
});
