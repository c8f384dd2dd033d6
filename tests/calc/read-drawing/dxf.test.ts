import DxfParser from 'dxf-parser';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contourArea, contourPerimeter } from '../../../calc/outline/contour-measure.ts';
import { readDxf } from '../../../calc/read-drawing/dxf/read-dxf.ts';
import { blocks, entities, header, line, mm, pairs, sled, sledArea } from './dxf-pairs.ts';
import { areaOf, boxOf, notPicked, picked, problemsOf, said } from './said.ts';

describe('a DXF drawing', () => {
  it('keeps bulges as the arcs they are: tan of a quarter of the angle (AutoCAD DXF reference, group 42)', () => {
    const { contour, curve } = picked(readDxf(mm + entities(...sled)));
    expect(areaOf(curve)).toBeCloseTo(sledArea, 6);
    expect(contourPerimeter(contour) * 1e3).toBeCloseTo(2 * (900 + 140) + 2 * Math.PI * 140, 6);
    expect(contour.filter((v) => v.bulge !== undefined).length).toBe(4);
    expect(boxOf(curve)).toEqual([0, 0, 1180, 420]);
    expect(curve.id).toBe('2F');
  });

  it('reads lines and arcs in any order and direction, and joins their ends', () => {
    const drawing = readDxf(
      mm +
        entities(
          ...[0, 'ARC', 8, 'Cut', 10, 300, 20, 100, 40, 100, 50, 270, 51, 90],
          ...line(-300, 200, 300, 200.04),
          ...line(-300, 0, 300, 0),
          ...[0, 'ARC', 8, 'Cut', 10, -300, 20, 100, 40, 100, 50, 90, 51, 270],
        ),
    );
    const { curve } = picked(drawing);
    expect(Math.abs(areaOf(curve) / (600 * 200 + Math.PI * 1e4) - 1)).toBeLessThan(1e-3);
    expect(drawing.joinedOver * 1e3).toBeCloseTo(0.04, 6);
    expect(
      notPicked(readDxf(mm + entities(...line(0, 0, 100, 0), ...line(100, 0, 100, 50), ...line(100, 50, 0, 3)))),
    ).toBe('open: the curve is open by 3: it begins at (0, 0) and ends at (0, 3) of the drawing');
  });

  it('reads circles, ellipses, splines and old polylines', () => {
    const circle = picked(readDxf(mm + entities(0, 'CIRCLE', 8, 0, 10, 5, 20, 6, 40, 100)));
    expect(areaOf(circle.curve)).toBeCloseTo(Math.PI * 1e4, 6);
    expect(circle.contour.length).toBe(2);
    const ellipse = picked(
      readDxf(mm + entities(0, 'ELLIPSE', 8, 0, 10, 0, 20, 0, 11, 590, 21, 0, 40, 210 / 590, 41, 0, 42, 2 * Math.PI)),
    );
    expect(Math.abs(areaOf(ellipse.curve) / (Math.PI * 590 * 210) - 1)).toBeLessThan(1e-5);
    const old = readDxf(
      pairs(0, 'SECTION', 2, 'ENTITIES', 0, 'POLYLINE', 8, 'Cut', 66, 1, 70, 1) +
        pairs(0, 'VERTEX', 8, 'Cut', 10, 0, 20, 0, 42, 1) +
        pairs(0, 'VERTEX', 8, 'Cut', 10, 100, 20, 0, 42, 1) +
        pairs(0, 'SEQEND', 0, 'ENDSEC', 0, 'EOF'),
    );
    expect(areaOf(picked(old).curve)).toBeCloseTo(Math.PI * 2500, 6);
    // A circle as a rational spline of degree 2: nine control points. Source: Piegl and Tiller 1997, "The NURBS Book", section 7.5.
    const w = Math.SQRT1_2;
    const ring = [
      [1, 0],
      [1, 1],
      [0, 1],
      [-1, 1],
      [-1, 0],
      [-1, -1],
      [0, -1],
      [1, -1],
      [1, 0],
    ] as const;
    const spline = [0, 'SPLINE', 8, 'Cut', 70, 12, 71, 2, 72, 12, 73, 9]
      .concat([0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4].flatMap((k) => [40, k]))
      .concat(ring.flatMap((_, i) => [41, i % 2 === 0 ? 1 : w]))
      .concat(ring.flatMap(([x, y]) => [10, 100 * x, 20, 100 * y, 30, 0]));
    const round = picked(readDxf(mm + entities(...spline)));
    expect(Math.abs(areaOf(round.curve) / (Math.PI * 1e4) - 1)).toBeLessThan(1e-6);
    // A cubic Bezier curve is a spline of one piece: the area under this one is 3/5 of its square of control points.
    const bezier = [0, 'SPLINE', 8, 'Cut', 70, 8, 71, 3, 72, 8, 73, 4]
      .concat([0, 0, 0, 0, 1, 1, 1, 1].flatMap((k) => [40, k]))
      .concat(
        [
          [0, 0],
          [0, 100],
          [100, 100],
          [100, 0],
        ].flatMap(([x = 0, y = 0]) => [10, x, 20, y]),
      );
    expect(areaOf(picked(readDxf(mm + entities(...bezier, ...line(100, 0, 0, 0)))).curve)).toBeCloseTo(6000, 1);
  });

  it('reads lines that end in a carriage return alone, and past empty lines before the first pair', () => {
    const source = mm + entities(...sled);
    for (const text of [
      source.replaceAll('\r\n', '\r'),
      `\r\n \r\n${source}`,
      `\uFEFF\n${source.replaceAll('\r', '')}`,
    ]) {
      const drawing = readDxf(text);
      expect(problemsOf(drawing)).toEqual([]);
      expect(areaOf(picked(drawing).curve)).toBeCloseTo(sledArea, 6);
    }
    // an empty line elsewhere is a pair gone wrong, at its line in the file
    expect(problemsOf(readDxf(`\n${pairs(0, 'SECTION', 2, 'ENTITIES')}\n`.concat(pairs(0, 'EOF'))))[0]).toMatch(
      /^broken 6:/,
    );
    expect(problemsOf(readDxf('\n\n'))).not.toEqual([]);
  });

  it('says why a spline that has fit points alone is left out, and what to do', () => {
    const through = [
      [0, 'SPLINE', 8, 'Cut', 70, 8, 71, 3, 72, 0, 73, 0, 74, 3],
      [11, 0, 21, 0, 11, 50, 21, 9, 11, 90, 21, 0],
    ].flat();
    expect(problemsOf(readDxf(mm + entities(...through)))[0]).toMatch(
      /^broken \d+: a spline has fit points only and is left out, because .*: save it with control points or as a polyline$/,
    );
    expect(problemsOf(readDxf(mm + entities(0, 'SPLINE', 8, 'Cut', 70, 8, 71, 3)))[0]).toContain(
      'SPLINE cannot be read',
    );
  });

  it('sets blocks where they are inserted: moved, turned, scaled, mirrored, in rows, one in another', () => {
    const block = (name: string, ...inside: readonly (string | number)[]) =>
      [0, 'BLOCK', 8, 0, 2, name, 70, 0, 10, 10, 20, 10, ...inside, 0, 'ENDBLK', 8, 0] as const;
    const square = [
      0,
      'LWPOLYLINE',
      8,
      0,
      70,
      1,
      10,
      10,
      20,
      10,
      10,
      110,
      20,
      10,
      10,
      110,
      20,
      60,
      10,
      10,
      20,
      60,
    ] as const;
    const insert = (...more: readonly (string | number)[]) => [0, 'INSERT', 8, 'Cut', 2, 'sq', ...more] as const;
    const drawn = (...words: readonly (string | number)[]) =>
      readDxf(mm + blocks(...block('SQ', ...square)) + entities(...words));
    expect(boxOf(picked(drawn(...insert(10, 5, 20, 7))).curve)).toEqual([5, 7, 105, 57]);
    expect(boxOf(picked(drawn(...insert(10, 0, 20, 0, 50, 90))).curve)).toEqual([-50, 0, 0, 100]);
    expect(boxOf(picked(drawn(...insert(10, 0, 20, 0, 41, 2, 42, -1))).curve)).toEqual([0, -50, 200, 0]);
    expect(boxOf(picked(drawn(...insert(10, 0, 20, 0, 230, -1))).curve)).toEqual([-100, 0, 0, 50]);
    expect(
      drawn(...insert(10, 0, 20, 0, 70, 3, 71, 2, 44, 200, 45, 100)).curves.map((c) => boxOf(c).slice(0, 2)),
    ).toEqual([
      [0, 0],
      [200, 0],
      [400, 0],
      [0, 100],
      [200, 100],
      [400, 100],
    ]);
    expect(drawn(...insert()).layers).toEqual(['Cut']);
    const nested = readDxf(
      mm +
        blocks(...block('SQ', ...square), ...block('TWO', ...insert(10, 20, 20, 20))) +
        entities(0, 'INSERT', 8, 'Cut', 2, 'TWO'),
    );
    expect(boxOf(picked(nested, { layer: 'sq' }).curve)).toEqual([10, 10, 110, 60]);
  });

  it('is as large as its unit says', () => {
    const cases: readonly [readonly (string | number)[], number, string, string | undefined][] = [
      [[9, '$INSUNITS', 70, 4], 1180, 'mm', undefined],
      [[9, '$INSUNITS', 70, 5], 11800, 'cm', undefined],
      [[9, '$INSUNITS', 70, 1], 1180 * 25.4, 'inch', undefined],
      [[9, '$INSUNITS', 70, 1, 9, '$MEASUREMENT', 70, 1], 1180 * 25.4, 'inch', 'says millimetres elsewhere'],
      [[9, '$INSUNITS', 70, 0, 9, '$MEASUREMENT', 70, 1], 1180, 'mm', undefined],
      [[9, '$MEASUREMENT', 70, 0], 1180, 'mm', 'says inches elsewhere'],
      [[], 1180, 'mm', 'not said'],
    ];
    for (const [variables, length, name, unclear] of cases) {
      const drawing = readDxf(header(...variables) + entities(...sled));
      expect(boxOf(picked(drawing).curve)[2]).toBeCloseTo(length, 6);
      expect([drawing.unit.name, drawing.unit.unclear]).toEqual([name, unclear]);
    }
  });

  it('is picked by layer; layers that are off are taken only by name', () => {
    const table = pairs(0, 'SECTION', 2, 'TABLES', 0, 'TABLE', 2, 'LAYER', 70, 3);
    const rows = pairs(
      0,
      'LAYER',
      2,
      'Cut',
      70,
      0,
      62,
      7,
      0,
      'LAYER',
      2,
      'Old',
      70,
      0,
      62,
      -7,
      0,
      'LAYER',
      2,
      'Empty',
      70,
      0,
      62,
      7,
    );
    const source = `${mm}${table}${rows}${pairs(0, 'ENDTAB', 0, 'ENDSEC')}${entities(...sled, 0, 'CIRCLE', 8, 'Old', 10, 0, 20, 0, 40, 7)}`;
    const drawing = readDxf(source);
    expect(drawing.layers).toEqual(['Cut', 'Old']);
    expect(boxOf(picked(drawing).curve)).toEqual([0, 0, 1180, 420]);
    expect(boxOf(picked(drawing, { layer: 'old' }).curve)).toEqual([-7, -7, 7, 7]);
    expect(notPicked(drawing, { layer: 'Kontur' })).toBe(
      'file-missing: no layer Kontur in the drawing; it has Cut, Old',
    );
    const letters = readDxf(mm + entities(0, 'CIRCLE', 8, 'Au\\U+00DFen', 10, 0, 20, 0, 40, 7));
    expect(letters.layers).toEqual(['Außen']);
  });

  it('agrees with another reader about what is in a file', () => {
    const source = mm + entities(...sled, ...line(0, 0, 7, 9), 0, 'CIRCLE', 8, 'Holes', 10, 500, 20, 200, 40, 30);
    const other = new DxfParser().parseSync(source);
    const mine = readDxf(source);
    expect(mine.curves.map((c) => c.layer).sort()).toEqual((other?.entities ?? []).map((e) => e.layer).sort());
    expect(other?.header.$INSUNITS).toBe(4);
    const poly = (other?.entities ?? []).find((e) => e.type === 'LWPOLYLINE');
    const vertices =
      poly !== undefined && 'vertices' in poly ? (poly.vertices as { x: number; y: number; bulge?: number }[]) : [];
    const drawn = mine.curves.find((c) => c.layer === 'Cut' && c.closed)?.line ?? [];
    expect(drawn.map((v) => [v.x, v.y, v.bulge ?? 0].map((n) => Math.round(n * 1e9) / 1e9))).toEqual(
      vertices.map((v) => [v.x / 1e3, v.y / 1e3, v.bulge ?? 0].map((n) => Math.round(n * 1e9) / 1e9)),
    );
  });

  it('says what is malformed, and where', () => {
    const cases: readonly [string, string][] = [
      ['AutoCAD Binary DXF\r\n\u001a\0', 'refused -: this is a binary DXF file; save it as ASCII DXF'],
      ['', 'broken 1: the file ends in the middle: EOF is missing'],
      [
        'not a drawing',
        'broken 1: a DXF file is pairs of a number and a value; here the number is missing: not a drawing',
      ],
      [mm + entities(...sled).slice(0, -7), 'broken 75: the file ends in the middle: EOF is missing'],
      [
        mm + entities(0, 'CIRCLE', 8, 0, 10, 'x', 20, 0, 40, 5),
        'broken 23: a place in the drawing is no number, or further away than 100 m; the curve is left out',
      ],
      [mm + entities(0, 'SPLINE', 8, 0, 71, 3, 10, 0, 20, 0), 'broken 23: SPLINE cannot be read and is left out'],
      [mm + entities(0, 'INSERT', 8, 0, 2, 'gone'), 'broken 23: the block gone is inserted, but not there'],
      [
        mm + entities(0, 'CIRCLE', 8, 0, 10, 0, 20, 0, 40, 5, 210, 1, 230, 0),
        'left out 23: CIRCLE does not lie in the plane of the drawing and is left out',
      ],
    ];
    for (const [source, message] of cases) expect(problemsOf(readDxf(source))[0], source.slice(-60)).toBe(message);
  });

  it('is read in bounded time and memory, whatever it does', () => {
    const nest = Array.from({ length: 20 }, (_, i) => [
      ...[0, 'BLOCK', 8, 0, 2, `B${i}`, 10, 0, 20, 0],
      ...Array.from({ length: 8 }, () =>
        i === 0 ? [0, 'CIRCLE', 8, 0, 10, 0, 20, 0, 40, 1] : [0, 'INSERT', 8, 0, 2, `B${i - 1}`],
      ).flat(),
      ...[0, 'ENDBLK'],
    ]).flat();
    const long = (...inside: readonly string[]) =>
      `${mm}${pairs(0, 'SECTION', 2, 'ENTITIES')}${inside.join('')}${pairs(0, 'ENDSEC', 0, 'EOF')}`;
    const bombs: readonly string[] = [
      mm + blocks(...nest) + entities(0, 'INSERT', 8, 0, 2, 'B6'),
      mm + blocks(...nest) + entities(0, 'INSERT', 8, 0, 2, 'B19'),
      mm + blocks(0, 'BLOCK', 2, 'X', 0, 'INSERT', 2, 'X', 0, 'ENDBLK') + entities(0, 'INSERT', 2, 'X'),
      mm + blocks(0, 'BLOCK', 2, 'X', 0, 'ENDBLK') + entities(0, 'INSERT', 2, 'X', 70, 1e9, 71, 1e9),
      long(pairs(0, 'POINT').repeat(210_000)),
      long(...Array.from({ length: 60_000 }, (_, i) => pairs(...line(i, 0, i + 1, 0)))),
      long(...Array.from({ length: 60_000 }, (_, i) => pairs(...line(0, 0, i + 1, 5)))),
      long(
        pairs(0, 'SPLINE', 71, 25),
        ...Array.from({ length: 20_000 }, (_, i) => pairs(40, i)),
        ...Array.from({ length: 19_974 }, (_, i) => pairs(10, (i * 7919) % 1000, 20, (i * 104729) % 1000)),
      ),
      '0\n'.repeat(5_000_000),
      'x'.repeat(20_000_001),
    ];
    // what grew without bound would not end within the minute that the test has
    for (const bomb of bombs) expect(readDxf(bomb).curves.length).toBeLessThanOrEqual(200_000);
  }, 60_000);

  it('never throws, whatever is cut or swapped in it', () => {
    const whole =
      mm +
      blocks(0, 'BLOCK', 2, 'X', ...line(0, 0, 5, 5), 0, 'ENDBLK') +
      entities(...sled, 0, 'INSERT', 8, 0, 2, 'X', ...line(0, 0, 7, 9));
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: whole.length }),
        fc.integer({ min: 0, max: 60 }),
        fc.string(),
        (at, cut, put) => {
          const drawing = readDxf(whole.slice(0, at) + put + whole.slice(at + cut));
          for (const problem of drawing.problems) expect(said(problem.message)).not.toBe('');
          for (const { line: vertices } of drawing.curves) expect(Number.isFinite(contourArea(vertices))).toBe(true);
        },
      ),
      { numRuns: 400 },
    );
    const word = fc.oneof(
      fc.integer({ min: -5, max: 250 }),
      fc.constantFrom('SECTION', 'ENTITIES', 'LINE', 'ARC', 'SPLINE', 'INSERT', 'ENDSEC', 'EOF'),
      fc.double(),
    );
    fc.assert(fc.property(fc.array(word), (words) => void readDxf(entities(...words))));
  }, 60_000);
});
