import type { Argument } from '../../words/types.ts';
import type { Item } from './items.ts';

/** What may come next in a line. */
export interface Expected {
  /** arguments whose value may stand here */
  readonly values: readonly Argument[];
  /** connectives and linking words that lead to a further argument */
  readonly links: readonly string[];
  /** the argument that a number is for which has no unit yet */
  readonly unitOf?: Argument;
  /** the argument that the number with a unit is for which stands last: its basis may follow */
  readonly basisOf?: Argument;
}

const NOTHING: Expected = { values: [], links: [] };
const words: ReadonlySet<Argument['dimension']> = new Set(['name', 'word', 'expression', 'shape', 'test']);
const noNumbers: ReadonlySet<Argument['dimension']> = new Set(['name', 'word', 'text', 'point', 'date', 'shape']);

/**
 * Walks through what is typed behind a word along the arguments that it takes. `inner` tells what a word among the arguments
 * takes itself (`edge round 8 mm`, `outline rounded ...`).
 */
export function expectedAfter(
  takes: readonly Argument[],
  items: readonly Item[],
  inner: (word: string) => readonly Argument[] | undefined = () => undefined,
): Expected {
  let args = takes.filter((one) => one.before === undefined);
  let next = 0;
  let linked = false;
  let last: Argument | undefined;
  for (const item of items) {
    if (item.text === ',' && item.kind === 'sign') {
      // a further datum: the next argument that needs no link, or the first quantity again
      if (!args.slice(next).some((one) => one.after === undefined))
        next = args.findIndex((one) => !noNumbers.has(one.dimension));
      linked = false;
      last = undefined;
      if (next < 0) return NOTHING;
      continue;
    }
    const link = linkTo(args, next, item);
    if (link >= 0) {
      next = link;
      linked = true;
      last = undefined;
      continue;
    }
    if (item.kind === 'connective' || item.kind === 'comparison') {
      // a basis (`by weight`) follows its number; another link leads where the table knows nothing
      if (item.text !== 'by' || last?.basis === undefined) {
        next = args.length;
        linked = false;
      }
      continue;
    }
    // `8 holes`: the word belongs to the number before it
    if (item.kind === 'sign' || (item.kind === 'word' && last?.words?.includes(item.text) === true)) continue;
    const taken = takerOf(args, next, linked, item);
    if (taken < 0) {
      last = item.kind === 'number' ? undefined : last;
      continue;
    }
    last = args[taken] as Argument;
    const more = item.kind === 'word' ? inner(item.text) : undefined;
    if (more !== undefined) args = [...args.slice(0, taken + 1), ...more, ...args.slice(taken + 1)];
    next = last.repeated === true ? taken : taken + 1;
    linked = false;
  }
  return expectedAt(args, next, linked, items[items.length - 1], last);
}

function expectedAt(
  args: readonly Argument[],
  next: number,
  linked: boolean,
  item: Item | undefined,
  last: Argument | undefined,
): Expected {
  if (linked) return { values: args.slice(next, next + 1), links: [] };
  const values: Argument[] = [];
  const links: string[] = [];
  for (const one of args.slice(next)) {
    if (one.after !== undefined) links.push(one.after);
    else if (links.length === 0) values.push(one);
    if (one.optional !== true && one.after === undefined) break;
  }
  const number = item?.kind === 'number' && last !== undefined;
  const basis = last?.basis !== undefined && ((number && item.unit !== undefined) || item?.text === 'by');
  return {
    values,
    links,
    ...(number && item.unit === undefined ? { unitOf: last } : {}),
    ...(basis ? { basisOf: last } : {}),
  };
}

/** The argument that a link leads to, the next ones first. */
function linkTo(args: readonly Argument[], next: number, item: Item): number {
  if (item.kind !== 'connective' && item.kind !== 'word' && item.kind !== 'comparison') return -1;
  const ahead = args.findIndex((one, i) => i >= next && one.after === item.text);
  if (ahead >= 0 || item.kind === 'word') return ahead;
  return args.findIndex((one) => one.after === item.text && one.dimension !== 'name');
}

function takerOf(args: readonly Argument[], next: number, linked: boolean, item: Item): number {
  for (let i = next; i < args.length; i++) {
    const one = args[i] as Argument;
    const free = one.after === undefined || (linked && i === next);
    if (free && accepts(one, item)) return i;
    if (linked || (one.optional !== true && one.after === undefined)) return -1;
  }
  return -1;
}

function accepts(argument: Argument, item: Item): boolean {
  if (item.kind === 'word')
    return (
      words.has(argument.dimension) ||
      argument.words?.includes(item.text) === true ||
      argument.dimension === 'point' ||
      isQuantity(argument)
    );
  if (item.kind === 'number' || item.kind === 'ratio') return !noNumbers.has(argument.dimension);
  return argument.dimension === item.kind || (item.kind === 'point' && argument.dimension === 'expression');
}

/** A `let` may stand for any quantity. */
const isQuantity = (argument: Argument): boolean =>
  argument.dimension !== 'text' && argument.dimension !== 'date' && argument.basis === undefined;
