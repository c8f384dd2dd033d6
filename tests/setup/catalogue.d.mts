/** English texts with the place where each is said first, and the templates that are put together: none may be. */
export interface Texts {
  readonly texts: ReadonlyMap<string, string>;
  readonly faults: readonly string[];
}
export function serverTexts(): Texts;
export function editorTexts(): Texts;
export function citations(): ReadonlySet<string>;
