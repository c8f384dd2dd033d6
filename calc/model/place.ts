/**
 * Where a value stands. An entry key names the entry (`material/triax_680`, `stock/material/biax_440`, `recipe/sled_deck`),
 * the path names the line or datum in it (`price`, `stack.2.wrap`, `process.4.material`). Ranges in the text live beside the
 * model, in `language/lower/places.ts`: the model never changes because a comment moved a line.
 */
export type EntryKey = string;

export interface Place {
  readonly entry: EntryKey;
  readonly path: string;
}

export type Namespace = 'shop' | 'material' | 'tool' | 'recipe' | 'record';

export function entryKey(namespace: Namespace, name: string, origin: 'workspace' | 'stock' = 'workspace'): EntryKey {
  return origin === 'stock' ? `stock/${namespace}/${name}` : `${namespace}/${name}`;
}
