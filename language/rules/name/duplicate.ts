import { text } from '../../../calc/figure/index.ts';
import type { Recipe } from '../../../calc/model/index.ts';
import { allSteps } from '../../../calc/plan/reading.ts';
import { layerLines } from '../kit/uses.ts';
import { type Context, rule } from '../rule.ts';

interface Named {
  readonly name: string;
  readonly path: string;
}

/** Names inside of a recipe, one list for each kind of thing; a name may stand for one of each. */
const namesIn = (recipe: Recipe): readonly (readonly [what: string, named: readonly Named[]])[] => [
  ['layer', layerLines(recipe)],
  ['zone', recipe.part?.zones ?? []],
  ['load', recipe.loads],
  ['line', namedSteps(recipe)],
];

function namedSteps({ process }: Recipe): readonly Named[] {
  const named: Named[] = [];
  for (const { name, path } of allSteps(process?.steps ?? [])) if (name !== undefined) named.push({ name, path });
  return named;
}

/** The first of `inner_2`, `inner_3` ... that is free. */
function freeName(name: string, taken: ReadonlySet<string>): string {
  for (let i = 2; ; i++) if (!taken.has(`${name}_${i}`)) return `${name}_${i}`;
}

const taken = (named: readonly Named[]): ReadonlySet<string> =>
  new Set(named.flatMap(({ name, path }) => (path.startsWith('like.') ? [] : [name])));

function reportSame(context: Context, what: string, named: readonly Named[], told: Set<string>): void {
  if (named.length < 2) return;
  const first = new Map<string, Named>();
  for (const each of named) {
    // lines of another recipe are told there
    if (each.path.startsWith('like.')) continue;
    const before = first.get(each.name);
    if (before === undefined) first.set(each.name, each);
    else if (!told.has(each.path)) {
      told.add(each.path);
      const at = context.lowered.places.has(`${each.path}.name`) ? `${each.path}.name` : each.path;
      const free = freeName(each.name, taken(named));
      context.report({
        at,
        message: text('a {what} before this one is called {name} too: lines that name it cannot say which', {
          what,
          name: each.name,
        }),
        related: [
          {
            at: { entry: context.lowered.entry, path: before.path },
            message: text('the first {name}', { name: each.name }),
          },
        ],
        fixes: at === each.path ? [] : [context.edit.replace(text('Call it {what}', { what: free }), at, free)],
      });
    }
  }
}

/** Which entry of a name counts hangs on the addresses of the files, which nobody thinks of. */
function reportEntry(context: Context): void {
  const { first, lowered, edit } = context;
  if (first === undefined) return;
  const span = first.places.get('name');
  // the other one can be shown where it stands in the same text
  const here =
    span !== undefined &&
    edit.text.slice(span.offset, span.end) === lowered.name &&
    edit.span('name')?.offset !== span.offset;
  const { kind } = lowered.model;
  context.report({
    at: 'name',
    message:
      kind === 'shop'
        ? text('there is another shop in this workspace; this one does not count')
        : text('another {kind} of this workspace is called {name}; this one does not count', {
            kind,
            name: lowered.name,
          }),
    ...(here ? { related: [{ at: { entry: first.entry, path: 'name' }, message: text('the one that counts') }] } : {}),
  });
}

export const nameDuplicate = rule({
  name: 'name/duplicate',
  severity: 'error',
  title: 'two things of one kind have the same name',
  on: 'entry',
  check(context) {
    reportEntry(context);
    const { model } = context.lowered;
    if (model.kind !== 'recipe') return;
    const told = new Set<string>();
    for (const recipe of model.recipes)
      for (const [what, named] of namesIn(recipe)) reportSame(context, what, named, told);
  },
});
