import { type Bench, defineFigure, type Figure, isKnown, known, quantity, text, worked } from '../figure/index.ts';
import { heightSoFar } from '../laminate/height.figure.ts';
import { layerThickness } from '../laminate/thickness.figure.ts';
import { UNKNOWN } from '../model/index.ts';
import { isImpossible } from '../outcome.ts';
import { LENGTH } from '../quantity/index.ts';
import { type Curvature, type Stretch, stretchAt } from './surface.ts';

type Said = NonNullable<ReturnType<Bench['toolCurve']>>;

/** The face that the stack is laid on; undefined where nothing says that it is curved. */
export interface ToolCurve {
  readonly curvature: Curvature;
  readonly at: Said['at'];
}

/** How the tool of the recipe is curved. */
export function toolCurve(bench: Bench): ToolCurve | undefined {
  const tool = bench.recipe.stack?.tool;
  const said = tool === undefined ? undefined : bench.toolCurve(tool);
  if (said === undefined || said.value === UNKNOWN) return undefined;
  const { crowned = [], ...radii } = said.value;
  const [along, across] = (['along', 'across'] as const).map((way) => {
    const radius = radii[way]?.si;
    return radius === undefined ? 0 : (crowned.includes(way) ? -1 : 1) / radius;
  });
  return along === 0 && across === 0
    ? undefined
    : { curvature: { along: along ?? 0, across: across ?? 0 }, at: said.at };
}

/**
 * How much longer than on the tool face the middle of a layer is; undefined on a flat tool, and as long as the height of the layer
 * cannot be told.
 */
export const layerStretch = defineFigure<Stretch | undefined>('layer_stretch', (bench, key) => {
  const curve = toolCurve(bench);
  if (curve === undefined) return known(undefined);
  const [top, own] = [bench.ask(heightSoFar, key), bench.ask(layerThickness, key)];
  if (!isKnown(top) || !isKnown(own)) return known(undefined);
  return stretchedAt(curve, Math.max(0, top.value - own.value / 2));
});

/** How much longer than on the tool face the sheets over the whole stack are; undefined on a flat tool. */
export function sheetStretch(bench: Bench, height: number): Figure<Stretch | undefined> {
  const curve = toolCurve(bench);
  return curve === undefined ? known(undefined) : stretchedAt(curve, height);
}

/** The same at a height (m) above the tool face. */
function stretchedAt({ curvature, at }: ToolCurve, height: number) {
  const stretch = stretchAt(curvature, height);
  const shown = {
    height: quantity(height, LENGTH),
    along: isImpossible(stretch) ? 1 : shownShare(stretch.along),
    across: isImpossible(stretch) ? 1 : shownShare(stretch.across),
  };
  const words = text(
    'on the curved face of the tool, its middle {height} above it: (R - h) / R in a hollow, (R + h) / R on a crown; along times {along}, across times {across}',
    shown,
  );
  return worked<Stretch | undefined>(stretch, words, { at, source: 'parallel surfaces: J. Steiner 1840' });
}

const shownShare = (share: number): string => share.toFixed(4);
