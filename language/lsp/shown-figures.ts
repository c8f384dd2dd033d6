import type { LangiumDocument } from 'langium';
import type { LayupServices } from '../book/services.ts';
import type { CodeLine } from '../view/kept/code-lines.ts';
import type { Part, Told } from '../view/kept/kept-lines.ts';
import { markOf } from '../view/kept/mark.ts';
import { codeLinesIn } from './code-lines.ts';
import { OfOpenDocuments } from './of-open-documents.ts';

/** Tells figures beside the lines of one document. */
export interface FiguresOfDocument<P extends Part> {
  tell(document: LangiumDocument, lines: readonly CodeLine[]): Told<P>[];
  forget(): void;
}

/** A view of figures beside the text, which the editor fetches again by itself only when the text changes. */
export class ShownFigures<P extends Part> {
  private readonly services: LayupServices;
  private readonly documents: OfOpenDocuments<FiguresOfDocument<P>>;

  constructor(services: LayupServices, make: () => FiguresOfDocument<P>) {
    this.services = services;
    this.documents = new OfOpenDocuments(services, make);
  }

  /** For the editor. */
  tell(document: LangiumDocument): Told<P>[] {
    const { told, kept } = this.now(document);
    kept.told = { words: wordsOf(told), version: document.textDocument.version };
    return told;
  }

  /** Whether the editor shows something else than it would be told now of the same text; it counts as told then. */
  hasChanged(document: LangiumDocument): boolean {
    const { told, kept } = this.now(document);
    const [before, words, { version }] = [kept.told, wordsOf(told), document.textDocument];
    // for a text that was edited the editor asks by itself
    if (before === undefined || before.version !== version) return false;
    kept.told = { words, version };
    return before.words !== words;
  }

  /** Addresses of the documents that it was asked for. */
  get uris(): readonly string[] {
    return this.documents.uris;
  }

  private now(document: LangiumDocument) {
    const kept = this.documents.of(document.uri.toString());
    return { kept, told: kept.view.tell(document, codeLinesIn(this.services, document.textDocument)) };
  }
}

const wordsOf = (told: readonly Told<Part>[]): string =>
  told.map(({ parts }) => parts.map(({ part, old }) => `${part.words}${markOf(old)}`).join()).join('\n');
