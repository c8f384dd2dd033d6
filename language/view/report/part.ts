import type { Report } from '../../../calc/report.ts';
import { type FigureGroup, partFigureNames } from '../figure-names.ts';
import { reasonsOf, showFigure } from '../figures.ts';
import { firstReason } from '../reasons.ts';
import { say } from '../text.ts';
import { translated } from '../translation.ts';
import type { Section, Telling } from './section.ts';

const leads: Readonly<Record<FigureGroup, string>> = {
  'The part': 'What the finished part comes to, and how that was come by.',
  Resin: 'Resin of the process for one part.',
  'Vacuum and bag': 'What the bag takes, and what the vacuum can do here.',
  Time: 'Working time of one part, and time in which nobody is needed.',
  'Cost of one part': 'What one part costs, as an average of the order.',
  'Cost of the order': 'What the whole order costs.',
};

/** The figures of the part, group by group; one that cannot be told is listed with what is missing. */
export function partSections(report: Report, { style }: Telling, groups: readonly FigureGroup[]): Section[] {
  return groups
    .filter((group) => group !== 'Cost of the order' || report.quantity > 1)
    .map((group) => {
      const rows = report.figures.flatMap((row) => {
        const name = partFigureNames[row.name];
        if (name?.group !== group) return [];
        const value = showFigure(row, style, name.percent);
        return [
          [
            translated(name.label),
            value ?? say('cannot tell'),
            value === undefined ? '' : (firstReason(reasonsOf(row.figure), style) ?? ''),
          ],
        ];
      });
      const head = [say('figure'), say('value'), say('how')];
      return { title: translated(group), lead: translated(leads[group]), table: { head, right: [1], rows } };
    });
}
