import type { AstNode } from 'langium';
import { type Text, text } from '../../calc/figure/figure.ts';
import type { EntryKey, Place } from '../../calc/model/index.ts';
import type { Lets } from './lets.ts';
import { headSpan, nodeSpan, type Span } from './places.ts';
import type { AcceptLine, Fix, Problem } from './problem.ts';

/** What one entry is lowered with: it collects places, problems and accepted rules. Lowering never throws and never fails. */
export class Lowering {
  readonly entry: EntryKey;
  readonly places = new Map<string, Span>();
  readonly problems: Problem[] = [];
  readonly accepts: AcceptLine[] = [];
  /** `let`s of the recipe; none in other entries */
  lets: Lets | undefined;
  /** set while lines of another recipe are read (`like`): they stand where the likeness is written */
  inherited: Span | undefined;
  /** ends of the part that places are counted from; told apart from those that there are once the part is read */
  readonly endsUsed: { readonly name: string; readonly span: Span }[] = [];
  private readonly reported = new Set<string>();

  constructor(entry: EntryKey) {
    this.entry = entry;
  }

  at(path: string): Place {
    return { entry: this.entry, path };
  }

  /** Notes where a path stands; the first word on it counts. */
  place(path: string, where: AstNode | Span | undefined): string {
    const span = this.spanFor(where);
    if (span !== undefined && !this.places.has(path)) this.places.set(path, span);
    return path;
  }

  /** A clause that a size changes stands elsewhere than the one it replaces: it gets a path of its own. A recipe has few sizes. */
  placeClause(path: string, where: AstNode | Span | undefined): string {
    const span = this.spanFor(where);
    for (let i = 1; i <= 30; i++) {
      const at = i === 1 ? path : `${path}~${i}`;
      const there = this.places.get(at);
      if (there === undefined || span === undefined || (there.offset === span.offset && there.end === span.end))
        return this.place(at, span);
    }
    return path;
  }

  placeHead(path: string, node: AstNode): string {
    const span = this.inherited ?? headSpan(node);
    if (span !== undefined && !this.places.has(path)) this.places.set(path, span);
    return path;
  }

  problem(rule: string, where: AstNode | Span | undefined, message: Text | string, fixes?: readonly Fix[]): void {
    const span = this.spanFor(where);
    if (span === undefined) return;
    const words = typeof message === 'string' ? text(message) : message;
    // the same line is read once for each size of a recipe
    const key = `${rule} ${span.offset} ${span.end} ${words.template}`;
    if (this.reported.has(key)) return;
    this.reported.add(key);
    this.problems.push({ rule, message: words, span, ...(fixes === undefined || this.inherited ? {} : { fixes }) });
  }

  endUsed(name: string | undefined, where: AstNode | Span | undefined): void {
    const span = this.spanFor(where);
    if (name !== undefined && span !== undefined) this.endsUsed.push({ name, span });
  }

  spanFor(where: AstNode | Span | undefined): Span | undefined {
    if (where === undefined) return undefined;
    if (this.inherited !== undefined) return this.inherited;
    return isNode(where) ? nodeSpan(where) : where;
  }
}

const isNode = (where: AstNode | Span): where is AstNode => (where as Partial<AstNode>).$type !== undefined;
