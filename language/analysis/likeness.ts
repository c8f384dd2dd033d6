import type { Material, Tool } from '../../calc/model/index.ts';

import { longestLikeness } from '../grammar/limits.ts';

type Likeable = Material | Tool;

/** How the base of a `like` is found: `stock` is the stock entry of the same name. */
export type FindBase<T extends Likeable> = (entry: T) => T | undefined;

/** The entry with what it takes over from the one that it is like; its own facts win, list by list. Cycles end where they close, chains where they are longer than any shop has. */
export function withLikeness<T extends Likeable>(entry: T, findBase: FindBase<T>, seen: ReadonlySet<T> = new Set()): T {
  if (entry.like === undefined || seen.has(entry) || seen.size >= longestLikeness) return entry;
  const base = findBase(entry);
  if (base === undefined) return entry;
  const whole = withLikeness(base, findBase, new Set([...seen, entry]));
  const { notes: _notes, accepts: _accepts, like: _like, title, ...facts } = whole;
  return { ...facts, ...(title === undefined ? {} : { title }), ...entry };
}
