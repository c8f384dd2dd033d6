/** The card of a layer: what the editor is told of it over the protocol. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { LayerCardResult, LayerName } from '../../../language/protocol/layer-card.ts';
import type { WirePosition, WireReason } from '../../../language/protocol/place.ts';
import { type MemoryServer, startMemoryServer } from '../../harness/memory-server.ts';

/** A flat part of 1 m by 0.5 m: areas and masses are told by a glance. */
const board = `notation 1

shop {
  currency EUR
  scale 1 g
}

tool plate_tool {
  flat 2 m by 1 m
}

resin clear {
  family epoxy
  mix 100:30 by weight
  density 1.1 g/cm3
  gel 4 h at 20 degC
  price 10 EUR/kg
}

fabric cross {
  fibre e_glass
  layers stitched 45 deg 200 g/m2, -45 deg 200 g/m2
  fraction 50 % by weight hand
  roll 1270 mm by 50 m
  price 4 EUR/m2
}

core foam {
  density 100 kg/m3
  surface 300 g/m2
  price 20 EUR/m2 at 10 mm
}

recipe board {
  part {
    outline rectangle 1000 mm by 500 mm
  }
  stack from tool plate_tool {
    ply skin_a cross at 0 deg, net
    core heart foam 10 mm
    ply skin_b cross at 90 deg
      , net, note "the second line of it"
  }
  process hand with clear at 20 degC {
    lay stack
  }
  expect mass <= 3 kg
}
`;

let server: MemoryServer;
beforeAll(async () => {
  server = await startMemoryServer({ 'board.layup': board });
  await server.open('board.layup', board);
  await server.settled();
});
afterAll(() => server.stop());

/** The position of words in a text. */
function positionOf(text: string, words: string): WirePosition {
  const at = text.indexOf(words);
  expect(at, words).toBeGreaterThanOrEqual(0);
  const before = text.slice(0, at).split('\n');
  return { line: before.length - 1, character: before.at(-1)?.length ?? 0 };
}

const ask = (params: { position?: WirePosition; layer?: LayerName }): Promise<LayerCardResult> =>
  server.client.sendRequest<LayerCardResult>('laybook/layerCard', { uri: server.uriOf('board.layup'), ...params });

async function cardAt(words: string, text = board) {
  const { card } = await ask({ position: positionOf(text, words) });
  if (card === undefined) throw new Error(`no card at ${words}`);
  return card;
}

const figure = (card: Awaited<ReturnType<typeof cardAt>>, name: string): string | undefined =>
  card.figures.find((each) => each.name === name)?.value;

describe('the card of a layer', () => {
  it('tells its figures: 400 g/m2 of glass at half the weight on half a square metre weigh 400 g wet', async () => {
    const card = await cardAt('ply skin_a');
    expect(card.title).toBe('skin_a');
    expect(card.kind).toBe('ply of cross at 0 deg, layer 1 of 3');
    expect(figure(card, 'layer_area')).toBe('0.5 m2');
    expect(figure(card, 'layer_mass')).toBe('400 g');
    expect(card.summary).toContain('400 g wet');
  });

  it('says why, with places in the text', async () => {
    const card = await cardAt('ply skin_a');
    const reasons = card.figures.find(({ name }) => name === 'layer_mass')?.reasons ?? [];
    const all = (list: readonly WireReason[]): WireReason[] => list.flatMap((why) => [why, ...all(why.reasons)]);
    const places = all(reasons).flatMap(({ at }) => at?.name ?? []);
    const line = positionOf(board, 'fraction 50 %').line + 1;
    expect(places).toContain(`board.layup:${line}`);
  });

  it('follows anywhere on the lines of the layer, the second one too', async () => {
    expect((await cardAt('the second line')).title).toBe('skin_b');
    expect((await cardAt(' deg, net')).title).toBe('skin_a');
  });

  it('draws the stack from the tool face, with thicknesses in metres and the directions of the fibres', async () => {
    const { stack } = await cardAt('core heart');
    expect(stack.layers.map(({ name, shown }) => [name, shown])).toEqual([
      ['skin_a', false],
      ['heart', true],
      ['skin_b', false],
    ]);
    expect(stack.layers[1]?.thickness).toBeCloseTo(0.01, 12);
    expect(stack.layers[0]?.directions).toEqual([45, 135]);
    expect(stack.layers[2]?.directions).toEqual([45, 135]);
    expect(stack.layers[1]?.directions).toEqual([]);
  });

  it('tells what it touches, with places to go to', async () => {
    const heart = await cardAt('core heart');
    expect(heart.touches.map(({ side, name }) => [side, name])).toEqual([
      ['below', 'skin_a'],
      ['above', 'skin_b'],
    ]);
    expect(heart.touches[1]?.place?.line).toBe(positionOf(board, 'ply skin_b').line);
    const first = await cardAt('ply skin_a');
    expect(first.touches[0]).toMatchObject({ side: 'below', words: 'the tool face' });
    expect(first.touches[0]?.layer).toBeUndefined();
  });

  it('tells the piece to cut', async () => {
    const { piece } = await cardAt('ply skin_a');
    expect(piece).toMatchObject({ length: 1, width: 0.5, part: { length: 1, width: 0.5 }, lanes: 1 });
    expect(piece?.words).toMatch(/^1000 mm by 500 mm|^1\.000? m by 500 mm/);
  });

  it('is asked again by its name, as a pinned card is', async () => {
    const { layer } = await cardAt('ply skin_b');
    const { card } = await ask({ layer });
    expect(card?.title).toBe('skin_b');
    const gone = await ask({ layer: { recipe: 'board', key: 'nobody' } });
    expect(gone.card).toBeUndefined();
    expect(gone.nothing).toMatch(/nobody/);
  });

  it('says so where there is no layer, and names the first', async () => {
    const elsewhere = await ask({ position: positionOf(board, 'expect mass') });
    expect(elsewhere.card).toBeUndefined();
    expect(elsewhere.nothing).toBeTruthy();
    expect(elsewhere.first).toEqual({ recipe: 'board', key: 'skin_a' });
    const outside = await ask({ position: { line: 0, character: 0 } });
    expect(outside.first).toBeUndefined();
  });
});

describe('while a line is half typed', () => {
  it('says that the text cannot be read, and by which line', async () => {
    const half = board.replace('core heart foam 10 mm', 'core heart foam 10 mm ]');
    await server.change('board.layup', { text: half });
    await server.settled();
    const { broken } = await ask({ position: positionOf(half, 'ply skin_a') });
    expect(broken?.line).toBe(positionOf(half, 'core heart').line);
    await server.change('board.layup', { text: board });
    await server.settled();
    expect((await ask({ position: positionOf(board, 'ply skin_a') })).broken).toBeUndefined();
  });
});

describe('the sample', () => {
  it('has a card for each of its layers, each with a sentence and a mass', async () => {
    const folder = path.resolve(import.meta.dirname, '../../../extension/sample');
    const names = ['sled_deck.layup', 'materials.layup', 'tools.layup', 'shop.layup'];
    const workshop = await startMemoryServer(
      Object.fromEntries(names.map((name) => [name, readFileSync(path.join(folder, name), 'utf8')])),
    );
    const uri = workshop.uriOf('sled_deck.layup');
    for (const key of ['outer', 'keel', 'body', 'bolts', 'pad', 'inner']) {
      const { card } = await workshop.client.sendRequest<LayerCardResult>('laybook/layerCard', {
        uri,
        layer: { recipe: 'sled_deck', key },
      });
      expect(card?.missing, key).toEqual([]);
      expect(card?.figures.find(({ name }) => name === 'layer_mass')?.value, key).toMatch(/\d/);
    }
    expect(workshop.log).toEqual([]);
    workshop.stop();
  });
});
