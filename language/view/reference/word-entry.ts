import type { Word } from '../../words/index.ts';
import { takesText } from '../hover/takes.ts';
import { say } from '../text.ts';
import { translated } from '../translation.ts';

/** A word as one item of a list: what follows it, what it means, what is taken without it, an example, its source. */
export function wordEntry(word: Word): string {
  const takes = takesText(word);
  const facts = [
    translated(word.meaning),
    word.default === undefined ? '' : say('Nothing typed: {what}.', { what: translated(word.default) }),
    word.source === undefined ? '' : say('Source: {source}.', { source: translated(word.source) }),
    `\`${word.example.replace(/\s*\n\s*/g, ' ')}\``,
  ];
  return `- **${word.word}**${takes === '' ? '' : ` ${takes}`}: ${facts.filter((fact) => fact !== '').join(' ')}`;
}
