import { clothClauses, coreClauses, repeatClauses } from './clauses.ts';
import { stepClauses } from './clauses-step.ts';
import { consumableKinds } from './consumable-kinds.ts';
import { connectives, entries, everywhere } from './entries.ts';
import { coatClauses, layers } from './layers.ts';
import { expectations, loadFacts } from './loads.ts';
import { clothChoices, clothFacts, clothStyles } from './materials-cloth.ts';
import { consumableFacts, coreFacts } from './materials-core.ts';
import { resinFacts, resinFamilies } from './materials-resin.ts';
import { partLines, recipeLines, shapes } from './part.ts';
import { recordFacts } from './records.ts';
import { habits, shop } from './shop.ts';
import { toolFacts } from './tools.ts';
import type { Place, Verb, Word } from './types.ts';
import { PLACES } from './types.ts';
import { states } from './values.ts';
import { afterVerbs } from './verbs-after.ts';
import { clothVerbs, coreVerbs } from './verbs-core.ts';
import { cureVerbs, waitVerbs } from './verbs-cure.ts';
import { coatVerbs, mouldVerbs } from './verbs-mould.ts';
import { overVerbs } from './verbs-over.ts';
import { pullVerbs } from './verbs-pull.ts';

export { classesOf, LAID, needed, precedes } from './order.ts';
export { ANY_STEP } from './step-row.ts';
export type {
  Argument,
  ArgumentKind,
  Group,
  NameKind,
  Need,
  Place,
  Precedence,
  ProcessKind,
  Resource,
  StepClass,
  Use,
  Verb,
  Word,
} from './types.ts';
export { GROUPS, PLACES } from './types.ts';

/** All work steps, in the order in which a part is usually built. */
export const verbs: readonly Verb[] = [
  ...mouldVerbs,
  ...coatVerbs,
  ...coreVerbs,
  ...clothVerbs,
  ...overVerbs,
  ...pullVerbs,
  ...cureVerbs,
  ...afterVerbs,
  ...waitVerbs,
];

/** Every word of the notation in every sense. */
export const words: readonly Word[] = [
  ...entries,
  ...everywhere,
  ...connectives,
  ...shop,
  ...habits,
  ...clothFacts,
  ...clothStyles,
  ...clothChoices,
  ...resinFacts,
  ...resinFamilies,
  ...coreFacts,
  ...consumableFacts,
  ...consumableKinds,
  ...toolFacts,
  ...recipeLines,
  ...partLines,
  ...shapes,
  ...layers,
  ...coatClauses,
  ...clothClauses,
  ...repeatClauses,
  ...coreClauses,
  ...verbs,
  ...stepClauses,
  ...states,
  ...loadFacts,
  ...expectations,
  ...recordFacts,
];

const byPlace = new Map<Place, Map<string, Word>>(PLACES.map((place) => [place, new Map()]));
for (const word of words) for (const place of word.at) byPlace.get(place)?.set(word.word, word);
const byVerb = new Map(verbs.map((verb) => [verb.word, verb]));
const bySpelling = new Map(verbs.flatMap((verb) => (verb.instead ?? []).map((other) => [other, verb] as const)));
const bySense = new Map<string, Word[]>();
for (const word of words) bySense.set(word.word, [...(bySense.get(word.word) ?? []), word]);

/** What a word means at a place; words that may stand anywhere mean the same everywhere unless the place has its own. */
export function wordAt(word: string, place: Place): Word | undefined {
  return byPlace.get(place)?.get(word) ?? byPlace.get('anywhere')?.get(word);
}

/** The words that may begin a line, a clause or a value at this place. */
export function wordsAt(place: Place): readonly Word[] {
  return [...(byPlace.get(place)?.values() ?? [])];
}

/** All senses of a word. */
export function senses(word: string): readonly Word[] {
  return bySense.get(word) ?? [];
}

/** A work step by its whole name: `peel`, `leak test`, `seal edge`. */
export function verb(name: string): Verb | undefined {
  return byVerb.get(name);
}

/** What a spelling of other shops (`demold`, `drop test`) means. */
export function verbSpelled(other: string): Verb | undefined {
  return bySpelling.get(other);
}

/** The verb of a class of the partial order: `lay coat` is done by `lay`, `seal edge` by itself. */
export function verbOfClass(step: string): Verb | undefined {
  return verb(step) ?? verb(step.slice(0, step.lastIndexOf(' ')));
}
