import { DEFERRAL } from '../../words/cautions.ts';
import { type Caution, limitWords } from '../cautions.ts';
import { say } from '../text.ts';
import { translated } from '../translation.ts';
import type { Section } from './section.ts';

/** What can hurt whoever builds this part: the hazards of its steps and materials, and no others. */
export function cautionSection(cautions: readonly Caution[]): Section {
  const lines = cautions.map(({ hazard, steps }) => {
    const at = [...new Set(steps.map(({ verb }) => verb))].join(', ');
    const limits = hazard.limits.map((limit) => limitWords(limit, hazard));
    return [
      translated(hazard.brief),
      say('At: {steps}.', { steps: at }),
      ...(limits.length === 0 ? [] : [say('Limits: {limits}.', { limits: limits.join('; ') })]),
    ].join(' ');
  });
  return {
    title: say('Cautions'),
    lead: `${say('What can hurt at the steps of this recipe. Limits in the air differ from agency to agency and are revised.')} ${translated(DEFERRAL)}`,
    lines,
  };
}
