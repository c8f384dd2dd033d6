import type { IToken } from 'chevrotain';
import { type Word, wordAt, wordsAt } from '../../words/index.ts';
import { itemsOf } from './items.ts';
import type { Scene } from './scene.ts';
import { offerBasis, offerLink, offerLocals, offerUnits, offerWord } from './values.ts';

const underLoads: ReadonlySet<string> = new Set(['sag', 'margin']);
const comparisons = ['<=', '>=', '<', '>'];

/** `sag under rider <= 12 mm`, `thickness at middle 20 mm to 21 mm`: behind `expect` and `check`. */
export function offerTest(scene: Scene, tokens: readonly IToken[], head: Word): void {
  const items = itemsOf(tokens);
  const last = items.at(-1);
  const asked = wordAt(items[0]?.text ?? '', 'value of expect');
  const takes = asked?.takes?.[0];
  if (last === undefined) {
    for (const word of wordsAt('value of expect')) offerWord(scene, word, 'value');
    return;
  }
  if (last.kind === 'number' && last.unit === undefined && takes !== undefined) {
    offerUnits(scene, takes, head);
    return;
  }
  const compared = items.some((item) => item.kind === 'comparison' || item.kind === 'number');
  if (last.text === 'under') offerLocals(scene, 'load');
  else if (last.text === 'on') offerLocals(scene, 'layer');
  else if (last.text === 'at') {
    scene.offers.add({ label: 'middle', sort: 'value', detail: 'the middle of the part' });
    offerLocals(scene, 'zone');
    offerLocals(scene, 'end');
  } else if (last.text === 'of') scene.offers.add({ label: 'gel', sort: 'value', detail: 'of the gel time' });
  else if (last.kind === 'comparison') offerLocals(scene, 'let');
  else if (last.kind === 'number' || last.text === 'by') {
    if (takes?.basis !== undefined) offerBasis(scene, takes, last.text === 'by');
    if (last.kind === 'number' && asked?.word === 'fill') offerLink(scene, 'of');
    if (last.kind === 'number' && !items.some((item) => item.kind === 'comparison' || item.text === 'to'))
      offerLink(scene, 'to');
  } else if (!compared) {
    if (items.length === 1 && underLoads.has(asked?.word ?? '')) offerLink(scene, 'under');
    if (items.length === 1 && asked?.word === 'thickness') offerLink(scene, 'at');
    for (const sign of comparisons) scene.offers.add({ label: sign, sort: 'link' });
  }
}
