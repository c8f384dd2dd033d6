import type { Report } from '../../../calc/report.ts';
import { say } from '../text.ts';
import { cautionSection } from './cautions.ts';
import { expectSection } from './expects.ts';
import { layerSection, pieceSection, stackProblemSection } from './layers.ts';
import { missingSection } from './missing.ts';
import { partSections } from './part.ts';
import { resinSection } from './resin.ts';
import type { Section, Telling } from './section.ts';
import { stepSection } from './steps.ts';

export type { Section, Table, Telling } from './section.ts';

/** A report in the order in which it is read; parts with nothing in them are left out. */
export function sectionsOf(report: Report, telling: Telling): Section[] {
  return [
    ...partSections(report, telling, ['The part']),
    layerSection(report, telling),
    pieceSection(report, telling),
    stackProblemSection(report, telling),
    ...partSections(report, telling, ['Resin']),
    resinSection(report, telling),
    ...partSections(report, telling, ['Vacuum and bag']),
    stepSection(report, telling),
    cautionSection(telling.cautions),
    ...partSections(report, telling, ['Time', 'Cost of one part', 'Cost of the order']),
    expectSection(report, telling),
    missingSection(report, telling),
  ].filter((section) => (section.table?.rows.length ?? 0) > 0 || (section.lines?.length ?? 0) > 0);
}

export function titleOf({ recipe, title, size, revision, quantity }: Report): string {
  const facts = [
    title === undefined ? recipe : `${recipe}: ${title}`,
    ...(size === undefined ? [] : [say('size {size}', { size })]),
    ...(revision === undefined ? [] : [say('revision {revision}', { revision: String(revision) })]),
    quantity === 1 ? say('1 part') : say('{count} parts', { count: quantity }),
  ];
  return facts.join(', ');
}

/** Stands under every report. */
export const caution =
  'Reckoned from the recipe and from typical values; it certifies nothing. Data sheets, local codes and, where somebody can be hurt, ' +
  'a licensed engineer have the last word. Weigh the part and correct the recipe.';
