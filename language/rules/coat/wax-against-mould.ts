import { isKnown, text } from '../../../calc/figure/figure.ts';
import { laidStack } from '../../../calc/stack/laid.figure.ts';
import { rule } from '../rule.ts';

export const coatWaxAgainstMould = rule({
  name: 'coat/wax-against-mould',
  severity: 'error',
  title: 'something is laid on a waxed coat',
  on: 'recipe',
  check(context) {
    const stack = context.ask(laidStack);
    if (!isKnown(stack)) return;
    stack.value.layers.forEach((coat, i) => {
      const next = stack.value.layers[i + 1];
      if (coat.layer.kind !== 'coat' || next === undefined) return;
      const { material } = coat.layer;
      const fact = material === undefined ? undefined : context.bench.material(material)?.waxed;
      if (coat.layer.waxed !== true && fact === undefined) return;
      const clause = coat.layer.clauses.find(({ word }) => word === 'waxed');
      context.report({
        at: clause?.path ?? coat.path,
        message: text('{next} is laid on {coat}, which is waxed: nothing bonds to the wax that rises to its face', {
          next: next.name,
          coat: coat.name,
        }),
        related: [
          ...(fact === undefined
            ? []
            : [{ at: fact.at, message: text('{material} holds wax', { material: material ?? '' }) }]),
          {
            at: { entry: context.recipe.entry, path: next.path },
            message: text('{next} lies on it', { next: next.name }),
          },
        ],
        // a gelcoat that holds wax keeps it, whatever the line says
        fixes:
          clause === undefined || fact !== undefined
            ? []
            : [context.edit.removeClause('Use it without wax', clause.path)],
      });
    });
  },
});
