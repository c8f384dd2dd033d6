import { describe, expect, it } from 'vitest';
import { readSvg } from '../../../calc/read-drawing/svg/read-svg.ts';
import { notPicked } from './said.ts';

const inMm = (content: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="1200mm" height="500mm" viewBox="0 0 1200 500">${content}</svg>`;

describe('several closed curves', () => {
  it('are told by their sizes where they have no names, and a line that was drawn twice', () => {
    const rect = (width: number, x = 0) => `<rect x="${x}" width="${width}" height="50"/>`;
    expect(notPicked(readSvg(inMm(rect(40, 300) + rect(100) + rect(70, 200))))).toBe(
      'file-missing: 3 closed curves, the largest 100 by 50 and 70 by 50; put the outline on a layer of its own',
    );
    expect(notPicked(readSvg(inMm(rect(100) + rect(100.01))))).toBe(
      'file-missing: 2 closed curves; the two largest are alike and in one place, 100.01 by 50: a line drawn twice? Delete one, or put the outline on a layer of its own',
    );
    // of the same size, but elsewhere or of another form
    for (const other of [rect(100, 200), '<rect width="100" height="50" rx="20"/>'])
      expect(notPicked(readSvg(inMm(rect(100) + other)))).toContain('the largest 100 by 50 and 100 by 50;');
  });
});
