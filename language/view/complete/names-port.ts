/** What completion asks the book for: names, without reading more than it must. */
export interface MaterialName {
  readonly name: string;
  /** the word that its entry begins with: `fabric`, `resin` ... */
  readonly kind: string;
  /** of a consumable, the word behind `kind`: `peel`, `mesh` ... */
  readonly consumableKind?: string;
  readonly title?: string;
  /** areal weight or the like, as it is typed */
  readonly detail?: string;
  /** from the stock library */
  readonly stock: boolean;
}

export interface EntryName {
  readonly name: string;
  readonly title?: string;
}

/** A name inside a recipe. */
export interface LocalName {
  readonly name: string;
  readonly kind: 'layer' | 'zone' | 'feed' | 'vent' | 'let' | 'load' | 'size' | 'end';
  /** the word that its line begins with, and the material: `strip uni_c300` */
  readonly detail?: string;
}

export interface NamesPort {
  readonly materials: () => readonly MaterialName[];
  readonly tools: () => readonly EntryName[];
  readonly recipes: () => readonly EntryName[];
  /** names inside a recipe of the book, by its name */
  readonly inside: (recipe: string) => readonly LocalName[];
  /** names of the materials that a recipe of the book speaks of, in the order of its lines */
  readonly usedIn: (recipe: string) => readonly string[];
  /** layers and ids of a drawing, by its name as typed; absent where none is known */
  readonly drawing?: (
    file: string,
  ) => { readonly layers: readonly string[]; readonly ids: readonly string[] } | undefined;
  /** ISO 4217 code of the shop */
  readonly currency: () => string;
}
