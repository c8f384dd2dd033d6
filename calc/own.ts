/** The row of a table by a word that somebody typed: `toString` is in no table, though every object knows it. */
export const own = <T>(table: Readonly<Record<string, T>>, word: string): T | undefined =>
  Object.hasOwn(table, word) ? table[word] : undefined;
