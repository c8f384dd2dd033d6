import { isKnown, text } from '../../../calc/figure/figure.ts';
import { type Usual, usual } from '../../../calc/figure/index.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { pumpLeaves } from '../../../calc/vacuum/vacuum.figure.ts';
import { mendText, TYPED_PRESSURE } from '../kit/mend-text.ts';
import { vacuumsOf } from '../kit/pressure.ts';
import { about, pascals } from '../kit/shown.ts';
import { firstOf, stepsOf } from '../kit/steps.ts';
import { familyOf, hasStyrene } from '../kit/wetted.ts';
import { rule } from '../rule.ts';

const DEEPEST: Usual = {
  habit: 'styrene',
  what: 'deepest vacuum on wet styrene resin',
  value: pascals(5000),
  source: '20 to 50 mbar absolute, from memory',
};

export const vacuumStyreneBoils = rule({
  name: 'vacuum/styrene-boils',
  severity: 'error',
  title: 'so deep a vacuum on wet polyester that its styrene boils',
  on: 'recipe',
  check(context) {
    const { process } = context.recipe;
    const resin = process?.resin === undefined ? undefined : context.bench.material(process.resin);
    if (
      resin === undefined ||
      (process?.kind !== 'infusion' && process?.kind !== 'bagged') ||
      !hasStyrene(familyOf(context, resin))
    )
      return;
    const own = resin.deepestVacuum?.value;
    const deepest =
      own === undefined || own === UNKNOWN ? usual(context.bench, DEEPEST) : { value: own.si, reasons: [] };
    if (!isKnown(deepest)) return;
    const asked = vacuumsOf(context);
    const related =
      resin.deepestVacuum === undefined
        ? []
        : [
            {
              at: resin.deepestVacuum.at,
              message: text('{resin}: no deeper than {deepest} absolute', {
                resin: resin.name,
                deepest: pascals(deepest.value),
              }),
            },
          ];
    for (const { worked, amount, left } of asked) {
      if (left < 0 || left >= deepest.value - 1) continue;
      const shown = { asked: amount, left: pascals(about(left)), deepest: pascals(deepest.value), resin: resin.name };
      context.report({
        at: worked.step.path,
        // a vacuum that was typed absolute is what it leaves
        message:
          Math.abs(amount.si - left) < 1
            ? text('{asked} absolute on wet {resin}: below {deepest} the styrene boils and the laminate foams', shown)
            : text(
                '{asked} leaves {left} absolute on wet {resin}: below {deepest} the styrene boils and the laminate foams',
                shown,
              ),
        related,
        fixes:
          amount.basis === 'absolute'
            ? [
                mendText(
                  context,
                  'No deeper than it bears',
                  worked.step.path,
                  TYPED_PRESSURE,
                  `${Math.ceil(deepest.value / 100 - 1e-6)} mbar`,
                ),
              ]
            : [],
      });
    }
    const infuse = firstOf(stepsOf(context), 'infuse');
    const pump = context.ask(pumpLeaves);
    if (asked.length > 0 || infuse === undefined || !isKnown(pump) || pump.value >= deepest.value - 1) return;
    const line = `vacuum ${Math.ceil(deepest.value / 100 - 1e-6)} mbar absolute until gel`;
    context.report({
      at: infuse.step.path,
      message: text(
        'no vacuum is said, so the pump pulls down to {pump}: below {deepest} the styrene of {resin} boils',
        { pump: pascals(about(pump.value)), deepest: pascals(deepest.value), resin: resin.name },
      ),
      related,
      fixes: [
        (infuse.step.steps ?? []).length > 0
          ? context.edit.firstLineIn(text('Add: {what}', { what: line }), infuse.step.path, line)
          : undefined,
      ],
    });
  },
});
