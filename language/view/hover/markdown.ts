import type { Word } from '../../words/index.ts';

/** Words that come from a file are shown as they are typed: no mark of them means anything to the page. */
export function plain(text: string): string {
  return (
    text
      .replace(/[\u0000-\u0008\u000b-\u001f\u007f\u200e\u200f\u202a-\u202e\u2066-\u2069]/g, '')
      .replace(/[\\`*_[\]<>|~&$]/g, (mark) => (mark === '&' ? '&amp;' : mark === '<' ? '&lt;' : `\\${mark}`))
      .replace(/\s*\n\s*/g, ' ')
      // signs that only mean something where a paragraph begins: heading, list, rule
      .replace(/^(\s*)([#+=-])(?=[\s#+=-]|$)/, '$1\\$2')
      .replace(/^(\s*\d+)([.)])(?=\s|$)/, '$1\\$2')
  );
}

/** A stretch of notation, in a frame of its own. */
export const code = (text: string): string => `\`${text.replace(/`/g, "'").replace(/\s*\n\s*/g, ' ')}\``;

/** What a word says: meaning, example, default and where it comes from. */
export function wordCard(word: Word): string {
  const facts = [
    word.meaning,
    word.default === undefined ? '' : `Nothing typed: ${word.default}.`,
    'caution' in word && typeof word.caution === 'string' ? `**Caution.** ${word.caution}` : '',
    `\`\`\`layup\n${word.example}\n\`\`\``,
    word.source === undefined ? '' : `Source: ${word.source}.`,
  ];
  return facts.filter((fact) => fact !== '').join('\n\n');
}
