import type { LayupLexer } from '../../grammar/lexer.ts';
import type { NameKind } from '../../words/index.ts';
import { clausesOf } from '../statements.ts';
import { headOf, placeInside } from '../words.ts';
import { offerArguments } from './arguments.ts';
import { offerClause } from './clause.ts';
import { type Completion, Offers } from './completion.ts';
import { cursorAt } from './cursor.ts';
import { offerInDrawing } from './drawing.ts';
import { itemsOf } from './items.ts';
import { likelyFirst } from './likely.ts';
import { offerLineStart, offerSecondWords } from './line-start.ts';
import type { NamesPort } from './names-port.ts';
import { offerPointPart } from './point.ts';
import { type RuleName, type Scene, sceneAt } from './scene.ts';
import { offerTest } from './test.ts';
import { offerLink, offerNames } from './values.ts';

export interface CompletionBook {
  readonly lexer: LayupLexer;
  readonly names: NamesPort;
  readonly ruleNames: () => readonly RuleName[];
}

/** What may stand at an offset: words of the notation that fit the block and the line, names, units, whole blocks. */
export function completionsAt(text: string, offset: number, book: CompletionBook): readonly Completion[] {
  const cursor = cursorAt(text, offset, book.lexer);
  const place = cursor && placeInside(cursor.blocks);
  if (cursor === undefined || place === undefined) return [];
  const accepting = clausesOf(cursor.before).at(-1)?.[0]?.image === 'accept';
  const offers = accepting ? new Offers(cursor.ruleStart, cursor.ruleEnd) : new Offers(cursor.start, cursor.end);
  const scene = sceneAt(
    cursor,
    place,
    offers,
    book.names,
    book.ruleNames,
    headOf(
      place,
      cursor.before.map((token) => token.image),
    ),
  );
  offerAll(scene);
  return likelyFirst(scene, offers.all);
}

function offerAll(scene: Scene): void {
  const { before, cursor, place } = scene;
  if (before.length === 0) {
    if (cursor.touched === undefined) offerLineStart(scene);
    return;
  }
  const clauses = clausesOf(before);
  const current = clauses[clauses.length - 1] ?? [];
  const last = itemsOf(current).at(-1);
  if (offerInDrawing(scene)) return;
  if (last?.inside !== undefined) offerPointPart(scene, last.inside);
  else if (clauses.length > 1) offerClause(scene, clauses);
  else if (place === 'book' || place === 'recipe') offerHeader(scene);
  else offerHead(scene);
}

/** The part of a line before its first comma. */
function offerHead(scene: Scene): void {
  const { head, before } = scene;
  offerSecondWords(scene);
  if (head === undefined) return;
  if (head.takes?.some((one) => one.dimension === 'test') === true) offerTest(scene, before.slice(1), head);
  else offerArguments(scene, head, before.slice(head.word.split(' ').length));
}

/** The head of an entry or a block: its name, `like` another one, its title. */
function offerHeader(scene: Scene): void {
  const { before, head, place } = scene;
  const kind = before[0]?.image ?? '';
  const likes = kind === 'process' || (place === 'book' && !['shop', 'record', 'notation'].includes(kind));
  if (likes && before.at(-1)?.image === 'like') {
    if (place === 'book' && kind !== 'recipe') offerLink(scene, 'stock');
    offerNames(scene, [kind === 'process' ? 'recipe' : (kind as NameKind)], undefined);
    return;
  }
  const isNamed = before.length === 2;
  if (kind === 'record' && before.length >= 2) {
    for (const size of scene.names.inside(before[1]?.image ?? ''))
      if (size.kind === 'size') scene.offers.add({ label: size.name, sort: 'size' });
    return;
  }
  if (head !== undefined) offerHead(scene);
  if (likes && isNamed && scene.cursor.touched === undefined) offerLink(scene, 'like');
}
