import { type Text, text } from '../../figure/figure.ts';
import type { Point } from '../../outline/shape.ts';
import type { LineBuilder } from '../line-builder.ts';
import { drawPath } from '../path-data.ts';
import type { Element } from './elements.ts';
import { inUserUnits } from './lengths.ts';
import { numberList } from './number-list.ts';

/** Draws an element; says what cannot be read. */
type Draw = (element: Element, into: LineBuilder) => Text | undefined;

/** A round corner or a circle is four quarters, as SVG 1.1, chapter 9 draws them. */
function ellipse(centre: Point, rx: number, ry: number, into: LineBuilder): void {
  if (rx <= 0 || ry <= 0) return;
  into.move({ x: centre.x + rx, y: centre.y });
  into.ellipse(centre, { x: rx, y: 0 }, { x: 0, y: ry }, 0, 2 * Math.PI);
  into.close();
}

function rectangle({ attributes }: Element, into: LineBuilder): undefined {
  const [x, y] = [inUserUnits(attributes.x), inUserUnits(attributes.y)];
  const [width, height] = [inUserUnits(attributes.width), inUserUnits(attributes.height)];
  if (width <= 0 || height <= 0) return;
  const [typedX, typedY] = [inUserUnits(attributes.rx, -1), inUserUnits(attributes.ry, -1)];
  const rx = Math.min(typedX < 0 ? Math.max(0, typedY) : typedX, width / 2);
  const ry = Math.min(typedY < 0 ? Math.max(0, typedX) : typedY, height / 2);
  const [right, foot] = [x + width, y + height];
  const corner = (cx: number, cy: number, turn: number) => {
    if (rx > 0 && ry > 0)
      into.ellipse({ x: cx, y: cy }, { x: rx, y: 0 }, { x: 0, y: ry }, (turn * Math.PI) / 2, Math.PI / 2);
  };
  into.move({ x: x + rx, y });
  into.straight({ x: right - rx, y });
  corner(right - rx, y + ry, 3);
  into.straight({ x: right, y: foot - ry });
  corner(right - rx, foot - ry, 0);
  into.straight({ x: x + rx, y: foot });
  corner(x + rx, foot - ry, 1);
  into.straight({ x, y: y + ry });
  corner(x + rx, y + ry, 2);
  into.close();
}

function points({ attributes }: Element, into: LineBuilder, closed: boolean): Text | undefined {
  const numbers = numberList(attributes.points ?? '');
  if (numbers === undefined || numbers.length % 2 === 1) return text('the points of the line cannot be read');
  for (let i = 0; i < numbers.length; i += 2) {
    const at = { x: numbers[i] ?? 0, y: numbers[i + 1] ?? 0 };
    if (i === 0) into.move(at);
    else into.straight(at);
  }
  if (closed) into.close();
  return undefined;
}

/** The elements that are curves. */
export const shapes: Readonly<Record<string, Draw>> = {
  path: (element, into) => drawPath(element.attributes.d ?? '', into)?.message,
  rect: rectangle,
  circle: ({ attributes: { cx, cy, r } }, into) => {
    ellipse({ x: inUserUnits(cx), y: inUserUnits(cy) }, inUserUnits(r), inUserUnits(r), into);
    return undefined;
  },
  ellipse: ({ attributes: { cx, cy, rx, ry } }, into) => {
    const [wide, tall] = [inUserUnits(rx, -1), inUserUnits(ry, -1)];
    ellipse({ x: inUserUnits(cx), y: inUserUnits(cy) }, wide < 0 ? tall : wide, tall < 0 ? wide : tall, into);
    return undefined;
  },
  line: ({ attributes: { x1, y1, x2, y2 } }, into) => {
    into.move({ x: inUserUnits(x1), y: inUserUnits(y1) });
    into.straight({ x: inUserUnits(x2), y: inUserUnits(y2) });
    return undefined;
  },
  polyline: (element, into) => points(element, into, false),
  polygon: (element, into) => points(element, into, true),
};
