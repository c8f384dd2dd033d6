import { text } from '../../../calc/figure/index.ts';
import { type LayerKind, UNKNOWN } from '../../../calc/model/index.ts';
import type { RecipeContext } from '../rule.ts';
import { outOfPart, SLACK } from './geometry.ts';
import { layersOf, ofKind, onePerLine } from './layers.ts';
import { metres } from './shown.ts';

/** Layers of a kind with a place of their own that stand out over the finished edge. In a size another rule speaks of it. */
export function reportOutside(context: RecipeContext, kind: LayerKind): void {
  if (context.recipe.size !== undefined) return;
  const own = ofKind(layersOf(context), kind);
  if (own.length === 0) return;
  const allowance = context.recipe.part?.trimAllowance;
  // what runs out no farther than the cloth is trimmed to the edge with it; an insert is not
  const room = kind === 'insert' || allowance === undefined || allowance === UNKNOWN ? 0 : allowance.si;
  for (const laid of onePerLine(own)) {
    const by = outOfPart(context.bench, laid);
    if (by === undefined || by <= room + SLACK) continue;
    context.report({
      at: laid.path,
      message: text('{layer} stands {out} out over the finished edge of the part', {
        layer: laid.name,
        out: metres(by),
      }),
    });
  }
}

/** Whether a line lies inside the part in the recipe as written. */
export function insideAtBase(context: RecipeContext, path: string): boolean {
  const base = context.book.recipe(context.recipe.name);
  if (base === undefined) return false;
  const bench = context.benchOf(base);
  const laid = layersOf({ ...context, ask: bench.ask.bind(bench) }).find((layer) => layer.path === path);
  const by = laid === undefined ? undefined : outOfPart(bench, laid);
  return by !== undefined && by <= SLACK;
}
