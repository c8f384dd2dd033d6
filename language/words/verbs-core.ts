import { argument, COMMON_PRACTICE } from './arguments.ts';
import { minutes, steps, UNDER_A_BAG } from './step-row.ts';

/** Getting core and inserts ready and in. */
export const coreVerbs = steps('core', [
  {
    word: 'dry', takes: [argument('name', { names: ['layer', 'material'] }), argument('time', { optional: true }), argument('temperature', { after: 'at', optional: true })], at: ['process', 'kit'],
    example: 'dry flax_twill_300, 2 h at 80 degC', sheet: 'Dry {what} {time} at {temperature}; lay it at once.',
    meaning: 'Dries wood, foam or natural fibre before it is laid or bagged. What stays wet boils out into the laminate.',
    occupies: ['oven'], clauses: ['use', 'within'], minutes: minutes(10, COMMON_PRACTICE, 'typed'),
  },
  { word: 'score', takes: [argument('name', { names: ['layer'] })], example: 'score body', sheet: 'Score {what}; the open cuts go away from the visible face.', meaning: 'Cuts a grid so that the core bends. Fill the cuts, or they drink resin and print.', occupies: ['bench', 'people'], minutes: minutes({ per: 'm2', minutes: 15 }, COMMON_PRACTICE) },
  {
    word: 'seal core', takes: [argument('name', { names: ['resin', 'paste'], optional: true })], example: 'seal core epoxy_slow', sheet: 'Seal both faces of the core with {material}; let it tack off.', meaning: 'Closes the faces of a core before it is laid. Unsealed balsa drinks 300 to 500 g/m2 on each face and starves the skin. Late in the day, while it cools: warming wood blows bubbles.',
    source: COMMON_PRACTICE, material: ['resin', 'paste'], occupies: ['bench', 'people'], consumes: [{ what: 'resin', by: 'area', why: 'both faces of the core' }], minutes: minutes({ per: 'm2', minutes: 6 }, COMMON_PRACTICE, 'material'),
  },
  { word: 'shape', takes: [argument('name', { names: ['layer'] })], example: 'shape body', sheet: 'Shape {what} to the template.', meaning: 'Cuts and sands the core to its shape.', occupies: ['bench', 'people'], minutes: minutes({ per: 'm2', minutes: 40 }, COMMON_PRACTICE) },
  { word: 'chamfer', takes: [argument('name', { names: ['layer'] }), argument('angle', { optional: true })], example: 'chamfer body, 20 deg', sheet: 'Chamfer the edge of {what}.', meaning: 'Bevels the core edge so that the skin runs down without a kink.', occupies: ['bench', 'people'], minutes: minutes({ per: 'm', minutes: 3 }, COMMON_PRACTICE) },
  { word: 'perforate', takes: [argument('name', { names: ['layer'] })], example: 'perforate body', sheet: 'Perforate {what}: {amount}.', meaning: 'Makes the holes through the core that let resin to the skin on the tool.', occupies: ['bench', 'people'], processes: ['infusion', 'bagged'], minutes: minutes({ per: 'm2', minutes: 20 }, COMMON_PRACTICE) },
  {
    word: 'bed', takes: [argument('name', { names: ['layer'] }), argument('name', { after: 'with', names: ['paste', 'resin'], optional: true }), argument('areal weight', { optional: true })],
    example: 'bed body with bond_paste, 1500 g/m2', sheet: 'Bed {what} in {material}, {amount}; press until it squeezes out all round.',
    meaning: 'Presses the core into paste or wet mat, so that no air stays below.', consumes: [{ what: 'paste', by: 'area', why: 'the whole face of the core' }],
    clauses: ['bag', 'vacuum'], minutes: minutes({ per: 'm2', minutes: 15 }, COMMON_PRACTICE),
  },
  {
    word: 'fill', takes: [argument('word', { words: ['joints', 'cuts', 'edge', 'holes'] }), argument('name', { after: 'with', names: ['paste', 'resin'], optional: true })],
    example: 'fill joints with bond_paste', sheet: 'Fill the {what} with {material}.', meaning: 'Fills the gaps between pieces of core: resin would race through them, or water later. For a cavity say `pour`.',
    consumes: [{ what: 'paste', by: 'length', why: 'the joints' }], minutes: minutes({ per: 'm', minutes: 2 }, COMMON_PRACTICE),
  },
  {
    word: 'bag down', takes: [argument('name', { names: ['layer'] })], example: 'bag down body, vacuum 300 mbar gauge', sheet: 'Pull {what} down under a bag until the paste has set.',
    meaning: 'Holds the core down with a bag while its bedding sets; half the vacuum is enough.', needs: ['tape', 'a bag', 'a pump'], occupies: ['tool', 'people', 'pump'], processes: ['hand', 'bagged'], clauses: ['vacuum'],
    consumes: [{ what: 'bag', by: 'area past edge', why: 'over the core to the tape' }], minutes: minutes(20, COMMON_PRACTICE, 'material'),
  },
]);

/** Getting cloth ready and down. */
export const clothVerbs = steps('cloth', [
  {
    word: 'thaw', takes: [argument('name', { names: ['prepreg'] }), argument('time', { optional: true })], example: 'thaw carbon_pp_200, 6 h, bag shut', sheet: 'Thaw {material} {time} with its bag shut.',
    meaning: 'Brings prepreg to room temperature in its shut bag. Opened cold it draws dew.', default: '6 h', source: COMMON_PRACTICE, material: ['prepreg'], processes: ['prepreg'],
    occupies: [], clauses: ['bag'], minutes: minutes(5, COMMON_PRACTICE, 'typed'),
  },
  { word: 'cut', takes: [argument('name', { names: ['layer'], optional: true })], example: 'cut outer to inner', sheet: 'Cut {what} by the cut list and mark each piece.', meaning: 'Cuts the pieces. Mark name, warp and upper side on each.', occupies: ['bench', 'people'], minutes: minutes({ per: 'ply', minutes: 8 }, COMMON_PRACTICE) },
  {
    word: 'wet out', takes: [argument('name', { names: ['layer'] })], example: 'wet out a to b, on film', sheet: 'Wet out {what} on film; weigh it.', meaning: 'Wets the cloth on film on the bench, so that the resin can be weighed, then carries it over.',
    occupies: ['bench', 'people'], processes: ['hand', 'bagged'], clauses: ['on', 'resin', 'fibre'], needs: ['mixed resin'], minutes: minutes({ per: 'm2', minutes: 8 }, COMMON_PRACTICE),
  },
  {
    word: 'lay', at: ['process', 'kit'], takes: [argument('name', { names: ['layer'], words: ['stack', 'rest', 'kit'] }), argument('name', { after: 'to', names: ['layer'], optional: true }), argument('name', { after: 'with', names: ['resin'], optional: true })],
    example: 'lay outer to inner', sheet: 'Lay {what}.',
    meaning: 'Lays layers by name, in the order of the stack: one, a run from one to another, the kit, or all the rest. Each layer is laid once.',
    needs: ['release on the tool'], clauses: ['catalyst', 'fibre', 'resin', 'wet', 'on', 'each', 'debulk', 'brush', 'roller', 'spray', 'coats', 'turned'],
    consumes: [{ what: 'the layers named', by: 'area', why: 'their pieces' }, { what: 'resin', by: 'mass', why: 'where it is laid wet' }],
    minutes: minutes({ per: 'm2', minutes: 10 }, 'common practice, for each ply; wet mat is slower'),
  },
  {
    word: 'tack', at: ['process', 'kit'], takes: [argument('name', { names: ['consumable'] }), argument('areal weight', { optional: true })], example: 'tack spray_tack 8 g/m2', sheet: 'Mist {material}, {amount}, no more.',
    meaning: 'Spray adhesive that holds dry cloth to the tool or to the layer below. Infusion grade only, and a mist: more leaves soft spots.', default: '15 g/m2', source: '10 to 25 g/m2, from memory',
    material: ['tack'], processes: ['infusion'], consumes: [{ what: 'tack', by: 'area', why: 'a mist on each layer' }], minutes: minutes({ per: 'm2', minutes: 2 }, COMMON_PRACTICE),
  },
  { word: 'kit', example: 'kit { lay outer to body }', sheet: 'Join on the bench:', meaning: 'Layers that are joined dry on the bench while the tool is still busy; `lay kit` puts them in as one.', occupies: ['bench', 'people'], processes: ['infusion', 'prepreg'], minutes: minutes(5, COMMON_PRACTICE), block: true },
  { word: 'roll out', takes: [argument('name', { names: ['layer'], optional: true })], example: 'roll out mat', sheet: 'Roll out {what} from the middle until no air is white.', meaning: 'Rolls the air out of a wet laminate. Air that stays is white and weak.', processes: ['hand', 'bagged'], minutes: minutes({ per: 'm2', minutes: 5 }, COMMON_PRACTICE), instead: ['roll', 'consolidate'] },
  {
    word: 'debulk', takes: [argument('time', { optional: true })], example: 'debulk 15 min', sheet: 'Debulk {time} under full vacuum.', meaning: 'Presses dry or prepreg layers down under a bag for some minutes, to get the air out. First ply and every third.',
    default: '20 min', source: 'trade article: first ply and every 3 plies, 20 min; 3 to 5 elsewhere', needs: ['a bag', 'a pump'], occupies: ['tool', 'people', 'pump'], processes: UNDER_A_BAG, clauses: ['every'], minutes: minutes(8, COMMON_PRACTICE, 'typed'),
  },
]);
