import { text } from '../../figure/figure.ts';
import { after, identity, type Matrix, moved, scaled } from '../../outline/transform.ts';
import { type DrawingProblem, type DrawnCurve, nothingDrawn, type ReadDrawing } from '../drawn.ts';
import { joined } from '../join.ts';
import { limits } from '../limits.ts';
import { type Budget, LineBuilder } from '../line-builder.ts';
import { type Element, type Elements, readElements } from './elements.ts';
import { inUserUnits, readViewBox, unitOfDrawing } from './lengths.ts';
import { shapes } from './shapes.ts';
import { type ClassRules, classRules, isHidden } from './styles.ts';
import { readTransforms } from './transform-list.ts';

/** Elements that hold others which are drawn where they stand; what they are not drawn by is passed by with all in it. */
const drawnThrough = new Set(['svg', 'g', 'a', 'switch']);

interface Where {
  readonly matrix: Matrix;
  readonly groups: readonly string[];
  readonly layer?: string;
  /** not shown: kept only where a layer is round it by whose name it can be asked for */
  readonly hidden?: boolean;
  /** `use` elements on the way here */
  readonly uses: readonly Element[];
  readonly depth: number;
}

/** The curves of an SVG file: metres, y upwards. Of unit and scale it is what the file says, or millimetres. */
export function readSvg(source: string): ReadDrawing {
  const elements = readElements(source.replace(/^\uFEFF/, ''));
  const { root } = elements;
  if (elements.problems.length > 0) return nothingDrawn(...elements.problems);
  if (root === undefined || root.name !== 'svg')
    return nothingDrawn({
      kind: 'refused',
      message: text('the file holds no SVG drawing'),
      at: root?.at ?? { line: 1 },
    });
  return new SvgReader(elements, root).read();
}

class SvgReader {
  private readonly curves: DrawnCurve[] = [];
  private readonly layers = new Set<string>();
  private readonly problems: DrawingProblem[] = [];
  private readonly budget: Budget = { vertices: limits.vertices };
  private expanded = 0;
  private readonly elements: Elements;
  private readonly root: Element;
  private readonly rules: ClassRules;

  constructor(elements: Elements, root: Element) {
    this.elements = elements;
    this.root = root;
    this.rules = classRules(elements.styles);
  }

  read(): ReadDrawing {
    const { tall, ...unit } = unitOfDrawing(this.root.attributes);
    const box = readViewBox(this.root.attributes.viewBox);
    const matrix = after(scaled(unit.metres, -tall), moved(-(box?.x ?? 0), -(box?.y ?? 0)));
    this.children(this.root, { matrix, groups: [], uses: [], depth: 0 });
    if (this.budget.vertices <= 0)
      this.tell({
        kind: 'broken',
        message: text('the drawing has more than {most} straights and arcs', { most: limits.vertices }),
      });
    const { curves, over } = joined(this.curves);
    return { curves, layers: [...this.layers], down: true, unit, joinedOver: over, problems: this.problems };
  }

  private children(element: Element, where: Where): undefined {
    for (const child of element.children) {
      if (this.budget.vertices <= 0) return undefined;
      this.draw(child, { ...where, depth: where.depth + 1 });
    }
  }

  private draw(element: Element, where: Where): undefined {
    const { name, attributes } = element;
    const draws = shapes[name];
    if (draws === undefined && !drawnThrough.has(name) && name !== 'use') return undefined;
    const hidden = where.hidden === true || isHidden(element, this.rules);
    if (hidden && draws !== undefined && where.layer === undefined) return undefined;
    if (where.uses.length > 0 && ++this.expanded > limits.svgExpanded) {
      if (this.expanded === limits.svgExpanded + 1)
        this.tell({
          kind: 'broken',
          message: text('copies by `use` make more than {most} elements', { most: limits.svgExpanded }),
          at: element.at,
        });
      return undefined;
    }
    const own = attributes.transform === undefined ? identity : readTransforms(attributes.transform);
    if (own === undefined)
      return this.tell({
        kind: 'broken',
        message: text('the transformation cannot be read; the element is left out'),
        at: element.at,
      });
    const matrix = after(where.matrix, own);
    if (draws !== undefined) return this.shape(element, { ...where, matrix, hidden });
    if (name === 'use') return this.use(element, { ...where, matrix, hidden });
    const inner = this.named(element, {
      ...where,
      hidden,
      matrix: name === 'svg' ? after(matrix, window(element, attributes)) : matrix,
    });
    this.children(element, inner);
  }

  /** A layer is a group that drawing programs call one, or one with a name. */
  private named({ name, attributes }: Element, where: Where): Where {
    if (name !== 'g') return where;
    const names = [attributes.label, attributes.id].filter((n): n is string => n !== undefined && n !== '');
    const layer = names[0];
    if (layer === undefined) return where;
    this.layers.add(layer);
    const isLayer = attributes.groupmode === 'layer' || where.layer === undefined;
    return { ...where, groups: [...names, ...where.groups], ...(isLayer ? { layer } : {}) };
  }

  private shape(element: Element, where: Where): undefined {
    const into = new LineBuilder(where.matrix, this.budget);
    const wrong = shapes[element.name]?.(element, into);
    const lines = into.lines();
    if (wrong !== undefined) return this.tell({ kind: 'broken', message: wrong, at: element.at });
    if (into.strange) {
      const share = shareIn(element.attributes);
      const message =
        share === undefined
          ? text('a place in the drawing is no number, or further away than {most} m; the curve is left out', {
              most: limits.furthest,
            })
          : text('{share} is a share of a page, which has no size at the bench: give it in mm; the curve is left out', {
              share,
            });
      return this.tell({ kind: 'broken', message, at: element.at });
    }
    // A line that the limit cut off is no curve of the drawing; the limit is told once.
    if (into.full) return undefined;
    const id = where.uses[0]?.attributes.id ?? element.attributes.id;
    for (const { line, closed } of lines) {
      this.curves.push({
        ...(where.layer === undefined ? {} : { layer: where.layer }),
        groups: where.groups,
        ...(id === undefined ? {} : { id }),
        line,
        closed,
        ...(where.hidden === true ? { hidden: true } : {}),
        at: element.at,
      });
    }
  }

  private use(element: Element, where: Where): undefined {
    const { href, x, y } = element.attributes;
    if (href === undefined || !href.startsWith('#'))
      return this.tell({ kind: 'left out', message: text('`use` of another file is not followed'), at: element.at });
    const target = this.elements.byId.get(href.slice(1));
    if (target === undefined)
      return this.tell({
        kind: 'broken',
        message: text('`use` names an element that is not there: {name}', { name: href.slice(0, 60) }),
        at: element.at,
      });
    if (where.uses.includes(element) || where.uses.length >= limits.useDepth || where.depth > 2 * limits.depth)
      return this.tell({ kind: 'broken', message: text('`use` leads back to itself, or too deep'), at: element.at });
    const matrix = after(where.matrix, moved(inUserUnits(x), inUserUnits(y)));
    const inner: Where = { ...where, matrix, uses: [...where.uses, element] };
    if (target.name !== 'symbol') return this.draw(target, inner);
    const sized = {
      ...target.attributes,
      ...(element.attributes.width === undefined ? {} : { width: element.attributes.width }),
      ...(element.attributes.height === undefined ? {} : { height: element.attributes.height }),
    };
    this.children(target, { ...inner, matrix: after(matrix, window(target, { ...sized, x: '0', y: '0' })) });
  }

  private tell(problem: DrawingProblem): undefined {
    if (this.problems.length < limits.problems) this.problems.push(problem);
  }
}

/** The first length of a shape that is a share of the page, as it is typed: `width="50%"`. */
function shareIn(attributes: Element['attributes']): string | undefined {
  const name = lengthNames.find((each) => /^\s*[+-]?[\d.]+\s*%\s*$/.test((attributes[each] ?? '').slice(0, 60)));
  return name === undefined ? undefined : `${name}="${attributes[name]?.trim()}"`;
}

/** Attributes that are lengths. Source: SVG 1.1, chapter 9. */
const lengthNames = ['width', 'height', 'x', 'y', 'rx', 'ry', 'cx', 'cy', 'r', 'x1', 'y1', 'x2', 'y2'] as const;

/** The place and scale of a drawing or symbol within another (SVG 1.1, section 7.9; no slicing). */
function window({ attributes }: Element, { x, y, width, height }: Element['attributes']): Matrix {
  const box = readViewBox(attributes.viewBox);
  const at = moved(inUserUnits(x), inUserUnits(y));
  if (box === undefined || width === undefined || height === undefined)
    return box === undefined ? at : after(at, moved(-box.x, -box.y));
  const [wide, tall] = [inUserUnits(width) / box.width, inUserUnits(height) / box.height];
  if (!(wide > 0 && tall > 0)) return after(at, moved(-box.x, -box.y));
  if (/^\s*none\b/.test(attributes.preserveAspectRatio ?? ''))
    return after(after(at, scaled(wide, tall)), moved(-box.x, -box.y));
  const scale = Math.min(wide, tall);
  const slack = { x: (inUserUnits(width) - scale * box.width) / 2, y: (inUserUnits(height) - scale * box.height) / 2 };
  return after(after(after(at, moved(slack.x, slack.y)), scaled(scale)), moved(-box.x, -box.y));
}
