/** Names of the book that a message may propose. */
export interface Names {
  /** spelled alike, nearest first */
  nearest(namespace: 'material' | 'tool' | 'recipe', name: string): readonly string[];
  /** whether the stock library has an entry of that name */
  inStock(namespace: 'material' | 'tool', name: string): boolean;
}
