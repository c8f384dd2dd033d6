import { DEFERRAL, hazards } from '../../words/cautions.ts';
import type { Hazard } from '../../words/hazard.ts';
import { limitWords } from '../cautions.ts';
import { say } from '../text.ts';
import { translated } from '../translation.ts';
import type { RuleLink } from './rule-link.ts';

/** What can hurt whoever builds a part: what to do, what it does, at which steps, the limits of the agencies, and who has the last word. */
export const cautionsChapter = (link: RuleLink): string =>
  [translated(DEFERRAL), ...hazards.map((hazard) => cautionEntry(hazard, link))].join('\n\n');

/** Hazards by a name of theirs, as the chapter tells of them: `dust` is that of foam, and of glass and of carbon. */
export function cautionCards(name: string): readonly string[] {
  const found = hazards.filter((hazard) => hazard.name === name || hazard.name.split('_').includes(name));
  return found.length === 0
    ? []
    : [...found.map((hazard) => cautionEntry(hazard, () => undefined)), translated(DEFERRAL)];
}

function cautionEntry(hazard: Hazard, link: RuleLink): string {
  const steps = [...new Set(hazard.applies.flatMap(({ verbs }) => verbs))];
  const rules = hazard.rules.map((rule) => {
    const to = link(rule);
    return to === undefined ? rule : `[${rule}](${to})`;
  });
  const lines = [
    translated(hazard.harm),
    ...(steps.length === 0 ? [] : [say('At these steps, as the materials go: {steps}.', { steps: steps.join(', ') })]),
    ...hazard.limits.map((limit) => limitWords(limit, hazard)),
    ...(rules.length === 0 ? [] : [say('Rules: {rules}.', { rules: rules.join(', ') })]),
    say('Source: {source}.', { source: hazard.source }),
  ];
  return `## ${translated(hazard.title)}\n\n${translated(hazard.brief)}\n\n${lines.map((line) => `- ${line}`).join('\n')}`;
}
