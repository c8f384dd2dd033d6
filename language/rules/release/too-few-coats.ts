import { isKnown, text } from '../../../calc/figure/figure.ts';
import { type Usual, usual } from '../../../calc/figure/index.ts';
import { clauseWith, countOf, flat, hasWord, head, subject } from '../../../calc/plan/reading.ts';
import { NUMBER } from '../../../calc/quantity/index.ts';
import { mendText } from '../kit/mend-text.ts';
import { allOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const LEAST: Usual = {
  habit: 'release_coats',
  what: 'coats of release on a tool',
  value: { si: 3, dimension: NUMBER },
  source: "supplier's repair page: 3 to 4 wax coats buffed",
};

export const releaseTooFewCoats = rule({
  name: 'release/too-few-coats',
  severity: 'warning',
  title: 'too few coats of release',
  on: 'recipe',
  check(context) {
    const least = usual(context.bench, LEAST);
    const said = allOf(stepsOf(context), 'release').map(({ step }) => {
      const again = clauseWith(step, 'every');
      const clause = step.clauses.find((each) => each !== again && hasWord(flat(each), 'coat', 'coats'));
      const list = clause === undefined ? head(step) : flat(clause);
      return {
        step,
        path: clause?.path ?? step.path,
        count: hasWord(list, 'coat', 'coats') ? countOf(list) : undefined,
      };
    });
    const first = said[0];
    // wax with a film of release over it counts together
    const coats = said.reduce<number | undefined>(
      (sum, { count }) => (sum === undefined || count === undefined ? undefined : sum + count),
      0,
    );
    if (first === undefined || coats === undefined || !isKnown(least) || coats >= least.value) return;
    const shown = { coats, material: subject(first.step) ?? 'release', least: least.value };
    context.report({
      at: first.path,
      message:
        coats === 1
          ? text('one coat of {material}: {least} at least, or thin places let the part bond', shown)
          : text('{coats} coats of {material}: {least} at least, or thin places let the part bond', shown),
      fixes: [
        mendText(context, text('Put on {what} coats', { what: least.value }), first.path, /\d+/, String(least.value)),
      ],
    });
  },
});
