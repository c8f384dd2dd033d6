import { isKnown, text } from '../../../calc/figure/figure.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { pastEdge } from '../../../calc/plan/reading.ts';
import { laidStack } from '../../../calc/stack/laid.figure.ts';
import { isCloth } from '../../../calc/stack/order.ts';
import { mendText, TYPED_LENGTH } from '../kit/mend-text.ts';
import { asTyped, metres } from '../kit/shown.ts';
import { firstOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

/** What is left between cloth and tape by the fix, m. Common practice. */
const USUAL = 0.02;

export const plyPastTape = rule({
  name: 'ply/past-tape',
  severity: 'error',
  title: 'cloth reaches out under the sealant tape',
  on: 'recipe',
  check(context) {
    const allowance = context.recipe.part?.trimAllowance;
    if (allowance === undefined || allowance === UNKNOWN) return;
    const tape = firstOf(stepsOf(context), 'tape');
    const line = tape === undefined ? undefined : pastEdge(tape.step);
    if (tape === undefined || line === undefined || allowance.si < line) return;
    const stack = context.ask(laidStack);
    if (!isKnown(stack)) return;
    const ply = stack.value.layers.find((laid) => isCloth(laid) && laid.layer.extent.kind === 'to trim');
    if (ply === undefined) return;
    const right = asTyped(metres(allowance.si + USUAL));
    const shown = { ply: ply.name, reach: metres(allowance.si), tape: metres(line) };
    context.report({
      at: tape.step.path,
      message: text(
        '{ply} runs {reach} past the edge, the tape lies {tape} outside it: cloth under the tape leaks along every yarn',
        shown,
      ),
      related: [
        {
          at: { entry: context.recipe.entry, path: ply.path },
          message: text('{ply} runs out to the trim line', shown),
        },
      ],
      fixes: [mendText(context, text('Lay it {what} outside', { what: right }), tape.step.path, TYPED_LENGTH, right)],
    });
  },
});
