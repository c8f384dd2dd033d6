import type { DrawingLayer } from '../../../calc/drawing/drawing.ts';

/** What the layers of a drawing are called; templates, so that they can be translated. */
export const layerNames: Readonly<Record<DrawingLayer, string>> = {
  outline: 'Outline of the part',
  zone: 'Zones of the part',
  coat: 'Coats',
  cloth: 'Cloth',
  core: 'Core',
  insert: 'Inserts',
  perforation: 'Holes in the core',
  process: 'Sheets, tape and bag',
  flow: 'Feeds and vents',
  tool: 'Tool of the recipe',
  dimension: 'Dimensions',
  cut: 'Cuts',
  mark: 'Pen lines',
  drill: 'Holes to drill',
  text: 'Words',
};
