import type { DocumentEntries } from './entries.ts';
import type { Contents, Placed } from './shelf.ts';

/** What the documents of the workspace hold, by name. */
export function contentsOf(documents: readonly DocumentEntries[]): Contents {
  const shops: Placed[] = [];
  const records: Placed[] = [];
  const named = {
    material: new Map<string, Placed[]>(),
    tool: new Map<string, Placed[]>(),
    recipe: new Map<string, Placed[]>(),
  };
  // by address, so that which of two duplicates counts does not depend on the order of reading
  for (const document of [...documents].sort((a, b) => (a.uri < b.uri ? -1 : a.uri > b.uri ? 1 : 0))) {
    for (const lowered of document.entries) {
      const placed = { uri: document.uri, lowered };
      const { kind } = lowered.model;
      if (kind === 'shop') shops.push(placed);
      else if (kind === 'record') records.push(placed);
      else if ((kind === 'material' || kind === 'tool' || kind === 'recipe') && lowered.name !== '') {
        const list = named[kind].get(lowered.name);
        if (list === undefined) named[kind].set(lowered.name, [placed]);
        else list.push(placed);
      }
    }
  }
  return { shops, records, named };
}
