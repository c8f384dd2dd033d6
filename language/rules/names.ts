/** Names of the book that a message may propose. */
export interface Names {
  /** spelled alike, nearest first */
  nearest(namespace: 'material' | 'tool' | 'recipe', name: string): readonly string[];
  /** what the stock entry of that name says, by the names of its facts; none where stock has no such entry */
  stockFacts(namespace: 'material' | 'tool', name: string): readonly string[] | undefined;
  /** whether another recipe of the workspace is like this one, and may speak of its names */
  hasLikeness(recipe: string): boolean;
}
