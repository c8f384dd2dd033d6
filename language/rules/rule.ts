import type { Figure } from '../../calc/figure/figure.ts';
import type { Bench, FigureDefinition } from '../../calc/figure/index.ts';
import type { Book, BuildRecord, Material, Recipe, Shop, Tool } from '../../calc/model/index.ts';
import type { Lowered } from '../lower/index.ts';
import type { Editing } from './editing.ts';
import type { Report } from './finding.ts';
import type { Names } from './names.ts';

export type Severity = 'error' | 'warning' | 'info';

/** What every check may use. */
export interface Context {
  readonly book: Book;
  readonly names: Names;
  /** the figures of any recipe of the book */
  benchOf(recipe: Recipe): Bench;
  /** the entry that is checked, with the places of its lines */
  readonly lowered: Lowered;
  /** the entry of the same name that counts, where this one is a second */
  readonly first: Lowered | undefined;
  /** edits of the text for quick fixes, by path */
  readonly edit: Editing;
  report(finding: Report): void;
}

export interface RecipeContext extends Context {
  readonly recipe: Recipe;
  readonly bench: Bench;
  ask<T, K extends string>(figure: FigureDefinition<T, K>, ...key: string extends K ? [K?] : [K]): Figure<T>;
}

export interface Checks {
  recipe: RecipeContext;
  material: Context & { readonly material: Material };
  tool: Context & { readonly tool: Tool };
  shop: Context & { readonly shop: Shop };
  record: Context & { readonly record: BuildRecord; readonly recipe: Recipe | undefined };
  /** any entry, whatever its kind */
  entry: Context;
}

/** What a rule is about; `reading` rules are reported while the text is read, and only say how much they matter. */
export type On = keyof Checks | 'reading';

interface Head {
  /** `group/what`; public, kept once shipped */
  readonly name: string;
  readonly severity: Severity;
  /** one line for lists: what is wrong when it fires */
  readonly title: string;
  /** somebody may be hurt: no setting and no `accept` makes less of it */
  readonly always?: true;
}

export type Rule = Head &
  (
    | { readonly on: 'reading' }
    | { [K in keyof Checks]: { readonly on: K; check(context: Checks[K]): void } }[keyof Checks]
  );

export function rule(definition: Rule): Rule {
  return definition;
}
