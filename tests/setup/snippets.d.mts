export interface Snippet {
  readonly prefix: string;
  readonly description: string;
  readonly body: readonly string[];
}
export function textsOfSnippet(name: string, snippet: Snippet): readonly string[];
export function translatedSnippets(
  snippets: Readonly<Record<string, Snippet>>,
  words: Readonly<Record<string, string>>,
): Readonly<Record<string, Snippet>>;
