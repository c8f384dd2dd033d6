import { text } from '../../../calc/figure/index.ts';
import { allSteps } from '../../../calc/plan/reading.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** How often a name stands in the text of the file, comments left out; once is its own line. */
function occurrences(source: string, name: string): number {
  const plain = source.replace(/"[^"\n\r]*"|\/\*[\s\S]*?\*\/|\/\/[^\n\r]*/g, (part) => (part.startsWith('"') ? part : ''));
  return plain.match(new RegExp(`(?<![\\w.])${name}(?![\\w])`, 'g'))?.length ?? 0;
}

/** Feeds that the infusion opens by name; a plain `infuse` opens all. */
function portsByName(context: RecipeContext): readonly { readonly name: string; readonly path: string }[] {
  const steps = [...allSteps(context.recipe.process?.steps ?? [])];
  if (!steps.some(({ verb }) => verb === 'open')) return [];
  return steps.flatMap((step) => (step.verb === 'feed' && step.name !== undefined ? [{ name: step.name, path: step.path }] : []));
}

export const nameUnused = rule({
  name: 'name/unused',
  severity: 'info',
  title: 'a name that nothing speaks of',
  on: 'recipe',
  check(context) {
    const { recipe, lowered } = context;
    // another recipe's lines may speak of it, or this one's lines of another's
    if (recipe.size !== undefined || recipe.like !== undefined) return;
    const named = [
      ...Object.keys(recipe.lets).map((name) => ({ name, path: `lets.${name}`, what: 'this value' })),
      ...portsByName(context).map((port) => ({ ...port, what: 'this feed, which the infusion never opens' })),
    ];
    for (const { name, path, what } of named) {
      if (path.startsWith('like.') || !lowered.places.has(path) || !/^\w+$/.test(name) || occurrences(context.edit.text, name) !== 1) continue;
      context.report({ at: path, message: text('{name}: nothing speaks of {what}', { name, what }), fixes: [context.edit.removeLine('Take the line away', path)] });
    }
  },
});
