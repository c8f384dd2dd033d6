import type { Diagnostic } from 'vscode-languageserver-protocol';
import { LSPErrorCodes } from 'vscode-languageserver-protocol';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { MemoryServer } from '../harness/memory-server.ts';
import type { Chance } from './chance.ts';
import { chunksOf, namesIn, speaksOf } from './chunks.ts';
import { around, someChunks, stockChunks } from './corpus.ts';
import { type Edit, someEdit } from './edits.ts';

/** The document that the edits of a session go to; the others of the book stand around it. */
export const edited = 'edited.layup';

/** What must never be read on a screen. */
const nonsense = /\b(?:NaN|Infinity|undefined|null|\[object)\b/;

/** Requests that an editor sends by itself while somebody types; `at` is a random place. */
const requests = [
  'hover',
  'completion',
  'documentSymbol',
  'foldingRange',
  'formatting',
  'codeAction',
  'definition',
  'references',
  'prepareRename',
  'rename',
  'semanticTokens/full',
] as const;

/** An answer that an edit overtook is no failure, nor is a reason why something cannot be renamed. */
const goodAnswers: ReadonlySet<number> = new Set([
  LSPErrorCodes.RequestCancelled,
  LSPErrorCodes.ServerCancelled,
  LSPErrorCodes.ContentModified,
  LSPErrorCodes.RequestFailed,
]);

/**
 * Some edits to one document of a book, through the protocol. A quiet session edits one entry and its neighbours must keep
 * their findings; a wild one edits anything, the shop and the materials too.
 */
export class Session {
  readonly #server: MemoryServer;
  readonly #chance: Chance;
  readonly #quiet: boolean;
  readonly #documents = new Map<string, TextDocument>();
  readonly #start: readonly string[];
  readonly #victim: number;
  #said: readonly Diagnostic[] = [];
  #before = '';
  #pending: Promise<unknown>[] = [];

  constructor(server: MemoryServer, chance: Chance) {
    this.#server = server;
    this.#chance = chance;
    this.#quiet = chance.oneIn(2);
    this.#start = someChunks(chance);
    this.#victim = chance.below(this.#start.length);
  }

  /** The texts of all files as they stand. */
  get files(): Record<string, string> {
    return Object.fromEntries([...this.#documents].map(([name, document]) => [name, document.getText()]));
  }

  /** The text of the edited document before the last edit. */
  get before(): string {
    return this.#before;
  }

  async begin(): Promise<void> {
    for (const [name, text] of Object.entries({ ...around, [edited]: this.#start.join('') })) {
      const known = this.#server.isOpen(name);
      const document = TextDocument.create(name, 'layup', 1, text);
      this.#documents.set(name, document);
      if (known) await this.#server.change(name, { text });
      else await this.#server.open(name, text);
    }
    await this.#server.settled();
    this.#said = this.#server.diagnostics.get(edited) ?? [];
  }

  /** One edit, and now and then what an editor asks meanwhile. */
  async edit(): Promise<void> {
    const name = this.#quiet || !this.#chance.oneIn(8) ? edited : this.#chance.pick(Object.keys(around));
    await this.#apply(name, this.#quiet ? this.#editOfVictim() : this.#editOf(name));
    if (this.#chance.oneIn(4)) this.#ask(name);
    if (this.#chance.oneIn(3)) await this.#answers();
  }

  /** Waits for every answer; a fault found in one is thrown. */
  async #answers(): Promise<void> {
    const pending = this.#pending;
    this.#pending = [];
    await Promise.all(pending);
  }

  /** Everything taken in and told; nobody types any more, so what was held back is told too. */
  async settled(): Promise<void> {
    await this.#answers();
    await this.#server.settled();
    for (const [name, diagnostics] of this.#server.diagnostics) {
      for (const diagnostic of diagnostics) {
        const message = String(diagnostic.message);
        if (nonsense.test(message)) throw new Error(`${name} is told: ${message}`);
        if (/broke down here/.test(message)) throw new Error(message);
      }
    }
  }

  /** What the neighbours of the edited entry were told at the start and are no longer, or the other way round. */
  disturbed(): string[] {
    if (!this.#quiet) return [];
    const text = this.#text(edited);
    const chunks = chunksOf(text);
    const own = this.#start[this.#victim] as string;
    const now = chunks.filter((chunk) => !this.#start.includes(chunk)).join('');
    // A comment that is open, or a shop of its own, reaches further than its entry by right.
    if (/\/\*|\bshop\b|\bnotation\b/.test(now)) return [];
    const touched = new Set([...namesIn(own), ...namesIn(now)]);
    const book = [...stockChunks, ...Object.values(around).flatMap(chunksOf), ...this.#start];
    const wrong: string[] = [];
    for (const chunk of this.#start) {
      if (chunk === own || speaksOf(chunk, touched, book) || chunks.filter((other) => other === chunk).length !== 1)
        continue;
      const then = findingsIn(this.#start.join(''), chunk, this.#said);
      const since = findingsIn(text, chunk, this.#server.diagnostics.get(edited) ?? []);
      if (then !== since) wrong.push(`${chunk.split('\n', 1)[0]}\nwas told ${then}\nis told  ${since}`);
    }
    return wrong;
  }

  #text(name: string): string {
    return (this.#documents.get(name) as TextDocument).getText();
  }

  #editOf(name: string): Edit {
    const text = this.#text(name);
    if (!this.#chance.oneIn(20)) return someEdit(text, this.#chance);
    return { start: 0, end: text.length, text: name === edited ? this.#start.join('') : (around[name] ?? '') };
  }

  #editOfVictim(): Edit {
    const text = this.#text(edited);
    const start = this.#start.slice(0, this.#victim).join('').length;
    const end = text.length - this.#start.slice(this.#victim + 1).join('').length;
    const own = text.slice(start, end);
    const edit = this.#chance.oneIn(20)
      ? { start: 0, end: own.length, text: this.#start[this.#victim] as string }
      : someEdit(own, this.#chance);
    // The neighbour below begins on a line of its own.
    const closed = edit.end === own.length && !edit.text.endsWith('\n') ? `${edit.text}\n` : edit.text;
    return { start: start + edit.start, end: start + edit.end, text: closed };
  }

  async #apply(name: string, edit: Edit): Promise<void> {
    const document = this.#documents.get(name) as TextDocument;
    const range = { start: document.positionAt(edit.start), end: document.positionAt(edit.end) };
    this.#before = document.getText();
    const change = { range, text: edit.text };
    TextDocument.update(document, [change], document.version + 1);
    await this.#server.change(name, change);
  }

  #ask(name: string): void {
    const document = this.#documents.get(name) as TextDocument;
    const request = this.#chance.pick(requests);
    const position = document.positionAt(this.#chance.below(document.getText().length + 1));
    const diagnostics = this.#server.diagnostics.get(name) ?? [];
    const params = {
      textDocument: { uri: this.#server.uriOf(name) },
      position,
      range: { start: { line: 0, character: 0 }, end: position },
      options: { tabSize: 2, insertSpaces: true },
      context: request === 'codeAction' ? { diagnostics } : { includeDeclaration: true },
      newName: 'renamed',
    };
    const answer = this.#server.client.sendRequest(`textDocument/${request}`, params).then(
      (result) => {
        if (
          request === 'hover' &&
          nonsense.test(JSON.stringify((result as { contents?: unknown } | null)?.contents ?? ''))
        )
          throw new Error(`hover shows ${JSON.stringify(result)}`);
      },
      (error: { readonly code?: number; readonly message: string }) => {
        if (!goodAnswers.has(error.code ?? 0)) throw new Error(`${request} failed: ${error.code} ${error.message}`);
      },
    );
    // Looked at when the answers are waited for; until then nobody has refused to handle it.
    answer.catch(() => undefined);
    this.#pending.push(answer);
  }
}

/** What a name may have meant is looked for among all names, those of the edited entry too. */
const withoutProposal = (message: unknown): string => String(message).replace(/: is .* meant\?$/, '');

const lineEnd = /\r\n|\n|\r/;

/** The findings inside a piece of a text, by their lines counted from the beginning of the piece. */
function findingsIn(text: string, chunk: string, diagnostics: readonly Diagnostic[]): string {
  const first = text.slice(0, text.indexOf(chunk)).split(lineEnd).length - 1;
  const last = first + chunk.split(lineEnd).length - 1;
  return JSON.stringify(
    diagnostics
      .filter(({ range }) => range.start.line >= first && range.start.line < last)
      .map(({ range, code, message }) => [
        range.start.line - first,
        range.start.character,
        code,
        withoutProposal(message),
      ])
      .sort(),
  );
}
