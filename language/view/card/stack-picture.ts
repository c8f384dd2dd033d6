import { isKnown } from '../../../calc/figure/figure.ts';
import { type Book, UNKNOWN } from '../../../calc/model/index.ts';
import { LENGTH } from '../../../calc/quantity/index.ts';
import type { LayerRow } from '../../../calc/report.ts';
import { laidDirections } from '../../../calc/stack/directions.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { coreOf, grooveOf, isCloth } from '../../../calc/stack/order.ts';
import type { StackBand, StackPicture } from '../../protocol/layer-card.ts';
import { figureOf, showFigure, showNumber } from '../figures.ts';
import { type Style, say } from '../text.ts';

/** More bands than anybody tells apart: the others are counted. */
const MOST_BANDS = 60;

/** The stack from the tool face to the bag face; of a very high one the layers round the one that is shown. */
export function stackPicture(rows: readonly LayerRow[], shown: LayerRow, book: Book, style: Style): StackPicture {
  const at = rows.indexOf(shown);
  const first = Math.max(0, Math.min(at - MOST_BANDS / 2, rows.length - MOST_BANDS));
  const inside = rows.slice(first, first + MOST_BANDS);
  const total = totalOf(rows, style);
  return {
    layers: inside.map((row) => ({ ...band(row, row === shown, book, style), ...hostOf(rows, row) })),
    ...(total === undefined ? {} : { total }),
    below: first,
    above: rows.length - first - inside.length,
  };
}

const thicknessOf = (row: LayerRow): number | undefined => {
  const figure = figureOf(row.figures, 'layer_thickness')?.figure;
  return figure !== undefined && isKnown(figure) ? figure.value : undefined;
};

/** The core that a layer lies in. */
function hostOf(rows: readonly LayerRow[], { laid }: LayerRow): { readonly inside?: string } {
  const layers = rows.map((row) => row.laid);
  const core = coreOf(layers, laid) ?? grooveOf(layers, laid);
  return core === undefined ? {} : { inside: core.key };
}

/** All layers on one another, as drawn: patches and strips too, though they do not lie everywhere; what lies in a core adds nothing. */
function totalOf(rows: readonly LayerRow[], style: Style): string | undefined {
  let sum = 0;
  for (const row of rows) {
    if (hostOf(rows, row).inside !== undefined) continue;
    const thickness = thicknessOf(row);
    if (thickness === undefined) return undefined;
    sum += thickness;
  }
  return showNumber(sum, LENGTH, style);
}

function band(row: LayerRow, shown: boolean, book: Book, style: Style): StackBand {
  const { laid } = row;
  const thickness = thicknessOf(row);
  const high = showFigure(figureOf(row.figures, 'layer_thickness'), style);
  const { kind } = laid.layer.extent;
  return {
    key: laid.key,
    name: laid.name,
    kind: laid.layer.kind,
    words:
      high === undefined
        ? layerWords(laid, style)
        : say('{layer}, {high} thick', { layer: layerWords(laid, style), high }),
    ...(thickness === undefined ? {} : { thickness }),
    directions: directionsOf(laid, book),
    whole: kind === 'net' || kind === 'to trim' || kind === 'wrap',
    shown,
  };
}

/** `ply of triax_680 at 0 deg` */
export function layerWords({ layer, angle, turnedOver }: LaidLayer, style: Style): string {
  const { kind, material } = layer;
  const of = material === undefined ? kind : say('{kind} of {material}', { kind, material });
  const lies = angle === undefined ? of : say('{layer} at {angle}', { layer: of, angle: showDegrees(angle, style) });
  return turnedOver ? say('{layer}, turned over', { layer: lies }) : lies;
}

const showDegrees = (angle: number, style: Style): string => {
  const degrees = Math.round((angle * 180 * 10) / Math.PI) / 10;
  return `${new Intl.NumberFormat(style.locale ?? 'en').format(degrees)} deg`;
};

/** Degrees of the fibres from x, each once. */
export function directionsOf(laid: LaidLayer, book: Book): number[] {
  if (!isCloth(laid) || laid.layer.material === undefined) return [];
  const cloth = book.material(laid.layer.material)?.cloth?.value;
  if (cloth === undefined || cloth === UNKNOWN) return [];
  const angles = laidDirections(cloth, laid.angle ?? 0, laid.turnedOver).flatMap(({ angle }) =>
    angle === undefined ? [] : [Math.round((angle * 180) / Math.PI) % 180],
  );
  return [...new Set(angles)].sort((a, b) => a - b);
}
