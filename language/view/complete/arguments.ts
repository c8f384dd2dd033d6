import type { Argument, Word } from '../../words/index.ts';
import { choiceOf } from '../words.ts';
import { expectedAfter } from './expected.ts';
import { itemsOf } from './items.ts';
import type { Scene } from './scene.ts';
import { offerBasis, offerLink, offerUnits, offerValue } from './values.ts';

/** What follows behind a word, by the arguments that it takes. */
export function offerArguments(scene: Scene, word: Word, tokens: Scene['before']): void {
  const takes = word.takes ?? [];
  const items = itemsOf(tokens);
  const inner = (text: string): readonly Argument[] | undefined =>
    choiceOf(word.word, text)?.takes ??
    (takes.some((one) => one.dimension === 'shape') ? choiceOf('outline', text)?.takes : undefined);
  const expected = expectedAfter(takes, items, inner);
  const owner = ownerOf(word, items.findLast((item) => item.kind === 'word')?.text);
  if (expected.unitOf !== undefined && offerUnits(scene, expected.unitOf, owner)) return;
  if (scene.cursor.touched !== undefined) return;
  if (expected.unitOf?.words !== undefined) offerValue(scene, { ...expected.unitOf, dimension: 'word' }, owner);
  if (expected.basisOf !== undefined) offerBasis(scene, expected.basisOf, items.at(-1)?.text === 'by');
  for (const value of expected.values) offerValue(scene, value, owner);
  for (const link of expected.links) offerLink(scene, link);
}

/** A choice that takes something itself speaks for it: `habit leak 5 ...`. */
function ownerOf(word: Word, choice: string | undefined): Word {
  return (choice !== undefined && word.word === 'habit' ? choiceOf('habit', choice) : undefined) ?? word;
}
