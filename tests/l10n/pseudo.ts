/** A language made up for tests: every letter of every template is another one, so that a letter of ours is seen to be untranslated. */

const plain = 'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ';
const other = 'àƀćđéƒĝĥíĵķļɱñóƥɋřšťúṽŵẋýžÀƁĆĐÉƑĜĤÍĴĶĻⱮÑÓƤɊŘŠŤÚṼŴẊÝŽ';
const letters = new Map([...plain].map((letter, i) => [letter, [...other][i] ?? letter]));

/** `{reach} past the outline` is `⟦{reach} ƥàšť ťĥé óúťļíñé⟧`; figures keep their names. */
export const pseudo = (template: string): string =>
  `⟦${template.replace(/\{\w+\}|[A-Za-z]/g, (found) => letters.get(found) ?? found)}⟧`;

export const pseudoTable = (texts: Iterable<string>): Record<string, string> =>
  Object.fromEntries([...texts].map((text) => [text, pseudo(text)]));
