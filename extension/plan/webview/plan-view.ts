import { h, type VElement, type VNode } from '../../page/node.ts';
import type { PlanState, SaveFormat } from '../messages.ts';
import { pictureView, type Seen, shownGroups, wordsOf } from './picture-view.ts';
import type { WholeGroup, WholePicture } from './store.ts';
import { say, type Words } from './words.ts';

const saves: readonly SaveFormat[] = ['svg', 'png', 'pdf', 'dxf'];

/** The page as it should be. */
export function planView(state: PlanState, picture: WholePicture | undefined, seen: Seen, words: Words): VNode[] {
  if (picture === undefined)
    return [viewSwitch(state, words), h('p', { class: 'nothing', 'data-key': 'nothing' }, state.nothing ?? '')];
  const { old, note } = state;
  const warning = old !== undefined ? say(words.old, { why: old }) : (note ?? state.nothing);
  return [
    h('header', { 'data-key': 'header' }, h('h1', {}, picture.title), controls(state, picture, words)),
    h('p', { class: 'warning', role: 'note', 'data-key': 'warning', hidden: warning === undefined }, warning ?? ''),
    h(
      'main',
      { 'data-key': 'main', class: old === undefined ? '' : 'old' },
      h('div', { class: 'stage', 'data-key': 'stage' }, pictureView(picture, seen, words)),
      told(picture, seen, words),
    ),
    layerSwitches(picture, seen, words),
    table(picture, seen, words),
  ];
}

function viewSwitch({ view }: PlanState, words: Words): VElement {
  const button = (name: PlanState['view']): VElement =>
    h(
      'button',
      { type: 'button', 'data-view': name, 'aria-pressed': view === name ? 'true' : 'false' },
      name === 'plan' ? words.plan : words.section,
    );
  return h('div', { class: 'group', role: 'group', 'aria-label': words.views }, button('plan'), button('section'));
}

function controls(state: PlanState, picture: WholePicture, words: Words): VElement {
  const button = (action: string, label: string, sign = label): VElement =>
    h('button', { type: 'button', 'data-do': action, 'aria-label': label, title: label }, sign);
  return h(
    'div',
    { class: 'controls', role: 'toolbar', 'aria-label': picture.title },
    viewSwitch(state, words),
    h(
      'div',
      { class: 'group' },
      button('closer', words.closer, '+'),
      button('farther', words.farther, '\u2212'),
      button('fit', words.fit),
    ),
    checkbox('follow', state.follows, words.follows),
    ...(picture.sizes.length === 0 ? [] : [sizeChoice(picture, words)]),
    h(
      'details',
      { class: 'menu' },
      h('summary', {}, words.save),
      h(
        'div',
        { class: 'group' },
        saves.map((format) =>
          h('button', { type: 'button', 'data-save': format }, say(words.saveAs, { format: format.toUpperCase() })),
        ),
        h('button', { type: 'button', 'data-do': 'copy' }, words.copy),
      ),
    ),
  );
}

const checkbox = (name: string, on: boolean, label: string, data: Readonly<Record<string, string>> = {}): VElement =>
  h(
    'label',
    {},
    h('input', { type: 'checkbox', 'data-toggle': name, 'aria-checked': on ? 'true' : 'false', checked: on, ...data }),
    ` ${label}`,
  );

function sizeChoice({ sizes, recipe }: WholePicture, words: Words): VElement {
  const option = (value: string, label: string): VElement =>
    h('option', { value, selected: (recipe.size ?? '') === value }, label);
  return h(
    'label',
    {},
    `${words.size} `,
    h('select', { 'data-choice': 'size' }, option('', words.asWritten), ...sizes.map((size) => option(size, size))),
  );
}

/** What is chosen, in words, with its lines; a sentence where nothing is. */
function told(picture: WholePicture, { chosen }: Seen, words: Words): VElement {
  const groups = picture.groups.filter(({ key }) => chosen.has(key));
  return h(
    'ul',
    { class: 'told', 'data-key': 'told', 'aria-live': 'polite' },
    groups.length === 0
      ? h('li', { class: 'help' }, words.nothingChosen)
      : groups.map((group) => h('li', { 'data-key': group.key }, `${wordsOf(group)} `, link(group, words))),
  );
}

/** A button, since it does something in the editor; the page itself goes nowhere. */
const link = ({ key, place }: WholeGroup, words: Words): VNode =>
  place === undefined
    ? ''
    : h('button', { type: 'button', class: 'link', title: words.goTo, 'data-open': key }, place.name);

function layerSwitches({ layers }: WholePicture, { without }: Seen, words: Words): VElement {
  return h(
    'fieldset',
    { class: 'layers', 'data-key': 'layers' },
    h('legend', {}, words.layers),
    layers.map(({ layer, label }) =>
      h(
        'span',
        { 'data-key': layer, class: `switch ${layer}` },
        checkbox('layer', !without.has(layer), label, { 'data-layer': layer }),
      ),
    ),
  );
}

/** The same in words, for whom a drawing says nothing. */
function table(picture: WholePicture, { without }: Seen, words: Words): VElement {
  const shown = new Set(shownGroups(picture, without));
  const rows = picture.groups
    .filter((group) => shown.has(group) || (group.shapes.length === 0 && !without.has(group.layer)))
    .sort((a, b) => a.order - b.order);
  const heads = [words.what, words.where, words.measures, words.line];
  return h(
    'details',
    { class: 'table', 'data-key': 'table' },
    h('summary', {}, words.table),
    h(
      'table',
      {},
      h('caption', {}, picture.title),
      h(
        'thead',
        {},
        h(
          'tr',
          {},
          heads.map((head) => h('th', { scope: 'col' }, head)),
        ),
      ),
      h(
        'tbody',
        {},
        rows.map((group) =>
          h(
            'tr',
            { 'data-key': group.key },
            h('th', { scope: 'row' }, group.what),
            h('td', {}, group.where),
            h('td', {}, group.size),
            h('td', {}, link(group, words)),
          ),
        ),
      ),
    ),
  );
}
