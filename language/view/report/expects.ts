import type { Test } from '../../../calc/model/index.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import type { Quantity } from '../../../calc/quantity/index.ts';
import type { Report } from '../../../calc/report.ts';
import { showAmount } from '../figures.ts';
import { firstReason } from '../reasons.ts';
import { type Style, say, show } from '../text.ts';
import { translated } from '../translation.ts';
import type { Section, Telling } from './section.ts';

/** What the recipe expects of itself, and whether it is so. */
export function expectSection({ expects }: Report, telling: Telling): Section {
  const { style } = telling;
  const rows = expects.map(({ expectation, verdict: { verdict, actual, beyond, reasons } }) => {
    const why = verdict === 'met' || verdict === 'not met' ? undefined : firstReason(reasons, style);
    const by =
      verdict === 'not met' && beyond !== undefined
        ? say('by {beyond}', { beyond: asTyped(beyond, expectation.test) }, style)
        : '';
    return [
      testWords(expectation.test, style),
      translated(verdict),
      actual === undefined ? '' : show(asTyped(actual, expectation.test), style),
      why ?? by,
    ];
  });
  return {
    title: say('Expectations'),
    lead: say('What the recipe expects, and how it stands.'),
    table: { head: [say('expected'), say('verdict'), say('is'), ''], right: [2], rows },
  };
}

/** A ratio whose limit is typed in per cent is told so too. */
export function asTyped(actual: Quantity, { limit, low }: Test): Quantity {
  const typed = limit === UNKNOWN ? undefined : (limit ?? low);
  return typed?.unit === '%' ? { ...actual, unit: '%' } : actual;
}

/** `thickness at middle 20.8 mm to 21.5 mm`, `wet film 0.4 mm to 0.6 mm` */
export function testWords(
  { what, under, at, on, of, basis, comparison, limit, low, high }: Test,
  style: Style,
): string {
  const place = at === undefined ? [] : ['at', typeof at === 'string' ? at : say('a place')];
  const bound = limit === undefined ? [] : [comparison ?? '', limit === UNKNOWN ? '?' : showAmount(limit, style)];
  const range =
    low === undefined
      ? []
      : high === undefined
        ? [showAmount(low, style), ...(low.tolerance === undefined ? [] : [`+- ${show(low.tolerance, style)}`])]
        : [showAmount(low, style), 'to', showAmount(high, style)];
  return [
    what.replaceAll('_', ' '),
    ...(under === undefined ? [] : ['under', under]),
    ...(on === undefined ? [] : ['on', on]),
    ...place,
    ...bound,
    ...range,
    ...(of === undefined ? [] : ['of', of]),
    ...(basis === undefined ? [] : [basis]),
  ]
    .filter((word) => word !== '')
    .join(' ');
}
