import { pages } from '../rules/generated/pages.ts';
import { explained, rulesAlike } from '../view/rule-page.ts';
import { type ExitCode, exitCodes, UsageError } from './exit-codes.ts';
import type { Screen } from './screen.ts';
import { wrapped } from './width.ts';

const widest = 100;

/** `laybook explain`: the page of a rule, laid out for the terminal. */
export async function explain(name: string, screen: Screen): Promise<ExitCode> {
  const found = explained(name);
  if (found === undefined) {
    const alike = rulesAlike(name);
    throw new UsageError(`no rule is called ${name}${alike.length === 0 ? '' : `; perhaps ${alike.join(' or ')}`}`);
  }
  const { rule } = found;
  screen.out(`${screen.paint('bold', rule.name)} (${rule.severity}): ${rule.title}\n`);
  screen.out(laidOut((pages[name] ?? '').replace(/^# .*\n/, ''), screen));
  return exitCodes.clean;
}

/** Markdown as our pages use it: headings, paragraphs, lists and fenced fragments of notation. */
export function laidOut(page: string, { paint }: Screen): string {
  const lines: string[] = [];
  let paragraph = '';
  const flush = (): void => {
    const item = /^[-*] /.test(paragraph);
    const text = wrapped(paragraph.replace(/^[-*] /, '').replace(/\*\*(.+?)\*\*/g, '$1'), widest - (item ? 2 : 0));
    lines.push(...text.map((line, i) => (item ? `${i === 0 ? '- ' : '  '}${line}` : line)));
    paragraph = '';
  };
  const gap = (): void => {
    if (lines.at(-1) !== '') lines.push('');
  };
  const source = page.split('\n');
  for (let i = 0; i < source.length; i++) {
    const line = source[i] ?? '';
    const fence = /^```(.*)$/.exec(line);
    if (fence !== null) {
      flush();
      gap();
      const end = source.indexOf('```', i + 1);
      const body = source.slice(i + 1, end < 0 ? source.length : end);
      lines.push(paint('dim', labelOf(fence[1] ?? '', body)), ...body.map((each) => `  ${each}`), '');
      i = end < 0 ? source.length : end;
    } else if (line.startsWith('#')) {
      flush();
      gap();
      lines.push(paint('bold', line.replace(/^#+ /, '')));
    } else if (line.trim() === '') {
      flush();
      gap();
    } else {
      if (/^[-*] /.test(line)) flush();
      paragraph = paragraph === '' ? line : `${paragraph} ${line.trim()}`;
    }
  }
  flush();
  return `${lines.join('\n').trimEnd()}\n`;
}

function labelOf(kind: string, body: readonly string[]): string {
  if (kind.endsWith('mended')) return 'Mended:';
  return body.some((line) => /^\s*\/\/\s*\^/.test(line)) ? 'Found:' : 'Well as it is:';
}
