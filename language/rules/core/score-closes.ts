import { coreBend } from '../../../calc/curve/core-bend.figure.ts';
import { text } from '../../../calc/figure/index.ts';
import { coresOf } from '../kit/cores.ts';
import { clauseAt, typedLength, valueOf } from '../kit/layers.ts';
import { asTyped, metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const coreScoreCloses = rule({
  name: 'core/score-closes',
  severity: 'warning',
  title: 'the cuts of a core close before it lies on the tool',
  on: 'recipe',
  check(context) {
    for (const core of coresOf(context)) {
      const { score } = core.layer;
      const bend = score === undefined ? undefined : valueOf(context.ask(coreBend, core.key));
      const stuck = bend?.ways
        .filter(({ cuts, radius }) => cuts !== undefined && !cuts.opens && radius < cuts.closed)
        .sort((a, b) => a.radius - b.radius)[0];
      if (score === undefined || stuck?.cuts === undefined || bend?.cuts === undefined) continue;
      const { width, pitch } = bend.cuts;
      const shown = {
        core: core.name,
        width: metres(width),
        pitch: metres(pitch),
        closed: metres(stuck.cuts.closed),
        radius: metres(stuck.radius),
        needed: metres(stuck.cuts.movement),
      };
      const from = score.from === undefined ? '' : ` from ${score.from} face`;
      const wider = `score ${typedLength(stuck.cuts.movement)} every ${asTyped(metres(pitch))}${from}`;
      context.report({
        at: clauseAt(core, 'score'),
        message: text(
          'on the inside of the bend cuts of {width} every {pitch} have closed at a radius of {closed}; {core} lies at {radius}: {needed} wide, closer, or from the other face',
          shown,
        ),
        fixes: score.depth === undefined ? [context.edit.replace('Cut it wider', clauseAt(core, 'score'), wider)] : [],
      });
    }
  },
});
