import { text } from '../../../calc/figure/index.ts';
import { allSteps } from '../../../calc/plan/reading.ts';
import { type RecipeContext, rule } from '../rule.ts';

const withoutComments = (source: string): string =>
  source.includes('//') || source.includes('/*') ? source.replace(/\/\*[\s\S]*?\*\/|\/\/[^\n\r]*/g, ' ') : source;

/** How often a name stands in a text as a word of its own; words in quotes count. */
const timesIn = (source: string, name: string): number =>
  /^\w+$/.test(name) ? (source.match(new RegExp(`\\b${name}\\b`, 'g'))?.length ?? 0) : 0;

/** Feeds that the infusion opens by name; a plain `infuse` opens all. */
function portsByName(context: RecipeContext): readonly { readonly name: string; readonly path: string }[] {
  const steps = allSteps(context.recipe.process?.steps ?? []);
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
    const source = withoutComments(context.edit.text.slice(lowered.source.offset, lowered.source.end));
    for (const { name, path, what } of named) {
      if (path.startsWith('like.') || !lowered.places.has(path) || timesIn(source, name) !== 1) continue;
      context.report({
        at: path,
        message: text('{name}: nothing speaks of {what}', { name, what }),
        fixes: [context.edit.removeLine('Take the line away', path)],
      });
    }
  },
});
