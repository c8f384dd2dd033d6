import { text } from '../../../calc/figure/index.ts';
import { allSteps, subject } from '../../../calc/plan/reading.ts';
import { nearestWords } from '../../words/nearest.ts';
import { localNames, usesInRecipe } from '../kit/uses.ts';
import { type RecipeContext, rule } from '../rule.ts';

const withoutComments = (source: string): string =>
  source.includes('//') || source.includes('/*') ? source.replace(/\/\*[\s\S]*?\*\/|\/\/[^\n\r]*/g, ' ') : source;

const ofWord = /\w/;

/** Whether a name stands in a text once, as a word of its own; words in quotes count. */
function standsOnce(source: string, name: string): boolean {
  if (!/^\w+$/.test(name)) return false;
  let found = 0;
  for (let at = source.indexOf(name); at >= 0; at = source.indexOf(name, at + name.length)) {
    if (ofWord.test(source[at - 1] ?? '') || ofWord.test(source[at + name.length] ?? '')) continue;
    if (++found > 1) return false;
  }
  return found === 1;
}

interface Named {
  readonly name: string;
  readonly path: string;
  readonly what: string;
}

/** Feeds where the infusion opens lines by name; a plain `infuse` opens all. Vents pull without a word, unless another is opened. */
function portsByName(context: RecipeContext): readonly Named[] {
  const opened: (string | undefined)[] = [];
  const feeds: Named[] = [];
  const vents: Named[] = [];
  for (const step of allSteps(context.recipe.process?.steps ?? [])) {
    const { verb, name, path } = step;
    if (verb === 'open') opened.push(subject(step));
    else if (name === undefined) continue;
    else if (verb === 'feed') feeds.push({ name, path, what: 'this feed, which the infusion never opens' });
    else if (verb === 'vent') vents.push({ name, path, what: 'this vent, while another one is opened' });
  }
  if (opened.length === 0) return [];
  return vents.some(({ name }) => opened.includes(name)) ? [...feeds, ...vents] : feeds;
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
    const named: Named[] = [];
    for (const name in recipe.lets) named.push({ name, path: `lets.${name}`, what: 'this value' });
    // a clamped zone speaks for itself: the core under it must be solid; a recipe without steps is still being written
    for (const { name, path, clamped } of recipe.process?.steps.length ? (recipe.part?.zones ?? []) : [])
      if (clamped !== true) named.push({ name, path, what: 'this zone' });
    named.push(...portsByName(context));
    if (named.length === 0) return;
    let meant: readonly string[] | undefined;
    const source = withoutComments(context.edit.text.slice(lowered.source.offset, lowered.source.end));
    for (const { name, path, what } of named) {
      if (!standsOnce(source, name) || path.startsWith('like.') || !lowered.places.has(path)) continue;
      meant ??= misspelt(context);
      if (meant.some((typed) => nearestWords(typed, [name]).length > 0)) continue;
      context.report({
        at: path,
        message: text('{name}: nothing speaks of {what}', { name, what }),
        fixes: [context.edit.removeLine('Take the line away', path)],
      });
    }
  },
});
