import {
  usualAgain,
  usualClauses,
  usualEntries,
  usualExpectations,
  usualLayers,
  usualSteps,
} from '../../words/usual.ts';
import { clausesOf, headWord, type Statement } from '../statements.ts';
import { isStepPlace } from '../words.ts';
import type { Completion } from './completion.ts';
import type { Scene } from './scene.ts';

/** The lower, the further up an offer stands; equal ones keep their order. */
type Rank = (offer: Completion, at: number) => number;

/** Behind all that has a rank of its own. */
const rest = 1000;
/** A remark may stand behind everything: it is the fifth word of a list. */
const remarks: Readonly<Record<string, number>> = { note: 3.5, accept: 3.6 };

/** The same offers, what is usual at this place first. */
export function likelyFirst(scene: Scene, offers: readonly Completion[]): readonly Completion[] {
  const rank = rankAt(scene);
  if (rank === undefined) return offers;
  return offers
    .map((offer, at) => ({ offer, rank: rank(offer, at) }))
    .sort((a, b) => a.rank - b.rank)
    .map(({ offer }) => offer);
}

function rankAt(scene: Scene): Rank | undefined {
  const { place, before, cursor } = scene;
  if (before.length === 0) {
    if (place === 'book') return cursor.start === 0 ? undefined : byTable(usualEntries);
    if (place === 'stack') return byTable(usualLayers);
    return isStepPlace(place) ? stepRank(scene) : undefined;
  }
  const clauses = clausesOf(before);
  if (before[0]?.image === 'expect' && before.length === 1) return expectRank(scene);
  const current = clauses.at(-1) ?? [];
  if (clauses.length === 1 || current.length > 1) return undefined;
  // rules of what the line is about
  if (current[0]?.image === 'accept') return ({ label }) => (label.startsWith(`${before[0]?.image}/`) ? 0 : 1);
  // behind a bare number: words of a count before units, which are many
  if (current.length === 1)
    return /^\d/.test(current[0]?.image ?? '') ? ({ sort }) => (sort === 'word' ? 0 : 1) : undefined;
  const kind = before[0]?.image === 'change' ? layerKind(scene) : (before[0]?.image ?? '');
  const usual = usualClauses[kind];
  if (place === 'stack' || before[0]?.image === 'change') return usual && byTable(usual);
  return ({ label }, at) => remarks[label] ?? at;
}

const byTable =
  (table: readonly string[]): Rank =>
  ({ label }, at) => {
    const place = table.indexOf(label.replace(/ \{ \}$/, ''));
    return place < 0 ? rest + at : place;
  };

/** The kind of layer that `change` speaks of. */
function layerKind({ before, locals }: Scene): string {
  const layer = locals().find(({ kind, name }) => kind === 'layer' && name === before[1]?.image);
  return layer?.detail?.split(' ')[0] ?? '';
}

const isBefore = ({ tokens }: Statement, offset: number): boolean => (tokens[0]?.startOffset ?? offset) < offset;
/** A step may have a name of two words: `leak test`. */
const stepOf = (one: Statement): string =>
  usualSteps.find((step) => step === `${headWord(one)} ${one.tokens[1]?.image}`) ?? headWord(one);

/** What follows the last step of the block in the usual order; what was done already comes after that. */
function stepRank({ cursor }: Scene): Rank {
  const inBlock = cursor.statements.filter(({ blocks }) => blocks.at(-1) === cursor.blocks.at(-1));
  const earlier = inBlock.filter((one) => isBefore(one, cursor.start)).map(stepOf);
  const told = new Set(earlier);
  const last = earlier.findLast((step) => usualSteps.includes(step));
  const after = last === undefined ? -1 : usualSteps.indexOf(last);
  return ({ label }, at) => {
    const step = label.replace(/ \{ \}$/, '');
    const place = usualSteps.indexOf(step);
    if (step === last && usualAgain.has(step)) return 0.5;
    if (place < 0) return rest + at;
    if (told.has(step)) return rest / 2 + place;
    return place > after ? place - after : rest / 4 + place;
  };
}

/** What is not yet expected; what a load does where there is one. */
function expectRank({ cursor, locals }: Scene): Rank {
  const told = new Set(
    cursor.statements
      .filter((one) => headWord(one) === 'expect' && isBefore(one, cursor.start))
      .map(({ tokens }) => tokens[1]?.image),
  );
  const loaded = locals().some(({ kind }) => kind === 'load');
  const open = usualExpectations.filter((word) => !told.has(word) && (loaded || !['sag', 'margin'].includes(word)));
  return byTable(open);
}
