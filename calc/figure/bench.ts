import type { Book, Shop, Tool } from '../model/book.ts';
import type { Material, Price } from '../model/material.ts';
import type { Recipe } from '../model/recipe.ts';
import type { Fact } from '../model/value.ts';
import type { DrawnFile } from '../read-drawing/drawn.ts';
import { cannot, type Figure, reason, text } from './figure.ts';
import { finiteFigure } from './finite.ts';
import { sameButPrices, sameData } from './same.ts';

/** A named computation over a recipe and the book; `key` picks one of its layers, steps and the like. */
export interface FigureDefinition<T, K extends string = string> {
  readonly name: string;
  /** it gives pieces of the model as they were typed, and nothing that is computed */
  readonly picks: boolean;
  compute(bench: Bench, key: K): Figure<T>;
}

export function defineFigure<T, K extends string = string>(
  name: string,
  compute: (bench: Bench, key: K) => Figure<T>,
): FigureDefinition<T, K> {
  return { name, picks: false, compute };
}

/** A figure that picks pieces of the model: no number of it is computed, so none is looked through. */
export function definePick<T, K extends string = string>(
  name: string,
  compute: (bench: Bench, key: K) => Figure<T>,
): FigureDefinition<T, K> {
  return { name, picks: true, compute };
}

/** A material without its prices, which are asked for apart, so that a figure says whether it hangs on them. */
export type MaterialFacts = Omit<Material, 'prices'>;

type Entry = Shop | MaterialFacts | readonly Fact<Price>[] | Tool | Tool['curved'] | DrawnFile | undefined;
/** Many thousand of these are made: what most of them lack is made on demand. */
interface Remembered {
  figure: Figure<unknown> | undefined;
  /** what it read of the book itself, to tell later whether it still holds */
  read: Map<string, Entry> | undefined;
  /** the figures that it asked for, some of them twice: it holds as long as they do */
  readonly asked: Remembered[];
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
  private readonly memo = new Map<object, Map<string, Remembered>>();
  /** the figure that is being computed: what is asked now is asked by it */
  private running: Remembered | undefined;
  /** what was read of the book apart from any figure */
  private readonly aside = new Map<string, Entry>();
  private changed = 0;

  constructor(recipe: Recipe, book: Book) {
    this.recipe = recipe;
    this.book = book;
  }

  /** Grows whenever another book gave another answer: as long as it stands, every figure does. */
  get changes(): number {
    return this.changed;
  }

  moveTo(book: Book): this {
    if (book === this.book) return this;
    this.book = book;
    const same = new Map<string, boolean>();
    const holds = new Map<Remembered, boolean>();
    for (const figures of this.memo.values()) {
      for (const [key, remembered] of figures) {
        if (this.stillHolds(remembered, same, holds)) continue;
        figures.delete(key);
        this.changed++;
      }
    }
    for (const [what, entry] of this.aside) {
      const unchanged = same.get(what) ?? this.sameAs(what, entry);
      this.aside.set(what, this.look(what));
      if (!unchanged) this.changed++;
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

  /** How a tool is curved; a figure that asks for no more is kept when the tool changes otherwise. */
  toolCurve(name: string): Tool['curved'] {
    return this.reading(`curve/${name}`) as Tool['curved'];
  }

  /** A drawing that an outline names; who asks is computed again when it says something else. */
  drawing(address: string): DrawnFile | undefined {
    return this.reading(`drawing/${address}`) as DrawnFile | undefined;
  }

  ask<T, K extends string>(definition: FigureDefinition<T, K>, ...[key]: string extends K ? [K?] : [K]): Figure<T> {
    let figures = this.memo.get(definition);
    if (figures === undefined) {
      figures = new Map();
      this.memo.set(definition, figures);
    }
    const name: string = key ?? '';
    const before = figures.get(name);
    if (before !== undefined) {
      if (before.figure === undefined)
        return cannot(reason('computed', text('{figure} depends on itself', { figure: definition.name })));
      counters.remembered++;
      this.running?.asked.push(before);
      return before.figure as Figure<T>;
    }
    const remembered: Remembered = { figure: undefined, read: undefined, asked: [] };
    figures.set(name, remembered);
    const asker = this.running;
    asker?.asked.push(remembered);
    this.running = remembered;
    try {
      const answer = definition.compute(this, name as K);
      const figure = definition.picks ? answer : finiteFigure(definition.name, answer);
      counters.computed++;
      remembered.figure = figure;
      return figure;
    } finally {
      this.running = asker;
      if (remembered.figure === undefined) figures.delete(name);
    }
  }

  /** Whether a figure would come out the same over the book as it stands now. */
  private stillHolds(remembered: Remembered, same: Map<string, boolean>, holds: Map<Remembered, boolean>): boolean {
    const known = holds.get(remembered);
    if (known !== undefined) return known;
    let still = true;
    for (const [what, entry] of remembered.read ?? []) {
      let unchanged = same.get(what);
      if (unchanged === undefined) {
        unchanged = this.sameAs(what, entry);
        same.set(what, unchanged);
      }
      if (unchanged) remembered.read?.set(what, this.look(what));
      else still = false;
    }
    for (const asked of remembered.asked) {
      if (!still) break;
      still = this.stillHolds(asked, same, holds);
    }
    holds.set(remembered, still);
    return still;
  }

  private reading(what: string): Entry {
    const entry = this.look(what);
    const reader = this.running;
    if (reader === undefined) this.aside.set(what, entry);
    else {
      reader.read ??= new Map();
      reader.read.set(what, entry);
    }
    return entry;
  }

  private look(what: string): Entry {
    if (what === 'shop') return this.book.shop;
    const slash = what.indexOf('/');
    const name = what.slice(slash + 1);
    if (what.startsWith('material/')) return this.book.material(name);
    if (what.startsWith('curve/')) return this.book.tool(name)?.curved;
    if (what.startsWith('drawing/')) return this.book.drawing?.(name);
    return what.startsWith('prices/') ? this.book.material(name)?.prices : this.book.tool(name);
  }

  private sameAs(what: string, before: Entry): boolean {
    const now = this.look(what);
    if (now === before) return true;
    if (what.startsWith('material/')) return sameButPrices(now, before);
    return (what.startsWith('prices/') || what.startsWith('curve/')) && sameData(now, before);
  }
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
