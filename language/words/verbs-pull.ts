import { argument, COMMON_PRACTICE, share } from './arguments.ts';
import { EVERY_PROCESS, minutes, steps, UNDER_A_BAG } from './step-row.ts';

/** Vacuum, mixing and infusing. */
export const pullVerbs = steps('pull', [
  {
    word: 'vacuum', at: ['process', 'infuse'], takes: [argument('pressure', { basis: ['absolute', 'gauge'] }), argument('word', { after: 'until', words: ['gel', 'hard', 'cool'], optional: true })],
    example: 'vacuum 650 mbar gauge', sheet: 'Vacuum {amount}, hold it {until}.', meaning: 'Pulls the bag down to this pressure. Say absolute or gauge. Let off before the resin has gelled and half as long again, the skins spring off the core.',
    needs: ['a bag', 'a pump'], occupies: ['tool', 'pump'], processes: UNDER_A_BAG, clauses: ['within', 'until'], minutes: minutes(5, COMMON_PRACTICE),
  },
  {
    word: 'leak test', takes: [argument('pressure', { optional: true }), argument('time', { after: 'in', optional: true })], example: 'leak test 5 mbar in 10 min', sheet: 'Pull full vacuum, shut the pump off: at most {amount}.', default: '5 mbar in 10 min', source: 'published limits differ sixfold; common practice',
    meaning: 'Pulls full vacuum, shuts the pump off, waits and reads. A leak draws air along the feed and leaves a dry line. The gauge must be finer than the limit.', needs: ['a bag', 'a pump', 'a gauge'], occupies: ['tool', 'pump', 'people'], processes: UNDER_A_BAG,
    minutes: minutes(10, COMMON_PRACTICE, 'typed'), instead: ['drop test'],
  },
  { word: 'accelerate', takes: [argument('name', { names: ['material'] }), share()], example: 'accelerate cobalt_6 0.3 % by weight', sheet: 'Stir {material} fully into the resin.', meaning: 'Stirs the accelerator fully into the resin, before the peroxide and never with it.', material: ['consumable'], occupies: ['people', 'bench'], minutes: minutes(5, COMMON_PRACTICE) },
  { word: 'catalyse', takes: [argument('name', { names: ['catalyst'] }), share()], example: 'catalyse mekp_50 1.5 % by weight', sheet: 'Stir {material}, {amount}, into the resin: last of all.', meaning: 'Stirs the peroxide in, last. From here the pot life runs.', material: ['catalyst'], occupies: ['people', 'bench'], consumes: [{ what: 'catalyst', by: 'mass', why: 'its share of the resin' }], minutes: minutes(3, COMMON_PRACTICE), instead: ['catalyze'] },
  { word: 'mix', takes: [argument('mass', { optional: true }), argument('name', { names: ['resin'], optional: true })], example: 'mix 1.15 kg', sheet: 'Mix {amount} by weight, scrape the sides, stir two minutes.', meaning: 'Mixes resin and hardener. Not before the bag has passed its leak test: mixed resin cannot wait.', occupies: ['people', 'bench'], consumes: [{ what: 'resin', by: 'mass', why: 'what the part takes, and the allowance' }], minutes: minutes({ per: 'kg', minutes: 4 }, COMMON_PRACTICE), clauses: ['batches'] },
  { word: 'tint', takes: [argument('name', { names: ['consumable'] }), share()], example: 'tint grey_paste 2 % by weight', sheet: 'Stir {material}, {amount}, into the resin before the hardener.', meaning: 'Colour paste in the mix. Over about 5 % many resins cure badly.', source: 'from memory', material: ['pigment'], occupies: ['people', 'bench'], processes: EVERY_PROCESS, consumes: [{ what: 'pigment', by: 'mass', why: 'its share of the mix' }], minutes: minutes(3, COMMON_PRACTICE) },
  { word: 'degas', takes: [argument('time', { optional: true })], example: 'degas 10 min', sheet: 'Degas the mixed resin {time}.', meaning: 'Pulls the air that was stirred in out of the pot. It costs pot life; not with styrene.', default: '10 min', source: COMMON_PRACTICE, needs: ['a pump', 'mixed resin'], occupies: ['pump', 'bench'], processes: ['infusion'], minutes: minutes(3, COMMON_PRACTICE, 'typed') },
  {
    word: 'infuse', example: 'infuse { open f1 }', sheet: 'Infuse.', meaning: 'Lets the resin in. Plain, it opens all feeds and clamps them when the part is full; in braces the lines are opened and clamped in sequence.',
    needs: ['feed', 'vent', 'a bag', 'a passed leak test'], occupies: ['tool', 'pump', 'people'], processes: ['infusion'], consumes: [{ what: 'resin', by: 'mass', why: 'laminate, core, mesh, peel ply, lines and pot' }],
    minutes: minutes(15, `${COMMON_PRACTICE}; the fill itself is computed`, 'material'), caution: 'Watch the pot: air in the feed ruins the part in seconds.', block: true,
  },
  { word: 'open', at: ['infuse', 'process'], takes: [argument('name', { names: ['feed', 'vent'] }), argument('point', { after: 'when', optional: true })], example: 'open f1', sheet: 'Open {name} {when}.', meaning: 'Opens a line. Opened before the front has passed it, it shuts in a dry pocket.', needs: ['feed'], processes: ['infusion'], minutes: minutes(1, COMMON_PRACTICE) },
  { word: 'clamp', at: ['infuse', 'process'], takes: [argument('name', { names: ['feed', 'vent'], optional: true }), argument('word', { after: 'when', words: ['full', 'running', 'front'], optional: true })], example: 'clamp f1 when full', sheet: 'Clamp {name} {when}.', meaning: 'Shuts a line, or holds a bond together until it has set. Keep the vacuum on to gel when the feed is shut; the order of closing is contested in the trade.', minutes: minutes(1, COMMON_PRACTICE) },
]);
