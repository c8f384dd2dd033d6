import { argument, COMMON_PRACTICE } from './arguments.ts';
import type { Word } from './types.ts';

const shapePlaces = ['value of outline', 'clause of ply', 'clause of patch', 'clause of insert', 'clause of core', 'clause of part'] as const;

/** Lines of a recipe outside its blocks, and the blocks themselves. */
export const recipeLines: readonly Word[] = [
  { word: 'revision', at: ['recipe', 'record'], takes: [argument('count')], example: 'revision 4', meaning: 'Which state of the recipe this is. A record names the revision that it was built by; raise it with every change that the bench must know of.' },
  { word: 'quantity', at: ['recipe', 'size'], takes: [argument('count')], example: 'quantity 12', default: '1', meaning: 'How many parts the order asks for. Purchases, roll layouts and the share of set-up work follow from it.' },
  { word: 'handed', at: ['recipe'], takes: [argument('name', { names: ['own'] }), argument('name', { names: ['own'] })], example: 'handed port, starboard', meaning: 'Two mirrored parts from one recipe: outline, places and angles of the second are mirrored.' },
  { word: 'let', at: ['recipe', 'size'], takes: [argument('name', { names: ['own'] }), argument('expression', { after: '=' })], example: 'let landing = 25 mm', meaning: 'A name for a value that several lines use. Arithmetic has spaces and carries its dimension; the order of the lines does not matter.' },
  { word: 'part', at: ['recipe'], example: 'part { outline rectangle 920 mm by 34 mm }', meaning: 'The finished part: outline, edge, ends, zones.' },
  { word: 'stack', at: ['recipe'], takes: [argument('word', { after: 'from', words: ['tool', 'caul'] }), argument('name', { names: ['tool'] })], example: 'stack from tool sled_tool { ply outer triax_680 at 0 deg }', meaning: 'The layers, in the order of the lines, from the tool outwards.' },
  { word: 'process', at: ['recipe'], takes: [argument('word', { words: ['infusion', 'hand', 'bagged', 'prepreg'] }), argument('name', { after: 'with', names: ['resin'], optional: true }), argument('temperature', { after: 'at', optional: true })], example: 'process infusion with epoxy_slow at 23 degC { lay stack }', meaning: 'The work steps in their order, with the resin and the temperature of mould and air.' },
  { word: 'load', at: ['recipe'], takes: [argument('name', { names: ['own'] })], example: 'load rider { weight 95 kg over 120 mm at middle }', meaning: 'A load that the part must carry: a question to the mechanics, answered under `expect`. An estimate, not a certificate.' },
  { word: 'expect', at: ['recipe', 'size'], takes: [argument('test')], example: 'expect mass <= 2.3 kg', meaning: 'A test of the recipe: it is shown as met or not met with its figure while you type, and in the check.' },
  { word: 'size', at: ['recipe'], takes: [argument('name', { names: ['own'] })], example: 'size short { outline rounded 980 mm by 400 mm corner 130 mm }', meaning: 'Another size of the same recipe: what it does not replace stays as it is.' },
  { word: 'change', at: ['recipe', 'size', 'process'], takes: [argument('name', { names: ['layer', 'feed', 'vent'] })], example: 'change outer, darts 16', meaning: 'Replaces clauses of one line: those that begin with the same words; the others stay.' },
  { word: 'without', at: ['recipe', 'size', 'process'], takes: [argument('name', { names: ['layer', 'feed', 'vent'] })], example: 'without pad', meaning: 'Leaves one line out.' },
];

export const partLines: readonly Word[] = [
  { word: 'outline', at: ['part', 'size'], takes: [argument('shape')], example: 'outline rounded 1180 mm by 420 mm corner 140 mm', meaning: 'The finished edge of the part. x runs along its long axis from the middle of the outline, y across.' },
  { word: 'cutout', at: ['part', 'size'], takes: [argument('shape')], example: 'cutout circle 60 mm, centred at (120 mm, 0 mm)', meaning: 'An opening in the finished part.' },
  { word: 'edge', at: ['part'], takes: [argument('word', { words: ['square', 'round', 'chamfer'] }), argument('length', { optional: true })], example: 'edge round 8 mm', default: 'square', meaning: 'The edge of the sandwich. Cloth that wraps round it needs a radius: over a sharp edge it lifts and holds air.' },
  { word: 'ends', at: ['part'], takes: [argument('name', { names: ['own'] }), argument('name', { after: 'to', names: ['own'] })], example: 'ends heel to nose', meaning: 'Names the two ends and says that x runs from the first to the second. A place measured from an end keeps its place when the size changes.' },
  { word: 'trim', at: ['part'], takes: [argument('word', { words: ['allowance'] }), argument('length')], example: 'trim allowance 25 mm', default: '25 mm', source: COMMON_PRACTICE, meaning: 'How far cloth marked `to trim` runs out past the finished edge, to be cut off after the cure.' },
  { word: 'allowance', at: ['value of trim'], takes: [argument('length')], example: 'trim allowance 25 mm', meaning: 'How far cloth marked `to trim` runs out past the finished edge.' },
  { word: 'sides', at: ['part'], takes: [argument('length'), argument('angle', { after: 'at', optional: true })], example: 'sides 110 mm at 5 deg, radius 12 mm', meaning: 'An upstand all round: its height and how far it leans out.' },
  { word: 'radius', at: ['clause of part'], takes: [argument('length')], example: 'sides 110 mm at 5 deg, radius 12 mm', meaning: 'The inside radius of a corner. Under 6 mm cloth bridges it and leaves resin or air behind.', source: COMMON_PRACTICE },
  { word: 'zone', at: ['part'], takes: [argument('name', { names: ['own'] }), argument('shape')], example: 'zone mount rounded 260 mm by 180 mm corner 40 mm, centred at (210 mm from heel, 0 mm)', meaning: 'Names an area of the part, for patches and steps to refer to.' },
  { word: 'cosmetic', at: ['part'], takes: [argument('word', { words: ['tool', 'bag'] }), argument('word', { words: ['face'] })], example: 'cosmetic tool face', meaning: 'The face that is looked at. Print-through and pinholes matter there.' },
  { word: 'angles', at: ['part'], takes: [argument('word', { after: 'from', words: ['tool', 'bag'] }), argument('word', { words: ['face'] })], example: 'angles from tool face', default: 'from bag face', source: 'ASTM D6507 asks for the side to be stated', meaning: 'From which side angles are counted counter-clockwise.' },
];

export const shapes: readonly Word[] = [
  { word: 'rectangle', at: shapePlaces, takes: [argument('length'), argument('length', { after: 'by' })], example: 'outline rectangle 900 mm by 500 mm', meaning: 'Length by width, sharp corners.' },
  { word: 'rounded', at: shapePlaces, takes: [argument('length'), argument('length', { after: 'by' }), argument('length', { after: 'corner' })], example: 'outline rounded 1180 mm by 420 mm corner 140 mm', meaning: 'A rectangle with rounded corners.' },
  { word: 'corner', at: shapePlaces, takes: [argument('length')], example: 'outline rounded 1180 mm by 420 mm corner 140 mm', meaning: 'The radius of the corners.' },
  { word: 'circle', at: shapePlaces, takes: [argument('length')], example: 'cutout circle 60 mm', meaning: 'A circle by its diameter.' },
  { word: 'ellipse', at: shapePlaces, takes: [argument('length'), argument('length', { after: 'by' })], example: 'outline ellipse 600 mm by 300 mm', meaning: 'An ellipse by its two diameters.' },
  { word: 'capsule', at: shapePlaces, takes: [argument('length'), argument('length', { after: 'by' })], example: 'outline capsule 900 mm by 200 mm', meaning: 'A strip with half-round ends, length over all.' },
  { word: 'polygon', at: shapePlaces, takes: [argument('point', { repeated: true })], example: 'outline polygon (0 mm, 0 mm), (400 mm, 0 mm), (0 mm, 300 mm)', meaning: 'Corner after corner; the last is joined to the first. It may not cross itself.' },
  { word: 'path', at: shapePlaces, takes: [argument('text')], example: 'outline path "M 0 0 H 400 V 300 Z"', meaning: 'One closed curve in SVG path data, in millimetres.' },
  { word: 'file', at: shapePlaces, takes: [argument('text'), argument('word', { words: ['layer', 'id'], optional: true }), argument('name', { optional: true })], example: 'outline file "deck.dxf" layer OUTLINE', meaning: 'One closed curve from an SVG or DXF file beside this file; millimetres unless the file says otherwise.' },
  { word: 'layer', at: ['value of outline'], takes: [argument('name')], example: 'outline file "deck.dxf" layer OUTLINE', meaning: 'The layer of the drawing that holds the curve.' },
  { word: 'id', at: ['value of outline'], takes: [argument('name')], example: 'outline file "deck.svg" id deck', meaning: 'The id of the curve in the drawing.' },
  { word: 'square', at: ['value of edge'], example: 'edge square', meaning: 'A straight edge. Nothing can be wrapped round it.' },
  { word: 'round', at: ['value of edge'], takes: [argument('length')], example: 'edge round 8 mm', meaning: 'A rounded edge with this radius.' },
  { word: 'chamfer', at: ['value of edge'], takes: [argument('angle', { optional: true })], example: 'edge chamfer 20 deg', meaning: 'A bevelled edge.' },
  { word: 'centred', at: ['clause of part', 'clause of strip', 'clause of patch', 'clause of ply', 'clause of insert', 'clause of core'], takes: [argument('point', { after: 'at' })], example: 'zone mount circle 80 mm, centred at (210 mm from heel, 0 mm)', default: 'the middle of the part', meaning: 'Where the middle of the shape lies.' },
  { word: 'tool', at: ['value of cosmetic', 'value of angles'], example: 'cosmetic tool face', meaning: 'The face that lies against the tool.' },
  { word: 'bag', at: ['value of cosmetic', 'value of angles'], example: 'cosmetic bag face', meaning: 'The face under the bag or in the air.' },
];
