import { isKnown, text } from '../../../calc/figure/figure.ts';
import { airPressure, pumpLeaves } from '../../../calc/vacuum/vacuum.figure.ts';
import { mendText, TYPED_PRESSURE } from '../kit/mend-text.ts';
import { vacuumsOf } from '../kit/pressure.ts';
import { about, asTyped, pascals } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const vacuumPumpTooWeak = rule({
  name: 'vacuum/pump-too-weak',
  severity: 'error',
  title: 'the pump does not reach the vacuum that is asked for',
  on: 'recipe',
  check(context) {
    const [air, pump] = [context.ask(airPressure), context.ask(pumpLeaves)];
    if (!isKnown(air) || !isKnown(pump)) return;
    for (const { worked, amount, left } of vacuumsOf(context)) {
      if (left >= pump.value - 1) continue;
      const shown = {
        asked: amount,
        air: pascals(about(air.value)),
        pump: pascals(about(pump.value)),
        left: pascals(about(Math.max(0, left))),
        most: pascals(Math.floor((air.value - pump.value) / 100) * 100),
      };
      const fact = context.bench.shop?.pump;
      // what the pump leaves, or the gauge at best: neither is rounded past what it can
      const right = asTyped(
        amount.basis === 'absolute' ? pascals(Math.ceil(pump.value / 100 - 1e-6) * 100) : shown.most,
      );
      context.report({
        at: worked.step.path,
        message:
          left < 0
            ? text(
                '{asked} is more than the air here has ({air}): the gauge cannot read it; with this pump {most} gauge at best',
                shown,
              )
            : amount.basis === 'absolute'
              ? text('{asked} absolute: the pump leaves {pump} in a tight bag', shown)
              : text(
                  '{asked} leaves {left}: the pump leaves {pump} in a tight bag; with it {most} gauge at best',
                  shown,
                ),
        fixes: [mendText(context, text('Ask for {what}', { what: right }), worked.step.path, TYPED_PRESSURE, right)],
        related: fact === undefined ? [] : [{ at: fact.at, message: text('the pump leaves {pump}', shown) }],
      });
    }
  },
});
