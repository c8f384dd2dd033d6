import type { Change, Clause, Without } from '../grammar/generated/ast.ts';

const none: readonly Clause[] = [];

/** What a size or a likeness changes, line by line: clauses by the name of the line, and lines that are left out. */
export class Overrides {
  private readonly changes = new Map<string, readonly Clause[]>();
  private readonly dropped = new Set<string>();

  constructor(lines: readonly (Change | Without)[]) {
    for (const line of lines) {
      const name = line.line?.$refText;
      if (name === undefined) continue;
      if (line.$type === 'Without') this.dropped.add(name);
      else this.changes.set(name, [...(this.changes.get(name) ?? []), ...line.clauses]);
    }
  }

  /** These, and on top of them the changes of some lines. */
  plus(lines: readonly (Change | Without)[]): Overrides {
    if (lines.length === 0) return this;
    const all = new Overrides(lines);
    for (const [name, clauses] of this.changes) all.changes.set(name, [...clauses, ...all.changesOf(name)]);
    for (const name of this.dropped) all.dropped.add(name);
    return all;
  }

  without(name: string): boolean {
    return this.dropped.has(name);
  }

  changesOf(name: string | undefined): readonly Clause[] {
    return (name === undefined ? undefined : this.changes.get(name)) ?? none;
  }
}

/** What some of the lines of a block change; mostly none does. */
export function overridesAmong(lines: readonly { readonly $type: string }[]): Overrides {
  const found: (Change | Without)[] = [];
  for (const line of lines)
    if (line.$type === 'Change' || line.$type === 'Without') found.push(line as Change | Without);
  return found.length === 0 ? nothing : new Overrides(found);
}

const nothing = new Overrides([]);
