import type { Amount, Argument, Phrase, Step, StepClause } from '../model/index.ts';
import { ANGLE, type Dimension, LENGTH, NUMBER, sameDimension, TIME } from '../quantity/index.ts';

/*
 * A step is data: a clause may begin with its word or with its number (`pleats 4 of 40 mm`, `5 coats new`). What is asked of it
 * here does not depend on the order.
 */

type Phrased = Phrase & { readonly phrases?: readonly Phrase[] };

// Lists made by loops, over and over: a clause says two or three things, and to look up a list that was kept takes longer than to make it.

/** All arguments of a phrase and of the phrases in it, its own word first, as one list; `5 coats` is a count and a word. */
export const flat = (phrase: Phrased): readonly Argument[] => addPhrase(phrase, []);

function addPhrase(phrase: Phrased, into: Argument[]): readonly Argument[] {
  if (phrase.word !== '') into.push({ kind: 'word', word: phrase.word });
  for (const argument of phrase.arguments) addCounted(argument, into);
  if (phrase.phrases !== undefined) for (const inner of phrase.phrases) addPhrase(inner, into);
  return into;
}

/** A number without a unit of measure is a count of what its word says. */
function addCounted(argument: Argument, into: Argument[]): void {
  if (argument.kind !== 'amount' || !sameDimension(argument.amount.dimension, NUMBER)) {
    into.push(argument);
    return;
  }
  const { si, unit } = argument.amount;
  if (unit === undefined) into.push({ kind: 'count', count: si });
  else if (/^[a-z]+$/.test(unit)) into.push({ kind: 'count', count: si }, { kind: 'word', word: unit });
  else into.push(argument);
}

/** What stands between the verb and the first comma. */
export const head = (step: Step): readonly Argument[] => addHead(step, []);

function addHead(step: Step, into: Argument[]): readonly Argument[] {
  for (const argument of step.arguments) addCounted(argument, into);
  for (const phrase of step.phrases) addPhrase(phrase, into);
  return into;
}

/** All that a step says, its clauses too. */
export function allSaid(step: Step): readonly Argument[] {
  const said: Argument[] = [];
  addHead(step, said);
  for (const clause of step.clauses) addPhrase(clause, said);
  return said;
}

// loops, and no functions made: these are asked some hundred times of each recipe
export function hasWord(list: readonly Argument[], ...words: readonly string[]): boolean {
  for (const a of list) if (a.kind === 'word' && words.includes(a.word)) return true;
  return false;
}

export function amountOf(list: readonly Argument[], ...dimensions: readonly Dimension[]): Amount | undefined {
  for (const a of list) {
    if (a.kind !== 'amount') continue;
    for (const dimension of dimensions) if (sameDimension(a.amount.dimension, dimension)) return a.amount;
  }
  return undefined;
}

export function countOf(list: readonly Argument[]): number | undefined {
  for (const a of list) if (a.kind === 'count') return a.count;
  return undefined;
}

/** The clause in which one of the words stands, first or not. */
export function clauseWith(step: Step, ...words: readonly string[]): StepClause | undefined {
  for (const clause of step.clauses) if (hasWord(flat(clause), ...words)) return clause;
  return undefined;
}

/** The clause that begins with a word, or with a number and that word. */
export function firstClause(step: Step, word: string): StepClause | undefined {
  for (const clause of step.clauses) {
    for (const a of flat(clause)) {
      if (a.kind !== 'word') continue;
      if (a.word === word) return clause;
      break;
    }
  }
  return undefined;
}

/** `80 mm past edge` is 0.08, `35 mm short of edge` is -0.035; m past the edge of the part. */
export function pastEdge(step: Step): number | undefined {
  for (const clause of step.clauses) {
    const list = flat(clause);
    const length = amountOf(list, LENGTH);
    if (length === undefined) continue;
    if (hasWord(list, 'past', 'outside')) return length.si;
    if (hasWord(list, 'short', 'inside')) return -length.si;
  }
  return undefined;
}

/** What the words of a clause say that its time is not the duration of the step. */
const BOUNDS = ['within', 'most', 'least', 'after', 'every', 'before', 'until'];

/** The time that a step says it takes: `hold 8 h`, `trim ..., 10 min`, `20 min each`. */
export function typedTime(
  step: Step,
): { readonly each: boolean; readonly amount: Amount; readonly path: string } | undefined {
  const own = timeIn(head(step), step.path);
  if (own !== undefined) return own;
  for (const clause of step.clauses) {
    const found = timeIn(flat(clause), clause.path);
    if (found !== undefined) return found;
  }
  return undefined;
}

function timeIn(list: readonly Argument[], path: string): ReturnType<typeof typedTime> {
  const amount = amountOf(list, TIME);
  if (amount === undefined || hasWord(list, ...BOUNDS) || hasWord(list, 'bake', 'debulk')) return undefined;
  return { each: hasWord(list, 'each'), amount, path };
}

/** The material or the other name that a step is about. */
export function subject(step: Step): string | undefined {
  if (step.material !== undefined) return step.material;
  const first = step.arguments[0];
  return first?.kind === 'word' ? first.word : undefined;
}

/** What a line mixes by name, before or behind its mass: `mix 1.15 kg epoxy_slow`. */
export function mixedName(step: Step): string | undefined {
  const named = step.arguments.find((said) => said.kind === 'word');
  return step.material ?? (named?.kind === 'word' ? named.word : undefined);
}

/** The name behind a connective in the head of a step: `with bond_paste`, `in bolts`. */
export function namedBehind(step: Step, connective: string): string | undefined {
  const first = step.phrases.find(({ word }) => word === connective)?.arguments[0];
  return first?.kind === 'word' ? first.word : undefined;
}

/** What a step is done with: `bond latch with bond_paste`, `seal edge bond_paste`, `fillet 10 mm with filleting_mix`. */
export const pasteOf = (step: Step): string | undefined => namedBehind(step, 'with') ?? subject(step);

/** How thick the line of a bond is to be: a length of its own, neither a radius nor how long the joint is. */
export function bondLine(step: Step): { readonly amount: Amount; readonly path: string } | undefined {
  for (const clause of step.clauses) {
    const list = flat(clause);
    const amount = hasWord(list, 'fillet', 'long', 'along') ? undefined : amountOf(list, LENGTH);
    if (amount !== undefined) return { amount, path: clause.path };
  }
  return undefined;
}

/** Radius of the fillet that a step draws, m: `fillet 10 mm with epoxy_fillet`, `bond web with epoxy_fillet, fillet 10 mm`. */
export function filletRadius(step: Step): number | undefined {
  const clause = step.verb === 'fillet' ? undefined : firstClause(step, 'fillet');
  const list = step.verb === 'fillet' ? head(step) : clause === undefined ? [] : flat(clause);
  return amountOf(list, LENGTH)?.si;
}

/** The angle at which two pieces meet: `at 90 deg`. */
export const meetingAngle = (step: Step): Amount | undefined => amountOf(allSaid(step), ANGLE);

/** Every step with those inside its block, in order of the text. */
export function allSteps(steps: readonly Step[], into: Step[] = []): readonly Step[] {
  for (const step of steps) {
    into.push(step);
    if (step.steps !== undefined) allSteps(step.steps, into);
  }
  return into;
}
