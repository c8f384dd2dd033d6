import { text } from '../../../calc/figure/index.ts';
import { layerThickness } from '../../../calc/laminate/thickness.figure.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { coreOf } from '../../../calc/stack/order.ts';
import type { Report } from '../finding.ts';
import type { RecipeContext } from '../rule.ts';
import { layersOf, ofKind, onePerLine, valueOf } from './layers.ts';
import { asTyped, metres } from './shown.ts';

/** An insert with the core that it stands in, and how thick that is, m. */
export interface InsertInCore {
  readonly insert: LaidLayer;
  readonly core: LaidLayer;
  readonly around: number;
}

export function insertsInCores(context: RecipeContext): readonly InsertInCore[] {
  const layers = layersOf(context);
  const found: InsertInCore[] = [];
  for (const insert of onePerLine(ofKind(layers, 'insert'))) {
    const core = coreOf(layers, insert);
    const around = core === undefined ? undefined : valueOf(context.ask(layerThickness, core.key));
    if (core !== undefined && around !== undefined) found.push({ insert, core, around });
  }
  return found;
}

/** Where an insert of another thickness than its core is told of, and the edit that makes it as thick. */
export function atThickness(
  { recipe, edit }: RecipeContext,
  { insert, core, around }: InsertInCore,
): Omit<Report, 'message'> {
  const at = `${insert.path}.thickness`;
  const wanted = asTyped(metres(around));
  return {
    at,
    related: [{ at: { entry: recipe.entry, path: core.path }, message: text('the core') }],
    fixes: [edit.replace(text('Write {what}', { what: wanted }), at, wanted)],
  };
}
