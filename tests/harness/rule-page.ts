import { readFileSync } from 'node:fs';
import path from 'node:path';

/** One fenced fragment of a rule's page, with what it must say. */
export interface Fragment {
  readonly code: string;
  readonly marks: readonly Mark[];
  /** what the first fix of the first finding makes of it */
  readonly mended?: string;
  /** line of the page on which the fence opens, from 1 */
  readonly line: number;
}

/** `//   ^^^^ wrap/short: words` below a line of the fragment. */
export interface Mark {
  readonly line: number;
  readonly from: number;
  readonly to: number;
  readonly rule: string;
  readonly message: string;
}

export interface RulePage {
  readonly file: string;
  readonly text: string;
  readonly title: string;
  readonly fragments: readonly Fragment[];
}

/** Chapters that every page has, in this order. */
export const chapters = ['What it checks', 'What goes wrong at the bench', 'How to mend it', 'Source'] as const;

const markLine = /^\s*\/\/\s*(\^+)\s+([a-z_]+\/[a-z_-]+):?\s*(.*)$/;

export function readPage(file: string): RulePage {
  const text = readFileSync(file, 'utf8');
  const fragments: Fragment[] = [];
  const lines = text.split('\n');
  for (let i = 0; i < lines.length; i++) {
    const fence = /^```layup( mended)?\s*$/.exec(lines[i] ?? '');
    if (fence === null) continue;
    const start = i + 1;
    let end = start;
    while (end < lines.length && lines[end] !== '```') end++;
    const body = lines.slice(start, end);
    if (fence[1] === undefined) fragments.push(readFragment(body, i + 1));
    else {
      const last = fragments.pop();
      if (last === undefined) throw new Error(`${file}: a mended fragment without the one that it mends`);
      fragments.push({ ...last, mended: body.join('\n') });
    }
    i = end;
  }
  return { file: path.relative(process.cwd(), file), text, title: /^# (.*)$/m.exec(text)?.[1] ?? '', fragments };
}

function readFragment(body: readonly string[], line: number): Fragment {
  const code: string[] = [];
  const marks: Mark[] = [];
  for (const each of body) {
    const mark = markLine.exec(each);
    if (mark === null) {
      code.push(each);
      continue;
    }
    const from = each.indexOf('^');
    marks.push({
      line: code.length - 1,
      from,
      to: from + (mark[1] ?? '').length,
      rule: mark[2] ?? '',
      message: mark[3] ?? '',
    });
  }
  return { code: code.join('\n'), marks, line };
}

/** Writes the marks below their lines. A mark that would begin left of the comment sign is written at its first column. */
export function writeFragment(code: string, marks: readonly Mark[]): string {
  return code
    .split('\n')
    .flatMap((text, line) => [
      text,
      ...marks
        .filter((mark) => mark.line === line)
        .map((mark) => {
          const from = Math.max(mark.from, 2);
          return `//${' '.repeat(from - 2)}${'^'.repeat(Math.max(1, mark.to - from))} ${mark.rule}: ${mark.message}`;
        }),
    ])
    .join('\n');
}
