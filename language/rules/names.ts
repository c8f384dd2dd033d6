/** Names of the book that a message may propose. */
export interface Names {
  /** spelled alike, nearest first */
  nearest(namespace: 'material' | 'tool' | 'recipe', name: string): readonly string[];
}
