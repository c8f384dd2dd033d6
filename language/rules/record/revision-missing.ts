import { text } from '../../../calc/figure/figure.ts';
import { rule } from '../rule.ts';

export const recordRevisionMissing = rule({
  name: 'record/revision-missing',
  severity: 'warning',
  title: 'a record does not say by which revision the part was built',
  on: 'record',
  check(context) {
    const { record, recipe } = context;
    if (recipe?.revision === undefined) return;
    const shown = { recipe: recipe.name, newest: recipe.revision };
    const line = record.readings.find(({ key }) => key === 'revision');
    if (record.revision === undefined) {
      if (line !== undefined) return;
      context.report({
        at: '',
        message: text(
          'the record says no revision: {recipe} stands at {newest} now, and nobody will know which one this part is',
          shown,
        ),
        fixes: [
          context.edit.firstLineIn(
            text('Add revision {what}', { what: recipe.revision }),
            '',
            `revision ${recipe.revision}`,
          ),
        ],
      });
    } else if (record.revision > recipe.revision && line !== undefined) {
      context.report({
        at: line.path,
        message: text('revision {revision} is not there yet: {recipe} stands at {newest}', {
          ...shown,
          revision: record.revision,
        }),
      });
    }
  },
});
