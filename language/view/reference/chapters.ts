import { say } from '../text.ts';
import { cautionsChapter } from './cautions.ts';
import { materialsChapter } from './materials.ts';
import { notationChapter } from './notation.ts';
import type { RuleLink } from './rule-link.ts';
import { rulesChapter } from './rules.ts';
import { stepsChapter } from './steps.ts';
import { unitsChapter } from './units.ts';

/** Chapters of the reference; each is one page, written from the tables that the checks and the hovers read. */
export const referenceChapters = ['notation', 'units', 'steps', 'materials', 'rules', 'cautions'] as const;
export type ReferenceChapter = (typeof referenceChapters)[number];

interface Chapter {
  title(): string;
  /** what it holds, in a sentence */
  about(): string;
  body(link: RuleLink): string;
}

const CHAPTERS: Readonly<Record<ReferenceChapter, Chapter>> = {
  notation: {
    title: () => say('The notation'),
    about: () =>
      say(
        'Every word by the place where it may stand: what it says, what follows it, what is taken where nothing is typed.',
      ),
    body: notationChapter,
  },
  units: {
    title: () => say('Units'),
    about: () => say('What may stand behind a number, with its factor to SI and where that comes from.'),
    body: unitsChapter,
  },
  steps: {
    title: () => say('Steps of a process'),
    about: () =>
      say(
        'Every verb: what it needs, occupies and uses up, how long it takes, what comes before it, and its line on the sheet.',
      ),
    body: stepsChapter,
  },
  materials: {
    title: () => say('Materials of the stock library'),
    about: () =>
      say('Generic materials that every workspace may use by name, with their values and where these come from.'),
    body: materialsChapter,
  },
  rules: {
    title: () => say('Rules'),
    about: () => say('Everything that is checked. Each rule has a page with its case, its remedy and its source.'),
    body: rulesChapter,
  },
  cautions: {
    title: () => say('Cautions'),
    about: () =>
      say('What can hurt whoever builds a part: what is usually done about it, and the limits of the agencies.'),
    body: cautionsChapter,
  },
};

export const isReferenceChapter = (name: string): name is ReferenceChapter =>
  (referenceChapters as readonly string[]).includes(name);

/** A chapter as Markdown. */
export function referenceChapter(name: ReferenceChapter, link: RuleLink = () => undefined): string {
  const { title, about, body } = CHAPTERS[name];
  return `# ${title()}\n\n${about()}\n\n${body(link).trimEnd()}\n`;
}

/** The list of chapters, each with what it holds. */
export function referenceIndex(address: (chapter: ReferenceChapter) => string | undefined = () => undefined): string {
  const lines = referenceChapters.map((name) => {
    const to = address(name);
    const title = CHAPTERS[name].title();
    return `- **${to === undefined ? name : `[${title}](${to})`}**: ${CHAPTERS[name].about()}`;
  });
  return `# ${say('Reference')}\n\n${say('Written from the tables that the checks, the hovers and the completion read.')}\n\n${lines.join('\n')}\n`;
}

/** Title and contents of the chapters, for a list to choose from. */
export const chapterChoices = (): readonly {
  readonly name: ReferenceChapter;
  readonly title: string;
  readonly about: string;
}[] => referenceChapters.map((name) => ({ name, title: CHAPTERS[name].title(), about: CHAPTERS[name].about() }));
