import { type Text, text } from '../../figure/figure.ts';
import { after, type Matrix, moved, scaled, turned } from '../../outline/transform.ts';
import { type DrawingProblem, type DrawnCurve, nothingDrawn, type ReadDrawing } from '../drawn.ts';
import { joined } from '../join.ts';
import { limits } from '../limits.ts';
import { type Budget, LineBuilder } from '../line-builder.ts';
import {
  type Block,
  type DxfContent,
  type Entity,
  groupOf,
  type LayerState,
  numberIn,
  readContent,
  textOf,
} from './content.ts';
import { drawEntity } from './entities.ts';
import { unitOfDxf } from './units.ts';

interface Where {
  readonly matrix: Matrix;
  /** of the insertion, which entities on layer 0 of a block take over */
  readonly layer?: string;
  readonly blocks: readonly Block[];
  /** inserted on a frozen layer */
  readonly hidden?: boolean;
}

/** A binary DXF file says itself what it is. */
export const isBinaryDxf = (source: string): boolean => source.startsWith('AutoCAD Binary DXF');

/** The curves of a DXF file, metres: ASCII files from R12 on. */
export function readDxf(source: string): ReadDrawing {
  if (isBinaryDxf(source))
    return nothingDrawn({ kind: 'refused', message: text('this is a binary DXF file; save it as ASCII DXF') });
  const content = readContent(source.replace(/^\uFEFF/, ''));
  const refused = content.problems.find((p) => p.kind === 'refused');
  if (refused !== undefined) return nothingDrawn(refused);
  if (content.entities.length === 0)
    return nothingDrawn(...content.problems, {
      kind: 'refused',
      message: text('the file holds no entities of a DXF drawing'),
    });
  return new DxfReader(content).read();
}

class DxfReader {
  private readonly curves: DrawnCurve[] = [];
  private readonly layers = new Set<string>();
  private readonly problems: DrawingProblem[];
  private readonly budget: Budget = { vertices: limits.vertices };
  private expanded = 0;
  private readonly content: DxfContent;
  /** by name in capitals: capitals do not count */
  private readonly states: ReadonlyMap<string, LayerState>;

  constructor(content: DxfContent) {
    this.content = content;
    this.states = new Map([...content.layers].map(([name, state]) => [name.toUpperCase(), state]));
    this.problems = [...content.problems];
  }

  read(): ReadDrawing {
    const unit = unitOfDxf(this.content.header);
    this.all(this.content.entities, { matrix: scaled(unit.metres), blocks: [] });
    if (this.budget.vertices <= 0)
      this.tell({
        kind: 'broken',
        message: text('the drawing has more than {most} straights and arcs', { most: limits.vertices }),
      });
    const { curves, over } = joined(this.curves);
    const layers = [...new Set([...this.content.layers.keys(), ...this.layers])].filter((name) =>
      this.layers.has(name),
    );
    return { curves, layers, unit, joinedOver: over, problems: this.problems };
  }

  private all(entities: readonly Entity[], where: Where): void {
    for (const entity of entities) {
      if (this.budget.vertices <= 0 || this.expanded > limits.dxfExpanded) return;
      this.draw(entity, where);
    }
  }

  private draw(entity: Entity, where: Where): undefined {
    const draws = drawEntity[entity.type];
    if (draws === undefined && entity.type !== 'INSERT') return undefined;
    if (where.blocks.length > 0 && ++this.expanded > limits.dxfExpanded)
      return this.tell({
        kind: 'broken',
        message: text('blocks make more than {most} entities', { most: limits.dxfExpanded }),
        at: { line: entity.line },
      });
    // Paper space holds the frame of the sheet, no part; 60 is an entity that is not shown.
    if (numberIn(entity, 67) === 1 || numberIn(entity, 60) === 1) return undefined;
    const facing = facingOf(entity);
    if (facing === undefined)
      return this.tell({
        kind: 'left out',
        message: text('{entity} does not lie in the plane of the drawing and is left out', { entity: entity.type }),
        at: { line: entity.line },
      });
    const own = textOf(entity, 8) || '0';
    const layer = own === '0' ? (where.layer ?? own) : own;
    const matrix = facing === 1 ? where.matrix : after(where.matrix, scaled(-1, 1));
    if (draws === undefined) return this.insert(entity, { ...where, matrix, layer });
    const into = new LineBuilder(matrix, this.budget);
    const told = draws(entity, into);
    const lines = into.lines();
    if (!told || into.strange)
      return this.tell({
        kind: 'broken',
        message: told
          ? text('a place in the drawing is no number, or further away than {most} m; the curve is left out', {
              most: limits.furthest,
            })
          : unread(entity),
        at: { line: entity.line },
      });
    // A line that the limit cut off is no curve of the drawing; the limit is told once.
    if (into.full) return undefined;
    if (lines.length > 0) this.layers.add(layer);
    const isHidden = where.hidden === true || this.states.get(layer.toUpperCase())?.hidden === true;
    const hidden = isHidden ? ({ hidden: true } as const) : {};
    const id = textOf(entity, 5);
    for (const { line, closed } of lines) {
      const names = [layer, ...where.blocks.map((b) => b.name)];
      this.curves.push({
        layer,
        groups: names,
        ...(id === '' ? {} : { id }),
        line,
        closed,
        ...hidden,
        at: { line: entity.line },
      });
    }
    return undefined;
  }

  private insert(entity: Entity, where: Where): undefined {
    const name = textOf(entity, 2);
    const block = this.content.blocks.get(name.toUpperCase());
    const at = { line: entity.line };
    if (block === undefined)
      return this.tell({
        kind: 'broken',
        message: text('the block {name} is inserted, but not there', { name: name.slice(0, 60) }),
        at,
      });
    if (where.blocks.includes(block))
      return this.tell({
        kind: 'broken',
        message: text('the block {name} is inserted into itself', { name: name.slice(0, 60) }),
        at,
      });
    if (where.blocks.length >= limits.blockDepth)
      return this.tell({
        kind: 'broken',
        message: text('blocks lie more than {most} deep in each other', { most: limits.blockDepth }),
        at,
      });
    const hidden = where.hidden === true || this.states.get((where.layer ?? '0').toUpperCase())?.frozen === true;
    const turn = turned((numberIn(entity, 50) * Math.PI) / 180);
    const size = scaled(numberIn(entity, 41, 1), numberIn(entity, 42, 1));
    const [columns, rows] = [copies(numberIn(entity, 70, 1)), copies(numberIn(entity, 71, 1))];
    for (let i = 0; i < columns * rows && this.expanded <= limits.dxfExpanded; i++) {
      // An empty block has no entities to count.
      this.expanded++;
      const [column, row] = [i % columns, Math.floor(i / columns)];
      const shift = moved(column * numberIn(entity, 44), row * numberIn(entity, 45));
      const place = after(moved(numberIn(entity, 10), numberIn(entity, 20)), after(turn, after(shift, size)));
      const matrix = after(where.matrix, after(place, moved(-block.base.x, -block.base.y)));
      this.all(block.entities, { ...where, matrix, blocks: [...where.blocks, block], hidden });
    }
    return undefined;
  }

  private tell(problem: DrawingProblem): undefined {
    if (this.problems.length < limits.problems) this.problems.push(problem);
  }
}

/** Why an entity is left out. Points that a spline is fitted through (group 11) tell no curve: programs run it differently. */
const unread = (entity: Entity): Text =>
  entity.type === 'SPLINE' && groupOf(entity.groups, 10) === undefined && groupOf(entity.groups, 11) !== undefined
    ? text(
        'a spline has fit points only and is left out, because programs lead it through them differently: save it with control points or as a polyline',
      )
    : text('{entity} cannot be read and is left out', { entity: entity.type });

/** Rows and columns of an insertion; what is no such number is one. */
const copies = (typed: number): number =>
  Number.isSafeInteger(typed) && typed >= 1 ? Math.min(typed, limits.dxfExpanded) : 1;

/** Whether an entity is seen from above (1) or from below (-1); undefined where it stands aslant (group 210 to 230). */
function facingOf(entity: Entity): 1 | -1 | undefined {
  const [x, y, z] = [numberIn(entity, 210), numberIn(entity, 220), numberIn(entity, 230, 1)];
  if (Math.abs(x) + Math.abs(y) > 1e-6 * Math.abs(z)) return undefined;
  // Lines and splines are told in the coordinates of the world, whatever they face.
  return z < 0 && !worldly.has(entity.type) ? -1 : 1;
}

const worldly = new Set(['LINE', 'ELLIPSE', 'SPLINE']);
