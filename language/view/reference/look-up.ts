import { senses, verb, type Word, words } from '../../words/index.ts';
import { nearestWords } from '../../words/nearest.ts';
import { wordCard } from '../hover/markdown.ts';
import { takesText } from '../hover/takes.ts';
import { cautionCards } from './cautions.ts';
import { stockTexts } from './materials.ts';
import { placeHeading } from './place-heading.ts';
import { verbFacts } from './steps.ts';

/** What a word means, or the word that is meant by a spelling of other shops: `medium` is mesh. */
const meantBy = (name: string): readonly Word[] => {
  const own = senses(name);
  return own.length > 0 ? own : words.filter(({ instead }) => instead?.includes(name) === true);
};

/** What the reference says of one word of the notation or one material of the stock library; none where it knows neither. */
export function referenceOf(name: string): string | undefined {
  const cards = meantBy(name).map((word) => {
    const takes = takesText(word);
    return `## ${word.at.map(placeHeading).join(', ')}\n\n**${word.word}**${takes === '' ? '' : ` ${takes}`}\n\n${wordCard(word)}${ofVerb(word)}`;
  });
  const entries = stockTexts()
    .filter((entry) => entry.name === name)
    .map(({ kind, title, facts }) => `## ${kind}: ${title}\n\n${facts.map((fact) => `- ${fact}`).join('\n')}`);
  const all = [...cards, ...entries, ...cautionCards(name)];
  return all.length === 0 ? undefined : `# ${name}\n\n${all.join('\n\n')}\n`;
}

/** What a step needs, occupies, uses up and waits for. */
function ofVerb(word: Word): string {
  const step = word.at.includes('process') ? verb(word.word) : undefined;
  return step === undefined
    ? ''
    : `\n\n${verbFacts(step)
        .map((fact) => `- ${fact}`)
        .join('\n')}`;
}

/** Words and materials that may have been meant: those of this kind (`twill`, `balsa`), else those that are spelled nearly so. */
export function referenceAlike(name: string): readonly string[] {
  const ofKind = stockTexts()
    .filter((entry) => holdsWord(entry.name, name) || holdsWord(entry.title, name))
    .map((entry) => entry.name);
  if (ofKind.length > 0) return ofKind.slice(0, mostOfKind);
  return nearestWords(name, [...new Set([...words.map(({ word }) => word), ...stockTexts().map((e) => e.name)])], 3);
}

const mostOfKind = 8;

const holdsWord = (text: string, word: string): boolean =>
  text
    .toLowerCase()
    .split(/[^a-z0-9]+/)
    .includes(word.toLowerCase());
