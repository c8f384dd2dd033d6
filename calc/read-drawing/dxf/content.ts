import { text } from '../../figure/figure.ts';
import type { DrawingProblem } from '../drawn.ts';
import { limits } from '../limits.ts';
import { type Group, GroupReader, nameOf, numberOf } from './groups.ts';

/** An entity with its pairs in order; the vertices of a POLYLINE hang below it. */
export interface Entity {
  readonly type: string;
  readonly groups: readonly Group[];
  readonly vertices?: readonly Entity[];
  readonly line: number;
}

export interface Block {
  readonly name: string;
  readonly base: { readonly x: number; readonly y: number };
  readonly entities: readonly Entity[];
}

export interface LayerState {
  readonly hidden: boolean;
  readonly frozen: boolean;
}

/** What a DXF file holds, before any of it is drawn. */
export interface DxfContent {
  /** header variables by name, `$INSUNITS`; their first number */
  readonly header: ReadonlyMap<string, number>;
  /** layers in the order of the table, and whether they are off or frozen: what is inserted on a frozen one is hidden whole */
  readonly layers: ReadonlyMap<string, LayerState>;
  readonly blocks: ReadonlyMap<string, Block>;
  readonly entities: readonly Entity[];
  readonly problems: readonly DrawingProblem[];
}

/** The first pair with a code. */
export const groupOf = (groups: readonly Group[], code: number): Group | undefined =>
  groups.find((g) => g.code === code);
export const textOf = (entity: Pick<Entity, 'groups'>, code: number): string =>
  nameOf(groupOf(entity.groups, code)?.value);

/** The number of the first pair with a code; `otherwise` where there is none. */
export function numberIn(entity: Pick<Entity, 'groups'>, code: number, otherwise = 0): number {
  const group = groupOf(entity.groups, code);
  return group === undefined ? otherwise : numberOf(group.value);
}

/** All pairs of a DXF file, sorted into its sections. Sections that hold no curves are passed by. */
export function readContent(source: string): DxfContent {
  const reader = new GroupReader(source);
  const header = new Map<string, number>();
  const layers = new Map<string, LayerState>();
  const blocks = new Map<string, Block>();
  const entities: Entity[] = [];
  const problems: DrawingProblem[] = [];
  let count = 0;
  let ended = false;
  let last = 1;

  const rest = (): Group[] => {
    const groups: Group[] = [];
    for (let g = reader.peek(); g !== undefined && g.code !== 0; g = reader.peek()) {
      groups.push(g);
      reader.next();
    }
    return groups;
  };
  const entity = (start: Group): Entity | undefined => {
    if (++count > limits.elements) return undefined;
    const type = start.value.trim();
    const groups = rest();
    if (type !== 'POLYLINE') return { type, groups, line: start.line };
    const vertices: Entity[] = [];
    for (let g = reader.peek(); g?.value.trim() === 'VERTEX' && ++count <= limits.elements; g = reader.peek()) {
      reader.next();
      vertices.push({ type: 'VERTEX', groups: rest(), line: g.line });
    }
    if (reader.peek()?.value.trim() === 'SEQEND') {
      reader.next();
      rest();
    }
    return { type, groups, vertices, line: start.line };
  };
  const entitiesUntil = (end: string): Entity[] => {
    const found: Entity[] = [];
    for (
      let g = reader.peek();
      g !== undefined && g.value.trim() !== end && g.value.trim() !== 'EOF';
      g = reader.peek()
    ) {
      reader.next();
      const read = entity(g);
      if (read === undefined) break;
      found.push(read);
    }
    return found;
  };
  const sections: Readonly<Record<string, () => void>> = {
    HEADER: () => {
      let name = '';
      for (const g of rest()) {
        if (g.code === 9) name = g.value.trim();
        else if (!header.has(name)) header.set(name, numberOf(g.value));
      }
    },
    TABLES: () => {
      for (const { type, ...table } of entitiesUntil('ENDSEC')) {
        if (type !== 'LAYER') continue;
        const frozen = (numberIn(table, 70) & 1) === 1;
        layers.set(textOf(table, 2), { hidden: frozen || numberIn(table, 62) < 0, frozen });
      }
    },
    BLOCKS: () => {
      for (let g = reader.peek(); g !== undefined && g.value.trim() !== 'ENDSEC'; g = reader.peek()) {
        reader.next();
        const groups = rest();
        if (g.value.trim() !== 'BLOCK') continue;
        const name = textOf({ groups }, 2);
        const inside = entitiesUntil('ENDBLK');
        blocks.set(name.toUpperCase(), {
          name,
          base: { x: numberIn({ groups }, 10), y: numberIn({ groups }, 20) },
          entities: inside,
        });
        if (count > limits.elements) return;
      }
    },
    ENTITIES: () => {
      for (const read of entitiesUntil('ENDSEC')) entities.push(read);
    },
  };

  for (let g = reader.next(); g !== undefined && count <= limits.elements; g = reader.next()) {
    last = g.line;
    const value = g.value.trim();
    if (g.code === 0 && value === 'EOF') {
      ended = true;
      break;
    }
    if (g.code !== 0 || value !== 'SECTION') continue;
    const name = reader.next()?.value.trim() ?? '';
    sections[name]?.();
  }
  if (count > limits.elements)
    problems.push({
      kind: 'refused',
      message: text('the drawing has more than {most} elements', { most: limits.elements }),
    });
  // what stands behind EOF is no part of the file
  else if (!ended && reader.broken !== undefined)
    problems.push({
      kind: 'broken',
      message: text('a DXF file is pairs of a number and a value; here the number is missing: {found}', {
        found: reader.broken.found,
      }),
      at: { line: reader.broken.line },
    });
  else if (!ended)
    problems.push({ kind: 'broken', message: text('the file ends in the middle: EOF is missing'), at: { line: last } });
  return { header, layers, blocks, entities, problems };
}
