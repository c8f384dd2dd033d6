import { keyOfText } from '../language/protocol/left-alone.ts';

/** What is needed of a document of the editor. */
interface Texted {
  getText(): string;
}

/** A text that has been at work this often when the server died is not given to it again. */
const most = 2;

/**
 * Remembers which text was at work when the server died. One that was so twice is left alone until it is changed, so that a server
 * that starts by itself does not die of it again and again.
 */
export class LeftAlone {
  private readonly deaths = new Map<string, number>();
  private last: Texted | undefined;
  /** the text of the last death, until somebody types: all that is open is opened again meanwhile */
  private suspect: Texted | undefined;

  opened(document: Texted): void {
    if (this.suspect === undefined) this.last = document;
  }

  changed(document: Texted): void {
    this.suspect = undefined;
    this.last = document;
  }

  died(): void {
    this.suspect ??= this.last;
    if (this.suspect === undefined) return;
    const key = keyOfText(this.suspect.getText());
    this.deaths.set(key, (this.deaths.get(key) ?? 0) + 1);
  }

  /** Tries everything again: somebody has started the server anew. */
  forget(): void {
    this.deaths.clear();
    this.suspect = undefined;
  }

  get keys(): readonly string[] {
    return [...this.deaths].filter(([, count]) => count >= most).map(([key]) => key);
  }
}
