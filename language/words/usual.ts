/**
 * Which words come next most often, by the habits of who writes recipes (common practice). Completion shows them first; they mean
 * nothing else, and what is missing here is offered all the same.
 */

/** Entries of a file. */
export const usualEntries: readonly string[] = [
  'recipe',
  'fabric',
  'core',
  'tool',
  'resin',
  'consumable',
  'record',
  'shop',
];

/** Steps, in the order of an everyday build. */
export const usualSteps: readonly string[] = [
  ...['clean', 'release', 'coat', 'tape', 'kit', 'tack', 'lay', 'wet', 'peel', 'perforated', 'breather'],
  ...['mesh', 'feed', 'vent', 'trap', 'bag', 'vacuum', 'leak test', 'check', 'tint', 'mix', 'infuse', 'wait', 'cure'],
  ...['postcure', 'demould', 'trim', 'drill', 'bond', 'weigh'],
];

/** Steps that follow themselves. */
export const usualAgain: ReadonlySet<string> = new Set(['lay', 'wet']);

/** Layers of a stack. */
export const usualLayers: readonly string[] = ['ply', 'core', 'insert', 'strip', 'patch', 'coat'];

/** Clauses of a layer, by its kind. */
export const usualClauses: Readonly<Record<string, readonly string[]>> = {
  coat: ['brush', 'roller', 'spray', 'coats', 'note'],
  ply: ['wrap', 'net', 'darts', 'turned', 'tab', 'to', 'note'],
  strip: ['centred', 'net', 'turned', 'over', 'note'],
  patch: ['over', 'net', 'rectangle', 'centred', 'note'],
  core: ['perforate', 'groove', 'chamfer', 'inset', 'note'],
  insert: ['rectangle', 'circle', 'centred', 'seal', 'note'],
};

/** What a recipe expects; under a load, where it has one. */
export const usualExpectations: readonly string[] = ['mass', 'sag', 'margin', 'thickness', 'fill', 'material', 'cost'];
