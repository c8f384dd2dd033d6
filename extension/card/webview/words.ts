/** Words of the page; the editor puts those of the reader's language in their place. */
export const words = {
  pin: 'Pinned: stays on this layer',
  moveCursor: 'Arrow keys move the cursor in the text',
  copy: 'Copy as text',
  first: 'Show the first layer',
  goTo: 'Go to the line',
  stack: 'The layer in the stack',
  stackHelp: 'Arrow up and arrow down go from layer to layer, Enter goes to its line.',
  stackList: 'The stack as a list',
  toolFace: 'tool face',
  bagFace: 'bag face',
  toScale: 'Heights to scale: {total} in all.',
  notToScale: 'Not all to scale: thin layers are drawn thicker than they are. {total} in all.',
  unknownHeight: 'Not to scale: the thickness of a layer is not known.',
  moreLayers: '{above} layers above and {below} layers below are not drawn.',
  hatching: 'Hatching runs as the fibres do, seen from the bag side; level is along the part.',
  piece: 'The piece',
  pieceHelp: 'Solid: the piece to cut. Dashed: the outline of the part.',
  reach: 'reach',
  size: 'size',
  figures: 'Figures',
  why: 'why',
  cannotTell: 'cannot be told',
  missing: 'What is missing',
  touches: 'What it touches',
  below: 'below',
  above: 'above',
  around: 'with it',
  old: 'As of before. {why}',
  layerShown: 'shown',
};

export type Words = typeof words;

/** Puts figures into words. */
export const say = (template: string, figures: Readonly<Record<string, string | number>>): string =>
  template.replace(/\{(\w+)\}/g, (whole, name: string) => String(figures[name] ?? whole));
