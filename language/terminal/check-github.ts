import type { Severity } from '../rules/rule.ts';
import { safe, sayText } from '../view/text.ts';
import type { OpenBook } from './book.ts';
import type { Checked } from './check.ts';
import { place } from './check-json.ts';

const kinds: Readonly<Record<Severity, string>> = { error: 'error', warning: 'warning', info: 'notice' };

/** Open findings as workflow commands of GitHub Actions, one a line: they are shown at their lines in a merge request. */
export function checkGithub(book: OpenBook, checked: readonly Checked[]): string {
  const lines = checked.flatMap(({ document, findings }) =>
    findings
      .filter(({ accepted }) => accepted === undefined)
      .map(({ rule, severity, message, span }) => {
        const { file, range } = place({
          file: book.nameOf(document.uri.toString()),
          document: document.textDocument,
          span,
        });
        const { start, end } = range;
        // Columns are only told of a range within one line.
        const columns =
          start.line === end.line
            ? `,col=${start.character + 1},endColumn=${Math.max(end.character, start.character + 1)}`
            : '';
        const properties = `file=${property(file)},line=${start.line + 1},endLine=${end.line + 1}${columns},title=${property(rule)}`;
        return `::${kinds[severity]} ${properties}::${data(safe(sayText(message)))}\n`;
      }),
  );
  return lines.join('');
}

/** What would end a command's text or part of it is written as in an address. */
const data = (text: string): string => text.replace(/%/g, '%25').replace(/\r/g, '%0D').replace(/\n/g, '%0A');
const property = (text: string): string => data(text).replace(/:/g, '%3A').replace(/,/g, '%2C');
