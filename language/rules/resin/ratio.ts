import { isKnown, text } from '../../../calc/figure/figure.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { head, mixedName } from '../../../calc/plan/reading.ts';
import { ratioTolerance } from '../../../calc/resin/ratio-tolerance.figure.ts';
import { mendText } from '../kit/mend-text.ts';
import { share } from '../kit/shown.ts';
import { allOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const resinRatio = rule({
  name: 'resin/ratio',
  severity: 'error',
  title: 'resin and hardener are mixed off their ratio',
  on: 'recipe',
  check(context) {
    for (const { step } of allOf(stepsOf(context), 'mix')) {
      const typed = head(step).find((said) => said.kind === 'ratio');
      const name = mixedName(step) ?? context.recipe.process?.resin;
      const material = name === undefined ? undefined : context.bench.material(name);
      const fact = material?.mix;
      if (typed?.kind !== 'ratio' || material === undefined || fact === undefined || fact.value === UNKNOWN) continue;
      const { ratio, basis } = fact.value;
      const allowed = context.ask(ratioTolerance, material.name);
      const basisTyped = step.phrases.find(({ word }) => word === 'by')?.arguments[0];
      const other = basisTyped?.kind === 'word' && basis !== undefined && basis !== `by ${basisTyped.word}`;
      const [resin = 0, hardener = 0] = ratio;
      const [mixed = 0, with_ = 0] = typed.parts;
      if (!isKnown(allowed) || other || !(resin > 0 && hardener > 0 && mixed > 0)) continue;
      const off = with_ / mixed / (hardener / resin) - 1;
      if (Math.abs(off) <= allowed.value + 1e-9) continue;
      const shown = {
        typed: typed.parts.join(':'),
        right: ratio.join(':'),
        basis: basis ?? '',
        off: share(Math.abs(off)),
        material: material.name,
        allowed: share(allowed.value),
      };
      context.report({
        at: step.path,
        message:
          off > 0
            ? text(
                '{typed} is {off} more hardener than {material} takes: {right} {basis}, give or take {allowed}',
                shown,
              )
            : text(
                '{typed} is {off} less hardener than {material} takes: {right} {basis}, give or take {allowed}',
                shown,
              ),
        related: [{ at: fact.at, message: text('{material} is mixed {right} {basis}', shown) }],
        fixes: [
          mendText(
            context,
            text('Mix {what}', { what: ratio.join(':') }),
            step.path,
            typed.parts.join(':'),
            ratio.join(':'),
          ),
        ],
      });
    }
  },
});
