import { sameData } from '../../calc/figure/same.ts';
import type { Book, BuildRecord, Material, Recipe, Shop, Tool } from '../../calc/model/index.ts';
import type { DrawnFile } from '../../calc/read-drawing/drawn.ts';
import type { Names } from '../rules/names.ts';

/** Something that was asked of the book, and how to ask it again. */
interface Asked {
  readonly answer: unknown;
  readonly again: (book: Book, names: Names) => unknown;
}

/** All that was asked of a book and its names, with the answers: what rules ask all the time, and the rest by a key. */
export interface AskedOfBook {
  readonly materials: Map<string, Material | undefined>;
  readonly tools: Map<string, Tool | undefined>;
  readonly others: Map<string, Asked>;
}

export const nothingAsked = (): AskedOfBook => ({ materials: new Map(), tools: new Map(), others: new Map() });

/** The book and its names as rules see them; notes what they ask, to tell later whether they would hear the same. */
export class Recording implements Book {
  readonly names: Names;
  private readonly book: Book;
  private readonly asked: AskedOfBook;

  constructor(book: Book, names: Names, asked: AskedOfBook) {
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
    const { materials } = this.asked;
    const known = materials.get(name);
    if (known !== undefined || materials.has(name)) return known;
    const material = this.book.material(name);
    materials.set(name, material);
    return material;
  }

  tool(name: string): Tool | undefined {
    const { tools } = this.asked;
    const known = tools.get(name);
    if (known !== undefined || tools.has(name)) return known;
    const tool = this.book.tool(name);
    tools.set(name, tool);
    return tool;
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
    const { others } = this.asked;
    const before = others.get(what);
    if (before !== undefined) return before.answer as T;
    const answer = again(this.book, names);
    others.set(what, { answer, again });
    return answer;
  }
}

/** Whether the book still gives every answer that it gave. */
export function stillAnswers(asked: AskedOfBook, book: Book, names: Names): boolean {
  const { materials, tools, others } = asked;
  for (const [name, answer] of materials) if (!isStill(book.material(name), answer)) return false;
  for (const [name, answer] of tools) if (!isStill(book.tool(name), answer)) return false;
  for (const { answer, again } of others.values()) if (!isStill(again(book, names), answer)) return false;
  return true;
}

const isStill = (now: unknown, before: unknown): boolean => now === before || sameData(now, before);
