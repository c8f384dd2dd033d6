import { LEAST_EXCESS } from '../../../calc/cloth/habits.ts';
import { type BentWay, coreBend } from '../../../calc/curve/core-bend.figure.ts';
import { coreExcess } from '../../../calc/curve/drape.figure.ts';
import { text } from '../../../calc/figure/index.ts';
import { coresOf, stepsOn } from '../kit/cores.ts';
import { habitOf } from '../kit/habit.ts';
import { valueOf } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const coreBendCold = rule({
  name: 'core/bend-cold',
  severity: 'warning',
  title: 'a core is bent over a tool tighter than it goes cold',
  on: 'recipe',
  check(context) {
    for (const core of coresOf(context)) {
      const bend = valueOf(context.ask(coreBend, core.key));
      if (bend === undefined || core.layer.score !== undefined) continue;
      if (stepsOn(context, core, 'score', 'shape').length > 0) continue;
      const tightest = [...bend.ways].sort((a, b) => a.radius - b.radius)[0];
      const fixes = [context.edit.addClause('Add score 1 mm every 30 mm', core.path, 'score 1 mm every 30 mm')];
      if (tightest !== undefined && bend.least !== undefined && tightest.radius < bend.least) {
        context.report({ at: core.path, message: tooTight(core.name, bend.least, tightest), fixes });
        continue;
      }
      if (bend.ways.length < 2 || (core.layer.pieces ?? 1) > 1) continue;
      const excess = valueOf(context.ask(coreExcess, core.key)) ?? 0;
      if (Math.abs(excess) <= habitOf(context.bench, LEAST_EXCESS)) continue;
      const shown = { core: core.name, excess: metres(Math.abs(excess)) };
      context.report({
        at: core.path,
        message:
          excess > 0
            ? text(
                'the tool is curved both ways, a sheet bends one way: {core} has {excess} too much at its edge: score it, or lay it in pieces',
                shown,
              )
            : text(
                'the tool is curved both ways, a sheet bends one way: {core} has {excess} too little at its edge: score it, or lay it in pieces',
                shown,
              ),
        fixes,
      });
    }
  },
});

function tooTight(core: string, bends: number, { way, radius }: BentWay) {
  const shown = { core, least: metres(bends), radius: metres(radius) };
  return way === 'along'
    ? text(
        '{core} bends cold to a radius of {least}; along the tool its middle has {radius}: score it, or form it warm',
        shown,
      )
    : text(
        '{core} bends cold to a radius of {least}; across the tool its middle has {radius}: score it, or form it warm',
        shown,
      );
}
