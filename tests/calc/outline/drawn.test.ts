import { describe, expect, it } from 'vitest';
import { Bench } from '../../../calc/figure/bench.ts';
import { isKnown } from '../../../calc/figure/index.ts';
import { partFrame } from '../../../calc/outline/part.figure.ts';
import { readSvg } from '../../../calc/read-drawing/svg/read-svg.ts';
import { plainStyle, show } from '../../../language/view/text.ts';
import { bookOf, fact, mm, SHOP, SLED, SLED_TOOL } from '../../harness/sled-model.ts';

const drawing = readSvg(
  '<svg xmlns="http://www.w3.org/2000/svg" width="1200mm" height="500mm" viewBox="0 0 1200 500"><rect width="1180" height="420"/></svg>',
);

describe('an outline from a drawing', () => {
  const reasonsOn = (tool: typeof SLED_TOOL) => {
    const book = { ...bookOf(undefined, SHOP, [tool]), drawing: () => ({ drawing }) };
    const part = { ...SLED.part!, outline: { kind: 'file' as const, file: 'deck.svg', address: 'file:///deck.svg' } };
    const frame = new Bench({ ...SLED, part }, book).ask(partFrame);
    if (!isKnown(frame)) throw new Error(JSON.stringify(frame));
    expect(frame.value.bounds.length).toBeCloseTo(1.18, 9);
    return JSON.stringify(frame.reasons, (key, value) =>
      key === 'text' && typeof value === 'object' ? show(value, plainStyle) : value,
    );
  };
  it('says on a curved tool that its sizes lie along the face, and nothing of that on a flat one', () => {
    const curved = { ...SLED_TOOL, curved: fact('tool/flat', 'curved', { across: mm(600) }) };
    expect(reasonsOn(curved)).toContain('measured along the curved face');
    expect(reasonsOn(SLED_TOOL)).not.toContain('curved');
  });
});
