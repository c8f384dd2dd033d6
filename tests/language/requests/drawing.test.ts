/** Plan and section of the sample's sled deck: where things lie by hand calculation, what a request sends, files read back. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  type DrawingFileParams,
  type DrawingFileResult,
  type DrawingParams,
  type DrawingResult,
  drawingFileRequest,
  drawingRequest,
  type Picture,
  type PictureGroup,
} from '../../../language/protocol/drawing.ts';
import { type MemoryServer, startMemoryServer } from '../../harness/memory-server.ts';
import { sampleFiles } from '../../harness/sample.ts';
import { areaOfPath, boxOfPath, readSvg } from '../export/read-back.ts';

const deck = 'sled_deck.layup';
const text = sampleFiles[deck] ?? '';
const lineOf = (words: string): number => {
  const line = text.split('\n').findIndex((each) => each.includes(words));
  if (line < 0) throw new Error(`the sample has no ${words}`);
  return line;
};

/** The sled deck of the sample: 1180 by 420 mm with corners of 140 mm, x from the middle. */
const L = 1180;
const W = 420;
const R = 140;
/** Area inside the rounded outline run out by d: Steiner's formula A + P d + pi d2, which holds inwards too while d > -R. */
const areaOut = (d: number): number =>
  L * W - (4 - Math.PI) * R ** 2 + (2 * (L + W) - (8 - 2 * Math.PI) * R) * d + Math.PI * d ** 2;

let server: MemoryServer;
beforeAll(async () => {
  server = await startMemoryServer(sampleFiles);
  await server.open(deck, text);
  await server.settled();
});
afterAll(() => server.stop());

const ask = (more: Partial<DrawingParams> = {}): Promise<DrawingResult> =>
  server.client.sendRequest(drawingRequest, {
    uri: server.uriOf(deck),
    view: 'plan',
    ...(more.recipe === undefined ? { position: { line: lineOf('ply outer'), character: 6 } } : {}),
    ...more,
  });

async function picture(more: Partial<DrawingParams> = {}): Promise<Picture> {
  const { picture: drawn, nothing } = await ask(more);
  if (drawn === undefined) throw new Error(nothing ?? 'no picture');
  return drawn;
}

const paths = ({ shapes = [] }: PictureGroup): string[] =>
  shapes.flatMap((shape) => (shape.kind === 'path' && shape.closed === true ? [shape.d] : []));
const group = ({ groups }: Picture, layer: string, what: string): PictureGroup => {
  const found = groups.find((each) => each.layer === layer && each.what.startsWith(what));
  if (found === undefined) throw new Error(`nothing of ${layer} is called ${what}`);
  return found;
};
/** left, top, right and bottom of the first closed line, mm on the screen */
const boxOf = (each: PictureGroup): number[] => {
  const { x, y, x2, y2 } = boxOfPath(paths(each)[0] ?? '');
  return [x, y, x2, y2].map((value) => Math.round(value * 100) / 100);
};

describe('the plan of the sled deck', () => {
  it('has everything where it lies: outline, zone, patch, insert, strip, sheets, tape', async () => {
    const plan = await picture();
    const lies: readonly (readonly [layer: string, what: string, box: readonly number[]])[] = [
      ['outline', 'outline', [-590, -210, 590, 210]],
      // 210 mm from the heel: -590 + 210 = -380; 260 by 180 mm
      ['zone', 'zone mount', [-510, -90, -250, 90]],
      ['cloth', 'pad', [-510, -90, -250, 90]],
      ['insert', 'bolts', [-435, -40, -325, 40]],
      ['cloth', 'keel', [-210, -30, 410, 30]],
      ['process', 'peel', [-670, -290, 670, 290]],
      ['process', 'mesh', [-550, -170, 550, 170]],
      // 20 mm outside of the outermost sheet, which is the peel ply
      ['process', 'tape', [-690, -310, 690, 310]],
      ['flow', 'vent v1', [-650, -270, 650, 270]],
      ['tool', 'tool', [-800, -350, 800, 350]],
    ];
    for (const [layer, what, box] of lies) expect([what, boxOf(group(plan, layer, what))]).toEqual([what, box]);
  });

  it('has true arcs: areas by the formula of Steiner', async () => {
    const plan = await picture();
    for (const [layer, what, by] of [
      ['outline', 'outline', 0],
      ['process', 'peel', 80],
      ['process', 'mesh', -40],
      ['flow', 'vent v1', 60],
    ] as const)
      expect(areaOfPath(paths(group(plan, layer, what))[0] ?? '') / areaOut(by)).toBeCloseTo(1, 6);
  });

  it('shows a wrapped ply as it is cut, and how far it lands on the face', async () => {
    const outer = group(await picture(), 'cloth', 'outer');
    const [cut = '', landing = ''] = paths(outer);
    const { x, x2, y, y2 } = boxOfPath(landing);
    // 25 mm inside of the outline
    expect([x, x2, y, y2].map((value) => Math.round(value * 100) / 100)).toEqual([-565, 565, -185, 185]);
    // the tab at the heel stands 60 mm out of the piece, and there is none at the nose
    const box = boxOfPath(cut);
    expect(Math.abs(box.x) - box.x2).toBeCloseTo(60, 3);
    // darts are cut out of what lies outside of the outline
    expect(areaOfPath(cut)).toBeLessThan(areaOut(box.x2 - L / 2) + 60 * W);
    expect(areaOfPath(cut)).toBeGreaterThan(areaOut(0));
    expect(outer.size).toMatch(/, \d+ darts$/);
    expect(outer.where).toMatch(/^round the edge onto body: .* past the outline, 25 mm of it on the face$/);
    expect(outer.hatch).toBe(0);
  });

  it('leads from feed to vent through the points that are typed', async () => {
    const feed = group(await picture(), 'flow', 'feed f1');
    const [line] = (feed.shapes ?? []).flatMap((shape) => (shape.kind === 'path' ? [shape.d] : []));
    // 90 mm from the heel to 90 mm from the nose
    expect(line).toBe('M-500 0L500 0');
    expect(feed.size).toBe('1000 mm long');
  });

  it('drills the core all over, but not where the insert lies', async () => {
    const plan = await picture();
    const holes = group(plan, 'perforation', 'holes in body');
    const [d = ''] = paths(holes);
    const middles = [...d.matchAll(/M(\S+) (\S+)a/g)].map(([, x, y]) => ({ x: Number(x) + 1, y: Number(y) }));
    expect(holes.size).toBe(`${middles.length} of 2 mm`);
    expect(middles.length).toBeGreaterThan(150);
    const inInsert = middles.filter(({ x, y }) => x > -435 && x < -325 && y > -40 && y < 40);
    expect(inInsert).toEqual([]);
    for (const { x, y } of middles) expect(Math.abs(x) < L / 2 && Math.abs(y) < W / 2).toBe(true);
    // every 50 mm both ways
    const xs = [...new Set(middles.map(({ x }) => Math.round(x)))].sort((a, b) => a - b);
    expect(new Set(xs.slice(1).map((x, i) => x - (xs[i] ?? 0)))).toEqual(new Set([50]));
  });

  it('names for each thing what it is, where, how large, and its line', async () => {
    const { groups } = await picture();
    const lines = text.split('\n');
    const words: Readonly<Record<string, string>> = {
      outline: 'outline',
      tool: 'stack from tool',
      perforation: 'core body',
    };
    for (const { layer, what, where, size, place, lastLine = -1, path } of groups) {
      expect([what, where, size].every((each) => each.length > 0)).toBe(true);
      if (place === undefined) throw new Error(`${what} has no line`);
      const line = lines[place.line] ?? '';
      const name = what.replace(/^(zone|feed|vent|dimensions of) /, '').split(/[:, ]/)[0] ?? '';
      expect(`${path}: ${line}`).toContain(words[layer] ?? name);
      expect(lastLine).toBeGreaterThanOrEqual(place.line);
    }
    expect(new Set(groups.map(({ key }) => key)).size).toBe(groups.length);
  });

  it('is that of a size, where one is named or the cursor stands in one', async () => {
    const short = await picture({ recipe: { recipe: 'sled_deck', size: 'short' } });
    expect(boxOf(group(short, 'outline', 'outline'))).toEqual([-490, -200, 490, 200]);
    expect(short.groups.some(({ what }) => what.startsWith('pad'))).toBe(false);
    const inside = await picture({ position: { line: lineOf('size short') + 2, character: 6 } });
    expect(inside.recipe).toEqual({ recipe: 'sled_deck', size: 'short' });
    expect((await picture({ size: 'short' })).recipe.size).toBe('short');
  });

  it('says why there is none', async () => {
    expect((await ask({ recipe: { recipe: 'no_such' } })).nothing).toBe('There is no recipe at the cursor.');
    expect((await ask({ position: { line: 0, character: 0 } })).picture).toBeUndefined();
  });
});

describe('what is sent', () => {
  const marksOf = ({ groups }: Picture) => Object.fromEntries(groups.map(({ key, mark }) => [key, mark]));
  const edited = async (from: string, to: string, check: () => Promise<void>): Promise<void> => {
    expect(text).toContain(from);
    await server.change(deck, { text: text.replace(from, to) });
    await server.settled();
    try {
      await check();
    } finally {
      await server.change(deck, { text });
      await server.settled();
    }
  };

  it('is nothing that the asker has', async () => {
    const known = marksOf(await picture());
    const again = await picture({ known });
    expect(again.groups.filter(({ shapes }) => shapes !== undefined)).toEqual([]);
    expect(again.groups.length).toBe(Object.keys(known).length);
  });

  it('is the one thing that an edit changes', async () => {
    const known = marksOf(await picture());
    await edited('biax_440 at 45 deg', 'biax_440 at 30 deg', async () => {
      const now = await picture({ known });
      expect(now.groups.filter(({ shapes }) => shapes !== undefined).map(({ key }) => key)).toEqual([
        'cloth stack.4 pad',
      ]);
      expect(group(now, 'cloth', 'pad').hatch).toBe(30);
    });
  });

  it('is no shape where a comment moves all lines, but their new places', async () => {
    const before = await picture();
    await edited('  stack from', '  // a comment\n  stack from', async () => {
      const now = await picture({ known: marksOf(before), position: { line: lineOf('ply outer') + 1, character: 6 } });
      expect(now.groups.filter(({ shapes }) => shapes !== undefined)).toEqual([]);
      expect(group(now, 'cloth', 'outer').place?.line).toBe((group(before, 'cloth', 'outer').place?.line ?? 0) + 1);
    });
  });

  it('says that a line is half typed', async () => {
    await edited('insert bolts birch_ply 20 mm,', 'insert bolts birch_ply 20 mm, rect', async () => {
      const { broken } = await ask();
      expect(broken?.line).toBe(lineOf('insert bolts'));
    });
  });
});

describe('the section of the sled deck', () => {
  const factor = 10;
  const heights = (each: PictureGroup): readonly number[] => {
    const boxes = paths(each).map(boxOfPath);
    // y runs downwards
    return [-Math.max(...boxes.map(({ y2 }) => y2)), -Math.min(...boxes.map(({ y }) => y))];
  };

  it('says how many times too large the thickness is', async () => {
    const { title } = await picture({ view: 'section' });
    expect(title).toBe(`Section of sled_deck along its middle line, thickness ${factor} times as large`);
  });

  it('lays the layers on one another, the insert and the strip into the core', async () => {
    const section = await picture({ view: 'section' });
    const [bodyLow = 0, bodyHigh = 0] = heights(group(section, 'core', 'body'));
    expect(bodyHigh - bodyLow).toBeCloseTo(20 * factor, 3);
    expect(heights(group(section, 'insert', 'bolts'))).toEqual([bodyLow, bodyHigh]);
    expect(heights(group(section, 'cloth', 'keel'))[0]).toBeCloseTo(bodyLow, 6);
    const [outerLow = 1, outerHigh = 0] = heights(group(section, 'cloth', 'outer'));
    expect(outerLow).toBeCloseTo(0, 6);
    // it comes round the edge and lands on the core
    expect(outerHigh).toBeGreaterThan(bodyHigh);
    const inner = heights(group(section, 'cloth', 'inner'));
    expect(inner[0]).toBeCloseTo(bodyHigh, 6);
    expect(group(section, 'cloth', 'pad').where).toBe('from -510 mm to -250 mm along the middle line');
  });
});

describe('files', () => {
  const file = (more: Partial<DrawingFileParams> = {}): Promise<DrawingFileResult> =>
    server.client.sendRequest(drawingFileRequest, {
      uri: server.uriOf(deck),
      view: 'plan',
      recipe: { recipe: 'sled_deck' },
      format: 'svg',
      without: [],
      ...more,
    });

  it('is an SVG that another library reads: areas, sources, hatches, words', async () => {
    const { text: svg = '' } = await file();
    const elements = readSvg(svg);
    const peel = elements.find(
      ({ name, attributes }) =>
        name === 'path' && attributes['data-path'] === 'process.6' && attributes.class?.includes('closed'),
    );
    expect(areaOfPath(peel?.attributes.d ?? '') / areaOut(80)).toBeCloseTo(1, 6);
    const words = elements.filter(({ name }) => name === 'text').map((each) => each.text);
    expect(words).toEqual(expect.arrayContaining(['1180 mm', '420 mm', 'heel', 'nose', 'peel, 80 mm out']));
    expect(words).toContain('Seen from the bag side. Layers from the bag side to the tool:');
    expect(elements.filter(({ name }) => name === 'pattern').map(({ attributes }) => attributes.id)).toEqual(
      expect.arrayContaining(['laybook-hatch-0', 'laybook-hatch-135']),
    );
    expect(elements.find(({ name }) => name === 'title')?.text).toBe('Plan of sled_deck, seen from the bag side');
  });

  it('leaves out the layers that are switched off, and is the same on every run', async () => {
    const { text: svg = '' } = await file({ without: ['process', 'dimension', 'no such layer'] });
    expect(svg).not.toContain('data-layer="process"');
    expect(svg).not.toContain('1180 mm');
    expect(svg).toContain('data-layer="cloth"');
    expect((await file({ without: ['process', 'dimension'] })).text).toBe(svg);
  });

  it('says that a server without a machine of its own writes no PDF', async () => {
    expect((await file({ format: 'pdf' })).nothing).toMatch(/PDF/);
    expect((await file({ format: 'dxf' })).text).toMatch(/^POLYLINE$/m);
    expect((await file({ recipe: { recipe: 'gone' } })).nothing).toBe('The recipe is no longer in this file.');
  });
});
