import { hazardsOfVerb } from '../../words/cautions.ts';
import type { Verb, Word } from '../../words/index.ts';
import { cautionLine } from '../cautions.ts';
import { durationWords } from '../duration-words.ts';
import { say } from '../text.ts';
import { translated } from '../translation.ts';

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

/** What a word says: meaning, example, default and where it comes from; the hazards of a verb, unless its step tells its own. */
export function wordCard(word: Word, hazards: 'all that may be' | 'none' = 'all that may be'): string {
  const facts = [
    translated(word.meaning),
    word.default === undefined ? '' : say('Nothing typed: {what}.', { what: translated(word.default) }),
    ...(isVerb(word) ? [durationWords(word.word), ...cautionParts(word, hazards)] : []),
    `\`\`\`layup\n${word.example}\n\`\`\``,
    word.source === undefined ? '' : say('Source: {source}.', { source: translated(word.source) }),
  ];
  return facts.filter((fact) => fact !== '').join('\n\n');
}

const isVerb = (word: Word): word is Verb => 'group' in word;

/** What is of the verb itself, and the hazards that it can have: which of them a step has follows from its materials. */
function cautionParts({ word, caution }: Verb, hazards: 'all that may be' | 'none'): string[] {
  const may = hazards === 'none' ? '' : cautionLine(hazardsOfVerb(word));
  return [
    caution === undefined ? '' : say('**Care.** {caution}', { caution: translated(caution) }),
    may === '' ? '' : say('**Caution, as the materials go.** {caution}', { caution: may }),
  ];
}
