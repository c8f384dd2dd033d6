import { text } from '../../../calc/figure/index.ts';
import { allSteps } from '../../../calc/plan/reading.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** How often each word stands in a text, comments left out; words in quotes count. */
function countsOf(source: string): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const [word] of source.matchAll(/\/\*[\s\S]*?\*\/|\/\/[^\n\r]*|\w+/g))
    if (!word.startsWith('/')) counts.set(word, (counts.get(word) ?? 0) + 1);
  return counts;
}

/** Feeds that the infusion opens by name; a plain `infuse` opens all. */
function portsByName(context: RecipeContext): readonly { readonly name: string; readonly path: string }[] {
  const steps = [...allSteps(context.recipe.process?.steps ?? [])];
  if (!steps.some(({ verb }) => verb === 'open')) return [];
  return steps.flatMap((step) =>
    step.verb === 'feed' && step.name !== undefined ? [{ name: step.name, path: step.path }] : [],
  );
}

export const nameUnused = rule({
  name: 'name/unused',
  severity: 'info',
  title: 'a name that nothing speaks of',
  on: 'recipe',
  check(context) {
    const { recipe, lowered } = context;
    // another recipe's lines may speak of it, or this one's lines of another's
    if (recipe.size !== undefined || recipe.like !== undefined || context.names.hasLikeness(recipe.name)) return;
    const named = [
      ...Object.keys(recipe.lets).map((name) => ({ name, path: `lets.${name}`, what: 'this value' })),
      ...portsByName(context).map((port) => ({ ...port, what: 'this feed, which the infusion never opens' })),
    ];
    if (named.length === 0) return;
    const counts = countsOf(context.edit.text.slice(lowered.source.offset, lowered.source.end));
    for (const { name, path, what } of named) {
      if (path.startsWith('like.') || !lowered.places.has(path) || counts.get(name) !== 1) continue;
      context.report({
        at: path,
        message: text('{name}: nothing speaks of {what}', { name, what }),
        fixes: [context.edit.removeLine('Take the line away', path)],
      });
    }
  },
});
