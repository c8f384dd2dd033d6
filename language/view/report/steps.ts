import { isKnown } from '../../../calc/figure/figure.ts';
import type { Report, StepRow } from '../../../calc/report.ts';
import { figureOf, showFigure } from '../figures.ts';
import { stepAmounts, stepWords } from '../step-words.ts';
import { say } from '../text.ts';
import { translated } from '../translation.ts';
import type { Section, Telling } from './section.ts';

/** The steps of the process with what they take. */
export function stepSection({ steps }: Report, telling: Telling): Section {
  const { style } = telling;
  const rows = steps.map((row) => [
    `${'  '.repeat(row.depth)}${stepWords(row.step, style)}`,
    stepAmounts(row, style).join(', '),
    unlessNone(row, 'step_working_time', telling),
    unlessNone(row, 'step_standing_time', telling),
    unlessNone(row, 'step_cost', telling),
  ]);
  return {
    title: say('Steps'),
    lead: say('Hands and waiting in the order of the process; a block holds the time of its lines.'),
    table: { head: ['step', 'takes', 'hands', 'waiting', 'consumables'].map(translated), right: [2, 3, 4], rows },
  };
}

function unlessNone({ figures }: StepRow, name: string, { style }: Telling): string {
  const row = figureOf(figures, name);
  if (row !== undefined && isKnown(row.figure) && row.figure.value === 0) return '';
  return showFigure(row, style) ?? '?';
}
