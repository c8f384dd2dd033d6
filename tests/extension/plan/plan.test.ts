/** The plan: what its page shows, what it keeps of what is sent, and what it may ask of the editor. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { textOf, type VElement, type VNode } from '../../../extension/page/node.ts';
import { groupsOnLine } from '../../../extension/plan/chosen.ts';
import { readEditorMessage, readKeptState, readPageMessage } from '../../../extension/plan/messages.ts';
import { marksOf, shownNow } from '../../../extension/plan/shown.ts';
import type { Seen } from '../../../extension/plan/webview/picture-view.ts';
import { planView } from '../../../extension/plan/webview/plan-view.ts';
import { completed } from '../../../extension/plan/webview/store.ts';
import { panned, whole, zoomed } from '../../../extension/plan/webview/viewport.ts';
import { words } from '../../../extension/plan/webview/words.ts';
import { bare, examplePicture, gel, outline, pad, skin } from './example.ts';

const picture = examplePicture();
const seen: Seen = { viewport: whole(picture.box), without: new Set(), chosen: new Set() };
const state = { view: 'plan', follows: true } as const;

const all = (nodes: readonly VNode[]): VElement[] =>
  nodes.flatMap((node) => (typeof node === 'string' ? [] : [node, ...all(node.children)]));
const page = (more: Partial<Seen> = {}, as: Parameters<typeof planView>[0] = state): VElement[] =>
  all(planView(as, picture, { ...seen, ...more }, words));
const tagged = (nodes: readonly VElement[], tag: string): VElement[] => nodes.filter((node) => node.tag === tag);
const options = (nodes: readonly VElement[]): VElement[] =>
  nodes.filter(({ attributes }) => attributes.role === 'option');

describe('the page', () => {
  it('lists its things for who hears it: a name, a place in the list, whether it is chosen', () => {
    const shown = options(page({ chosen: new Set([pad.key]), active: pad.key }));
    expect(shown.map(({ attributes }) => attributes['aria-label'])).toEqual([
      'skin: ply of cloth at 45 deg; all over the part; 200 mm by 200 mm',
      'pad: patch of cloth at 0 deg; centred at (0 mm, 0 mm); 40 mm by 40 mm',
      'outline of the part; x and y are measured from its middle; 200 mm by 200 mm',
    ]);
    expect(shown.map(({ attributes }) => attributes['aria-selected'])).toEqual(['false', 'true', 'false']);
    expect(shown.map(({ attributes }) => attributes['aria-posinset'])).toEqual(['1', '2', '3']);
    const [list] = page({ active: pad.key }).filter(({ attributes }) => attributes.role === 'listbox');
    expect(list?.attributes['aria-activedescendant']).toBe(shown[1]?.attributes.id);
  });

  it('hatches a patch by the angle of its ply, and a ply all over the part while it is chosen', () => {
    const hatched = (nodes: readonly VElement[]): (string | undefined)[] =>
      nodes.filter(({ attributes }) => attributes.class === 'hatched').map(({ attributes }) => attributes.fill);
    expect(hatched(page())).toEqual(['url(#hatch-0)']);
    expect(hatched(page({ chosen: new Set([skin.key]) }))).toEqual(['url(#hatch-45)', 'url(#hatch-0)']);
    const turns = tagged(page(), 'pattern').map(({ attributes }) => attributes.patternTransform);
    expect(turns).toEqual(['rotate(0)', 'rotate(-45)']);
  });

  it('leaves out what is switched off, in the drawing and in the table', () => {
    const nodes = page({ without: new Set(['cloth']) });
    expect(options(nodes).map(({ attributes }) => attributes['data-thing'])).toEqual([outline.key]);
    const rows = tagged(nodes, 'tr').map(({ attributes }) => attributes['data-key']);
    expect(rows).toEqual([undefined, outline.key, gel.key]);
    const boxes = tagged(nodes, 'input').filter(({ attributes }) => attributes['data-toggle'] === 'layer');
    expect(boxes.map(({ attributes }) => attributes['aria-checked'])).toEqual(['true', 'false', 'true']);
  });

  it('says everything in a table too, in the order in which it is laid, with its lines', () => {
    const [table] = tagged(page(), 'table');
    const rows = tagged(all(table?.children ?? []), 'tr').map((row) => row.children.map(textOf));
    expect(rows).toEqual([
      ['What', 'Where', 'Size', 'Line'],
      [outline.what, outline.where, outline.size, 'deck.layup:3'],
      [skin.what, skin.where, skin.size, 'deck.layup:7'],
      [pad.what, pad.where, pad.size, 'deck.layup:9'],
      [gel.what, gel.where, gel.size, 'deck.layup:10'],
    ]);
    expect(tagged(all(table?.children ?? []), 'caption').map(textOf)).toEqual([picture.title]);
  });

  it('tells what is chosen in words, and that a picture is old', () => {
    const told = (nodes: readonly VElement[]) =>
      nodes.filter(({ attributes }) => attributes.class === 'told').map(textOf);
    expect(told(page())).toEqual([words.nothingChosen]);
    expect(told(page({ chosen: new Set([pad.key]) }))[0]).toMatch(/^pad: patch .* deck\.layup:9$/);
    const old = page({}, { ...state, old: 'Line 3 cannot be taken in yet.' });
    const [warning] = old.filter(({ attributes }) => attributes.role === 'note');
    expect(warning && textOf(warning)).toBe('As of before. Line 3 cannot be taken in yet.');
    expect(warning?.attributes.hidden).toBeUndefined();
    expect(page().filter(({ attributes }) => attributes.role === 'note' && attributes.hidden === '')).toHaveLength(1);
  });

  it('says why there is nothing', () => {
    const nodes = planView({ ...state, nothing: 'There is no recipe at the cursor.' }, undefined, seen, words);
    expect(nodes.map(textOf).join(' ')).toContain('There is no recipe at the cursor.');
    expect(tagged(all(nodes), 'svg')).toEqual([]);
  });

  it('has a name for everything that can be pressed', () => {
    for (const node of page().filter(({ tag }) => tag === 'button' || tag === 'summary'))
      expect((node.attributes['aria-label'] ?? textOf(node)).trim()).not.toBe('');
  });
});

describe('what is kept', () => {
  it('are shapes that were sent before', () => {
    const next = { ...picture, groups: [bare(skin), { ...pad, mark: 'new' }] };
    expect(completed(next, picture)?.groups.map(({ shapes }) => shapes)).toEqual([skin.shapes, pad.shapes]);
  });

  it('is nothing where a shape is lacking, or is of another mark', () => {
    expect(completed({ ...picture, groups: [bare(skin)] }, undefined)).toBeUndefined();
    expect(completed({ ...picture, groups: [{ ...bare(skin), mark: 'new' }] }, picture)).toBeUndefined();
  });

  it('is the last whole picture of the recipe while its text is broken', () => {
    const broken = { words: 'Line 3 cannot be taken in yet.', line: 2 };
    const torn = examplePicture([outline]);
    expect(shownNow({ picture }, { picture: torn, broken })).toEqual({ picture, old: broken.words });
    expect(shownNow(undefined, { picture: torn, broken })).toEqual({ picture: torn, note: broken.words });
    const other = { ...torn, recipe: { recipe: 'other' } };
    expect(shownNow({ picture }, { picture: other, broken })).toEqual({ picture: other, note: broken.words });
    expect(shownNow({ picture, old: 'before' }, { picture: torn })).toEqual({ picture: torn });
    expect(marksOf(torn)).toEqual({ [outline.key]: 'c' });
  });
});

describe('the line of the cursor', () => {
  it('is that of the things drawn from it, a second line of theirs too', () => {
    expect(groupsOnLine(picture, picture.uri, 7)).toEqual([skin]);
    expect(groupsOnLine(picture, picture.uri, 8)).toEqual([pad]);
    expect(groupsOnLine(picture, picture.uri, 5)).toEqual([]);
    expect(groupsOnLine(picture, 'file:///w/other.layup', 8)).toEqual([]);
  });
});

describe('the part that is seen', () => {
  const view = whole(picture.box);
  const near = fc.double({ min: -120, max: 120, noNaN: true });

  it('goes closer about a point that stays where it is', () => {
    fc.assert(
      fc.property(near, near, fc.double({ min: 0.2, max: 3, noNaN: true }), (x, y, factor) => {
        const next = zoomed(view, factor, { x, y }, view);
        expect((x - next.x) / next.width).toBeCloseTo((x - view.x) / view.width, 6);
        expect((y - next.y) / next.height).toBeCloseTo((y - view.y) / view.height, 6);
        expect(next.width / next.height).toBeCloseTo(view.width / view.height, 6);
      }),
    );
  });

  it('never loses the drawing, however far and often it is moved', () => {
    const step = fc.record({
      across: fc.double({ min: -9, max: 9, noNaN: true }),
      factor: fc.double({ min: 0.01, max: 9, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 30 }), (steps) => {
        const last = steps.reduce(
          (at, { across, factor }) => panned(zoomed(at, factor, { x: at.x, y: at.y }, view), across, across, view),
          view,
        );
        expect(last.x).toBeLessThanOrEqual(view.x + view.width);
        expect(last.x + last.width).toBeGreaterThanOrEqual(view.x);
        expect(last.width).toBeGreaterThanOrEqual(view.width / 401);
        expect(last.width).toBeLessThanOrEqual(view.width * 4.01);
      }),
    );
  });
});

describe('messages', () => {
  it('of the page are taken for what they are, and nothing else', () => {
    expect(readPageMessage({ kind: 'pick', key: 'a', open: true, more: 1 })).toEqual({
      kind: 'pick',
      key: 'a',
      open: true,
    });
    expect(readPageMessage({ kind: 'size' })).toEqual({ kind: 'size' });
    expect(readPageMessage({ kind: 'save', format: 'pdf', without: ['text'] })).toEqual({
      kind: 'save',
      format: 'pdf',
      without: ['text'],
    });
    for (const wrong of [
      undefined,
      'ready',
      { kind: 'pick', key: 1, open: true },
      { kind: 'view', view: 'flow' },
      { kind: 'save', format: 'exe', without: [] },
      { kind: 'copy', without: [1] },
      { kind: 'image', base64: 1 },
    ])
      expect(readPageMessage(wrong)).toBeUndefined();
  });

  it('of the editor count from the newest on', () => {
    const show = { kind: 'show', version: 3, state, picture };
    expect(readEditorMessage(show, 2)).toEqual(show);
    expect(readEditorMessage(show, 3)).toBeUndefined();
    expect(readEditorMessage({ ...show, picture: { ...picture, box: [0, 0, Number.NaN, 1] } }, 2)).toBeUndefined();
    expect(readEditorMessage({ kind: 'choose', keys: ['a'] }, 9)).toEqual({ kind: 'choose', keys: ['a'] });
    fc.assert(fc.property(fc.anything(), (value) => void readEditorMessage(value, 0)));
    fc.assert(fc.property(fc.anything(), (value) => void readPageMessage(value)));
  });

  it('what a page kept comes back with the window', () => {
    const kept = {
      uri: 'file:///w/deck.layup',
      recipe: { recipe: 'deck', size: 'short' },
      view: 'section',
      follows: false,
      without: ['tool'],
    };
    expect(readKeptState(kept)).toEqual(kept);
    expect(readKeptState({ ...kept, view: 'flow' })).toBeUndefined();
    expect(readKeptState(null)).toBeUndefined();
  });
});
