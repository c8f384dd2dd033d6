import type { Book, Shop, Tool } from '../model/book.ts';
import type { Material, Price } from '../model/material.ts';
import type { Recipe } from '../model/recipe.ts';
import type { Fact } from '../model/value.ts';
import { type Figure, cannot, isKnown, reason, text } from './figure.ts';
import { sameButPrices, sameData } from './same.ts';

/** A named computation over a recipe and the book; `key` picks one of its layers, steps and the like. */
export interface FigureDefinition<T, K extends string = string> {
  readonly name: string;
  compute(bench: Bench, key: K): Figure<T>;
}

export function defineFigure<T, K extends string = string>(
  name: string,
  compute: (bench: Bench, key: K) => Figure<T>,
): FigureDefinition<T, K> {
  return { name, compute };
}

/** A material without its prices, which are asked for apart, so that a figure says whether it hangs on them. */
export type MaterialFacts = Omit<Material, 'prices'>;

type Entry = Shop | MaterialFacts | readonly Fact<Price>[] | Tool | undefined;
interface Remembered {
  readonly figure: Figure<unknown>;
  /** what it read of the book, to tell later whether it still holds */
  readonly read: Map<string, Entry>;
}

/** Counters for tests and the bench: how many figures were computed, and how many came from the memo. */
export const counters = { computed: 0, remembered: 0 };

/**
 * The memo of the light figures of one recipe. It records which entries of the book each figure read; `moveTo` another book
 * keeps every figure whose entries say the same as before. Prices are an entry of their own, so that a changed price
 * recomputes costs and no masses.
 */
export class Bench {
  readonly recipe: Recipe;
  private book: Book;
  private readonly memo = new Map<string, Remembered>();
  private readonly running: { readonly id: string; readonly read: Map<string, Entry> }[] = [];

  constructor(recipe: Recipe, book: Book) {
    this.recipe = recipe;
    this.book = book;
  }

  moveTo(book: Book): this {
    if (book === this.book) return this;
    this.book = book;
    const holds = new Map<string, boolean>();
    for (const [id, { read }] of this.memo) {
      for (const [what, entry] of read) {
        let same = holds.get(what);
        if (same === undefined) holds.set(what, (same = this.sameAs(what, entry)));
        if (!same) {
          this.memo.delete(id);
          break;
        }
        read.set(what, this.look(what));
      }
    }
    return this;
  }

  get shop(): Shop | undefined {
    return this.reading('shop') as Shop | undefined;
  }

  material(name: string): MaterialFacts | undefined {
    return this.reading(`material/${name}`) as MaterialFacts | undefined;
  }

  /** What a material costs; a figure that does not ask is kept when a price changes. */
  prices(name: string): readonly Fact<Price>[] | undefined {
    return this.reading(`prices/${name}`) as readonly Fact<Price>[] | undefined;
  }

  tool(name: string): Tool | undefined {
    return this.reading(`tool/${name}`) as Tool | undefined;
  }

  ask<T, K extends string>(definition: FigureDefinition<T, K>, ...[key]: string extends K ? [K?] : [K]): Figure<T> {
    const id = `${definition.name} ${key ?? ''}`;
    const remembered = this.memo.get(id);
    if (remembered !== undefined) {
      counters.remembered++;
      for (const [what, entry] of remembered.read) this.note(what, entry);
      return remembered.figure as Figure<T>;
    }
    if (this.running.some((r) => r.id === id)) {
      return cannot(reason('computed', `${definition.name} depends on itself`));
    }
    const read = new Map<string, Entry>();
    this.running.push({ id, read });
    try {
      const figure = finite(definition.name, definition.compute(this, (key ?? '') as K));
      counters.computed++;
      this.memo.set(id, { figure, read });
      return figure;
    } finally {
      this.running.pop();
      for (const [what, entry] of read) this.note(what, entry);
    }
  }

  private reading(what: string): Entry {
    const entry = this.look(what);
    this.note(what, entry);
    return entry;
  }

  private note(what: string, entry: Entry): void {
    this.running.at(-1)?.read.set(what, entry);
  }

  private look(what: string): Entry {
    if (what === 'shop') return this.book.shop;
    const slash = what.indexOf('/');
    const name = what.slice(slash + 1);
    if (what.startsWith('material/')) return this.book.material(name);
    return what.startsWith('prices/') ? this.book.material(name)?.prices : this.book.tool(name);
  }

  private sameAs(what: string, before: Entry): boolean {
    const now = this.look(what);
    if (now === before) return true;
    return what.startsWith('material/') ? sameButPrices(now, before) : what.startsWith('prices/') && sameData(now, before);
  }
}

/** The last guard: no figure ever carries a number that is none. */
function finite<T>(name: string, figure: Figure<T>): Figure<T> {
  if (!isKnown(figure) || allFinite(figure.value, 3)) return figure;
  return cannot(reason('computed', text('{name}: the values are so large or so small that no result can be told', { name })));
}

function allFinite(value: unknown, depth: number): boolean {
  if (typeof value === 'number') return Number.isFinite(value);
  if (typeof value !== 'object' || value === null || depth === 0) return true;
  for (const part of Object.values(value)) if (!allFinite(part, depth - 1)) return false;
  return true;
}

const benches = new WeakMap<Recipe, Bench>();

/** The one bench of a recipe; moved to the book as it stands now. */
export function benchOf(recipe: Recipe, book: Book): Bench {
  const bench = benches.get(recipe);
  if (bench !== undefined) return bench.moveTo(book);
  const fresh = new Bench(recipe, book);
  benches.set(recipe, fresh);
  return fresh;
}
