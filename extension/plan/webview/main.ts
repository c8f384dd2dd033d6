/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
/** The page of the plan: shows what the editor sends, and tells it what the reader does. */
import { patch } from '../../page/patch.ts';
import {
  type EditorMessage,
  type KeptState,
  type PageMessage,
  type PlanState,
  readEditorMessage,
} from '../messages.ts';
import { imageOf } from './image.ts';
import { groupId, shownGroups } from './picture-view.ts';
import { planView } from './plan-view.ts';
import { Pointing } from './pointing.ts';
import { completed, type WholePicture } from './store.ts';
import { middleOf, panned, type Viewport, viewBox, whole, zoomed } from './viewport.ts';
import { words as english, type Words } from './words.ts';

interface Editor {
  postMessage(message: PageMessage): void;
  getState(): unknown;
  setState(state: KeptState | undefined): void;
}
declare function acquireVsCodeApi(): Editor;

const editor = acquireVsCodeApi();
const words: Words = { ...english, ...JSON.parse(document.body.dataset.words ?? '{}') };
const page = document.querySelector('#plan') as HTMLElement;

/** How much closer one step goes, and how far one step moves, in shares of what is seen. */
const closer = 0.8;
const aside = 0.1;

let version = -1;
let state: PlanState = { view: 'plan', follows: true };
let picture: WholePicture | undefined;
let viewport: Viewport | undefined;
/** the reader has moved the drawing: it stays where it is */
let moved = false;
let chosen: ReadonlySet<string> = new Set();
let active: string | undefined;
const without = new Set<string>(keptLayers(editor.getState()));

function keptLayers(kept: unknown): readonly string[] {
  const names = (kept as { readonly without?: unknown } | undefined)?.without;
  return Array.isArray(names) ? names.filter((name) => typeof name === 'string') : [];
}

window.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
  const message = readEditorMessage(data, version);
  if (message !== undefined) take(message);
});

function take(message: EditorMessage): void {
  if (message.kind === 'choose') {
    chosen = new Set(message.keys);
    // Of several things on one line the one that Tab came to stays: else Tab would come back to the first of them for ever.
    if (active === undefined || !chosen.has(active)) active = message.keys[0] ?? active;
    draw();
    return;
  }
  if (message.kind === 'image') {
    void imageOf(message.svg, message.length).then(
      (base64) => editor.postMessage(base64 === undefined ? { kind: 'image' } : { kind: 'image', base64 }),
      () => editor.postMessage({ kind: 'image' }),
    );
    return;
  }
  version = message.version;
  state = message.state;
  if (message.picture !== undefined) {
    const next = completed(message.picture, picture);
    // a shape is lacking: all are asked for
    if (next === undefined) {
      editor.postMessage({ kind: 'ready' });
      return;
    }
    if (next.recipe.recipe !== picture?.recipe.recipe || next.view !== picture.view) moved = false;
    picture = next;
    if (!moved) viewport = undefined;
  } else if (state.nothing !== undefined) picture = undefined;
  draw();
}

function draw(): void {
  const all = picture === undefined ? whole([0, 0, 1, 1]) : whole(picture.box);
  viewport ??= all;
  patch(page, planView(state, picture, { viewport, without, chosen, active: active ?? '' }, words));
  for (const box of page.querySelectorAll<HTMLInputElement>('input[data-toggle]'))
    box.checked = box.hasAttribute('checked');
  for (const option of page.querySelectorAll<HTMLOptionElement>('option'))
    if (option.hasAttribute('selected') !== option.selected) option.selected = option.hasAttribute('selected');
  if (picture === undefined) return;
  const { uri, recipe, view } = picture;
  editor.setState({ uri, recipe, view, follows: state.follows, without: [...without] });
}

const drawing = (): SVGSVGElement | null => page.querySelector('svg.drawing');

function look(next: Viewport): void {
  viewport = next;
  moved = true;
  drawing()?.setAttribute('viewBox', viewBox(next));
}

function zoomBy(factor: number, at?: { x: number; y: number }): void {
  if (viewport === undefined || picture === undefined) return;
  look(zoomed(viewport, factor, at ?? middleOf(viewport), whole(picture.box)));
}

function moveBy(across: number, down: number): void {
  if (viewport !== undefined && picture !== undefined) look(panned(viewport, across, down, whole(picture.box)));
}

function fitAll(): void {
  if (picture === undefined) return;
  look(whole(picture.box));
  moved = false;
}

/** Chooses a thing at once here, and tells the editor, which puts the cursor on its line. */
function pick(key: string, open: boolean): void {
  chosen = new Set([key]);
  active = key;
  draw();
  editor.postMessage({ kind: 'pick', key, open });
}

new Pointing(page, { drawing, zoomBy, moveBy, pick, chosen: () => chosen });

page.addEventListener('click', ({ target }) => {
  const found =
    target instanceof Element ? target.closest<HTMLElement>('[data-do],[data-save],[data-view],[data-open]') : null;
  if (found === null) return;
  const { do: action, save, view, open } = found.dataset;
  if (action === 'closer') zoomBy(closer);
  else if (action === 'farther') zoomBy(1 / closer);
  else if (action === 'fit') fitAll();
  else if (action === 'copy') editor.postMessage({ kind: 'copy', without: [...without] });
  else if (view === 'plan' || view === 'section') editor.postMessage({ kind: 'view', view });
  else if (open !== undefined) pick(open, true);
  else if (save === 'svg' || save === 'png' || save === 'pdf' || save === 'dxf')
    editor.postMessage({ kind: 'save', format: save, without: [...without] });
});

page.addEventListener('change', ({ target }) => {
  if (target instanceof HTMLSelectElement)
    editor.postMessage(target.value === '' ? { kind: 'size' } : { kind: 'size', size: target.value });
  if (!(target instanceof HTMLInputElement)) return;
  const { toggle, layer } = target.dataset;
  if (toggle === 'follow') editor.postMessage({ kind: 'follow', on: target.checked });
  if (toggle !== 'layer' || layer === undefined) return;
  if (target.checked) without.delete(layer);
  else without.add(layer);
  draw();
});

const keys: Readonly<Record<string, () => void>> = {
  ArrowLeft: () => moveBy(-aside, 0),
  ArrowRight: () => moveBy(aside, 0),
  ArrowUp: () => moveBy(0, -aside),
  ArrowDown: () => moveBy(0, aside),
  '+': () => zoomBy(closer),
  '=': () => zoomBy(closer),
  '-': () => zoomBy(1 / closer),
  '0': fitAll,
  Enter: () => active !== undefined && pick(active, true),
  Escape: () => drawing()?.blur(),
};

page.addEventListener('keydown', (event) => {
  const { target, key, ctrlKey, metaKey, altKey } = event;
  if (!(target instanceof Element) || target.closest('[data-keys="drawing"]') === null) return;
  if (ctrlKey || metaKey || altKey) return;
  if (key === 'Tab' ? !step(event.shiftKey ? -1 : 1) : keys[key] === undefined) return;
  keys[key]?.();
  event.preventDefault();
});

/** To the next thing; false where there is none, and Tab goes on to what follows the drawing. */
function step(by: number): boolean {
  if (picture === undefined) return false;
  const groups = [...shownGroups(picture, without)].sort((a, b) => a.order - b.order);
  const at = groups.findIndex(({ key }) => key === active);
  const next = groups[at < 0 ? (by > 0 ? 0 : groups.length - 1) : at + by];
  if (next === undefined) {
    active = undefined;
    return false;
  }
  pick(next.key, false);
  document.getElementById(groupId(next.key))?.scrollIntoView?.({ block: 'nearest', behavior: 'auto' });
  return true;
}

editor.postMessage({ kind: 'ready' });
