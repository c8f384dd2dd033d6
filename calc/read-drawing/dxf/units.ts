import type { DrawingUnit } from '../drawn.ts';

/** $INSUNITS. Source: AutoCAD DXF reference, header section: name and m. */
const insertionUnits: Readonly<Record<number, readonly [string, number]>> = {
  1: ['inch', 0.0254],
  2: ['foot', 0.3048],
  3: ['mile', 1609.344],
  4: ['mm', 1e-3],
  5: ['cm', 1e-2],
  6: ['m', 1],
  7: ['km', 1e3],
  8: ['microinch', 2.54e-8],
  9: ['mil', 2.54e-5],
  10: ['yard', 0.9144],
  13: ['um', 1e-6],
  14: ['dm', 0.1],
};

/**
 * What one unit of a DXF file is: $INSUNITS where it says one, else millimetres. $MEASUREMENT (0 English, 1 metric) only tells
 * whether that is likely: it picks hatches and line types, and programs write it without thought.
 */
export function unitOfDxf(header: ReadonlyMap<string, number>): DrawingUnit {
  const named = insertionUnits[header.get('$INSUNITS') ?? 0];
  const measurement = header.get('$MEASUREMENT');
  if (named === undefined) {
    const unclear = measurement === 0 ? ('says inches elsewhere' as const) : ('not said' as const);
    return { name: 'mm', metres: 1e-3, ...(measurement === 1 ? {} : { unclear }) };
  }
  const [name, metres] = named;
  const metric = name.endsWith('m');
  if (measurement === 1 && !metric) return { name, metres, unclear: 'says millimetres elsewhere' };
  return { name, metres };
}
