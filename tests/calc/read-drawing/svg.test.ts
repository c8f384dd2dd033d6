import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSvg } from '../../../calc/read-drawing/svg/read-svg.ts';
import { areaOf, boxOf, notPicked, picked, problemsOf, said } from './said.ts';

const inMm = (content: string, more = '') =>
  `<svg xmlns="http://www.w3.org/2000/svg" xmlns:ink="http://example.org/ink" width="1200mm" height="500mm" viewBox="0 0 1200 500"${more}>${content}</svg>`;

describe('an SVG drawing', () => {
  it('draws every basic shape of SVG 1.1, chapter 9', () => {
    const shapes: readonly [string, number, readonly number[]][] = [
      ['<rect x="10" y="20" width="100" height="50"/>', 5000, [10, -70, 110, -20]],
      ['<rect x="0" y="0" width="100" height="50" rx="10"/>', 5000 - (4 - Math.PI) * 100, [0, -50, 100, 0]],
      ['<rect width="100" height="50" rx="20" ry="10"/>', 5000 - (4 - Math.PI) * 200, [0, -50, 100, 0]],
      ['<rect width="100" height="50" ry="900"/>', Math.PI * 50 * 25, [0, -50, 100, 0]],
      ['<circle cx="50" cy="50" r="40"/>', Math.PI * 1600, [10, -90, 90, -10]],
      ['<ellipse cx="50" cy="50" rx="40" ry="20"/>', Math.PI * 800, [10, -70, 90, -30]],
      ['<polygon points="0,0 100,0 0,50"/>', 2500, [0, -50, 100, 0]],
      ['<polyline points="0 0 100 0 0 50 0 0"/>', 2500, [0, -50, 100, 0]],
      ['<path d="M0 0h100v50h-100z"/>', 5000, [0, -50, 100, 0]],
    ];
    for (const [shape, area, box] of shapes) {
      const { curve } = picked(readSvg(inMm(shape)));
      expect(Math.abs(areaOf(curve) / area - 1), shape).toBeLessThan(1e-4);
      expect(boxOf(curve), shape).toEqual(box);
    }
    expect(picked(readSvg(inMm('<circle r="40"/>'))).contour.every((v) => Math.abs((v.bulge ?? 0) - 1) < 1e-9)).toBe(
      true,
    );
  });

  it('is as large as its unit says', () => {
    const sized = (head: string, shape = '<rect width="100" height="50"/>') =>
      readSvg(`<svg xmlns="http://www.w3.org/2000/svg" ${head}>${shape}</svg>`);
    const cases: readonly [string, number, string, string | undefined][] = [
      ['width="100mm" height="50mm" viewBox="0 0 100 50"', 100, 'mm', undefined],
      ['width="100mm" height="50mm" viewBox="0 0 1000 500"', 10, 'mm', undefined],
      ['width="10cm" viewBox="0 0 100 50"', 100, 'cm', undefined],
      ['width="4in" viewBox="0 0 4 3"', 2540, 'in', undefined],
      ['width="72pt" height="72pt" viewBox="0 0 72 72"', 100 * (25.4 / 72), 'pt', undefined],
      ['width="100px" height="50px" viewBox="0 0 100 50"', 100 * (25.4 / 96), 'px', 'pixels'],
      ['width="100px" height="50px"', 100 * (25.4 / 96), 'px', 'pixels'],
      // the page has millimetres, the drawing pixels: programs put 96, 90 or 72 of them to the inch
      ['width="100mm" height="50mm"', 100 * (25.4 / 96), 'px', 'pixels'],
      ['viewBox="0 0 100 50"', 100, 'mm', 'not said'],
      ['width="100" height="50" viewBox="0 0 100 50"', 100, 'mm', 'not said'],
      ['width="100%" height="100%"', 100, 'mm', 'not said'],
      ['', 100, 'mm', 'not said'],
    ];
    for (const [head, length, name, unclear] of cases) {
      const drawing = sized(head);
      const box = boxOf(picked(drawing).curve);
      expect((box[2] ?? 0) - (box[0] ?? 0), head).toBeCloseTo(length, 2);
      expect([drawing.unit.name, drawing.unit.unclear], head).toEqual([name, unclear]);
    }
    // The smaller scale holds unless the drawing may be stretched (SVG 1.1, section 7.8).
    expect(boxOf(picked(sized('width="200mm" height="50mm" viewBox="0 0 100 50"')).curve)).toEqual([0, -50, 100, 0]);
    expect(
      boxOf(picked(sized('width="200mm" height="50mm" viewBox="0 0 100 50" preserveAspectRatio="none"')).curve),
    ).toEqual([0, -50, 200, 0]);
    expect(
      boxOf(picked(sized('width="100mm" viewBox="0 0 100 50"', '<rect width="10mm" height="1cm"/>')).curve)[2],
    ).toBeCloseTo(37.795, 3);
  });

  it('says of a share of a page that it has no size', () => {
    for (const [shape, share] of [
      ['<rect width="50%" height="50"/>', 'width="50%"'],
      ['<circle cx="9" cy=" 12.5 % " r="4"/>', 'cy="12.5 %"'],
    ] as const)
      expect(problemsOf(readSvg(inMm(shape)))).toEqual([
        `broken 1: ${share} is a share of a page, which has no size at the bench: give it in mm; the curve is left out`,
      ]);
    expect(problemsOf(readSvg(inMm('<rect width="wide" height="50"/>')))).toEqual([
      'broken 1: a place in the drawing is no number, or further away than 100 m; the curve is left out',
    ]);
  });

  it('moves, turns, stretches and nests', () => {
    const rect = '<rect width="100" height="50"/>';
    const cases: readonly [string, readonly number[]][] = [
      [`<g transform="translate(10 20)">${rect}</g>`, [10, -70, 110, -20]],
      [`<g transform="translate(10,20) scale(2)">${rect}</g>`, [10, -120, 210, -20]],
      [`<g transform="rotate(90)">${rect}</g>`, [-50, -100, 0, 0]],
      [`<g transform="rotate(90 50 25)">${rect}</g>`, [25, -75, 75, 25]],
      [`<g transform="matrix(1 0 0 -1 0 500)">${rect}</g>`, [0, -500, 100, -450]],
      [`<g transform="skewX(45)">${rect}</g>`, [0, -50, 150, 0]],
      [`<svg x="5" y="6" width="200" height="100" viewBox="0 0 100 50">${rect}</svg>`, [5, -106, 205, -6]],
      [`<defs>${rect.replace('<rect', '<rect id="r"')}</defs><use href="#r" x="7" y="8"/>`, [7, -58, 107, -8]],
      [`<symbol id="s" viewBox="0 0 100 50">${rect}</symbol><use href="#s" width="50" height="25"/>`, [0, -25, 50, 0]],
      [`<a><switch><g>${rect}</g></switch></a>`, [0, -50, 100, 0]],
    ];
    for (const [content, box] of cases) expect(boxOf(picked(readSvg(inMm(content))).curve), content).toEqual(box);
    const stretched = picked(readSvg(inMm('<g transform="scale(2 1)"><circle r="10"/></g>'))).curve;
    expect(areaOf(stretched)).toBeCloseTo(Math.PI * 200, 1);
    const whole = picked(readSvg(inMm('<g transform="rotate(30) scale(3)"><circle r="10"/></g>'))).contour;
    expect(whole.length).toBe(2);
  });

  it('leaves out what is not seen', () => {
    const rect = '<rect width="100" height="50"/>';
    const hidden = [
      `<g display="none">${rect}</g>`,
      `<g style="fill:red; display : none">${rect}</g>`,
      `<rect visibility="hidden" width="9" height="9"/>`,
      `<defs>${rect}</defs>`,
      `<clipPath id="c">${rect}</clipPath>`,
      `<mask>${rect}</mask>`,
      `<pattern>${rect}</pattern>`,
      `<text>outline</text>`,
      `<other:thing xmlns:other="urn:x">${rect}</other:thing>`,
    ].join('');
    expect(notPicked(readSvg(inMm(hidden)))).toBe('degenerate: the drawing holds no curves');
    expect(picked(readSvg(inMm(`${hidden}<circle r="5"/>`))).curve.closed).toBe(true);
  });

  const layered = inMm(`
    <g ink:groupmode="layer" ink:label="Cut" id="layer1"><rect id="deck" width="1180" height="420" rx="140"/></g>
    <g ink:groupmode="layer" ink:label="Holes"><circle id="a" r="10"/><circle id="b" cx="50" r="10"/></g>
    <g id="notes"><path d="M 0 0 L 100 0 L 100 40"/></g>`);

  it('is picked by layer, by group or by id; what there is, is told', () => {
    const drawing = readSvg(layered);
    expect(drawing.layers).toEqual(['Cut', 'Holes', 'notes']);
    for (const pick of [{ layer: 'Cut' }, { layer: 'cut' }, { layer: 'layer1' }, { id: 'deck' }]) {
      expect(boxOf(picked(drawing, pick).curve)).toEqual([0, -420, 1180, 0]);
    }
    expect(picked(drawing, { layer: 'Cut' }).curve.at).toEqual({ line: 2, column: 58 });
    expect(notPicked(drawing)).toBe('file-missing: 3 closed curves; say which: layer Cut, Holes');
    expect(notPicked(drawing, { layer: 'Holes' })).toBe('file-missing: 2 closed curves; say which: id a, b');
    expect(notPicked(drawing, { layer: 'outline' })).toBe(
      'file-missing: no layer outline in the drawing; it has Cut, Holes, notes',
    );
    expect(notPicked(drawing, { id: 'hull' })).toBe('file-missing: no curve hull in the drawing; it has deck, a, b');
    expect(notPicked(drawing, { layer: 'notes' })).toBe(
      'open: the curve is open by 107.703: it begins at (0, 0) and ends at (100, 40) of the drawing',
    );
  });

  it('takes a hidden layer only where it is named', () => {
    const drawing = readSvg(
      inMm(`
        <g ink:groupmode="layer" ink:label="Cut"><rect width="100" height="50"/></g>
        <g ink:groupmode="layer" ink:label="Old" style="display:none"><g><circle r="7"/></g></g>`),
    );
    expect(drawing.layers).toEqual(['Cut', 'Old']);
    expect(boxOf(picked(drawing).curve)).toEqual([0, -50, 100, 0]);
    expect(boxOf(picked(drawing, { layer: 'old' }).curve)).toEqual([-7, -7, 7, 7]);
    const all = readSvg(inMm('<g id="Old" display="none"><circle r="7"/></g>'));
    expect(notPicked(all)).toBe('file-missing: all curves lie on layers that are switched off: Old');
  });

  it('reads numbers that only their signs and points part', () => {
    const cases: readonly [string, readonly number[]][] = [
      ['<polygon points="0-10 100-10.5.5 50-.5 50"/>', [-0.5, -50, 100, 10.5]],
      ['<rect width="100" height="50" transform="translate(10-20)"/>', [10, -30, 110, 20]],
      ['<rect width="100" height="50" transform="matrix(1 0 0-1 0 50)"/>', [0, -50, 100, 0]],
    ];
    for (const [content, box] of cases) {
      const drawing = readSvg(inMm(content));
      expect(problemsOf(drawing), content).toEqual([]);
      expect(boxOf(picked(drawing).curve), content).toEqual(box);
    }
    expect(problemsOf(readSvg(inMm('<polygon points="0 0 10 x 5 5"/>')))[0]).toContain('cannot be read');
  });

  it('joins loose ends, and tells how far they were apart', () => {
    const drawing = readSvg(inMm('<path d="M0 0 H100"/><path d="M100 50.05 V0.03"/><path d="M 100 50 H 0 V 0.02"/>'));
    expect(picked(drawing).contour.length).toBe(4);
    expect(drawing.joinedOver * 1e3).toBeCloseTo(0.05, 6);
    const apart = readSvg(inMm('<path d="M0 0 H100"/><path d="M100 50.5 V0.03"/><path d="M 100 50 H 0 V 0.02"/>'));
    expect(notPicked(apart)).toContain('open by ');
  });

  it('says what is malformed, and where', () => {
    const cases: readonly [string, string][] = [
      ['', 'refused 1: the file is not well-formed: document must contain a root element'],
      ['<html/>', 'refused 1: the file holds no SVG drawing'],
      [
        '<svg xmlns="http://www.w3.org/2000/svg"><g></svg>',
        'refused 1: the file is not well-formed: unexpected close tag',
      ],
      [inMm('<path d="M 0 0 L 5 x"/>'), 'broken 1: the path data cannot be read at character 11: x'],
      [inMm('<polygon points="0,0 100"/>'), 'broken 1: the points of the line cannot be read'],
      [
        inMm('<g transform="turn(5)"><circle r="5"/></g>'),
        'broken 1: the transformation cannot be read; the element is left out',
      ],
      [
        inMm('<use href="#nobody"/>'),
        'broken 1: `use` names an element that is not there: nobody'.replace('nobody', '#nobody'),
      ],
      [inMm('<use href="other.svg#x"/>'), 'left out 1: `use` of another file is not followed'],
      [
        inMm('<circle r="1e9"/>'),
        'broken 1: a place in the drawing is no number, or further away than 100 m; the curve is left out',
      ],
      [
        inMm('<circle r="5%"/>'),
        'broken 1: r="5%" is a share of a page, which has no size at the bench: give it in mm; the curve is left out',
      ],
      [
        '<!DOCTYPE svg><svg/>',
        'refused 1: a drawing with a DOCTYPE is not read, because it may define words of its own; save it as plain SVG',
      ],
    ];
    for (const [source, message] of cases) expect(problemsOf(readSvg(source))[0], source).toBe(message);
  });

  it('is read in bounded time and memory, whatever it does', () => {
    const bombs: readonly string[] = [
      `<!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa">${Array.from({ length: 9 }, (_, i) => `<!ENTITY ${'abcdefghij'[i + 1]} "${`&${'abcdefghij'[i]};`.repeat(10)}">`).join('')}]><svg>&j;</svg>`,
      inMm(
        `<g id="a0"><circle r="1"/></g>${Array.from({ length: 12 }, (_, i) => `<g id="a${i + 1}">${`<use href="#a${i}"/>`.repeat(10)}</g>`).join('')}`,
      ),
      inMm('<g id="x"><use href="#x"/></g>'),
      inMm('<use id="x" href="#x"/>'),
      inMm('<g>'.repeat(100_000)),
      inMm('<circle r="5"/>'.repeat(210_000)),
      inMm(`<path d="M0 0${'h1v1'.repeat(60_000)}"/>`),
      inMm(`<path d="M0 0${'c9 9 -9 9 5 -5'.repeat(30_000)}"/>`),
      inMm(Array.from({ length: 20_000 }, (_, i) => `<path d="M0 0L${i} 9"/>`).join('')),
      inMm(`<g transform="${'rotate(1) '.repeat(5000)}"><circle r="5"/></g>`),
      'x'.repeat(10_000_001),
    ];
    // what grew without bound would not end within the minute that the test has
    for (const bomb of bombs) expect(readSvg(bomb).curves.length).toBeLessThanOrEqual(200_000);
  }, 60_000);

  it('never throws, whatever is cut or swapped in it', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: layered.length }),
        fc.integer({ min: 0, max: 80 }),
        fc.string(),
        (at, cut, put) => {
          const drawing = readSvg(layered.slice(0, at) + put + layered.slice(at + cut));
          for (const problem of drawing.problems) expect(said(problem.message)).not.toBe('');
        },
      ),
      { numRuns: 400 },
    );
    fc.assert(fc.property(fc.string({ unit: 'binary' }), (source) => void readSvg(source)));
  }, 60_000);
});
