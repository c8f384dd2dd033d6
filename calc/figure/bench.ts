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
  /** a number of its own, by which its answers are kept: a figure is asked for a thousand times for each recipe */
  readonly id: number;
  /** it gives pieces of the model as they were typed, and nothing that is computed */
  readonly picks: boolean;
  compute(bench: Bench, key: K): Figure<T>;
}

let definitions = 0;

export function defineFigure<T, K extends string = string>(
  name: string,
  compute: (bench: Bench, key: K) => Figure<T>,
): FigureDefinition<T, K> {
  return { name, id: definitions++, picks: false, compute };
}

/** A figure that picks pieces of the model: no number of it is computed, so none is looked through. */
export function definePick<T, K extends string = string>(
  name: string,
  compute: (bench: Bench, key: K) => Figure<T>,
): FigureDefinition<T, K> {
  return { name, id: definitions++, picks: true, compute };
}

/** A material without its prices, which are asked for apart, so that a figure says whether it hangs on them. */
export type MaterialFacts = Omit<Material, 'prices'>;

type Entry = Shop | MaterialFacts | readonly Fact<Price>[] | Tool | Tool['curved'] | DrawnFile | undefined;

/** What is read of a book: the entry of a kind and a name, as the book stands now. One object for all figures that read it. */
interface Reading {
  readonly kind: Kind;
  readonly name: string;
  entry: Entry;
  /** it was read apart from any figure */
  aside: boolean;
}

/** How an entry of a kind is looked up. */
const lookups = {
  shop: (book: Book) => book.shop,
  material: (book: Book, name: string) => book.material(name),
  prices: (book: Book, name: string) => book.material(name)?.prices,
  tool: (book: Book, name: string) => book.tool(name),
  curve: (book: Book, name: string) => book.tool(name)?.curved,
  drawing: (book: Book, name: string) => book.drawing?.(name),
} as const;

type Kind = keyof typeof lookups;

/** Many thousand of these are made: what most of them lack is made on demand. */
interface Remembered {
  figure: Figure<unknown> | undefined;
  /** what it read of the book itself, to tell later whether it still holds */
  read: Reading[] | undefined;
  /** the figures that it asked for and that hang on the book, some of them twice: it holds as long as they do */
  asked: Remembered[] | undefined;
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
  /** figures of the whole recipe, and those of one of its layers, steps and the like */
  private readonly whole: (Remembered | undefined)[] = [];
  private readonly keyed: (Map<string, Remembered> | undefined)[] = [];
  /** the figure that is being computed: what is asked now is asked by it */
  private running: Remembered | undefined;
  /** what the figures being computed have asked so far, those of the innermost last: one list, since a list each is most of a figure's memory */
  private readonly asking: Remembered[] = [];
  private asked = 0;
  private readonly readings: { readonly [K in Kind]: Map<string, Reading> } = {
    shop: new Map(),
    material: new Map(),
    prices: new Map(),
    tool: new Map(),
    curve: new Map(),
    drawing: new Map(),
  };
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
    const different = this.readAnew();
    if (different.size === 0) return this;
    const holds = new Map<Remembered, boolean>();
    this.whole.forEach((remembered, id) => {
      if (remembered === undefined || stillHolds(remembered, different, holds)) return;
      this.whole[id] = undefined;
      this.changed++;
    });
    this.keyed.forEach((figures) => {
      for (const [key, remembered] of figures ?? []) {
        if (stillHolds(remembered, different, holds)) continue;
        figures?.delete(key);
        this.changed++;
      }
    });
    for (const { aside } of different) if (aside) this.changed++;
    return this;
  }

  get shop(): Shop | undefined {
    return this.reading('shop', '') as Shop | undefined;
  }

  material(name: string): MaterialFacts | undefined {
    return this.reading('material', name) as MaterialFacts | undefined;
  }

  /** What a material costs; a figure that does not ask is kept when a price changes. */
  prices(name: string): readonly Fact<Price>[] | undefined {
    return this.reading('prices', name) as readonly Fact<Price>[] | undefined;
  }

  tool(name: string): Tool | undefined {
    return this.reading('tool', name) as Tool | undefined;
  }

  /** How a tool is curved; a figure that asks for no more is kept when the tool changes otherwise. */
  toolCurve(name: string): Tool['curved'] {
    return this.reading('curve', name) as Tool['curved'];
  }

  /** A drawing that an outline names; who asks is computed again when it says something else. */
  drawing(address: string): DrawnFile | undefined {
    return this.reading('drawing', address) as DrawnFile | undefined;
  }

  // an optional key instead of a rest: this is called a thousand times for each recipe
  ask<T, K extends string>(definition: FigureDefinition<T, K>, ...key: string extends K ? [K?] : [K]): Figure<T>;
  ask<T>(definition: FigureDefinition<T>, key = ''): Figure<T> {
    const { id } = definition;
    const before = key === '' ? this.whole[id] : this.keyed[id]?.get(key);
    const asker = this.running;
    if (before !== undefined) {
      if (before.figure === undefined)
        return cannot(reason('computed', text('{figure} depends on itself', { figure: definition.name })));
      counters.remembered++;
      if (asker !== undefined && hangsOnBook(before)) this.asking[this.asked++] = before;
      return before.figure as Figure<T>;
    }
    const remembered: Remembered = { figure: undefined, read: undefined, asked: undefined };
    this.keep(id, key, remembered);
    const first = this.asked;
    this.running = remembered;
    try {
      const answer = definition.compute(this, key);
      const figure = definition.picks ? answer : finiteFigure(definition.name, answer);
      counters.computed++;
      if (this.asked > first) remembered.asked = this.asking.slice(first, this.asked);
      remembered.figure = figure;
      return figure;
    } finally {
      this.running = asker;
      this.asked = first;
      if (remembered.figure === undefined) this.keep(id, key, undefined);
      else if (asker !== undefined && hangsOnBook(remembered)) this.asking[this.asked++] = remembered;
    }
  }

  private keep(id: number, key: string, remembered: Remembered | undefined): void {
    if (key === '') this.whole[id] = remembered;
    else if (remembered === undefined) this.keyed[id]?.delete(key);
    else {
      this.keyed[id] ??= new Map();
      this.keyed[id].set(key, remembered);
    }
  }

  /** Looks up all that was read; gives what says something else now. */
  private readAnew(): ReadonlySet<Reading> {
    const different = new Set<Reading>();
    for (const readings of Object.values(this.readings)) {
      for (const reading of readings.values()) {
        const now = lookups[reading.kind](this.book, reading.name);
        if (!saysTheSame(reading.kind, now, reading.entry)) different.add(reading);
        reading.entry = now;
      }
    }
    return different;
  }

  private reading(kind: Kind, name: string): Entry {
    const known = this.readings[kind];
    let reading = known.get(name);
    if (reading === undefined) {
      reading = { kind, name, entry: lookups[kind](this.book, name), aside: false };
      known.set(name, reading);
    }
    const reader = this.running;
    if (reader === undefined) reading.aside = true;
    else if (reader.read === undefined) reader.read = [reading];
    // a longer list each time: most figures read one or two entries, and pushing makes room for many
    else if (!reader.read.includes(reading)) reader.read = [...reader.read, reading];
    return reading.entry;
  }
}

/** What reads nothing of the book, nor asks for what does, holds as long as the recipe does: no figure needs to note that it asked for it. */
const hangsOnBook = ({ read, asked }: Remembered): boolean => read !== undefined || asked !== undefined;

/** Whether a figure would come out the same, though some of what is read of the book says something else. */
function stillHolds(remembered: Remembered, different: ReadonlySet<Reading>, holds: Map<Remembered, boolean>): boolean {
  const known = holds.get(remembered);
  if (known !== undefined) return known;
  const still =
    remembered.read?.some((reading) => different.has(reading)) !== true &&
    remembered.asked?.some((asked) => !stillHolds(asked, different, holds)) !== true;
  holds.set(remembered, still);
  return still;
}

function saysTheSame(kind: Kind, now: Entry, before: Entry): boolean {
  if (now === before) return true;
  if (kind === 'material') return sameButPrices(now, before);
  return (kind === 'prices' || kind === 'curve') && sameData(now, before);
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
