import { argument, COMMON_PRACTICE, FROM_MEMORY } from './arguments.ts';
import { minutes, steps, UNDER_A_BAG } from './step-row.ts';

const consumable = [argument('name', { names: ['consumable'] })] as const;

/** What goes over the stack, from the laminate outwards. */
export const overVerbs = steps('over the stack', [
  {
    word: 'peel', takes: consumable, example: 'peel nylon_85, 80 mm past edge', sheet: 'Peel ply {material}, {amount} past the edge.', default: '50 mm past edge', source: COMMON_PRACTICE,
    meaning: 'Peel ply on the laminate: it lets resin and air through, tears off after the cure and leaves a face to bond to. Under the mesh, always.',
    material: ['peel'], consumes: [{ what: 'peel', by: 'area past edge', why: 'the part and what it reaches past the edge' }, { what: 'resin', by: 'area', why: 'what the peel ply keeps' }],
    clauses: ['past', 'short', 'wet'], minutes: minutes({ per: 'm2', minutes: 6 }, COMMON_PRACTICE), instead: ['peel_ply'],
  },
  {
    word: 'perforated', takes: consumable, example: 'perforated film_p3, 20 mm past edge', sheet: 'Perforated film {material}, {amount}.', meaning: 'Perforated release film over the peel ply: it meters the bleed, or lets mesh come off easily.',
    material: ['perforated'], processes: UNDER_A_BAG, consumes: [{ what: 'perforated', by: 'area past edge', why: 'over the peel ply' }], clauses: ['past', 'short'], minutes: minutes({ per: 'm2', minutes: 4 }, COMMON_PRACTICE),
  },
  { word: 'bleeder', takes: consumable, example: 'bleeder glass_100, takes 60 g/m2', sheet: 'Bleeder {material}, {layers}.', meaning: 'Takes up surplus resin. Too much of it bleeds the laminate dry.', material: ['bleeder'], processes: ['bagged', 'prepreg'], needs: ['perforated'], consumes: [{ what: 'bleeder', by: 'area', why: 'over the perforated film' }], clauses: ['takes', 'layer', 'layers', 'past', 'short'], minutes: minutes({ per: 'm2', minutes: 3 }, COMMON_PRACTICE) },
  { word: 'film', takes: consumable, example: 'film solid_25', sheet: 'Solid film {material}.', meaning: 'Solid release film: stops the bleed above it.', material: ['film'], processes: ['bagged', 'prepreg'], consumes: [{ what: 'film', by: 'area past edge', why: 'over the bleeder' }], clauses: ['past', 'short'], minutes: minutes({ per: 'm2', minutes: 3 }, COMMON_PRACTICE) },
  {
    word: 'mesh', takes: consumable, example: 'mesh mesh_130, 40 mm short of edge', sheet: 'Flow mesh {material}, {amount} short of the edge.', default: '40 mm short of edge', source: 'builders\' page: 25 to 50 mm short, then a brake of peel ply only',
    meaning: 'Flow mesh: the resin runs in it. It stops short of the edge, so that the resin must go through the cloth before it reaches the vent.', material: ['mesh'], processes: ['infusion'], needs: ['peel'], instead: ['medium'],
    consumes: [{ what: 'mesh', by: 'area short of edge', why: 'the part less its brake zone' }, { what: 'resin', by: 'area short of edge', why: 'what stays in the mesh' }], clauses: ['short', 'layers'], minutes: minutes({ per: 'm2', minutes: 5 }, COMMON_PRACTICE),
  },
  { word: 'caul', takes: consumable, example: 'caul alu_2, 3 mm short of dam, release semi_permanent 3 coats', sheet: 'Caul {material}, {amount}.', meaning: 'A plate that keeps the bag face flat. Over the edge radius it leaves a sharp step.', material: ['caul'], processes: UNDER_A_BAG, consumes: [{ what: 'release', by: 'area', why: 'the face of the caul' }], clauses: ['short', 'release'], minutes: minutes(10, COMMON_PRACTICE) },
  { word: 'intensifier', takes: [...consumable, argument('name', { after: 'at', names: ['zone'] })], example: 'intensifier silicone_6 at corner_a', sheet: 'Intensifier {material} at {place}.', meaning: 'A rubber piece that presses into an inside corner.', material: ['intensifier'], processes: UNDER_A_BAG, minutes: minutes(5, COMMON_PRACTICE) },
  { word: 'dam', takes: consumable, example: 'dam cork_5, at edge', sheet: 'Dam {material} along the edge.', meaning: 'A strip along the edge that keeps the resin in and the edge square.', material: ['dam'], processes: UNDER_A_BAG, consumes: [{ what: 'dam', by: 'perimeter', why: 'once round the layup' }], clauses: ['at', 'outside'], minutes: minutes({ per: 'm', minutes: 3 }, COMMON_PRACTICE) },
  { word: 'breather', takes: consumable, example: 'breather poly_150, 80 mm past edge', sheet: 'Breather {material} over everything, out to the port.', meaning: 'Gives the air a way to the port from everywhere. It must join the vent, and must not lie soaked on it.', material: ['breather'], processes: ['bagged', 'prepreg'], consumes: [{ what: 'breather', by: 'area past edge', why: 'the part and out to the port' }], clauses: ['past', 'layers'], minutes: minutes({ per: 'm2', minutes: 3 }, COMMON_PRACTICE) },
  { word: 'thermocouple', takes: [argument('count', { optional: true })], example: 'thermocouple 2, in flange', sheet: 'Thermocouples: {amount}, {place}.', meaning: 'Probes in the laminate or the tool: the hold counts from the slowest of them, not from the air.', processes: ['prepreg', 'infusion', 'bagged'], clauses: ['in', 'at'], minutes: minutes(10, COMMON_PRACTICE) },
  {
    word: 'feed', takes: [argument('name', { names: ['own'] }), ...consumable, argument('point', { after: 'from' }), argument('point', { after: 'to' })], example: 'feed f1 spiral_10 from (90 mm from heel, 0 mm) to (90 mm from nose, 0 mm)', sheet: 'Feed {name}: {material} {place}.',
    meaning: 'The line that brings the resin. Time goes with the square of the distance to the vent: feed so that it runs the short way.', material: ['feed_line', 'tube'], processes: ['infusion'],
    consumes: [{ what: 'feed_line', by: 'length', why: 'from point to point' }, { what: 'resin', by: 'volume', why: 'what stands in the line' }], clauses: ['through', 'along', 'above'], minutes: minutes({ per: 'm', minutes: 4 }, COMMON_PRACTICE), instead: ['line'],
  },
  {
    word: 'vent', takes: [argument('name', { names: ['own'] }), ...consumable, argument('word', { words: ['perimeter', 'along'], optional: true })], example: 'vent v1 spiral_10 perimeter, 60 mm outside, through tape by tube_10', sheet: 'Vent {name}: {material} {place}.',
    meaning: 'The line that the pump pulls at, outside the part and farthest from the feed. Near the feed it drinks the resin before the part is full.', material: ['feed_line', 'tube'], processes: ['infusion', 'bagged'],
    consumes: [{ what: 'feed_line', by: 'length', why: 'along its run' }], clauses: ['outside', 'through', 'perimeter', 'above'], minutes: minutes({ per: 'm', minutes: 3 }, COMMON_PRACTICE),
  },
  { word: 'trap', takes: [argument('name', { names: ['consumable'], optional: true })], example: 'trap', sheet: 'Catch pot between bag and pump, gauge on the pot.', meaning: 'A catch pot between bag and pump, with the gauge on it. Without one the resin ends in the pump, and the gauge reads the pump.', material: ['trap', 'container'], processes: UNDER_A_BAG, minutes: minutes(5, COMMON_PRACTICE), source: `2 to 10 litres, ${FROM_MEMORY}` },
  {
    word: 'bag', takes: consumable, example: 'bag film_50, pleats 4 of 40 mm', sheet: 'Bag {material}, {pleats}.', default: 'a pleat at every change of shape', source: 'builders\' page',
    meaning: 'Closes the bag. Pleats give it the length to reach into corners: where it is too short it bridges, and the corner fills with resin.', material: ['bag'], needs: ['tape'], processes: UNDER_A_BAG,
    consumes: [{ what: 'bag', by: 'area past edge', why: 'out to the tape, over all heights and pleats' }], clauses: ['pleats', 'envelope', 'limit', 'past'], minutes: minutes({ per: 'm2', minutes: 15 }, COMMON_PRACTICE),
  },
]);
