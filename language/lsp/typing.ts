import type { TextDocuments } from 'langium/lsp';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { typedChange } from './typed-line.ts';

/** Who has typed nothing for so long looks at what he has typed: ms. */
const restMs = 800;

/** An open text. */
interface Known {
  text: string;
  /** offset of the first character of the line that is typed: what is typed in it does not move it */
  typed?: number;
  /** offset behind what was typed last */
  cursor: number;
  /** nothing has been typed for a while */
  rested: boolean;
  /** something else than this line has changed since the findings were told last */
  stale: boolean;
}

/**
 * Which line of which open text is being typed. A change within a line makes it the one that is typed, until another is changed, the
 * cursor leaves it, or typing rests. What is pasted over several lines, a line that is broken or joined, and a text that is replaced
 * are not typed.
 */
export class Typing {
  readonly #known = new Map<string, Known>();
  readonly #left: () => void;
  #rest: ReturnType<typeof setTimeout> | undefined;

  /** `left` is called when a line has been left, or typing rests. */
  constructor(documents: TextDocuments<TextDocument> | undefined, left: () => void) {
    this.#left = left;
    for (const document of documents?.all() ?? []) this.#changed(document.uri, document.getText());
    documents?.onDidChangeContent(({ document }) => this.#changed(document.uri, document.getText()));
    documents?.onDidClose(({ document }) => {
      this.leave((uri) => uri === document.uri);
      this.#known.delete(document.uri);
    });
  }

  /** The line that is being typed in a document. */
  in(uri: string): Readonly<Known> | undefined {
    const known = this.#known.get(uri);
    return known?.typed === undefined ? undefined : known;
  }

  /** A line is being typed in another document than this. */
  elsewhere(uri: string): boolean {
    return [...this.#known].some(([other, { typed }]) => other !== uri && typed !== undefined);
  }

  /** What is found of a document has been told. */
  told(uri: string): void {
    const known = this.#known.get(uri);
    if (known !== undefined) known.stale = false;
  }

  /** The lines that are typed and for which this holds are typed no longer. */
  leave(isLeft: (uri: string, start: number) => boolean = () => true): void {
    let any = false;
    for (const [uri, known] of this.#known) {
      if (known.typed === undefined || !isLeft(uri, known.typed)) continue;
      known.typed = undefined;
      known.stale = true;
      any = true;
    }
    if (any) this.#left();
  }

  #changed(uri: string, text: string): void {
    const known = this.#known.get(uri);
    if (known === undefined) {
      this.#known.set(uri, { text, cursor: 0, rested: false, stale: true });
      return;
    }
    clearTimeout(this.#rest);
    this.#rest = setTimeout(() => this.#rests(), restMs);
    known.rested = false;
    // A bracket typed over the one that the editor has closed changes nothing.
    if (text === known.text) return;
    const change = typedChange(known.text, text);
    const start = change?.line.start;
    known.text = text;
    known.cursor = change?.cursor ?? 0;
    this.leave((other, typed) => other !== uri || typed !== start);
    known.typed = start;
    if (start === undefined) known.stale = true;
  }

  #rests(): void {
    for (const known of this.#known.values()) known.rested = true;
    this.#left();
  }
}
