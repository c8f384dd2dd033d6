/** The words that begin an entry at the left margin. */
const head = /^(?:shop|fibre|fabric|prepreg|resin|gelcoat|catalyst|paste|core|consumable|tool|recipe|record)\b/;

/** A text in pieces that begin with an entry at the left margin; what stands before the first is a piece of its own. */
export function chunksOf(text: string): string[] {
  const chunks: string[] = [];
  let current = '';
  for (const line of text.match(/[^\n]*\n|[^\n]+$/g) ?? []) {
    if (head.test(line) && current !== '') {
      chunks.push(current);
      current = '';
    }
    current += line;
  }
  if (current !== '') chunks.push(current);
  return chunks;
}

const entryWord = new RegExp(head.source.replace('^', ''), 'g');
const afterHead = /^[ \t]+([A-Za-z_]\w*)/;

/** The names that a piece gives to its entries, wherever an entry word stands in it. */
export function namesIn(chunk: string): Set<string> {
  const names = new Set<string>();
  for (const found of chunk.matchAll(entryWord)) {
    const name = afterHead.exec(chunk.slice(found.index + found[0].length, found.index + found[0].length + 200))?.[1];
    if (name !== undefined) names.add(name);
  }
  return names;
}

const wordsOf = (chunk: string): readonly string[] => chunk.match(/[A-Za-z_]\w*/g) ?? [];

/** Whether a piece speaks of any of the names, itself or by way of what it names in the other pieces of its book. */
export function speaksOf(chunk: string, names: ReadonlySet<string>, book: readonly string[]): boolean {
  const named = book.flatMap((piece) => [...namesIn(piece)].map((name) => ({ name, piece })));
  const byName = Map.groupBy(named, ({ name }) => name);
  const seen = new Set<string>();
  const left = [chunk];
  for (let piece = left.pop(); piece !== undefined; piece = left.pop()) {
    for (const word of wordsOf(piece)) {
      if (names.has(word)) return true;
      if (seen.has(word)) continue;
      seen.add(word);
      for (const { piece: other } of byName.get(word) ?? []) left.push(other);
    }
  }
  return false;
}
