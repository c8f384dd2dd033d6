/** Drawings that lie beside the recipe of a rule page's fragment: shapes at the size of the standard part. */

const svg = (head: string, content: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${head}>\n${content}\n</svg>\n`;

const inMm = 'width="1200mm" height="500mm" viewBox="0 0 1200 500"';
const deck = '<rect id="deck" width="1180" height="420" rx="140"/>';

export const standardDrawings: Readonly<Record<string, string>> = {
  // One layer for the saw, one where the last side of the curve was forgotten.
  'drawings/deck.svg': svg(inMm, `<g id="cut">${deck}</g>\n<g id="sketch"><path d="M 0 0 H 1180 V 420 H 0 V 6"/></g>`),
  'drawings/no_unit.svg': svg('viewBox="0 0 1200 500"', deck),
  // Two curves, one of them with a letter where a number should be.
  'drawings/broken.svg': svg(inMm, `${deck}\n<path d="M 0 0 L 10 ten"/>`),
};
