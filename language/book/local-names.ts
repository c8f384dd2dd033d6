import { onceFor } from '../../calc/kept.ts';
import {
  isLayer,
  type Let,
  type Named,
  type ProcessLine,
  type Recipe,
  type Size,
  type StackLine,
} from '../grammar/generated/ast.ts';

/** The names that stand in one recipe (whose tree is never changed: an edit makes a new one), each with every node that bears it, in the order of the lines. */
export type LocalNames = ReadonlyMap<string, readonly Named[]>;

/** Layers (of groups too), zones, feeds and vents, lets, loads and sizes of a recipe; not those that it is `like`. */
export const localNames = onceFor((recipe: Recipe) => collect(namedIn(recipe)));

/** The lets that a size has of its own. */
export const sizeNames = onceFor((size: Size) =>
  collect(size.items.filter((item): item is Let => item.$type === 'Let')),
);

function collect(nodes: Iterable<Named>): LocalNames {
  const names = new Map<string, Named[]>();
  for (const node of nodes) {
    if (node.name === undefined) continue;
    const same = names.get(node.name);
    if (same === undefined) names.set(node.name, [node]);
    else same.push(node);
  }
  return names;
}

function* namedIn(recipe: Recipe): Generator<Named> {
  for (const item of recipe.items) {
    switch (item.$type) {
      case 'PartBlock':
        for (const line of item.items) if (line.$type === 'Zone') yield line;
        break;
      case 'Stack':
        yield* layersIn(item.layers);
        break;
      case 'Process':
        yield* portsIn(item.steps);
        break;
      case 'Let':
      case 'Load':
      case 'Size':
        yield item;
    }
  }
}

function* layersIn(lines: readonly StackLine[]): Generator<Named> {
  for (const line of lines) {
    if (isLayer(line)) yield line;
    else if (line.$type === 'Repeat') yield* layersIn(line.layers);
  }
}

function* portsIn(lines: readonly ProcessLine[]): Generator<Named> {
  for (const line of lines) {
    if (line.$type === 'Port') yield line;
    else if (line.$type === 'Step') yield* portsIn(line.steps);
  }
}
