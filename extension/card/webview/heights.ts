/** Heights of bands in a drawing, from thicknesses in metres. */
export interface Heights {
  readonly heights: readonly number[];
  /** every band is as high as it is thick */
  readonly toScale: boolean;
}

/** m; no layer is thinner */
const NOTHING = 1e-9;

/**
 * Shares out a height by thickness. A band that would be thinner than `least` is drawn that high, and the others share what is
 * left; where all of them together need more, the drawing grows.
 */
export function bandHeights(thicknesses: readonly (number | undefined)[], height: number, least: number): Heights {
  const known = thicknesses.map((thickness) => (thickness !== undefined && thickness > NOTHING ? thickness : 0));
  const raised = new Set<number>();
  for (;;) {
    const free = height - raised.size * least;
    const sum = known.reduce((total, thickness, i) => (raised.has(i) ? total : total + thickness), 0);
    const scale = sum > 0 ? Math.max(0, free) / sum : 0;
    const thin = known.flatMap((thickness, i) => (!raised.has(i) && thickness * scale < least ? [i] : []));
    if (thin.length === 0) {
      const heights = known.map((thickness, i) => (raised.has(i) ? least : thickness * scale));
      return { heights, toScale: raised.size === 0 && heights.length > 0 };
    }
    for (const i of thin) raised.add(i);
  }
}

/** Places for labels beside bands: as near to their middles as a distance between two of them allows. */
export function labelPlaces(middles: readonly number[], distance: number, height: number): number[] {
  const places: number[] = [];
  for (const middle of middles) places.push(Math.max(middle, (places.at(-1) ?? Number.NEGATIVE_INFINITY) + distance));
  let limit = Math.max(height - distance / 2, (places.length - 0.5) * distance);
  for (let i = places.length - 1; i >= 0; i--) {
    places[i] = Math.min(places[i] as number, limit);
    limit = (places[i] as number) - distance;
  }
  return places;
}
