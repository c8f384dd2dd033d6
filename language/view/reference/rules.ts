import { rules } from '../../rules/generated/rules.ts';
import type { Rule } from '../../rules/rule.ts';
import { say } from '../text.ts';
import { translated } from '../translation.ts';
import type { RuleLink } from './rule-link.ts';

/** Every rule by its group, with how much it matters. */
export function rulesChapter(link: RuleLink): string {
  const groups = new Map<string, Rule[]>();
  for (const rule of rules as readonly Rule[]) {
    const group = rule.name.split('/')[0] ?? '';
    groups.set(group, [...(groups.get(group) ?? []), rule]);
  }
  const lead = say(
    'An error loses the part or hurts somebody, a warning usually costs something, a note is worth knowing. `accept {rule} "reason"` silences a rule on one line, `laybook.severities` weighs it for a workspace.',
    { rule: 'bag/few-pleats' },
  );
  const sections = [...groups].map(([group, own]) => {
    const lines = own.map(({ name, severity, title, always }) => {
      const to = link(name);
      const shown = to === undefined ? `**${name}**` : `[${name}](${to})`;
      const firm = always === true ? `, ${say('cannot be silenced')}` : '';
      return `- ${shown} (${translated(severity)}${firm}): ${translated(title)}`;
    });
    return `## ${group}\n\n${lines.join('\n')}`;
  });
  return [lead, ...sections].join('\n\n');
}
