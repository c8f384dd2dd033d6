import { text } from '../../../calc/figure/index.ts';
import { rule } from '../rule.ts';

/** What an entry may lack without harm, or has of its own. */
const own: ReadonlySet<string> = new Set([
  'entry',
  'kind',
  'name',
  'origin',
  'title',
  'source',
  'notes',
  'accepts',
  'like',
  'prices',
  'permeability',
  'shear',
  'life',
  'count',
  'cost',
]);

export const nameShadowsStock = rule({
  name: 'name/shadows-stock',
  severity: 'info',
  title: 'an entry takes the place of a stock entry and says less',
  on: 'entry',
  check(context) {
    const { model, places, name } = context.lowered;
    if ((model.kind !== 'material' && model.kind !== 'tool') || context.first !== undefined || !places.has('name'))
      return;
    const entry = model.kind === 'material' ? model.material : model.tool;
    if (entry.origin === 'stock' || entry.like !== undefined) return;
    const lost = context.names.stockFacts(model.kind, name)?.filter((fact) => !own.has(fact) && !(fact in entry)) ?? [];
    if (lost.length === 0) return;
    context.report({
      at: 'name',
      message: text(
        'this entry takes the place of the stock entry {name} and says nothing of {lost}: `like stock` keeps what is not written here',
        { name, lost: lost.map(spoken).join(', ') },
      ),
      fixes: [context.edit.replace('Write like stock', 'name', `${name} like stock`)],
    });
  },
});

/** `glassTransition` as the bench says it. */
const spoken = (fact: string): string => fact.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
