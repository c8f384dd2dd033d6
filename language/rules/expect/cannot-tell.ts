import { TESTED, verdicts } from '../../../calc/expect/evaluate.ts';
import { text } from '../../../calc/figure/index.ts';
import { valueOf } from '../kit/layers.ts';
import { withReasons } from '../kit/words.ts';
import { rule } from '../rule.ts';

export const expectCannotTell = rule({
  name: 'expect/cannot-tell',
  severity: 'info',
  title: 'whether an expectation is met cannot be told',
  on: 'recipe',
  check(context) {
    for (const { path, test, verdict, reasons } of valueOf(context.ask(verdicts)) ?? []) {
      // a word or a name that is not known is told of as that
      const known =
        TESTED.includes(test.what) &&
        (test.under === undefined || context.recipe.loads.some(({ name }) => name === test.under));
      if (!known) continue;
      const what = test.what.replaceAll('_', ' ');
      if (verdict === 'not yet')
        context.report({
          at: path,
          message: reasons[0]?.text ?? text('{expected} is not computed yet', { expected: what }),
        });
      else if (verdict === 'cannot tell')
        context.report({
          at: path,
          message: withReasons(text('{expected} cannot be told', { expected: what }), reasons),
        });
    }
  },
});
