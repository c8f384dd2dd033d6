import fc from 'fast-check';
import SVGPathCommander from 'svg-path-commander';
import svgpath from 'svgpath';
import { describe, expect, it } from 'vitest';
import { contourArea, contourBox, contourPerimeter } from '../../../calc/outline/contour-measure.ts';
import { contourOf } from '../../../calc/outline/contour-of.ts';
import { shapeArea } from '../../../calc/outline/measure.ts';
import { type PathCommand, readCommands } from '../../../calc/read-drawing/path-commands.ts';
import { readPathOutline } from '../../../calc/read-drawing/path-outline.ts';
import { isPicked, type Picked } from '../../../calc/read-drawing/pick.ts';
import { expectWithin, valueOf } from '../outcomes.ts';
import { said } from './said.ts';

function outlineOf(data: string): Picked {
  const found = readPathOutline(data);
  if (!isPicked(found)) throw new Error(JSON.stringify(found.message));
  return found;
}

function faultOf(data: string): string {
  const found = readPathOutline(data);
  if (isPicked(found)) throw new Error('read');
  return `${found.rule}: ${said(found.message)}`;
}

describe('path data', () => {
  it('keeps circular arcs true', () => {
    const capsule = outlineOf('M -300 -100 H 300 A 100 100 0 0 1 300 100 H -300 A 100 100 0 0 1 -300 -100 Z').contour;
    expectWithin(contourArea(capsule), 0.6 * 0.2 + Math.PI * 0.01, 1e-12);
    expectWithin(contourPerimeter(capsule), 1.2 + 2 * Math.PI * 0.1, 1e-12);
    expect(capsule.length).toBe(4);
    // Nearly the whole circle, by the large flag.
    expectWithin(contourArea(outlineOf('M 100 0 A 100 100 0 1 0 0 100 L 0 0 Z').contour), 0.75 * Math.PI * 0.01, 1e-12);
  });

  it('follows the notes on arcs of SVG 1.1, F.6: radii too small grow, radii of 0 are straight, equal ends are nothing', () => {
    expectWithin(contourArea(outlineOf('M 0 0 A 1 1 0 0 0 200 0 Z').contour), (Math.PI * 0.01) / 2, 1e-9);
    expectWithin(contourArea(outlineOf('M 0 0 A -100 -100 0 0 0 200 0 Z').contour), (Math.PI * 0.01) / 2, 1e-9);
    expectWithin(contourArea(outlineOf('M 0 0 A 0 5 0 0 0 200 0 L 0 200 Z').contour), 0.02, 1e-12);
    expectWithin(contourArea(outlineOf('M 0 0 L 200 0 A 5 5 0 0 0 200 0 L 0 200 Z').contour), 0.02, 1e-12);
    // An ellipse turned by 30 degrees has the area of the one that is not.
    expectWithin(contourArea(outlineOf('M 100 0 A 200 100 30 1 0 100.001 0 Z').contour), Math.PI * 0.02, 1e-4);
  });

  it('looks as a drawing program shows it: y of the data runs downwards', () => {
    const [low, high] = contourBox(outlineOf('M 0 0 L 100 0 L 0 50 Z').contour);
    expect([low.x, low.y, high.x, high.y]).toEqual([0, -0.05, 0.1, 0]);
  });

  const paths = [
    'M 10 80 C 40 10, 65 10, 95 80 S 150 150, 180 80 L 180 200 L 10 200 Z',
    'm 0 0 q 200 -300 400 0 t 200 300 l -600 0 z',
    'M0 0c50-20 120-20 170 0s40 120-20 160-120 20-150-20-40-100 0-140z',
    'M 590 0 A 590 210 0 0 1 -590 0 A 590 210 0 0 1 590 0 Z',
    'M 100,200 h 300 v-120 a 60 30 -20 0 1 -120 -20 l -200 10 z',
  ];
  it.each(paths)('measures %s as another library does', (data) => {
    const { contour } = outlineOf(data);
    const other = new SVGPathCommander(data);
    // That library integrates lengths by Gauss-Legendre; for areas it makes half an ellipse two cubics, which is off by 1.1e-3.
    expectWithin(contourPerimeter(contour) * 1e3, other.getTotalLength(), 3e-4);
    const curve = SVGPathCommander.pathToCurve(SVGPathCommander.normalizePath(data));
    expectWithin(
      contourArea(contour) * 1e6,
      Math.abs(SVGPathCommander.getPathArea(curve)),
      /a/i.test(data) ? 2e-3 : 1e-5,
    );
    const [low, high] = contourBox(contour);
    const box = SVGPathCommander.getPathBBox(data);
    for (const [mine, its] of [
      [low.x, box.x],
      [-high.y, box.y],
      [high.x, box.x2],
      [-low.y, box.y2],
    ] as const)
      expect(Math.abs(mine * 1e3 - its)).toBeLessThan(0.02);
  });

  it('reads what another library reads: relative, smooth and repeated commands, glued flags and signs', () => {
    const coordinate = fc.integer({ min: -990, max: 990 }).map((n) => String(n / 10).replace(/^(-?)0\./, '$1.'));
    const glued = fc.constantFrom('00', '01', '10', '11', '0 0', '1,1').map((flags) => `5 7 20 ${flags}`);
    const arity = { M: 2, L: 2, H: 1, V: 1, C: 6, S: 4, Q: 4, T: 2 };
    const plain = fc
      .tuple(
        fc.constantFrom(...(Object.keys(arity) as (keyof typeof arity)[])),
        fc.boolean(),
        fc.integer({ min: 1, max: 3 }),
      )
      .chain(([letter, relative, times]) =>
        fc
          .array(coordinate, { minLength: arity[letter] * times, maxLength: arity[letter] * times })
          .map((numbers) => `${relative ? letter.toLowerCase() : letter}${numbers.join(' ').replace(/ -/g, '-')}`),
      );
    const arc = fc
      .tuple(fc.constantFrom('A', 'a'), glued, coordinate, coordinate)
      .map(([letter, flags, x, y]) => `${letter}${flags}${x.startsWith('-') ? x : ` ${x}`} ${y}`);
    const command = fc.oneof({ weight: 5, arbitrary: plain }, arc, fc.constantFrom('z', 'Z'));
    fc.assert(
      fc.property(fc.array(command, { maxLength: 9 }), (commands) => {
        const data = `M1 2${commands.join('')}`;
        const mine: PathCommand[] = [];
        expect(readCommands(data, (one) => mine.push(one) > 0)).toBeUndefined();
        const other: (string | number)[][] = [];
        svgpath(data)
          .abs()
          .unshort()
          .iterate((one, _, x, y) => {
            const [letter = '', a = 0] = one as [string, number];
            if (letter === 'H') other.push(['L', a, y]);
            else if (letter === 'V') other.push(['L', x, a]);
            else other.push(/z/i.test(letter) ? ['Z'] : [...one]);
          });
        const rounded = (list: readonly (readonly (string | number)[])[]) =>
          list.map((one) => one.map((v) => (typeof v === 'number' ? Math.round(v * 1e6) / 1e6 + 0 : v)));
        expect(rounded(mine), data).toEqual(rounded(other));
      }),
    );
  });

  it('reads a path in time that grows with its length alone', () => {
    const long = (points: number) => `M0 0L${'12.5 7.25 '.repeat(points)}`;
    const seconds = (data: string) => {
      const before = process.cpuUsage().user;
      readCommands(data, () => true);
      return (process.cpuUsage().user - before) / 1e6;
    };
    seconds(long(20_000));
    // ten times as long; squared it would be a hundred times as much
    const [short, ten] = [long(40_000), long(400_000)].map((data) => Math.min(...[1, 2, 3].map(() => seconds(data))));
    expect(ten).toBeLessThan(30 * short! + 0.1);
  });

  it('says what cannot be read, and where', () => {
    expect(faultOf('M 0 0 L 10 20 X 3')).toBe('degenerate: the path has a command that SVG does not know: X');
    expect(faultOf('M 0 0 L 10 x')).toBe('degenerate: the path data cannot be read at character 12: x');
    expect(faultOf('M 0 0 L 10')).toBe('degenerate: the path data ends at character 11, where a number is missing');
    expect(faultOf('')).toBe('degenerate: the drawing holds no curves');
    expect(faultOf('L 0 0')).toContain('it begins with M');
    expect(faultOf('M 0 0 L 1e999 0 L 0 5 Z')).toContain('no number, or further away than 100 m');
    expect(faultOf('M 0 0 L 200 0 L 200 100 L 0 3.5')).toBe(
      'open: the curve is open by 3.5: it begins at (0, 0) and ends at (0, 3.5) of the drawing',
    );
    expect(faultOf('M 0 0 L 100 100 L 100 0 L 0 100 Z')).toContain('self-crossing: ');
    expect(faultOf('M 0 0 L 100 100 L 100 0 L 0 100 Z')).toContain('at (50, 50)');
    expect(faultOf('M 0 0 H 9 V 9 Z M 20 20 H 29 V 29 Z')).toContain('2 closed curves');
    expect(faultOf('M 0 0 H 100 Z')).toContain('degenerate: ');
  });

  it('is an outline like any other', () => {
    const shape = { kind: 'path', data: 'M -590 0 A 590 210 0 0 0 590 0 A 590 210 0 0 0 -590 0 Z' } as const;
    expectWithin(valueOf(shapeArea(shape)), Math.PI * 0.59 * 0.21, 1e-5);
    expect(valueOf(contourOf(shape)).length).toBeLessThan(300);
  });

  it('never throws and always ends', () => {
    const word = fc.oneof(
      fc.constantFrom(
        'M',
        'm',
        'L',
        'l',
        'H',
        'v',
        'C',
        'c',
        'S',
        'Q',
        't',
        'A',
        'a',
        'Z',
        'z',
        'R',
        'x',
        '-',
        '.',
        'e9',
        '1e400',
      ),
      fc.double({ min: -1e4, max: 1e4, noNaN: true }).map(String),
      fc.integer({ min: 0, max: 1 }).map(String),
    );
    fc.assert(
      fc.property(fc.array(word, { maxLength: 60 }), (words) => {
        readPathOutline(words.join(' '));
        readPathOutline(`M 0 0 ${words.join(' ')}`);
      }),
      { numRuns: 400 },
    );
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (data) => {
        readPathOutline(data);
      }),
    );
  });
});
