import type { IToken } from 'chevrotain';
import { itemsOf } from './items.ts';
import type { Scene } from './scene.ts';
import { offerLink, offerLocals, offerUnits } from './values.ts';

/** Inside `(x, y)`: lengths, and the end that one is measured from. */
export function offerPointPart(scene: Scene, inside: readonly IToken[]): void {
  const last = itemsOf(inside).at(-1);
  if (last?.kind === 'number' && last.unit === undefined) offerUnits(scene, { dimension: 'length' }, undefined);
  else if (last?.text === 'from') offerLocals(scene, 'end');
  else if (last === undefined || last.kind === 'sign') offerLocals(scene, 'let');
  else if (scene.locals().some((local) => local.kind === 'end')) offerLink(scene, 'from');
}
