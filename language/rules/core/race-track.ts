import { text } from '../../../calc/figure/index.ts';
import { layerThickness } from '../../../calc/laminate/thickness.figure.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import type { Fix } from '../../lower/index.ts';
import { jointOf, LEFT_FREE, roomBesideStrips, WIDEST } from '../kit/core-gaps.ts';
import { coresOf } from '../kit/cores.ts';
import { footprintOf } from '../kit/geometry.ts';
import { habitOf } from '../kit/habit.ts';
import { clauseAt, layersOf, ofKind, onePerLine, valueOf } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { lengthOrLess } from '../kit/written.ts';
import { type RecipeContext, rule } from '../rule.ts';

export const coreRaceTrack = rule({
  name: 'core/race-track',
  severity: 'error',
  title: 'a gap beside the core lets the resin race round',
  on: 'recipe',
  check(context) {
    if (context.recipe.process?.kind !== 'infusion') return;
    const cores = coresOf(context);
    const widest = habitOf(context.bench, WIDEST);
    for (const core of cores) {
      const room = roomBesideStrips(context, core).find(({ gap }) => gap > widest + 1e-9);
      if (room !== undefined)
        context.report({
          at: room.at,
          message: text(
            'a gap of {gap} beside the strip in {core} is a channel: over {most} the resin races through it and shuts the middle off dry',
            { gap: metres(room.gap), core: core.name, most: metres(widest) },
          ),
          fixes: [room.clause ? fitted(context, room.at, widest) : undefined],
        });
    }
    for (const insert of onePerLine(ofKind(layersOf(context), 'insert'))) reportRound(context, insert, widest);
    cores.forEach((core, i) => {
      for (const other of cores.slice(0, i)) reportBetween(context, core, other);
    });
  },
});

/** A clearance that the shop bears: 1 mm is usual. */
function fitted(context: RecipeContext, at: string, widest: number): Fix | undefined {
  const right = `clearance ${lengthOrLess(0.001, widest)}`;
  return context.edit.replace(text('Write {what}', { what: right }), at, right);
}

/** Room left round an insert, unless paste fills it. */
function reportRound(context: RecipeContext, insert: LaidLayer, widest: number): void {
  const { clearance, bedded } = insert.layer;
  if (clearance === undefined || bedded !== undefined || clearance.si <= widest + 1e-9) return;
  const at = clauseAt(insert, 'clearance');
  context.report({
    at,
    message: text(
      'a gap of {gap} round {insert} is a channel: over {most} the resin races through it and shuts the middle off dry; fit it tight, or bed it in paste',
      { gap: clearance, insert: insert.name, most: metres(widest) },
    ),
    fixes: [fitted(context, at, widest)],
  });
}

function reportBetween(context: RecipeContext, core: LaidLayer, other: LaidLayer): void {
  const widest = habitOf(context.bench, WIDEST);
  const gap = jointOf(footprintOf(context.bench, core)?.placed, footprintOf(context.bench, other)?.placed)?.gap;
  const thick = valueOf(context.ask(layerThickness, core.key));
  if (gap === undefined || thick === undefined || gap <= widest + 1e-9 || gap > LEFT_FREE * thick) return;
  const shown = { gap: metres(Number(gap.toPrecision(3))), core: core.name, other: other.name, most: metres(widest) };
  context.report({
    at: core.path,
    message: text(
      '{gap} are free between {core} and {other}: over {most} that is a channel, the resin races through it and shuts the middle off dry; fit them tight, or fill the joint',
      shown,
    ),
    related: [{ at: { entry: context.recipe.entry, path: other.path }, message: text('the other piece') }],
  });
}
