import { text } from '../../calc/figure/figure.ts';
import { pages } from '../rules/generated/pages.ts';
import { isReferenceChapter, referenceChapter, referenceIndex } from '../view/reference/chapters.ts';
import { referenceAlike, referenceOf } from '../view/reference/look-up.ts';
import { explained, rulesAlike } from '../view/rule-page.ts';
import { say } from '../view/text.ts';
import { translated } from '../view/translation.ts';
import { type ExitCode, exitCodes, UsageError } from './exit-codes.ts';
import type { Screen } from './screen.ts';
import { wrapped } from './width.ts';
import { perhaps } from './wrong-calls.ts';

const widest = 100;

/** `laybook explain`: the page of a rule, a chapter of the reference, a word or a material, laid out for the terminal. */
export async function explain(name: string | undefined, screen: Screen): Promise<ExitCode> {
  const found = name === undefined ? undefined : explained(name);
  if (name === undefined || found === undefined) {
    const page =
      name === undefined ? referenceIndex() : isReferenceChapter(name) ? referenceChapter(name) : referenceOf(name);
    if (page === undefined) throw unknown(name ?? '');
    screen.out(laidOut(page, screen));
    return exitCodes.clean;
  }
  const { rule } = found;
  screen.out(`${screen.paint('bold', rule.name)} (${translated(rule.severity)}): ${translated(rule.title)}\n`);
  screen.out(laidOut((pages[name] ?? '').replace(/^# .*\n/, ''), screen));
  return exitCodes.clean;
}

function unknown(name: string): UsageError {
  const alike = name.includes('/') ? rulesAlike(name) : referenceAlike(name);
  const problem = name.includes('/')
    ? text('no rule is called {name}', { name })
    : text('no word, no material of the stock library and no rule is called {name}', { name });
  return new UsageError(perhaps(problem, alike));
}

/** Markdown as our pages use it: headings, paragraphs, lists and fenced fragments of notation. */
export function laidOut(page: string, { paint }: Screen): string {
  const lines: string[] = [];
  let paragraph = '';
  const flush = (): void => {
    const [mark = '', indent = ''] = /^( *)[-*] /.exec(paragraph) ?? [];
    const text = wrapped(paragraph.slice(mark.length).replace(/\*\*(.+?)\*\*/g, '$1'), widest - mark.length);
    lines.push(...text.map((line, i) => `${i === 0 && mark !== '' ? `${indent}- ` : ' '.repeat(mark.length)}${line}`));
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
      if (/^ *[-*] /.test(line)) flush();
      paragraph = paragraph === '' ? line : `${paragraph} ${line.trim()}`;
    }
  }
  flush();
  return `${lines.join('\n').trimEnd()}\n`;
}

function labelOf(kind: string, body: readonly string[]): string {
  if (kind.endsWith('mended')) return say('Mended:');
  return body.some((line) => /^\s*\/\/\s*\^/.test(line)) ? say('Found:') : say('Well as it is:');
}
