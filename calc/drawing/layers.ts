import type { DrawingLayer, DrawnItem } from './drawing.ts';

/** All layers of drawings, from what lies at the back to what lies in front. */
export const drawingLayers: readonly DrawingLayer[] = [
  'tool',
  'process',
  'zone',
  'coat',
  'cloth',
  'core',
  'insert',
  'perforation',
  'flow',
  'outline',
  'cut',
  'mark',
  'drill',
  'dimension',
  'text',
];

/** The items of each layer that has any, from the back to the front. */
export function byLayer(items: readonly DrawnItem[]): readonly (readonly [DrawingLayer, readonly DrawnItem[]])[] {
  const groups = Map.groupBy(items, ({ layer }) => layer);
  return drawingLayers.flatMap((layer) => {
    const group = groups.get(layer);
    return group === undefined ? [] : [[layer, group] as const];
  });
}
