import { text } from '../../../calc/figure/figure.ts';
import { coatsAndNext } from '../kit/coats.ts';
import { familyOf, hasStyrene } from '../kit/wetted.ts';
import { rule } from '../rule.ts';

export const coatWrongFamily = rule({
  name: 'coat/wrong-family',
  severity: 'warning',
  title: 'an epoxy laminate lies on a polyester gelcoat',
  on: 'recipe',
  check(context) {
    for (const { coat, next } of coatsAndNext(context)) {
      const [own, over] = [familyOf(context, coat.resin), familyOf(context, next.resin)];
      if (!hasStyrene(own) || over !== 'epoxy') continue;
      const shown = { coat: coat.resin.name, layer: next.laid.name, resin: next.resin.name };
      context.report({
        at: coat.laid.path,
        message: text(
          '{layer} in {resin} goes on {coat}, a polyester: its uncured face and the hardener spoil each other; use an epoxy gelcoat or a tie coat',
          shown,
        ),
        related: [
          {
            at: { entry: context.recipe.entry, path: next.laid.path },
            message: text('{layer} is wetted with {resin}', shown),
          },
        ],
      });
    }
  },
});
