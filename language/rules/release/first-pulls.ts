import { text } from '../../../calc/figure/figure.ts';
import { clauseWith, subject } from '../../../calc/plan/reading.ts';
import { isWax } from '../kit/release-kind.ts';
import { allOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const releaseFirstPulls = rule({
  name: 'release/first-pulls',
  severity: 'info',
  title: 'a new tool with wax alone',
  on: 'recipe',
  check(context) {
    const releases = allOf(stepsOf(context), 'release');
    const only = releases[0];
    if (only === undefined || releases.length > 1) return;
    const material = context.bench.material(subject(only.step) ?? '');
    if (material === undefined || !isWax(material)) return;
    const clause = clauseWith(only.step, 'new');
    if (clause === undefined) return;
    context.report({
      at: clause.path,
      message: text(
        'a new tool with {wax} alone: for the first pulls a film release goes over the wax, until the tool has hardened and filled',
        { wax: material.name },
      ),
      fixes: [context.edit.lineAfter('Add a film release', only.step.path, 'release pva, 1 coat, 30 min each')],
    });
  },
});
