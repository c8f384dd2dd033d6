import { Bench as FigureBench } from '../../../calc/figure/bench.ts';
import { type Bench, type Figure, isCannot, isKnown, isText, type Text } from '../../../calc/figure/index.ts';
import type { Book, Recipe } from '../../../calc/model/index.ts';
import type { ReportFigure } from '../../../calc/report.ts';
import { bookOf } from '../../harness/sled-model.ts';

export const bench = (recipe: Recipe, book: Book = bookOf()): Bench => new FigureBench(recipe, book);

/** The value of a figure; fails with what is missing. */
export function valueOf<T>(figure: Figure<T>): T {
  if (isKnown(figure)) return figure.value;
  throw new Error(`not known: ${missing(figure).join('; ')}`);
}

/** What is missing, in words with their figures filled in, and where. */
export function missing(figure: Figure<unknown>): string[] {
  return isCannot(figure)
    ? figure.because.map((why) => `${filled(why.text)} @ ${why.at?.entry ?? ''} ${why.at?.path ?? ''}`.trim())
    : [];
}

export function filled({ template, figures }: Text): string {
  return template.replace(/\{(\w+)\}/g, (whole, name: string) => {
    const shown = figures[name];
    if (shown === undefined) return whole;
    if (typeof shown === 'string' || typeof shown === 'number') return String(shown);
    return isText(shown) ? filled(shown) : String(shown.si);
  });
}

export function named(figures: readonly ReportFigure[], name: string): Figure<number> {
  const row = figures.find((f) => f.name === name);
  if (row === undefined) throw new Error(`no figure is called ${name}`);
  return row.figure;
}
