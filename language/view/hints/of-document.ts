import { isKnown } from '../../../calc/figure/figure.ts';
import type { Recipe } from '../../../calc/model/index.ts';
import { allSteps } from '../../../calc/plan/reading.ts';
import { laidStack } from '../../../calc/stack/laid.figure.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import type { Analysis } from '../../analysis/analysis.ts';
import type { Lowered } from '../../lower/index.ts';
import type { HintChoice } from '../../protocol/hint-kinds.ts';
import type { Style } from '../text.ts';
import { drawnLines } from './of-drawn.ts';
import { layerParts } from './of-layer.ts';
import { stepParts } from './of-step.ts';
import type { HintPart } from './part.ts';

/** A line that has figures: the word that it begins with, and what tells them. */
export interface FigureLine {
  readonly head: string;
  readonly parts: () => HintPart[];
}

/** The lines of a document that have figures, by the offset that they begin at. Recipes are taken as written, not in their sizes. */
export function figureLines(
  analysis: Analysis,
  entries: readonly Lowered[],
  chosen: HintChoice,
  style: Style,
): Map<number, FigureLine> {
  const found = new Map<number, FigureLine>();
  for (const { model, places } of entries) {
    const recipe = model.kind === 'recipe' ? model.recipes[0] : undefined;
    if (recipe === undefined) continue;
    const bench = analysis.bench(recipe);
    for (const [path, laid] of linesOfStack(analysis, recipe)) {
      const at = places.get(path)?.offset;
      const head = laid[0]?.layer.kind;
      if (at !== undefined && head !== undefined)
        found.set(at, { head, parts: () => layerParts(bench, laid, chosen, style) });
    }
    for (const { path, head, parts } of drawnLines(bench, recipe)) {
      const at = places.get(path)?.offset;
      if (at !== undefined) found.set(at, { head, parts: () => parts(style) });
    }
    for (const step of allSteps(recipe.process?.steps ?? [])) {
      const at = places.get(step.path)?.offset;
      if (at !== undefined)
        found.set(at, { head: step.verb.split(' ')[0] ?? '', parts: () => stepParts(bench, step, chosen, style) });
    }
  }
  return found;
}

/** The layers of a stack by the line that they come from. */
function linesOfStack(analysis: Analysis, recipe: Recipe): Map<string, LaidLayer[]> {
  const stack = analysis.bench(recipe).ask(laidStack);
  const lines = new Map<string, LaidLayer[]>();
  for (const laid of isKnown(stack) ? stack.value.layers : []) {
    const list = lines.get(laid.path);
    if (list === undefined) lines.set(laid.path, [laid]);
    else list.push(laid);
  }
  return lines;
}
