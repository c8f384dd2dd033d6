import { text } from '../../../calc/figure/figure.ts';
import type { Usual } from '../../../calc/figure/index.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { subject } from '../../../calc/plan/reading.ts';
import { habitOf } from '../kit/habit.ts';
import { mendText } from '../kit/mend-text.ts';
import { share } from '../kit/shown.ts';
import { allOf, firstOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

const OPEN: Usual = {
  habit: 'open_film',
  what: 'open share of a film under mesh',
  value: share(0.01),
  source: 'common practice: 1 % at least',
};

export const perforatedWithMesh = rule({
  name: 'perforated/with-mesh',
  severity: 'warning',
  title: 'a close perforated film under the flow mesh',
  on: 'recipe',
  check(context) {
    const steps = stepsOf(context);
    const mesh = firstOf(steps, 'mesh');
    if (mesh === undefined) return;
    for (const { step } of allOf(steps, 'perforated')) {
      const least = habitOf(context.bench, OPEN);
      const film = context.bench.material(subject(step) ?? '');
      const open = film?.openArea;
      if (film === undefined || open === undefined || open.value === UNKNOWN || open.value.si >= least - 1e-9) continue;
      const shown = { film: film.name, open: share(open.value.si), least: share(least) };
      context.report({
        at: `${step.path}.material`,
        message: text('{film} is {open} open: under mesh {least} at least, or the resin hardly comes through', shown),
        related: [{ at: open.at, message: text('{film} is {open} open', shown) }],
        fixes: [mendText(context, 'Take an open film', step.path, film.name, 'film_open')],
      });
    }
  },
});
