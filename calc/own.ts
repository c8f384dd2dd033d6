/** The row of a table by a word that somebody typed: `toString` is in no table, though every object knows it. */
export const own = <T>(table: Readonly<Record<string, T>>, word: string): T | undefined =>
  Object.hasOwn(table, word) ? table[word] : undefined;

/** The row of a verb: two words of a verb are looked up together, then the first. */
export function ownOfVerb<T>(table: Readonly<Record<string, T>>, verb: string): T | undefined {
  const row = own(table, verb);
  const space = row === undefined ? verb.indexOf(' ') : -1;
  return space < 0 ? row : own(table, verb.slice(0, space));
}
