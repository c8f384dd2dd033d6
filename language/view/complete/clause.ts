import type { IToken } from 'chevrotain';
import { ANY_STEP, type Argument, type Place, type Word, wordAt, wordsAt } from '../../words/index.ts';
import { clausesOf } from '../statements.ts';
import { translated } from '../translation.ts';
import { clausePlace, isVerb } from '../words.ts';
import { offerArguments } from './arguments.ts';
import { type Item, itemsOf } from './items.ts';
import type { Scene } from './scene.ts';
import { firstSentence, offerUnits, offerWord } from './values.ts';

/** Clauses of which a line has one: how far a piece goes, and which shape it has. */
const oneOf: readonly ReadonlySet<string>[] = [
  new Set(['net', 'to', 'wrap', 'over']),
  new Set(['rectangle', 'rounded', 'circle', 'ellipse', 'capsule', 'polygon', 'path', 'file']),
  new Set(['brush', 'roller', 'spray']),
];
const remarks = ['note', 'accept', 'source'];

/** What may stand behind a comma. */
export function offerClause(scene: Scene, clauses: readonly (readonly IToken[])[]): void {
  const current = clauses[clauses.length - 1] ?? [];
  const first = current[0]?.image;
  if (first === 'accept') {
    if (current.length <= 4)
      for (const rule of scene.rules())
        scene.offers.add({
          label: rule.name,
          sort: 'rule',
          ...(rule.title === undefined ? {} : { detail: firstSentence(translated(rule.title)) }),
        });
    return;
  }
  if (first === 'note' || first === 'source') return;
  const place = placeOfClauses(scene);
  if (place === 'clause of fact') {
    offerFactClause(scene, clauses, current);
    return;
  }
  const rows = rowsAt(scene, place);
  if (first === undefined) {
    const taken = headsOf([...shapeInHead(clauses[0] ?? []), ...clauses.slice(1), ...clausesOf(scene.cursor.after)]);
    for (const row of rows) if (!startsWithNumber(row) && !isTaken(row.word, taken)) offerWord(scene, row);
    for (const remark of remarks) {
      const row = wordAt(remark, 'anywhere');
      if (row !== undefined && (remark === 'accept' || !taken.has(remark))) offerWord(scene, row);
    }
    return;
  }
  const row = wordAt(first, place);
  if (row !== undefined && !startsWithNumber(row)) offerArguments(scene, row, current.slice(1));
  else offerBehindNumber(scene, rows, current, place);
}

/** `change outer, ...` replaces clauses of the line named. */
function placeOfClauses({ place, before, locals }: Scene): Place {
  const head = before[0]?.image ?? '';
  if (head !== 'change') return clausePlace(place, head);
  const line = locals().find((local) => local.name === before[1]?.image);
  return line?.kind === 'layer' ? clausePlace('stack', line.detail?.split(' ')[0] ?? 'ply') : 'clause of step';
}

/** The clause words of a line; of a step only those that its verb takes. */
function rowsAt({ head }: Scene, place: Place): readonly Word[] {
  const rows = wordsAt(place);
  if (place !== 'clause of step' || head === undefined || !isVerb(head)) return rows;
  const own = new Set(head.clauses);
  return [
    ...rows.filter((row) => own.has(row.word)),
    ...rows.filter((row) => !own.has(row.word) && ANY_STEP.includes(row.word)),
  ];
}

const startsWithNumber = (row: Word): boolean => row.takes?.[0]?.before === true;

/** The shape stands before the first comma: `outline rounded ...`, `zone mount circle ...`. */
function shapeInHead(head: readonly IToken[]): (readonly IToken[])[] {
  const shapeAt = { outline: 1, cutout: 1, zone: 2 }[head[0]?.image ?? ''];
  return shapeAt === undefined ? [] : [head.slice(shapeAt, shapeAt + 1)];
}

function headsOf(clauses: readonly (readonly IToken[])[]): ReadonlySet<string> {
  return new Set(
    clauses.flatMap((clause) =>
      clause
        .filter((token) => /^\p{L}/u.test(token.image))
        .slice(0, 1)
        .map((token) => token.image),
    ),
  );
}

function isTaken(word: string, taken: ReadonlySet<string>): boolean {
  return taken.has(word) || oneOf.some((group) => group.has(word) && [...group].some((other) => taken.has(other)));
}

/** A clause that begins with a number: its unit, then the words that stand behind such a number (`past edge`, `coats`). */
function offerBehindNumber(scene: Scene, rows: readonly Word[], current: readonly IToken[], place: Place): void {
  const items = itemsOf(current);
  const [number, word] = items;
  if (number?.kind !== 'number') return;
  const last = items.at(-1);
  if (word?.text === 'by' && last?.kind === 'number' && last.unit === undefined) {
    // the second side of a size: `60 mm by 620`
    offerUnits(scene, { dimension: 'length' }, undefined);
    return;
  }
  if (word !== undefined && word.kind !== 'connective') {
    const row = rows.find((one) => one.word === word.text) ?? wordAt(word.text, place);
    if (row !== undefined) offerArguments(scene, row, current.slice(number.unit === undefined ? 2 : 3));
    return;
  }
  const behind = rows.filter(startsWithNumber);
  if (number.unit === undefined) offerUnitsOf(scene, behind);
  if (scene.cursor.touched !== undefined) return;
  for (const row of behind) if (fits(row.takes?.[0] as Argument, number)) offerWord(scene, row);
}

function offerUnitsOf(scene: Scene, rows: readonly Word[]): void {
  for (const row of rows) offerUnits(scene, row.takes?.[0] as Argument, row);
}

const fits = (argument: Argument, number: Item): boolean =>
  (argument.dimension === 'count') === (number.unit === undefined);

/** Facts go on behind a comma with a further datum, or with what the value holds for. */
function offerFactClause(scene: Scene, clauses: readonly (readonly IToken[])[], current: readonly IToken[]): void {
  const { head, before } = scene;
  if (head === undefined) return;
  const row =
    current.length === 0 ? undefined : wordsAt('clause of fact').find((one) => one.word === current[0]?.image);
  if (row !== undefined) {
    offerArguments(scene, row, current.slice(1));
    return;
  }
  offerArguments(scene, head, before.slice(head.word.split(' ').length));
  if (current.length > 0 || clauses.length === 1) return;
  for (const one of wordsAt('clause of fact')) if (one.example.startsWith(head.word)) offerWord(scene, one);
  for (const remark of remarks) {
    const one = wordAt(remark, 'anywhere');
    if (one !== undefined) offerWord(scene, one);
  }
}
