/** The layer card: what is shown, what its page says, and what it may ask of the editor. */
import { describe, expect, it } from 'vitest';
import { cardText } from '../../../extension/card/card-text.ts';
import { readKeptState, readPageMessage, readShowMessage } from '../../../extension/card/messages.ts';
import { knownPlace } from '../../../extension/card/places.ts';
import { shownNow } from '../../../extension/card/shown.ts';
import { cardView } from '../../../extension/card/webview/card-view.ts';
import { layOut } from '../../../extension/card/webview/stack-layout.ts';
import { words } from '../../../extension/card/webview/words.ts';
import { textOf, type VElement, type VNode } from '../../../extension/page/node.ts';
import { exampleCard } from './example.ts';

const card = exampleCard();
const broken = { words: 'Line 3 cannot be taken in yet.', line: 2 };

function all(nodes: readonly VNode[]): VElement[] {
  return nodes.flatMap((node) => (typeof node === 'string' ? [] : [node, ...all(node.children)]));
}
const page = (state: Partial<Parameters<typeof cardView>[0]> = {}): VElement[] =>
  all(cardView({ card, pinned: false, movesCursor: false, ...state }, words));
const withTag = (nodes: readonly VElement[], tag: string): VElement[] => nodes.filter((node) => node.tag === tag);

describe('what is shown', () => {
  it('is what is told, while the text can be read', () => {
    expect(shownNow(undefined, { card })).toEqual({ card });
    expect(shownNow({ card }, { nothing: 'nothing here' })).toBeUndefined();
  });

  it('is the last whole card of the same layer, while the text is broken', () => {
    const torn = exampleCard({ figures: [] });
    expect(shownNow({ card }, { card: torn, broken })).toEqual({ card, old: broken.words });
    expect(shownNow({ card, old: 'before' }, { broken })).toEqual({ card, old: broken.words });
  });

  it('is what can be told, with a note, where there was no whole card of that layer', () => {
    const other = exampleCard({ layer: { recipe: 'deck', key: 'mat' } });
    expect(shownNow({ card }, { card: other, broken })).toEqual({ card: other, note: broken.words });
    expect(shownNow({ card: other, note: 'torn' }, { card: other, broken })).toEqual({
      card: other,
      note: broken.words,
    });
  });
});

describe('the page', () => {
  it('has a heading for the layer and one for each part, and lists', () => {
    const nodes = page();
    expect(withTag(nodes, 'h1').map(textOf)).toEqual(['skin']);
    expect(withTag(nodes, 'h2').map(textOf)).toEqual([
      words.stack,
      words.piece,
      words.figures,
      words.missing,
      words.touches,
    ]);
    for (const section of withTag(nodes, 'section')) {
      const title = section.attributes['aria-labelledby'];
      expect(nodes.some(({ attributes }) => attributes.id === title)).toBe(true);
    }
  });

  it('draws each layer with a name for who does not see it, and marks the one shown by more than a colour', () => {
    const options = page().filter(({ attributes }) => attributes.role === 'option');
    expect(options.map(({ attributes }) => [attributes['aria-label'], attributes['aria-posinset']])).toEqual([
      ['foam: core of foam', '1'],
      ['mat: ply of mat', '2'],
      ['skin: ply of cloth', '3'],
    ]);
    const [shown] = options.filter(({ attributes }) => attributes['aria-selected'] === 'true');
    expect(textOf(shown as VElement)).toContain('\u25b6 skin');
    const drawing = page().find(({ attributes }) => attributes.role === 'listbox');
    expect(drawing?.attributes['aria-activedescendant']).toBe(shown?.attributes.id);
    expect(drawing?.children.slice(0, 2).map((node) => (node as VElement).tag)).toEqual(['title', 'desc']);
  });

  it('hatches a cloth by the directions of its fibres, mat and foam each in their own way', () => {
    const nodes = page();
    const patterns = withTag(nodes, 'pattern').map(({ attributes }) => attributes.id);
    expect(patterns).toEqual(['hatch-0', 'hatch-135', 'hatch-45', 'hatch-cells', 'hatch-mat']);
    const fills = nodes
      .filter(({ attributes }) => attributes.class === 'hatch')
      .map(({ attributes }) => attributes.fill);
    for (const fill of fills) expect(patterns).toContain(/^url\(#(.*)\)$/.exec(fill ?? '')?.[1]);
  });

  it('draws an insert and a strip in its groove inside of their core, which they make no higher', () => {
    const layers = [
      {
        key: 'strip',
        name: 'strip',
        kind: 'strip',
        words: 'strip',
        thickness: 0.001,
        directions: [0],
        whole: false,
        shown: false,
        inside: 'foam',
      },
      {
        key: 'foam',
        name: 'foam',
        kind: 'core',
        words: 'core',
        thickness: 0.02,
        directions: [],
        whole: true,
        shown: true,
      },
      {
        key: 'wood',
        name: 'wood',
        kind: 'insert',
        words: 'insert',
        thickness: 0.02,
        directions: [],
        whole: false,
        shown: false,
        inside: 'foam',
      },
    ] as const;
    const { bands, toScale, bottom } = layOut(layers, { top: 10, width: 100, height: 200, least: 6, label: 15 });
    expect(bands.map(({ band }) => band.key)).toEqual(['foam', 'strip', 'wood']);
    const [foam, strip, wood] = bands.map(({ box }) => box);
    expect(foam).toEqual({ x: 0, y: 10, width: 100, height: 200 });
    expect([toScale, bottom]).toEqual([true, 210]);
    expect(wood?.height).toBe(200);
    // 1 mm of 20 mm, at the face that it is laid from
    expect([strip?.y, strip?.height]).toEqual([200, 10]);
    expect((strip?.x ?? 0) + (strip?.width ?? 0)).toBeLessThanOrEqual(wood?.x ?? 0);
  });

  it('says when the drawing is not to scale', () => {
    const said = (nodes: readonly VElement[]): string => nodes.map(textOf).join(' ');
    expect(said(page())).toContain('Heights to scale');
    const [first, ...rest] = card.stack.layers;
    const thin = { ...card.stack, layers: [{ ...first, thickness: 0.00001 } as (typeof rest)[number], ...rest] };
    expect(said(page({ card: exampleCard({ stack: thin }) }))).toContain('Not all to scale');
  });

  it('says in words that a card is of before', () => {
    const nodes = page({ old: broken.words });
    const warning = nodes.find(({ attributes }) => attributes.role === 'note');
    expect(textOf(warning as VElement)).toBe(`As of before. ${broken.words}`);
    expect(page().find(({ attributes }) => attributes.role === 'note')?.attributes.hidden).toBe('');
  });

  it('says what cannot be told, and where there is no card', () => {
    const figures = withTag(page(), 'li').map(textOf);
    expect(figures).toContain(`cost ${words.cannotTell}`);
    const empty = cardView({ nothing: 'nothing here', first: true, pinned: false, movesCursor: false }, words);
    expect(empty.map(textOf).join('')).toBe(`nothing here${words.first}`);
  });

  it('shows names of the text as text alone', () => {
    const bad = '<img src=x onerror=alert(1)>';
    const nodes = page({ card: exampleCard({ title: bad }) });
    expect(nodes.some(({ tag }) => tag === 'img' || tag === 'script')).toBe(false);
    expect(withTag(nodes, 'h1').map(textOf)).toEqual([bad]);
    for (const { attributes } of nodes) {
      expect(Object.keys(attributes).filter((name) => /^on|^href$|^src$|^style$/.test(name))).toEqual([]);
    }
  });
});

describe('messages', () => {
  it('of the page are taken where they are what they should be', () => {
    expect(readPageMessage({ kind: 'step', key: 'mat', more: 1 })).toEqual({ kind: 'step', key: 'mat' });
    expect(readPageMessage({ kind: 'pin', on: true })).toEqual({ kind: 'pin', on: true });
    const others = [undefined, null, 'copy', [], {}, { kind: 'run' }, { kind: 'pin' }, { kind: 'step', key: 3 }];
    const places = [
      { kind: 'open', uri: 'file:///a', line: -1, character: 0 },
      { kind: 'open', uri: 1, line: 0, character: 0 },
    ];
    for (const message of [...others, ...places, { kind: 'step', key: 'x'.repeat(5000) }]) {
      expect(readPageMessage(message)).toBeUndefined();
    }
  });

  it('of the editor are taken where they are newer than the last', () => {
    const message = { kind: 'show', version: 3, state: { card, pinned: false, movesCursor: false } };
    expect(readShowMessage(message, 2)).toBe(message);
    expect(readShowMessage(message, 3)).toBeUndefined();
    expect(readShowMessage({ ...message, state: { card: {}, pinned: false, movesCursor: false } }, 2)).toBeUndefined();
    expect(readShowMessage({ ...message, kind: 'other' }, 2)).toBeUndefined();
  });

  it('open nothing but places that the card speaks of', () => {
    expect(knownPlace(card, { uri: 'file:///w/deck.layup', line: 3, character: 4 })?.name).toBe('deck.layup:4');
    expect(knownPlace(card, { uri: 'file:///w/deck.layup', line: 99, character: 4 })).toBeUndefined();
    expect(knownPlace(card, { uri: 'command:workbench.action.quit', line: 3, character: 4 })).toBeUndefined();
  });

  it('what a page kept is read back, and nothing else', () => {
    const kept = { uri: card.uri, layer: card.layer, pinned: true, movesCursor: false };
    expect(readKeptState(kept)).toEqual(kept);
    for (const wrong of [undefined, {}, { uri: 'a' }, { uri: 'a', layer: { recipe: 1, key: 'b' } }]) {
      expect(readKeptState(wrong)).toBeUndefined();
    }
  });
});

it('a card is copied with its figures, one a line, and their reasons', () => {
  const lines = cardText(card, words).split('\n');
  expect(lines[0]).toBe('skin: ply of cloth at 0 deg, layer 1 of 3');
  expect(lines).toContain('wet mass   400 g');
  expect(lines).toContain('cost       ?');
  expect(lines).toContain('  dry mass and resin (deck.layup:4)');
  expect(lines).toContain('    fibre fraction; typed');
});
