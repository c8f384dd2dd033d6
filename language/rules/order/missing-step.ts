import { text } from '../../../calc/figure/figure.ts';
import type { ProcessKind } from '../../../calc/model/index.ts';
import { needed } from '../../words/index.ts';
import { reportMissing } from '../kit/missing-step.ts';
import { rule } from '../rule.ts';

/** Needed steps whose absence a rule of their own reports, by its name. */
export const TOLD_ELSEWHERE: Readonly<Record<string, string>> = {
  release: 'release/missing',
  tape: 'tape/missing',
  peel: 'peel/missing',
  feed: 'feed/missing',
  vent: 'vent/missing',
  bag: 'bag/missing',
  'leak test': 'vacuum/no-leak-test',
  lay: 'ply/never-laid',
};

const LINES: Readonly<Record<string, string>> = { infuse: 'infuse', cure: 'cure 24 h at 23 degC', demould: 'demould' };

export const orderMissingStep = rule({
  name: 'order/missing-step',
  severity: 'warning',
  title: 'a step that the process cannot do without is missing',
  on: 'recipe',
  check(context) {
    const kind: ProcessKind | undefined = context.recipe.process?.kind;
    if (kind === undefined) return;
    for (const { step, because } of needed[kind]) {
      if (TOLD_ELSEWHERE[step] !== undefined) continue;
      const line = LINES[step];
      const message = text('no {step}: {because}', { step, because });
      reportMissing(context, { step, kinds: [kind], message, ...(line === undefined ? {} : { line }) });
    }
  },
});
