import { usualUnitTexts } from './names.ts';
import { parseUnit } from './parse.ts';
import type { Dimension, DimensionName, Unit } from './types.ts';

/** Units to offer where a dimension is expected, the most useful first; each `symbol` can be typed as it stands. */
export function unitsOf(of: Dimension | DimensionName, currency = 'EUR'): readonly Unit[] {
  return usualUnitTexts(of, currency).flatMap((text) => {
    const read = parseUnit(text);
    return 'unit' in read ? [read.unit] : [];
  });
}
