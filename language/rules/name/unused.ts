import { text } from '../../../calc/figure/index.ts';
import { allSteps, subject } from '../../../calc/plan/reading.ts';
import { nearestWords } from '../../words/nearest.ts';
import { localNames, usesInRecipe } from '../kit/uses.ts';
import { type RecipeContext, rule } from '../rule.ts';

const withoutComments = (source: string): string =>
  source.includes('//') || source.includes('/*') ? source.replace(/\/\*[\s\S]*?\*\/|\/\/[^\n\r]*/g, ' ') : source;

/** How often a name stands in a text as a word of its own; words in quotes count. */
const timesIn = (source: string, name: string): number =>
  /^\w+$/.test(name) ? (source.match(new RegExp(`\\b${name}\\b`, 'g'))?.length ?? 0) : 0;

interface Named {
  readonly name: string;
  readonly path: string;
  readonly what: string;
}

/** Feeds where the infusion opens lines by name; a plain `infuse` opens all. Vents pull without a word, unless another is opened. */
function portsByName(context: RecipeContext): readonly Named[] {
  const steps = allSteps(context.recipe.process?.steps ?? []);
  const opened = steps.filter(({ verb }) => verb === 'open').map(subject);
  const ports = (kind: string, what: string): readonly Named[] =>
    steps.flatMap(({ verb, name, path }) => (verb === kind && name !== undefined ? [{ name, path, what }] : []));
  const vents = ports('vent', 'this vent, while another one is opened');
  return [
    ...(opened.length === 0 ? [] : ports('feed', 'this feed, which the infusion never opens')),
    ...(vents.some(({ name }) => opened.includes(name)) ? vents : []),
  ];
}

/** Names of zones, layers and lines that nothing bears: who is nearly called so is meant, and told of there. */
function misspelt(context: RecipeContext): readonly string[] {
  const local = localNames(context.recipe, context.bench);
  const borne = new Set([...local.zone, ...local.port, ...local.layer]);
  return usesInRecipe(context.recipe)
    .filter(({ name, wants }) => !borne.has(name) && (wants.includes('zone') || wants.includes('port')))
    .map(({ name }) => name);
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
      // a clamped zone speaks for itself: the core under it must be solid; a recipe without steps is still being written
      ...((recipe.process?.steps ?? []).length === 0 ? [] : (recipe.part?.zones ?? []))
        .filter(({ clamped }) => clamped !== true)
        .map(({ name, path }) => ({ name, path, what: 'this zone' })),
      ...portsByName(context),
    ];
    if (named.length === 0) return;
    const meant = misspelt(context);
    const source = withoutComments(context.edit.text.slice(lowered.source.offset, lowered.source.end));
    for (const { name, path, what } of named) {
      if (path.startsWith('like.') || !lowered.places.has(path) || timesIn(source, name) !== 1) continue;
      if (meant.some((typed) => nearestWords(typed, [name]).length > 0)) continue;
      context.report({
        at: path,
        message: text('{name}: nothing speaks of {what}', { name, what }),
        fixes: [context.edit.removeLine('Take the line away', path)],
      });
    }
  },
});
