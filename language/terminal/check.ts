import type { LangiumDocument } from 'langium';
import type { Finding } from '../rules/finding.ts';
import type { Severity } from '../rules/rule.ts';
import { endOf, type OpenBook, openBook } from './book.ts';
import { checkGithub } from './check-github.ts';
import { checkJson } from './check-json.ts';
import { checkSarif } from './check-sarif.ts';
import { checkText } from './check-text.ts';
import type { ExitCode } from './exit-codes.ts';
import type { Screen } from './screen.ts';

export interface CheckOptions {
  readonly format: 'text' | 'json' | 'sarif' | 'github';
  readonly failOn: Severity;
  readonly book?: string;
}

/** The findings of one file, in order of its text. */
export interface Checked {
  readonly document: LangiumDocument;
  readonly findings: readonly Finding[];
}

export interface Summary {
  readonly files: number;
  readonly errors: number;
  readonly warnings: number;
  readonly infos: number;
  readonly accepted: number;
}

/** `laybook check`: findings of the paths given. */
export async function check(paths: readonly string[], options: CheckOptions, screen: Screen): Promise<ExitCode> {
  const book = await openBook(paths, options.book, screen);
  const checked = await findingsOf(book);
  const summary = summed(checked);
  const { out } = screen;
  switch (options.format) {
    case 'json':
      out(checkJson(book, checked, summary));
      break;
    case 'sarif':
      out(checkSarif(book, checked));
      break;
    case 'github':
      out(checkGithub(book, checked));
      break;
    case 'text':
      out(checkText(book, checked, summary, screen));
  }
  return endOf(book, fails(summary, options.failOn));
}

export async function findingsOf({ services, documents }: OpenBook): Promise<Checked[]> {
  const checked: Checked[] = [];
  for (const document of documents) checked.push({ document, findings: await services.analysis.findings(document) });
  return checked;
}

export function summed(checked: readonly Checked[]): Summary {
  const all = checked.flatMap(({ findings }) => findings);
  const open = all.filter((finding) => finding.accepted === undefined);
  const count = (severity: Severity): number => open.filter((finding) => finding.severity === severity).length;
  return {
    files: checked.length,
    errors: count('error'),
    warnings: count('warning'),
    infos: count('info'),
    accepted: all.length - open.length,
  };
}

function fails({ errors, warnings, infos }: Summary, failOn: Severity): boolean {
  return errors + (failOn === 'error' ? 0 : warnings) + (failOn === 'info' ? infos : 0) > 0;
}
