import { bagSize } from '../../../calc/bag/bag.figure.ts';
import { text } from '../../../calc/figure/index.ts';
import { subject } from '../../../calc/plan/reading.ts';
import { factValue, valueOf } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { allOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const bagNarrowerThanRollAllows = rule({
  name: 'bag/narrower-than-roll-allows',
  severity: 'warning',
  title: 'the bag has to be wider than its film is sold',
  on: 'recipe',
  check(context) {
    for (const { step } of allOf(stepsOf(context), 'bag')) {
      const name = subject(step);
      const fact = name === undefined ? undefined : context.bench.material(name)?.roll;
      const roll = factValue(fact)?.width;
      if (name === undefined || fact === undefined || roll === undefined) continue;
      const size = valueOf(context.ask(bagSize));
      if (size === undefined) continue;
      const across = Math.min(size.length, size.width);
      if (across <= roll.si + 1e-6) continue;
      const shown = { film: name, across: metres(Math.round(across * 100) / 100), roll };
      context.report({
        at: step.path,
        message: text(
          'the bag takes {across} of film at its narrow side, {film} is {roll} wide: a join across it is the first leak; take a wider film, or tape the join before it goes on',
          shown,
        ),
        related: [{ at: fact.at, message: text('{film} is {roll} wide', shown) }],
      });
    }
  },
});
