import type { Reason } from '../../../calc/figure/figure.ts';
import type { Report } from '../../../calc/report.ts';
import { layerFigureNames, partFigureNames, stepFigureNames } from '../figure-names.ts';
import { missingOf } from '../figures.ts';
import { saidReasons } from '../reasons.ts';
import { stepWords } from '../step-words.ts';
import { say } from '../text.ts';
import { translated } from '../translation.ts';
import { type Section, type Telling, withPlace } from './section.ts';

/** What could not be told, by what is missing: one thing that is missing may stand in the way of many figures. */
export function missingSection(report: Report, telling: Telling): Section {
  const { style } = telling;
  const waiting = new Map<string, Set<string>>();
  const note = (because: readonly Reason[], what: string): void => {
    for (const said of saidReasons(because, style, { deepest: 1, most: 20 })) {
      const key = withPlace(said.words, said.at, telling);
      const list = waiting.get(key);
      if (list === undefined) waiting.set(key, new Set([what]));
      else list.add(what);
    }
  };
  for (const { name, figure } of report.figures) note(missingOf(figure), labelled(partFigureNames[name], name));
  for (const { laid, figures } of report.layers) {
    for (const { name, figure } of figures)
      note(
        missingOf(figure),
        say('{figure} of {of}', { figure: labelled(layerFigureNames[name], name), of: laid.name }),
      );
  }
  for (const { name, split } of report.resins) note(missingOf(split), say('the mix of {resin}', { resin: name }));
  for (const { step, figures, amount } of report.steps) {
    const words = stepWords(step, style);
    note(missingOf(amount), say('what {step} takes', { step: words }));
    for (const { name, figure } of figures)
      note(missingOf(figure), say('{figure} of {of}', { figure: labelled(stepFigureNames[name], name), of: words }));
  }
  const rows = [...waiting].map(([why, figures]) => [why, shortList([...figures])]);
  return {
    title: say('What cannot be told'),
    lead: say('What is missing, and which figures wait for it.'),
    table: { head: [say('because'), say('so nothing can be said of')], right: [], rows },
  };
}

function labelled(name: { readonly label: string; readonly group?: string } | undefined, fallback: string): string {
  if (name === undefined) return fallback;
  return name.group === 'Cost of the order'
    ? say('{figure} of the order', { figure: translated(name.label) })
    : translated(name.label);
}

const mostNamed = 6;

function shortList(names: readonly string[]): string {
  const shown = names.slice(0, mostNamed).join(', ');
  return names.length > mostNamed ? say('{shown} and {count} more', { shown, count: names.length - mostNamed }) : shown;
}
