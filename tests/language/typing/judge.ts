/** What is found after each key, and what of it would annoy who types. */
export interface Found {
  readonly rule: string;
  readonly message: string;
  /** counted from 0 */
  readonly line: number;
}

export interface After {
  /** line that is typed */
  readonly line: number;
  /** the line up to the cursor */
  readonly typed: string;
  readonly found: readonly Found[];
}

const keyOf = ({ rule, message, line }: Found): string => `${line + 1} ${rule}: ${message}`;

/** Key by key where what is found changes, what comes with `+` and what goes with `-`, but for what `left` leaves out. */
export function listOf(all: readonly After[], left: (found: Found, line: number) => boolean): string {
  let before = new Set<string>();
  const lines: string[] = [];
  for (const { line, typed, found } of all) {
    const now = new Set(found.filter((each) => !left(each, line)).map(keyOf));
    const told = [
      ...[...before].filter((key) => !now.has(key)).map((key) => `  - ${key}`),
      ...[...now].filter((key) => !before.has(key)).map((key) => `  + ${key}`),
    ];
    if (told.length > 0) lines.push(`${line + 1}| ${typed.trimStart()}`, ...told);
    before = now;
  }
  return `${lines.join('\n')}\n`;
}

/** Findings on lines that are not being typed which go and come back while one and the same line is typed. */
export function flickers(all: readonly After[]): string[] {
  const flickered = new Set<string>();
  const gone = new Map<string, string>();
  let line = -1;
  let before = new Set<string>();
  for (const after of all) {
    if (after.line !== line) gone.clear();
    line = after.line;
    const now = new Set(after.found.filter((found) => found.line !== line).map(keyOf));
    for (const key of before) if (!now.has(key)) gone.set(key, after.typed);
    for (const key of now)
      if (gone.has(key) && !before.has(key))
        flickered.add(`${key}\n  went at "${gone.get(key)?.trim()}", came back at "${after.typed.trim()}"`);
    before = now;
  }
  return [...flickered];
}
