import type { LayupServices } from '../book/services.ts';

interface Kept<T> {
  readonly view: T;
  /** what the editor was told last, in words, and for which version of the text */
  told?: { readonly words: string; readonly version: number };
}

/** Something that is kept for each document that is shown in an editor, as long as it is open. */
export class OfOpenDocuments<T extends { forget(): void }> {
  private readonly kept = new Map<string, Kept<T>>();
  private readonly make: () => T;

  constructor({ shared, settings }: LayupServices, make: () => T) {
    this.make = make;
    shared.workspace.TextDocuments.onDidClose(({ document }) => this.kept.delete(document.uri));
    // what was told before is in other units, or of other kinds
    settings.onChange(() => {
      for (const { view } of this.kept.values()) view.forget();
    });
  }

  of(uri: string): Kept<T> {
    let found = this.kept.get(uri);
    if (found === undefined) {
      found = { view: this.make() };
      this.kept.set(uri, found);
    }
    return found;
  }

  get uris(): readonly string[] {
    return [...this.kept.keys()];
  }
}
