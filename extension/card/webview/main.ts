/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
/** The page of the layer card: shows what the editor sends, and tells it what the reader does. */

import { patch } from '../../page/patch.ts';
import { type CardState, type KeptState, type PageMessage, readShowMessage } from '../messages.ts';
import { cardView } from './card-view.ts';
import { words as english, type Words } from './words.ts';

interface Editor {
  postMessage(message: PageMessage): void;
  setState(state: KeptState | undefined): void;
}
declare function acquireVsCodeApi(): Editor;

const editor = acquireVsCodeApi();
const words: Words = { ...english, ...JSON.parse(document.body.dataset.words ?? '{}') };
const page = document.querySelector('#card') as HTMLElement;
const aloud = document.querySelector('#aloud') as HTMLElement;

/** A reader hears of a card once it stands still, not at every key. */
const quietMs = 700;

let version = -1;
let state: CardState | undefined;
let speaking: ReturnType<typeof setTimeout> | undefined;

window.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
  const message = readShowMessage(data, version);
  if (message === undefined) return;
  version = message.version;
  show(message.state);
});

function show(next: CardState): void {
  state = next;
  patch(page, cardView(next, words));
  for (const box of page.querySelectorAll<HTMLInputElement>('input[data-toggle]'))
    box.checked = box.hasAttribute('checked');
  const { card, pinned, movesCursor } = next;
  editor.setState(card && { uri: card.uri, layer: card.layer, pinned, movesCursor });
  clearTimeout(speaking);
  speaking = setTimeout(() => speak([card?.summary ?? next.nothing ?? '', next.old ?? '']), quietMs);
}

function speak(sentences: readonly string[]): void {
  const text = sentences.filter((sentence) => sentence !== '').join(' ');
  if (aloud.textContent !== text) aloud.textContent = text;
}

page.addEventListener('click', ({ target }) => {
  const found =
    target instanceof Element ? target.closest<HTMLElement | SVGElement>('[data-do],[data-step],[data-uri]') : null;
  if (found === null) return;
  const { do: action, step, uri, line, character } = found.dataset;
  if (action === 'copy' || action === 'first') editor.postMessage({ kind: action });
  else if (step !== undefined) editor.postMessage({ kind: 'step', key: step });
  else if (uri !== undefined)
    editor.postMessage({ kind: 'open', uri, line: Number(line), character: Number(character) });
});

page.addEventListener('change', ({ target }) => {
  if (!(target instanceof HTMLInputElement)) return;
  const { toggle } = target.dataset;
  if (toggle === 'pin' || toggle === 'moveCursor') editor.postMessage({ kind: toggle, on: target.checked });
});

/** How far each key goes in the stack, towards the bag face. */
const steps: Readonly<Record<string, number>> = {
  ArrowUp: 1,
  ArrowDown: -1,
  Home: Number.POSITIVE_INFINITY,
  End: Number.NEGATIVE_INFINITY,
};

page.addEventListener('keydown', (event) => {
  const { target, key } = event;
  if (!(target instanceof Element) || target.closest('[data-keys="stack"]') === null || state?.card === undefined)
    return;
  const { stack, place } = state.card;
  const by = steps[key];
  if (by !== undefined) {
    const at = stack.layers.findIndex(({ shown }) => shown);
    const to = stack.layers[Math.min(stack.layers.length - 1, Math.max(0, at + by))];
    if (to !== undefined && !to.shown) editor.postMessage({ kind: 'step', key: to.key });
  } else if (key === 'Enter' && place !== undefined) {
    editor.postMessage({ kind: 'open', uri: place.uri, line: place.line, character: place.character });
  } else return;
  event.preventDefault();
});

editor.postMessage({ kind: 'ready' });
