import type { Shown, Text } from '../../figure/figure.ts';
import type { Contour } from '../../outline/contour.ts';
import type { Point } from '../../outline/shape.ts';
import type {
  Drawing,
  DrawingLayer,
  DrawnArrow,
  DrawnCircle,
  DrawnItem,
  DrawnLine,
  DrawnText,
  Source,
} from '../drawing.ts';

/** One thing of a drawing: all that is drawn of it, and what is said of it to who reads instead of looking. */
export interface Thing {
  readonly layer: DrawingLayer;
  /** the line of the recipe behind it, and the name of the thing */
  readonly source: Source;
  /** `ply of triax_680 at 0 deg` */
  readonly what: Text;
  readonly where: Text;
  readonly size: Text;
  /** angle of the fibres, rad; for who shows it otherwise than by a hatch in a shape */
  readonly hatch?: number;
  /** its name, where it has to be led to its line */
  readonly tag?: Text;
  readonly items: readonly DrawnItem[];
}

/** A drawing with its things, in the order in which they are spoken of. */
export interface DrawnThings extends Drawing {
  readonly things: readonly Thing[];
}

/** Puts words into the language and the units of the reader. */
export type Say = (words: Shown) => string;

export interface Writing {
  readonly say: Say;
  /** of capitals, m */
  readonly height: number;
}

type Given<T extends DrawnItem, K extends keyof T> = Omit<T, 'kind' | 'layer' | 'source' | K>;

/** Draws on one layer for one line of the recipe. */
export interface Pen {
  line(points: Contour, more?: Partial<Given<DrawnLine, 'points'>>): DrawnLine;
  circle(centre: Point, radius: number): DrawnCircle;
  text(at: Point, height: number, words: string, more?: Partial<Given<DrawnText, 'at' | 'height' | 'text'>>): DrawnText;
  arrow(from: Point, to: Point, heads?: DrawnArrow['heads']): DrawnArrow;
}

export function penOf(layer: DrawingLayer, source: Source): Pen {
  return {
    line: (points, more = {}) => ({ kind: 'line', layer, source, points, closed: true, ...more }),
    circle: (centre, radius) => ({ kind: 'circle', layer, source, centre, radius }),
    text: (at, height, words, more = {}) => ({ kind: 'text', layer, source, at, height, text: words, ...more }),
    arrow: (from, to, heads = 'end') => ({ kind: 'arrow', layer, source, from, to, heads }),
  };
}
