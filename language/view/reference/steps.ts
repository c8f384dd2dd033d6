import { hazardsOfVerb } from '../../words/cautions.ts';
import { GROUPS, needed, precedes, type Verb, verbs } from '../../words/index.ts';
import { cautionLine } from '../cautions.ts';
import { durationSource, durationWords } from '../duration-words.ts';
import { say } from '../text.ts';
import { translated } from '../translation.ts';
import { wordEntry } from './word-entry.ts';

/** Every verb by its group, in the order in which a part is usually built. */
export function stepsChapter(): string {
  const lead = say('Default times: {source}.', { source: durationSource() });
  const groups = GROUPS.map((group) => {
    const rows = verbs.filter((verb) => verb.group === group).map(verbEntry);
    return `## ${translated(group)}\n\n${rows.join('\n')}`;
  });
  return [lead, ...groups, needs()].join('\n\n');
}

function verbEntry(verb: Verb): string {
  const facts = [
    ...verbFacts(verb),
    durationWords(verb.word),
    verb.caution === undefined ? '' : say('Care: {caution}', { caution: translated(verb.caution) }),
    may(verb.word),
  ];
  return [wordEntry(verb), ...facts.filter((fact) => fact !== '').map((fact) => `  - ${fact}`)].join('\n');
}

/** What a step needs, occupies and uses up, which clauses it takes, its place in the order and its line on the sheet. */
export function verbFacts(verb: Verb): readonly string[] {
  const facts = [
    say('On the sheet: {sheet}', { sheet: translated(verb.sheet) }),
    listed(say('Kinds that stand behind it'), verb.material),
    listed(say('Needs'), verb.needs?.map(translated)),
    listed(say('Occupies'), verb.occupies.map(translated)),
    listed(
      say('Uses up'),
      verb.consumes?.map(({ what, by, why }) => `${translated(what)}, ${translated(by)} (${translated(why)})`),
    ),
    listed(
      say('Clauses'),
      verb.clauses.map((clause) => `\`${clause}\``),
    ),
    verb.processes.length === 4 ? '' : listed(say('In'), verb.processes),
    ...order(verb.word),
  ];
  return facts.filter((fact) => fact !== '');
}

const listed = (what: string, of: readonly string[] | undefined): string =>
  of === undefined || of.length === 0 ? '' : `${what}: ${of.join(', ')}.`;

const may = (word: string): string => {
  const line = cautionLine(hazardsOfVerb(word));
  return line === '' ? '' : say('Caution, as the materials go: {caution}', { caution: line });
};

/** Its place in the partial order; `lay coat` belongs to `lay`. */
function order(word: string): string[] {
  const own = (step: string): boolean => step === word || step.startsWith(`${word} `);
  const after = precedes
    .filter(({ later }) => own(later))
    .map(({ first, later, because, source }) =>
      say('{later} comes after {first}: {because} (source: {source}).', {
        later,
        first,
        because: translated(because),
        source: translated(source),
      }),
    );
  const before = [...new Set(precedes.filter(({ first }) => own(first)).map(({ later }) => later))];
  if (after.length === 0 && before.length === 0) return [say('It may stand wherever the work wants it.')];
  return [...after, ...(before.length === 0 ? [] : [say('It comes before {steps}.', { steps: before.join(', ') })])];
}

/** What each kind of process cannot do without. */
function needs(): string {
  const lines = Object.entries(needed).map(([kind, rows]) => {
    const steps = rows.map(({ step, because }) => `${step} (${translated(because)})`);
    return `- **${kind}**: ${steps.join('; ')}.`;
  });
  return `## ${say('What a process cannot do without')}\n\n${lines.join('\n')}`;
}
