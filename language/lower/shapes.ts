import { AstUtils } from 'langium';
import { text } from '../../calc/figure/figure.ts';
import { type Amount, type Coordinate, type Outline, type PlacePoint, UNKNOWN } from '../../calc/model/index.ts';
import { namedDimension, siQuantity } from '../../calc/quantity/index.ts';
import { drawingFile, isDrawingPath } from '../book/drawing-files.ts';
import type { Coordinate as CoordinateNode, Expression, Point, Shape } from '../grammar/generated/ast.ts';
import { checked } from './amounts.ts';
import { evaluate } from './lets.ts';
import type { Lowering } from './lowering.ts';
import { nodeSpan, propertySpan } from './places.ts';

export function lowerPoint(low: Lowering, point: Point | undefined): PlacePoint {
  return { x: lowerCoordinate(low, point?.x), y: lowerCoordinate(low, point?.y) };
}

const origin: Amount = siQuantity(0, namedDimension('length'));

function lowerCoordinate(low: Lowering, node: CoordinateNode | undefined): Coordinate {
  const offset = lengthOf(low, node?.value) ?? origin;
  if (node?.end === undefined) return { offset };
  low.endUsed(node.end, propertySpan(node, 'end'));
  return { offset, from: node.end };
}

/** A length of a shape, metres; a coordinate may be below zero. */
export function lengthOf(low: Lowering, expression: Expression | undefined): Amount | undefined {
  const value = evaluate(low, expression);
  if (value === undefined || value === UNKNOWN) return undefined;
  return checked(low, value, 'length', nodeSpan(expression));
}

/** A shape as typed. Half-typed or senseless sizes give `undefined` and a problem that says what a size must be. */
export function lowerShape(low: Lowering, shape: Shape | undefined): Outline | undefined {
  if (shape === undefined) return undefined;
  switch (shape.$type) {
    case 'Box': {
      const length = size(low, shape.length);
      const width = size(low, shape.width);
      if (shape.width === undefined || shape.length === undefined) {
        low.problem(
          'line/not-understood',
          shape,
          text('`{kind}` needs two lengths: {kind} 800 mm by 400 mm', { kind: shape.kind }),
        );
      }
      if (length === undefined || width === undefined) return undefined;
      if (shape.kind === 'rounded') return rounded(low, shape.corner, length, width, shape);
      return { kind: shape.kind, length, width };
    }
    case 'Circle': {
      const diameter = size(low, shape.diameter);
      if (shape.diameter === undefined)
        low.problem('line/not-understood', shape, 'a circle needs its diameter: circle 200 mm');
      return diameter === undefined ? undefined : { kind: 'circle', diameter };
    }
    case 'Polygon': {
      const points = shape.points
        .map((point) => lowerPoint(low, point))
        .map(({ x, y }) => ({ x: x.offset.si, y: y.offset.si }));
      if (points.length >= 3) return { kind: 'polygon', points };
      low.problem(
        'outline/degenerate',
        shape,
        'a polygon needs three points or more: polygon (0 mm, 0 mm), (400 mm, 0 mm), (0 mm, 300 mm)',
      );
      return undefined;
    }
    case 'SvgPath':
      return { kind: 'path', data: shape.data };
    case 'FileShape':
      return lowerFile(low, shape);
    default:
      return undefined;
  }
}

function rounded(
  low: Lowering,
  corner: Expression | undefined,
  length: number,
  width: number,
  shape: Shape,
): Outline | undefined {
  const radius = corner === undefined ? undefined : size(low, corner);
  if (corner === undefined) {
    low.problem(
      'line/not-understood',
      shape,
      'a rounded outline needs its corner radius: rounded 800 mm by 400 mm corner 60 mm',
    );
    return undefined;
  }
  if (radius === undefined) return undefined;
  if (radius > Math.min(length, width) / 2 + 1e-12) {
    low.problem(
      'outline/degenerate',
      corner,
      text('the corner radius {radius} is more than half the shorter side, {half}', {
        radius: siQuantity(radius, namedDimension('length')),
        half: siQuantity(Math.min(length, width) / 2, namedDimension('length')),
      }),
    );
    return undefined;
  }
  return { kind: 'rounded', length, width, corner: radius };
}

/** Larger than any part of a small workshop; beyond it a unit has slipped. */
const longestPart = 100;

function size(low: Lowering, expression: Expression | undefined): number | undefined {
  const amount = lengthOf(low, expression);
  if (amount === undefined) return undefined;
  if (amount.si <= 0) {
    low.problem('outline/degenerate', expression, text('a size must be above zero, {size} is not', { size: amount }));
    return undefined;
  }
  if (amount.si > longestPart) {
    low.problem(
      'unit/suspicious',
      expression,
      text('{size} is longer than any part of a workshop ({most}): is the unit right?', {
        size: amount,
        most: siQuantity(longestPart, namedDimension('length')),
      }),
    );
    return undefined;
  }
  return amount.si;
}

/** A file outline: an .svg or .dxf by a path relative to the recipe. Whether it is there, the rules say. */
function lowerFile(low: Lowering, shape: Extract<Shape, { $type: 'FileShape' }>): Outline | undefined {
  const file = shape.file;
  if (!/\.(svg|dxf)$/i.test(file)) {
    low.problem('outline/file-missing', shape, 'an outline file ends in .svg or .dxf');
    return undefined;
  }
  if (!isDrawingPath(file)) {
    low.problem(
      'outline/file-missing',
      shape,
      'an outline file is named from where the recipe lies, and never outside the workspace folder',
    );
    return undefined;
  }
  const what = shape.what?.replace(/^"|"$/g, '');
  const address = drawingFile(AstUtils.getDocument(shape).uri, file)?.toString();
  const found = address === undefined ? {} : { address };
  return {
    kind: 'file',
    file,
    ...found,
    ...(shape.pick === undefined || what === undefined ? {} : { [shape.pick]: what }),
  };
}
