import { arrowStrokes } from '../../../calc/drawing/arrow.ts';
import type { DrawnCircle, DrawnItem } from '../../../calc/drawing/drawing.ts';
import { capitalHeight } from '../../export/letters.ts';
import { type Frame, onPaper, pathData } from '../../export/svg-path.ts';
import type { PictureShape } from '../../protocol/drawing.ts';

/** Millimetres from the drawing's own origin: what one line changes moves nothing else. */
const frame: Frame = { corner: { x: 0, y: 0 }, scale: 1000 };

/** of a millimetre: finer than any screen */
const decimals = 3;

const degrees = (angle: number): number => Math.round((angle * 180 * 10) / Math.PI) / 10;
const hundredths = (value: number): number => Math.round(value * 100) / 100 + 0;

/** Degrees of fibres, which run both ways: from 0 to less than 180. */
export const hatchDegrees = (angle: number): number => ((degrees(angle) % 180) + 180) % 180;

/** Fewer circles than this are told one by one. */
const fewCircles = 8;

/** Items of a drawing for a screen; many circles as one path, which a page draws far faster. */
export function shapesOf(items: readonly DrawnItem[]): readonly PictureShape[] {
  const circles = items.filter((item) => item.kind === 'circle');
  if (circles.length < fewCircles) return items.map(shapeOf);
  const others = items.filter((item) => item.kind !== 'circle').map(shapeOf);
  return [...others, { kind: 'path', d: circles.map(circleData).join(''), closed: true }];
}

function circleData({ centre, radius }: DrawnCircle): string {
  const { x, y } = onPaper(frame, centre);
  const r = hundredths(radius * frame.scale);
  return `M${hundredths(x - r)} ${hundredths(y)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;
}

/** An item of a drawing for a screen. */
function shapeOf(item: DrawnItem): PictureShape {
  switch (item.kind) {
    case 'line':
      return {
        kind: 'path',
        d: pathData(item.points, item.closed, frame, decimals),
        ...(item.closed ? { closed: true } : {}),
        ...(item.dashed ? { dashed: true } : {}),
        ...(item.hatch === undefined ? {} : { hatch: hatchDegrees(item.hatch) }),
      };
    case 'arrow':
      return {
        kind: 'path',
        d: arrowStrokes(item)
          .map((stroke) => pathData(stroke, false, frame, decimals))
          .join(''),
      };
    case 'circle': {
      const { x, y } = onPaper(frame, item.centre);
      return { kind: 'circle', x: hundredths(x), y: hundredths(y), r: hundredths(item.radius * frame.scale) };
    }
    case 'text': {
      const { x, y } = onPaper(frame, item.at);
      return {
        kind: 'text',
        x: hundredths(x),
        y: hundredths(y),
        size: hundredths((item.height / capitalHeight) * frame.scale),
        text: item.text,
        ...(item.angle === undefined || item.angle === 0 ? {} : { turn: -degrees(item.angle) }),
        ...(item.anchor === undefined || item.anchor === 'start' ? {} : { anchor: item.anchor }),
      };
    }
  }
}
