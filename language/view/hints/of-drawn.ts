import { type Figure, isKnown, quantity } from '../../../calc/figure/figure.ts';
import type { Bench } from '../../../calc/figure/index.ts';
import type { Outline, Recipe } from '../../../calc/model/index.ts';
import { isImpossible } from '../../../calc/outcome.ts';
import { type Bounds, shapeBounds } from '../../../calc/outline/measure.ts';
import { partFrame, shapeOnPart } from '../../../calc/outline/part.figure.ts';
import type { Placed } from '../../../calc/outline/shape.ts';
import { LENGTH } from '../../../calc/quantity/index.ts';
import { type Style, say } from '../text.ts';
import { type HintPart, partOf, valuesOf } from './part.ts';

/** A shape of the part that is drawn: the path of its line, the word that it begins with, and what it is. */
interface DrawnLine {
  readonly path: string;
  readonly head: string;
  readonly parts: (style: Style) => HintPart[];
}

const isDrawn = (shape: Outline | undefined): boolean => shape?.kind === 'file' || shape?.kind === 'path';

/** Lines of the part whose size is not typed but found in a drawing: it is always shown, since a wrong unit is the commonest slip. */
export function drawnLines(bench: Bench, recipe: Recipe): readonly DrawnLine[] {
  const { part } = recipe;
  if (part === undefined) return [];
  const lines: DrawnLine[] = [];
  if (isDrawn(part.outline)) {
    const path = `${part.path}.outline`;
    lines.push({
      path,
      head: 'outline',
      parts: (style) => sizeOf('outline', bench.ask(partFrame), ({ bounds }) => bounds, style),
    });
  }
  for (const [head, shapes] of [
    ['cutout', part.cutouts],
    ['zone', part.zones],
  ] as const) {
    for (const given of shapes.filter(({ shape }) => isDrawn(shape))) {
      const { path } = given;
      const placed = () => shapeOnPart(bench, head, given, { entry: recipe.entry, path });
      lines.push({ path, head, parts: (style) => sizeOf(head, placed(), boundsOf, style) });
    }
  }
  return lines;
}

function boundsOf({ shape }: Placed): Bounds | undefined {
  const bounds = shapeBounds(shape);
  return isImpossible(bounds) ? undefined : bounds;
}

function sizeOf<T>(of: string, figure: Figure<T>, bounds: (value: T) => Bounds | undefined, style: Style): HintPart[] {
  const part = partOf({ kind: 'size', what: 'size', figures: [{ of, figure }] }, () => {
    const [value] = valuesOf([{ figure }]);
    const found = value === undefined ? undefined : bounds(value);
    return found === undefined ? '' : sizeWords(found, style);
  });
  return part === undefined || !isKnown(figure) ? [] : [part];
}

/** `1180 mm by 420 mm` */
export const sizeWords = ({ length, width }: Pick<Bounds, 'length' | 'width'>, style: Style): string =>
  say('{length} by {width}', { length: rounded(length), width: rounded(width) }, style);

/** To a hundredth of a millimetre: more is not drawn. */
const rounded = (si: number) => quantity(Math.round(si * 1e5) / 1e5, LENGTH);
