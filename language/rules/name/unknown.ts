import { type Bench, text } from '../../../calc/figure/index.ts';
import { either } from '../../../calc/figure/listed.ts';
import { type Book, type Recipe, UNKNOWN } from '../../../calc/model/index.ts';
import { allSteps, subject } from '../../../calc/plan/reading.ts';
import { nearestWords } from '../../words/nearest.ts';
import {
  localNames,
  type Namespace,
  type Use,
  usesInMaterial,
  usesInRecipe,
  usesInRecord,
  usesInTool,
} from '../kit/uses.ts';
import { type Context, rule } from '../rule.ts';

/** Places where one name stands. */
type Together = readonly [Use, ...Use[]];

/** As the bench speaks of what a name may stand for. */
const spoken: Readonly<Record<Namespace, string>> = {
  material: 'material',
  tool: 'tool',
  recipe: 'recipe',
  layer: 'layer',
  zone: 'zone',
  port: 'feed or vent',
  load: 'load',
  size: 'size',
  end: 'end',
  let: 'let',
};

/** Names inside a recipe; those of the book are looked up one by one. */
type Local = Partial<Readonly<Record<Namespace, readonly string[]>>>;

function bears(book: Book, local: Local, want: Namespace, name: string): boolean {
  if (want === 'material') return book.material(name) !== undefined;
  if (want === 'tool') return book.tool(name) !== undefined;
  return want === 'recipe' ? book.recipe(name) !== undefined : local[want]?.includes(name) === true;
}

function known(book: Book, local: Local, { name, wants }: Use): boolean {
  for (const want of wants) if (bears(book, local, want, name)) return true;
  return false;
}

/** A material that is there, but is none of the kinds that may stand here. A consumable without a kind may be anything. */
function wrongKind(book: Book, { name, kinds, wants }: Use): string | undefined {
  if (kinds === undefined) return undefined;
  const material = book.material(name);
  if (material === undefined || kinds.includes(material.kind)) return undefined;
  if (wants.includes('tool') && book.tool(name) !== undefined) return undefined;
  const use = material.kind === 'consumable' ? material.consumableKind?.value : undefined;
  if (material.kind === 'consumable' && (use === undefined || use === UNKNOWN || kinds.includes(use))) return undefined;
  return use ?? material.kind;
}

function reportKind(context: Context, use: Use, kind: string): void {
  context.report({
    at: use.at,
    message: text('{name} is a {kind}; what belongs here is a {wanted}', {
      name: use.name,
      kind: spokenKind(kind),
      wanted: either((use.kinds ?? []).map(spokenKind)),
    }),
  });
}

const spokenKind = (kind: string): string => kind.replaceAll('_', ' ');

function nearest(context: Context, local: Local, { name, wants }: Use): string[] {
  const near = wants.flatMap((want) =>
    want === 'material' || want === 'tool' || want === 'recipe'
      ? context.names.nearest(want, name)
      : nearestWords(name, local[want] ?? []),
  );
  return [...new Set(near)].slice(0, 3);
}

/** What nothing bears is told once, at the first line that speaks of it; the others are mended with it. */
function report(context: Context, local: Local, [use, ...others]: Together, recipe?: Recipe): void {
  const what = either(use.wants.map((want) => spoken[want]));
  const near = nearest(context, local, use);
  const figures = { what, name: use.name, near: either(near) };
  const missing =
    near.length === 0
      ? text('there is no {what} called {name}', figures)
      : text('there is no {what} called {name}: is {near} meant?', figures);
  context.report({
    at: use.at,
    message:
      recipe?.size === undefined ? missing : text('in size {size}: {message}', { size: recipe.size, message: missing }),
    related: others.map(({ at }) => ({ at: { entry: recipe?.entry ?? '', path: at }, message: text('and here') })),
    fixes: near.map((name) => replaceName(context, [use, ...others], name)),
  });
}

/** Puts another name in the place of this one, where each place is the name alone or holds it once. */
function replaceName(context: Context, uses: Together, name: string) {
  const edits = uses.flatMap((use) => {
    const span = context.edit.span(use.at);
    if (span === undefined) return [];
    const before = context.edit.text.slice(span.offset, span.end);
    const at = before.search(new RegExp(`(?<![\\w.])${use.name.replaceAll('.', '\\.')}(?![\\w.])`));
    return at < 0 ? [] : [{ offset: span.offset + at, end: span.offset + at + use.name.length, text: name }];
  });
  return edits.length === 0 ? undefined : { title: text('Write {what}', { what: name }), edits };
}

/** Feeds that are opened where there is none at all: `feed/missing` says that. */
function missingFeeds(recipe: Recipe): ReadonlySet<string | undefined> {
  const steps = recipe.process?.kind === 'infusion' ? allSteps(recipe.process.steps) : [];
  if (steps.some(({ verb }) => verb === 'feed')) return new Set();
  return new Set(steps.filter(({ verb }) => verb === 'open').map(subject));
}

function checkRecipe(context: Context, recipe: Recipe, bench: Bench, told: Set<string>): void {
  const local = localNames(recipe, bench);
  const unknown = new Map<string, [Use, ...Use[]]>();
  for (const use of usesInRecipe(recipe)) {
    const kind = wrongKind(context.book, use);
    if (kind === undefined && known(context.book, local, use)) continue;
    // lines of another recipe are told there
    if (use.at.startsWith('like.') || told.has(use.at)) continue;
    if (kind === undefined && use.free && nearest(context, local, use).length === 0) continue;
    if (kind === undefined && use.wants.includes('port') && missingFeeds(recipe).has(use.name)) continue;
    told.add(use.at);
    const key = `${use.wants.join()} ${use.name}`;
    const before = unknown.get(key);
    if (kind !== undefined) reportKind(context, use, kind);
    else if (before === undefined) unknown.set(key, [use]);
    else before.push(use);
  }
  for (const uses of unknown.values()) report(context, local, uses, recipe);
}

export const nameUnknown = rule({
  name: 'name/unknown',
  severity: 'error',
  title: 'a name that nothing bears',
  on: 'entry',
  check(context) {
    const { model } = context.lowered;
    if (model.kind === 'recipe') {
      const told = new Set<string>();
      for (const recipe of model.recipes) checkRecipe(context, recipe, context.benchOf(recipe), told);
      return;
    }
    const local: Local =
      model.kind === 'record' && model.record.recipe !== undefined
        ? { size: context.book.recipe(model.record.recipe)?.sizes ?? [] }
        : {};
    const uses =
      model.kind === 'material'
        ? usesInMaterial(model.material)
        : model.kind === 'record'
          ? usesInRecord(model.record)
          : model.kind === 'tool'
            ? usesInTool(model.tool)
            : [];
    for (const use of uses) {
      const kind = wrongKind(context.book, use);
      if (kind !== undefined) reportKind(context, use, kind);
      else if (!known(context.book, local, use)) report(context, local, [use]);
    }
  },
});
