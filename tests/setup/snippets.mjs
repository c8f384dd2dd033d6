// What people read of the snippets, and the snippets in the words of a translator. An editor takes them from a file as they are.

/** A text in quotes: a blank to be filled in, or a whole. */
const inQuotes = /"(?:\$\{\d+:([^}]*)\}|([^"$]+))"/g;

/** The name of a snippet, what it says of itself, and what stands in quotes in it. */
export const textsOfSnippet = (name, { description, body }) => [
  name,
  description,
  ...body.flatMap((line) => [...line.matchAll(inQuotes)].map(([, blank, whole]) => blank ?? whole)),
];

/** The snippets with what stands in `words` for their texts. */
export function translatedSnippets(snippets, words) {
  const said = (text) => words[text] || text;
  const quoted = (found, blank, whole) => found.replace(blank ?? whole, () => said(blank ?? whole));
  return Object.fromEntries(
    Object.entries(snippets).map(([name, { prefix, description, body }]) => [
      said(name),
      { prefix, description: said(description), body: body.map((line) => line.replace(inQuotes, quoted)) },
    ]),
  );
}
