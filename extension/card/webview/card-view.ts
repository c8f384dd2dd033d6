import type { CardFigure, LayerCard, Touch } from '../../../language/protocol/layer-card.ts';
import type { WirePlace, WireReason } from '../../../language/protocol/place.ts';
import { h, type VElement, type VNode } from '../../page/node.ts';
import type { CardState } from '../messages.ts';
import { pieceDrawing } from './piece-drawing.ts';
import { stackDrawing } from './stack-drawing.ts';
import { say, type Words } from './words.ts';

/** The page as it should be for a state. */
export function cardView(state: CardState, words: Words): readonly VNode[] {
  const { card, old, note, nothing, first } = state;
  if (card === undefined) {
    return [
      h('p', { class: 'nothing' }, nothing ?? ''),
      first === true ? h('p', {}, h('button', { type: 'button', 'data-do': 'first' }, words.first)) : '',
    ];
  }
  const warning = old !== undefined ? say(words.old, { why: old }) : note;
  return [
    h('header', {}, h('h1', {}, card.title), h('p', { class: 'kind' }, card.kind), recipeLine(card, words)),
    h('p', { class: 'warning', role: 'note', hidden: warning === undefined }, warning ?? ''),
    controls(state, words),
    h('main', { class: old === undefined ? '' : 'old' }, ...sections(card, words)),
  ];
}

function recipeLine({ recipe, place }: LayerCard, words: Words): VElement {
  return h('p', { class: 'recipe' }, recipe, ' ', place === undefined ? '' : link(place, place.name, words));
}

function controls({ pinned, movesCursor }: CardState, words: Words): VElement {
  const box = (name: string, on: boolean, label: string): VElement =>
    h(
      'label',
      {},
      h('input', { type: 'checkbox', 'data-toggle': name, 'aria-checked': on ? 'true' : 'false', checked: on }),
      ` ${label}`,
    );
  return h(
    'div',
    { class: 'controls' },
    box('pin', pinned, words.pin),
    box('moveCursor', movesCursor, words.moveCursor),
    h('button', { type: 'button', 'data-do': 'copy' }, words.copy),
  );
}

function sections(card: LayerCard, words: Words): VElement[] {
  return [
    section('stack', words.stack, ...stackDrawing(card.stack, words), stackList(card, words)),
    ...pieceSection(card, words),
    section(
      'figures',
      words.figures,
      h(
        'ul',
        { class: 'figures' },
        card.figures.map((figure) => figureItem(figure, words)),
      ),
    ),
    ...(card.missing.length === 0 ? [] : [section('missing', words.missing, reasonList(card.missing, words))]),
    section(
      'touches',
      words.touches,
      h(
        'ul',
        {},
        card.touches.map((touch) => touchItem(touch, words)),
      ),
    ),
  ];
}

const section = (name: string, title: string, ...content: readonly VNode[]): VElement =>
  h(
    'section',
    { 'data-key': name, 'aria-labelledby': `title-${name}` },
    h('h2', { id: `title-${name}` }, title),
    content,
  );

/** The same as the drawing in words, for whom a drawing says nothing. */
function stackList({ stack }: LayerCard, words: Words): VElement {
  const items = [...stack.layers]
    .reverse()
    .map(({ key, name, words: what, shown }) =>
      h(
        'li',
        { 'data-key': key },
        h(
          'button',
          { type: 'button', class: 'link', 'data-step': key, 'aria-current': shown ? 'true' : undefined },
          name,
        ),
        `: ${what}${shown ? ` (${words.layerShown})` : ''}`,
      ),
    );
  return h('details', {}, h('summary', {}, words.stackList), h('ul', {}, items));
}

function pieceSection({ piece }: LayerCard, words: Words): VElement[] {
  if (piece === undefined) return [];
  const rows = [row(words.size, piece.words), ...(piece.reach === undefined ? [] : [row(words.reach, piece.reach)])];
  return [
    section(
      'piece',
      words.piece,
      ...pieceDrawing(piece, words),
      h('ul', { class: 'figures' }, rows),
      ...(piece.reasons.length === 0 ? [] : [folded(words.why, piece.reasons, words)]),
    ),
  ];
}

const row = (label: string, value: string): VElement =>
  h('li', {}, h('span', { class: 'label' }, label), ' ', h('span', { class: 'value' }, value));

function figureItem({ name, label, value, reasons }: CardFigure, words: Words): VElement {
  const told = [h('span', { class: 'label' }, label), ' ', h('span', { class: 'value' }, value ?? words.cannotTell)];
  if (value === undefined || reasons.length === 0) return h('li', { 'data-key': name }, told);
  return h('li', { 'data-key': name }, h('details', {}, h('summary', {}, told), reasonList(reasons, words)));
}

const folded = (title: string, reasons: readonly WireReason[], words: Words): VElement =>
  h('details', {}, h('summary', {}, title), reasonList(reasons, words));

function reasonList(reasons: readonly WireReason[], words: Words): VElement {
  return h(
    'ul',
    { class: 'reasons' },
    reasons.map(({ words: said, source, at, reasons: under }) =>
      h(
        'li',
        {},
        source === undefined ? said : `${said}; ${source}`,
        at === undefined ? '' : ' ',
        at === undefined ? '' : link(at, at.name, words),
        under.length === 0 ? '' : reasonList(under, words),
      ),
    ),
  );
}

function touchItem({ side, layer, name, words: what, place }: Touch, words: Words): VElement {
  const told =
    layer === undefined ? name : h('button', { type: 'button', class: 'link', 'data-step': layer.key }, name);
  return h('li', {}, `${words[side]}: `, told, `, ${what} `, place === undefined ? '' : link(place, place.name, words));
}

/** A button, since it does something in the editor; the page itself goes nowhere. */
function link({ uri, line, character }: WirePlace, label: string, words: Words): VElement {
  return h(
    'button',
    {
      type: 'button',
      class: 'link',
      title: words.goTo,
      'data-uri': uri,
      'data-line': line,
      'data-character': character,
    },
    label,
  );
}
