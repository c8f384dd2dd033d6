import type { LangiumDocument } from 'langium';
import { type PlanOptions, planOf } from '../../../calc/drawing/plan/plan.ts';
import type { DrawnThings, Say } from '../../../calc/drawing/plan/thing.ts';
import { sectionOf } from '../../../calc/drawing/section/section.ts';
import { type Figure, isCannot, isKnown } from '../../../calc/figure/figure.ts';
import type { Bench } from '../../../calc/figure/index.ts';
import type { Recipe } from '../../../calc/model/index.ts';
import { type Lowered, spanOf } from '../../lower/index.ts';
import type { DrawingResult, DrawingView, DrawnRecipe, Picture } from '../../protocol/drawing.ts';
import { sizeAt } from '../card/at-cursor.ts';
import type { CardBook } from '../card/book.ts';
import { brokenLine } from '../card/broken.ts';
import { say, sayText, show } from '../text.ts';
import { type Lines, pictureOf } from './picture.ts';

type Draw = (bench: Bench, say: Say, options?: PlanOptions) => Figure<DrawnThings>;

/** The drawings that there are of a recipe. */
const views: Readonly<Record<DrawingView, Draw>> = { plan: planOf, section: sectionOf };

/** Capitals of a drawing beside the text, as a share of the part. */
const onScreen = 0.03;

interface Found {
  readonly lowered: Lowered;
  readonly recipe: Recipe;
}

/** The recipe at an offset, in the size that the offset stands in; elsewhere in it as wanted, or as written. */
export function recipeAt(
  document: LangiumDocument,
  offset: number,
  book: CardBook,
  wanted?: string,
): Found | undefined {
  const lowered = book.analysis.entryAt(document, offset);
  if (lowered?.model.kind !== 'recipe') return undefined;
  const { recipes } = lowered.model;
  const at = sizeAt(document, offset, recipes);
  const recipe = at?.size === undefined ? (recipes.find(({ size }) => size === wanted) ?? at) : at;
  return recipe === undefined ? undefined : { lowered, recipe };
}

export function recipeCalled(document: LangiumDocument, { recipe: name, size }: DrawnRecipe, book: CardBook) {
  for (const lowered of book.analysis.entries(document)) {
    if (lowered.name !== name || lowered.model.kind !== 'recipe') continue;
    const recipe = lowered.model.recipes.find((each) => each.size === size);
    if (recipe !== undefined) return { lowered, recipe };
  }
  return undefined;
}

/** What a recipe looks like. */
export function drawingOf(
  document: LangiumDocument,
  found: Found | undefined,
  view: DrawingView,
  book: CardBook,
): DrawingResult {
  if (found === undefined) return { nothing: say('There is no recipe at the cursor.') };
  const broken = brokenLine(document, found.lowered);
  const drawn = pictureNow(document, found, view, book);
  return {
    ...(typeof drawn === 'string' ? { nothing: drawn } : { picture: drawn }),
    ...(broken === undefined ? {} : { broken }),
  };
}

interface Kept {
  readonly changes: number;
  readonly style: string;
  readonly version: number;
  readonly drawn: Picture | string;
}

/** Pictures as they were drawn last: the cursor moves far more often than the recipe changes. */
const kept = new WeakMap<Bench, Map<DrawingView, Kept>>();

function pictureNow(
  document: LangiumDocument,
  { lowered, recipe }: Found,
  view: DrawingView,
  book: CardBook,
): Picture | string {
  const style = book.style();
  const bench = book.analysis.bench(recipe);
  const now = { changes: bench.changes, style: JSON.stringify(style), version: document.textDocument.version };
  const before = kept.get(bench)?.get(view);
  if (before?.changes === now.changes && before.style === now.style && before.version === now.version)
    return before.drawn;
  const drawing = views[view](bench, (words) => show(words, style), { letters: onScreen });
  const drawn = isKnown(drawing)
    ? pictureOf(drawing.value, {
        uri: document.uri.toString(),
        view,
        recipe,
        style,
        linesOf: (path) => linesOf(document, lowered, path, recipe, book),
      })
    : cannotDraw(drawing, recipe);
  const pictures = kept.get(bench) ?? new Map<DrawingView, Kept>();
  kept.set(bench, pictures);
  pictures.set(view, { ...now, drawn });
  return drawn;
}

function cannotDraw(drawing: Figure<DrawnThings>, { name }: Recipe): string {
  const [why] = isCannot(drawing) ? drawing.because : [];
  return why === undefined
    ? say('{name} cannot be drawn yet.', { name })
    : say('{name} cannot be drawn yet: {why}.', { name, why: sayText(why.text) });
}

function linesOf(
  document: LangiumDocument,
  { places }: Lowered,
  path: string,
  { entry }: Recipe,
  book: CardBook,
): Lines | undefined {
  const span = spanOf(places, path);
  const place = book.placeAt({ entry, path });
  return span && place && { place, last: document.textDocument.positionAt(span.end).line };
}

/** A drawing that stands alone: with the key of its layers. */
export function drawingAlone(
  bench: Bench,
  view: DrawingView,
  book: Pick<CardBook, 'style'>,
  without: PlanOptions['without'],
): Figure<DrawnThings> {
  const style = book.style();
  return views[view](bench, (words) => show(words, style), {
    key: true,
    ...(without === undefined ? {} : { without }),
  });
}
