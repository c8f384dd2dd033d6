import type { Need, Precedence, ProcessKind, StepClass } from './types.ts';

/**
 * The partial order of the steps: a pair binds only where both occur. A class is a verb, or a verb with a word that narrows
 * it: the word that stands behind it (`postcure free`), or for `lay` the kind of the layers that are laid (`lay coat`, `lay
 * core`, `lay cloth`, where cloth is ply, strip and patch).
 */
export const precedes: readonly Precedence[] = [
  {
    first: 'clean',
    later: 'release',
    because: 'release on dirt or old tape residue does not hold',
    source: 'common practice',
  },
  { first: 'release', later: 'mask', because: 'release crept over the masking lifts it', source: 'common practice' },
  {
    first: 'release',
    later: 'lay',
    because: 'what is laid on a bare tool bonds to it',
    source: "supplier's repair page",
  },
  {
    first: 'mask',
    later: 'lay coat',
    because: 'coats on the flange keep the sealant tape from holding',
    source: 'common practice',
  },
  {
    first: 'lay coat',
    later: 'unmask',
    because: 'the masking is pulled while the coat is soft',
    source: 'common practice',
  },
  {
    first: 'unmask',
    later: 'tape',
    because: 'sealant tape belongs on the clean flange, not on masking',
    source: 'common practice',
  },
  {
    first: 'release',
    later: 'tape',
    because: 'release under the edge of the tape lets it go; release the part, not the tape line',
    source: 'common practice',
  },
  {
    first: 'tape',
    later: 'lay cloth',
    because: 'dry cloth sheds fibres, and fibres under the tape are air channels',
    source: "builder's log of a hull; from memory",
  },
  {
    first: 'lay coat',
    later: 'tape',
    because: 'overspray and drips on the tape spoil its hold',
    source: 'common practice',
  },
  {
    first: 'seal core',
    later: 'lay core',
    because: 'an unsealed core drinks the resin of the skin',
    source: 'common practice',
  },
  { first: 'dry', later: 'lay', because: 'what is laid wet boils out into the laminate', source: 'common practice' },
  {
    first: 'dry',
    later: 'bag',
    because: 'water under a bag has nowhere to go but into the laminate',
    source: 'common practice',
  },
  {
    first: 'thaw',
    later: 'lay',
    because: 'cold prepreg draws dew, and the water boils in the cure',
    source: "boatbuilders' pages",
  },
  { first: 'lay', later: 'debulk', because: 'there must be something to press down', source: 'trade article' },
  { first: 'dam', later: 'lay cloth', because: 'the cloth is laid up to the dam', source: 'common practice' },
  { first: 'kit', later: 'lay kit', because: 'the kit is joined on the bench before it is laid', source: 'by meaning' },
  { first: 'lay', later: 'peel', because: 'peel ply covers the finished stack', source: 'process pages' },
  { first: 'peel', later: 'perforated', because: 'perforated film lies on the peel ply', source: 'process pages' },
  { first: 'peel', later: 'mesh', because: 'mesh that touches the laminate is cured to it', source: 'process pages' },
  { first: 'perforated', later: 'mesh', because: 'the film is what lets the mesh come off', source: 'process pages' },
  {
    first: 'perforated',
    later: 'bleeder',
    because: 'a bleeder on bare laminate is cured to it',
    source: 'common practice',
  },
  {
    first: 'bleeder',
    later: 'film',
    because: 'the solid film stops the bleed above the bleeder',
    source: 'common practice',
  },
  { first: 'film', later: 'caul', because: 'a caul without film is cured to what is below', source: 'common practice' },
  {
    first: 'caul',
    later: 'breather',
    because: 'the breather gives the air a way over the caul',
    source: 'common practice',
  },
  {
    first: 'perforated',
    later: 'breather',
    because: 'a breather on wet laminate soaks full and is cured to it',
    source: 'common practice',
  },
  { first: 'mesh', later: 'bag', because: 'the bag closes over everything', source: 'by meaning' },
  { first: 'breather', later: 'bag', because: 'the bag closes over everything', source: 'by meaning' },
  { first: 'intensifier', later: 'bag', because: 'the bag presses the intensifier', source: 'by meaning' },
  {
    first: 'thermocouple',
    later: 'bag',
    because: 'its wire goes through the tape, once it is closed it would leak',
    source: 'common practice',
  },
  { first: 'feed', later: 'bag', because: 'the line lies under the bag', source: 'by meaning' },
  { first: 'vent', later: 'bag', because: 'the line lies under the bag', source: 'by meaning' },
  {
    first: 'trap',
    later: 'leak test',
    because: 'the pump must not pull a moment without the catch pot',
    source: 'process page',
  },
  {
    first: 'trap',
    later: 'vacuum',
    because: 'the pump must not pull a moment without the catch pot',
    source: 'process page',
  },
  { first: 'bag', later: 'vacuum', because: 'there is nothing to pull before the bag is closed', source: 'by meaning' },
  { first: 'bag', later: 'leak test', because: 'the test is of the closed bag', source: 'by meaning' },
  {
    first: 'leak test',
    later: 'mix',
    because: 'mixed resin cannot wait while a leak is looked for',
    source: 'process pages',
  },
  {
    first: 'leak test',
    later: 'infuse',
    because: 'a leak draws air along the feed and leaves a dry line',
    source: "boatbuilders' forum",
  },
  {
    first: 'accelerate',
    later: 'catalyse',
    because: 'accelerator is stirred fully in before the peroxide: the two react explosively when they meet undiluted',
    source: 'trade article; every safety sheet, from memory',
  },
  { first: 'tint', later: 'infuse', because: 'colour belongs into the mix', source: 'by meaning' },
  { first: 'mix', later: 'infuse', because: 'there must be mixed resin in the pot', source: 'by meaning' },
  { first: 'infuse', later: 'cure', because: 'the resin must be in the part', source: 'by meaning' },
  { first: 'lay', later: 'cure', because: 'what is laid later is not cured', source: 'by meaning' },
  {
    first: 'vacuum',
    later: 'cure',
    because: 'the bag presses while the resin still flows, not after',
    source: 'common practice',
  },
  { first: 'cure', later: 'demould', because: 'a part that leaves the tool soft warps', source: 'common practice' },
  {
    first: 'demould',
    later: 'pull peel',
    because: 'peel ply keeps the face clean until the bond',
    source: 'common practice',
  },
  {
    first: 'demould',
    later: 'trim',
    because: 'a saw in the tool cuts the tool; green trim with a knife is the exception',
    source: 'common practice',
  },
  { first: 'demould', later: 'postcure free', because: 'free means off the tool', source: 'by meaning' },
  { first: 'trim', later: 'seal edge', because: 'the seal is cut off again', source: 'common practice' },
  { first: 'drill', later: 'seal hole', because: 'the seal is drilled out again', source: 'common practice' },
  { first: 'sand', later: 'wipe', because: 'sanding leaves dust, and dust spoils the bond', source: 'common practice' },
  { first: 'wipe', later: 'bond', because: 'nothing sticks to dust', source: 'common practice' },
  { first: 'bond', later: 'clamp', because: 'the clamp holds the joint', source: 'by meaning' },
  { first: 'clamp', later: 'cure', because: 'the joint must be held while it sets', source: 'by meaning' },
  {
    first: 'cure',
    later: 'fair',
    because: 'a surface that still shrinks shows through the filler',
    source: 'common practice',
  },
  { first: 'fair', later: 'prime', because: 'primer covers the filler', source: 'common practice' },
  { first: 'prime', later: 'paint', because: 'paint holds on primer', source: 'common practice' },
  {
    first: 'postcure',
    later: 'paint',
    because: 'the heat moves the surface and prints through the paint',
    source: 'common practice',
  },
  {
    first: 'perforate',
    later: 'lay core',
    because: 'on the bench the drill goes through, in the tool it goes on into the skin',
    source: 'common practice',
  },
  {
    first: 'score',
    later: 'lay core',
    because: 'a core is cut on the bench, not on the skin',
    source: 'common practice',
  },
  {
    first: 'chamfer',
    later: 'lay core',
    because: 'the edge is planed before it lies on cloth',
    source: 'common practice',
  },
  {
    first: 'cut',
    later: 'lay cloth',
    because: 'all pieces are cut before the first resin is mixed',
    source: 'common practice',
  },
  { first: 'mix', later: 'degas', because: 'stirring is what brings the air in', source: 'by meaning' },
  { first: 'degas', later: 'infuse', because: 'air in the resin comes out in the part', source: 'common practice' },
  { first: 'unwrap', later: 'demould', because: 'the bag and what is on it come off first', source: 'by meaning' },
  {
    first: 'keep',
    later: 'demould',
    because: 'a part that is out of the tool cannot stay in it',
    source: 'by meaning',
  },
  {
    first: 'cure',
    later: 'polish',
    because: 'a face that still shrinks goes dull again',
    source: 'common practice',
  },
];

const RELEASE: Need = {
  step: 'release',
  because: 'without it the part bonds to the tool',
  source: "supplier's repair page",
};
const LAY: Need = { step: 'lay', because: 'nothing of the stack is laid', source: 'by meaning' };
const CURE: Need = {
  step: 'cure',
  because: 'the plan does not say how long and how warm it cures',
  source: 'by meaning',
};
const DEMOULD: Need = {
  step: 'demould',
  because: 'the plan does not say when the tool is free again',
  source: 'by meaning',
};
const TAPE: Need = { step: 'tape', because: 'nothing seals the bag to the tool', source: 'common practice' };
const BAG: Need = { step: 'bag', because: 'without a bag there is no vacuum', source: 'by meaning' };

/** What a process kind cannot do without. */
export const needed: Readonly<Record<ProcessKind, readonly Need[]>> = {
  infusion: [
    RELEASE,
    TAPE,
    LAY,
    { step: 'peel', because: 'the mesh would be cured to the part', source: 'process pages' },
    { step: 'feed', because: 'the resin has no way in', source: 'by meaning' },
    { step: 'vent', because: 'the air has no way out', source: 'by meaning' },
    BAG,
    { step: 'leak test', because: 'a leak shows only when the resin is already mixed', source: 'process pages' },
    { step: 'infuse', because: 'the resin is not let in', source: 'by meaning' },
    CURE,
    DEMOULD,
  ],
  bagged: [RELEASE, TAPE, LAY, BAG, CURE, DEMOULD],
  hand: [RELEASE, LAY, CURE, DEMOULD],
  prepreg: [RELEASE, LAY, BAG, CURE, DEMOULD],
};

/** The words that narrow `lay` to what is laid. */
export const LAID = ['coat', 'core', 'cloth', 'kit'] as const;

/** The classes that a class belongs to: `postcure free` is also `postcure`. */
export function classesOf(step: StepClass): readonly StepClass[] {
  if (!step.includes(' ')) return [step];
  const words = step.split(' ');
  return words.map((_, index) => words.slice(0, words.length - index).join(' '));
}
