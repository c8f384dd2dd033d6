import { text } from '../../../calc/figure/index.ts';
import { laidStack } from '../../../calc/stack/laid.figure.ts';
import { valueOf } from '../kit/layers.ts';
import { rule } from '../rule.ts';

export const stackEmpty = rule({
  name: 'stack/empty',
  severity: 'error',
  title: 'a stack without a layer',
  on: 'recipe',
  check(context) {
    const { stack } = context.recipe;
    if (stack === undefined || valueOf(context.ask(laidStack))?.layers.length !== 0) return;
    context.report({
      at: stack.path,
      message: text('the stack has no layer: there is nothing to lay, to weigh and to buy'),
    });
  },
});
