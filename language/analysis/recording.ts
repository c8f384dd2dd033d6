import { sameData } from '../../calc/figure/same.ts';
import type { Book, BuildRecord, Material, Recipe, Shop, Tool } from '../../calc/model/index.ts';
import type { DrawnFile } from '../../calc/read-drawing/drawn.ts';
import type { Names } from '../rules/names.ts';

/** Something that was asked of the book, and how to ask it again. */
interface Asked {
  readonly answer: unknown;
  readonly again: (book: Book, names: Names) => unknown;
}

/** The book and its names as rules see them; notes what they ask, to tell later whether they would hear the same. */
export class Recording implements Book {
  readonly names: Names;
  private readonly book: Book;
  private readonly asked: Map<string, Asked>;

  constructor(book: Book, names: Names, asked: Map<string, Asked>) {
    this.book = book;
    this.asked = asked;
    const note = <T>(what: string, again: (names: Names) => T): T => this.note(what, names, (_book, now) => again(now));
    this.names = {
      nearest: (namespace, name) => note(`nearest ${namespace} ${name}`, (now) => now.nearest(namespace, name)),
      stockFacts: (namespace, name) => note(`stock ${namespace} ${name}`, (now) => now.stockFacts(namespace, name)),
      hasLikeness: (recipe) => note(`likeness ${recipe}`, (now) => now.hasLikeness(recipe)),
    };
  }

  get shop(): Shop | undefined {
    return this.note('shop', this.names, (book) => book.shop);
  }

  material(name: string): Material | undefined {
    return this.note(`material ${name}`, this.names, (book) => book.material(name));
  }

  tool(name: string): Tool | undefined {
    return this.note(`tool ${name}`, this.names, (book) => book.tool(name));
  }

  recipe(name: string, size?: string): Recipe | undefined {
    return this.note(`recipe ${name} ${size ?? ''}`, this.names, (book) => book.recipe(name, size));
  }

  drawing(address: string): DrawnFile | undefined {
    return this.note(`drawing ${address}`, this.names, (book) => book.drawing?.(address));
  }

  recordsOfLot(material: string, code: string): readonly BuildRecord[] {
    return this.note(`lot ${material} ${code}`, this.names, (book) => book.recordsOfLot(material, code));
  }

  recordsOnTool(tool: string): readonly BuildRecord[] {
    return this.note(`records on ${tool}`, this.names, (book) => book.recordsOnTool(tool));
  }

  private note<T>(what: string, names: Names, again: (book: Book, names: Names) => T): T {
    const before = this.asked.get(what);
    if (before !== undefined) return before.answer as T;
    const answer = again(this.book, names);
    this.asked.set(what, { answer, again });
    return answer;
  }
}

export type AskedOfBook = Map<string, Asked>;

/** Whether the book still gives every answer that it gave. */
export function stillAnswers(asked: AskedOfBook, book: Book, names: Names): boolean {
  for (const { answer, again } of asked.values()) {
    const now = again(book, names);
    if (now !== answer && !sameData(now, answer)) return false;
  }
  return true;
}
