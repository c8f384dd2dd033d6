import { text } from '../../../calc/figure/index.ts';
import { rule } from '../rule.ts';

export const nameShadowsStock = rule({
  name: 'name/shadows-stock',
  severity: 'info',
  title: 'an entry takes the place of a stock entry without saying so',
  on: 'entry',
  check(context) {
    const { model, places, name } = context.lowered;
    if ((model.kind !== 'material' && model.kind !== 'tool') || context.first !== undefined || !places.has('name')) return;
    const own = model.kind === 'material' ? model.material : model.tool;
    if (own.origin === 'stock' || own.like !== undefined || !context.names.inStock(model.kind, name)) return;
    context.report({
      at: 'name',
      message: text('the stock library has {name} too; this entry takes its place whole: say `like stock` to keep what is not written here', { name }),
      fixes: [context.edit.replace('Write like stock', 'name', `${name} like stock`)],
    });
  },
});
