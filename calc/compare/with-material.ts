import type { Recipe } from '../model/index.ts';

/** Members of the model that hold the name of a material. */
const NAMED: ReadonlySet<string> = new Set(['material', 'resin', 'wetResin']);

/** A recipe with one material in the place of another, wherever it names it. The recipe itself stays as it is. */
export function withMaterial(recipe: Recipe, from: string, to: string): Recipe {
  // `through tape by tube_10` names a material in a word; where a layer has the name, the word means the layer
  const words = !namesOfLayers(recipe).has(from);
  return replaced(
    recipe,
    (key, holder) => NAMED.has(key) || (words && key === 'word' && isWordArgument(holder)),
    from,
    to,
  ) as Recipe;
}

/** Whether a recipe names a material. */
export const usesMaterial = (recipe: Recipe, name: string): boolean =>
  withMaterial(recipe, name, `${name} `) !== recipe;

type Holder = Readonly<Record<string, unknown>>;

const isWordArgument = (holder: Holder): boolean => holder.kind === 'word';

/** The same object where nothing in it was replaced. */
function replaced(value: unknown, names: (key: string, holder: Holder) => boolean, from: string, to: string): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) {
    const items = value.map((item) => replaced(item, names, from, to));
    return items.some((item, i) => item !== value[i]) ? items : value;
  }
  const holder = value as Holder;
  let copy: Record<string, unknown> | undefined;
  for (const [key, member] of Object.entries(holder)) {
    const now = member === from && names(key, holder) ? to : replaced(member, names, from, to);
    if (now !== member) {
      copy ??= { ...holder };
      copy[key] = now;
    }
  }
  return copy ?? holder;
}

function namesOfLayers(recipe: Recipe): ReadonlySet<string> {
  const names = new Set<string>();
  const open = [...(recipe.stack?.items ?? [])];
  for (let item = open.pop(); item !== undefined; item = open.pop()) {
    if (item.kind === 'repeat') open.push(...item.items);
    else if (item.kind !== 'mirror') names.add(item.name);
  }
  return names;
}
