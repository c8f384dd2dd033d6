import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bagFilm, tapeLength } from '../../../calc/bag/film.ts';
import { pleatPairs, pleatsNeeded } from '../../../calc/bag/pleats.ts';
import { sheetOver } from '../../../calc/bag/sheet.ts';
import { expectWithin, problemOf, valueOf } from '../outcomes.ts';

const span = { length: 1.4, width: 0.6, stackHeight: 0.022, hem: 0.02 };

describe('a bag', () => {
  it('has film for the way tape to tape, its pleats and its hem', () => {
    const film = valueOf(bagFilm(span, { count: 4, height: 0.04 }));
    expectWithin(film.length, 1.4 + 0.08 + 0.04, 1e-12);
    expectWithin(film.width, 0.6 + 0.08 + 0.04, 1e-12);
    expectWithin(film.area, film.length * film.width, 1e-12);
  });

  it('is never shorter than the girth over the stack', () => {
    const pleats = fc.record({
      count: fc.integer({ min: 0, max: 40 }),
      height: fc.double({ min: 0, max: 0.1, noNaN: true }),
    });
    fc.assert(
      fc.property(pleats, fc.double({ min: 0, max: 0.3, noNaN: true }), (p, stackHeight) => {
        const film = valueOf(bagFilm({ ...span, stackHeight }, p));
        expect(film.length).toBeGreaterThanOrEqual(1.4 + 2 * stackHeight);
        expect(film.width).toBeGreaterThanOrEqual(0.6 + 2 * stackHeight);
      }),
    );
  });

  it('shares its pleats over the sides by their length, in pairs', () => {
    expect(pleatPairs(4, 1.4, 0.6)).toEqual({ along: 1, across: 1 });
    expect(pleatPairs(10, 0.6, 1.4)).toEqual({ along: 2, across: 3 });
    expect(pleatPairs(0, 1, 1)).toEqual({ along: 0, across: 0 });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 60 }), fc.double({ min: 0.1, max: 9, noNaN: true }), (n, length) => {
        const { along, across } = valueOf(pleatPairs(n, length, 1));
        expect(2 * (along + across)).toBe(2 * Math.ceil(n / 2));
        expect(Math.min(along, across)).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('needs pleats that make up for the way up and down the stack on each side', () => {
    expect(pleatsNeeded(0.022, 0.04)).toBe(4);
    expect(pleatsNeeded(0.09, 0.04)).toBe(12);
    expect(pleatsNeeded(0, 0.04)).toBe(0);
    expect(problemOf(pleatsNeeded(0.02, 0))).toMatch(/pleat/);
  });

  it('is taped all round, up and down each pleat', () => {
    expectWithin(valueOf(tapeLength(4, { count: 4, height: 0.04 })), 4.32, 1e-12);
    expect(problemOf(tapeLength(4, { count: 4.5, height: 0.04 }))).toMatch(/number of pleats/);
  });
});

describe('a sheet over a part', () => {
  const deck = { kind: 'rounded', length: 1.18, width: 0.42, corner: 0.14 } as const;

  it('reaches past the edge, and climbs it', () => {
    const area = 0.4956 - (4 - Math.PI) * 0.0196;
    const round = 3.2 - (8 - 2 * Math.PI) * 0.14;
    const flat = area + round * 0.08 + Math.PI * 0.0064;
    expectWithin(valueOf(sheetOver(deck, 0.08)), flat, 1e-12);
    // cut flat, 100 mm out in all: Steiner's formula
    expectWithin(valueOf(sheetOver(deck, 0.08, 0.02)), area + round * 0.1 + Math.PI * 0.01, 1e-12);
  });

  it('stops short of the edge, up to nothing', () => {
    expectWithin(valueOf(sheetOver(deck, -0.04, 0.02)), 1.1 * 0.34 - (4 - Math.PI) * 0.01, 1e-12);
    expect(sheetOver(deck, -1)).toBe(0);
    expect(problemOf(sheetOver(deck, Number.NaN))).toMatch(/past the edge/);
  });
});
