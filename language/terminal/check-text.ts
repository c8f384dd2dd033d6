import { type Text, text } from '../../calc/figure/figure.ts';
import type { Finding } from '../rules/finding.ts';
import type { Severity } from '../rules/rule.ts';
import { safe, say, sayText } from '../view/text.ts';
import type { OpenBook } from './book.ts';
import type { Checked, Summary } from './check.ts';
import { type Located, lineAndColumn, relatedOf } from './places.ts';
import type { Screen, Style } from './screen.ts';
import { snippet } from './snippet.ts';

const severityWords: Readonly<Record<Severity, Text>> = {
  error: text('error'),
  warning: text('warning'),
  info: text('info'),
};

const styles: Readonly<Record<Severity, Style>> = {
  error: ['bold', 'red'],
  warning: ['bold', 'yellow'],
  info: ['bold', 'cyan'],
};

/** Findings for people: place, words and rule, the line with the place underlined, and what else is part of it. */
export function checkText(book: OpenBook, checked: readonly Checked[], summary: Summary, screen: Screen): string {
  const open = checked.flatMap(({ document, findings }) =>
    findings.filter((finding) => finding.accepted === undefined).map((finding) => ({ document, finding })),
  );
  const told = open.map(({ document, finding }) => {
    const at: Located = {
      file: book.nameOf(document.uri.toString()),
      document: document.textDocument,
      span: finding.span,
    };
    const related = relatedOf(book, document, finding).map(
      (place) => `  ${screen.paint('dim', say('see'))} ${safe(lineAndColumn(place))}: ${sayText(place.message)}\n`,
    );
    return `${headOf(at, finding, screen)}\n${snippet(at.document, at.span, styles[finding.severity], screen)}\n${related.join('')}\n`;
  });
  const first = open.find(({ finding }) => finding.severity === 'error') ?? open[0];
  const more =
    first === undefined
      ? ''
      : `${say('laybook explain {rule} says more about that rule; so for every other.', { rule: first.finding.rule })}\n`;
  return `${told.join('')}${summaryLine(summary)}\n${more}`;
}

function headOf(at: Located, { severity, message, rule }: Finding, { paint }: Screen): string {
  return `${paint('bold', safe(lineAndColumn(at)))}: ${paint(styles[severity], sayText(severityWords[severity]))}: ${sayText(message)} ${paint('dim', `[${rule}]`)}`;
}

/** `1 error, 2 warnings, 0 notes` */
export const countsOf = ({ errors, warnings, infos }: Pick<Summary, 'errors' | 'warnings' | 'infos'>): string =>
  [
    errors === 1 ? say('1 error') : say('{count} errors', { count: errors }),
    warnings === 1 ? say('1 warning') : say('{count} warnings', { count: warnings }),
    infos === 1 ? say('1 note') : say('{count} notes', { count: infos }),
  ].join(', ');

function summaryLine({ files, accepted, ...counts }: Summary): string {
  const found = [countsOf(counts), ...(accepted === 0 ? [] : [say('{count} accepted', { count: accepted })])].join(
    ', ',
  );
  return files === 1
    ? say('1 file checked: {found}.', { found })
    : say('{files} files checked: {found}.', { files, found });
}
