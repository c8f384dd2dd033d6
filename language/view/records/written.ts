import { answers, type Question } from './questions.ts';

/** A record as it stands in its file. What is not ours to change is kept to the letter. */
export interface WrittenRecord {
  readonly recipe: string;
  readonly size?: string;
  readonly revision?: number;
  /** up to the opening brace, its line included */
  readonly head: readonly string[];
  readonly lines: readonly WrittenLine[];
  /** the closing brace and what stands round it below the last line */
  readonly tail: readonly string[];
  readonly newline: string;
}

export interface WrittenLine {
  /** without its comment, its indent, and what goes on below */
  readonly text: string;
  /** comments above it */
  readonly above: readonly string[];
  /** the line as it stands, and those that go on with it */
  readonly own: readonly string[];
}

/** The text with its comments, and with `texts` what stands in quotes too, as spaces: every place stays where it was. */
function without(text: string, texts: boolean): string {
  return text.replace(/"[^"\n]*"|\/\/[^\n]*|\/\*[\s\S]*?(?:\*\/|$)/g, (found) =>
    found.startsWith('"') && !texts ? found : found.replace(/[^\n]/g, ' '),
  );
}

/** Reads a file of one record whose lines are lines; nothing where it is anything else. */
export function readRecord(file: string): WrittenRecord | undefined {
  const newline = file.includes('\r\n') ? '\r\n' : '\n';
  const text = file.replaceAll('\r\n', '\n');
  const raw = text.split('\n');
  const code = without(text, false).split('\n');
  const bare = without(text, true);
  const bareLines = bare.split('\n');
  const first = bareLines.findIndex((line) => line.includes('{'));
  const last = bareLines.findIndex((line) => line.includes('}'));
  const braces = bare.replace(/[^{}]/g, '');
  if (braces !== '{}' || bareLines[last]?.trim() !== '}' || !bareLines[first]?.trimEnd().endsWith('{'))
    return undefined;
  const named = /(?:^|\n)\s*record\s+(\S+)(?:\s+([^\s\d"{,]\S*))?[^{]*\{/.exec(bare);
  if (named?.[1] === undefined) return undefined;
  const body = linesOf(raw.slice(first + 1, last), code.slice(first + 1, last));
  const revision = body.lines
    .map((line) => /^revision\s+(\d+)$/.exec(line.text)?.[1])
    .find((each) => each !== undefined);
  return {
    recipe: named[1],
    ...(named[2] === undefined ? {} : { size: named[2] }),
    ...(revision === undefined ? {} : { revision: Number(revision) }),
    head: raw.slice(0, first + 1),
    lines: body.lines,
    tail: [...body.below, ...raw.slice(last)],
    newline,
  };
}

function linesOf(raw: readonly string[], code: readonly string[]) {
  const lines: WrittenLine[] = [];
  let above: string[] = [];
  raw.forEach((line, i) => {
    const text = (code[i] ?? '').trim();
    const before = lines.at(-1);
    if (text === '') above.push(line);
    else if (text.startsWith(',') && before !== undefined) {
      lines[lines.length - 1] = { ...before, own: [...before.own, ...above, line] };
      above = [];
    } else {
      lines.push({ text, above, own: [line] });
      above = [];
    }
  });
  return { lines, below: above };
}

/** Without the blanks that an editor left for these questions; a comment above one stays. */
export function withoutBlanks(record: WrittenRecord, questions: readonly Question[]): WrittenRecord {
  const blanks = new Set(questions.map(({ blank }) => blank));
  const lines: WrittenLine[] = [];
  let left: readonly string[] = [];
  for (const line of record.lines) {
    if (blanks.has(line.text)) left = [...left, ...line.above];
    else {
      lines.push({ ...line, above: [...left, ...line.above] });
      left = [];
    }
  }
  return { ...record, lines, tail: [...left, ...record.tail] };
}

/** The file with one more line, behind the last of those that are asked for before it. */
export function withLine(record: WrittenRecord, text: string, questions: readonly Question[]): string {
  const place = (line: string): number => questions.findIndex(({ key }) => answers(line, key));
  const own = place(text);
  const behind = record.lines.findLastIndex((line) => {
    const at = place(line.text);
    return /^revision\b/.test(line.text) || (at >= 0 && at <= own);
  });
  const indent = /^\s*/.exec(record.lines[0]?.own[0] ?? '  ')?.[0] ?? '  ';
  const lines = record.lines.map(({ above, own }) => [...above, ...own]);
  const all = [...lines.slice(0, behind + 1), [`${indent}${text}`], ...lines.slice(behind + 1)];
  return [...record.head, ...all.flat(), ...record.tail].join(record.newline);
}
