import { type Bench, benchOf } from '../../calc/figure/index.ts';
import type { Book, Recipe } from '../../calc/model/index.ts';
import type { EntryModel, Lowered } from '../lower/index.ts';
import { shiftedFixes, shiftedSpan } from '../lower/shifted.ts';
import { lineEndOf } from '../rules/editing.ts';
import type { Finding } from '../rules/finding.ts';
import type { Names } from '../rules/names.ts';
import type { Runner, Severities } from '../rules/runner.ts';
import { type AskedOfBook, nothingAsked, Recording, stillAnswers } from './recording.ts';

interface Kept {
  readonly text: string;
  readonly offset: number;
  /** fixes write new lines as the file has them */
  readonly lineEnd: string;
  readonly severities: Severities;
  readonly asked: AskedOfBook;
  /** the benches whose figures were asked, and how often those had changed */
  readonly benches: readonly { readonly bench: Bench; readonly changes: number }[];
  readonly findings: readonly Finding[];
}

/** Counts entries that the rules ran over, and those whose findings were kept; for tests and the bench. */
export const findingCounters = { checked: 0, kept: 0 };

/**
 * The findings of an entry, as long as nothing that they hang on has changed: its text, what it says, what the rules asked of
 * the book, and the figures.
 */
export class KeptFindings {
  private readonly runner: Runner;
  private readonly kept = new WeakMap<EntryModel, Kept>();

  constructor(runner: Runner) {
    this.runner = runner;
  }

  of(
    lowered: Lowered,
    source: string,
    first: Lowered | undefined,
    book: Book,
    names: Names,
    severities: Severities,
  ): readonly Finding[] {
    const { offset, end } = lowered.source;
    const text = source.slice(offset, end);
    const lineEnd = lineEndOf(source);
    const before = this.kept.get(lowered.model);
    // a second entry of a name speaks of the first one and its place: rare, and not kept
    if (
      first === undefined &&
      before !== undefined &&
      before.lineEnd === lineEnd &&
      holds(before, text, book, names, severities)
    ) {
      findingCounters.kept++;
      return moved(before.findings, offset - before.offset);
    }
    findingCounters.checked++;
    const asked = nothingAsked();
    const recording = new Recording(book, names, asked);
    const benches = new Set<Bench>();
    // figures are asked of the book itself: a bench notes what they read, and hangs on no listener
    const figuresOf = (recipe: Recipe): Bench => {
      const bench = benchOf(recipe, book);
      benches.add(bench);
      return bench;
    };
    const findings = this.runner.findings(
      { lowered, text: source, first },
      recording,
      recording.names,
      severities,
      figuresOf,
    );
    if (first === undefined) {
      this.kept.set(lowered.model, {
        text,
        offset,
        lineEnd,
        severities,
        asked,
        findings,
        benches: [...benches].map((bench) => ({ bench, changes: bench.changes })),
      });
    }
    return findings;
  }
}

function holds(kept: Kept, text: string, book: Book, names: Names, severities: Severities): boolean {
  return (
    kept.text === text &&
    kept.severities === severities &&
    stillAnswers(kept.asked, book, names) &&
    kept.benches.every(({ bench, changes }) => bench.moveTo(book).changes === changes)
  );
}

function moved(findings: readonly Finding[], by: number): readonly Finding[] {
  if (by === 0) return findings;
  return findings.map((finding) => ({
    ...finding,
    span: shiftedSpan(finding.span, by),
    fixes: shiftedFixes(finding.fixes, by),
    related: finding.related.map((each) =>
      each.span === undefined ? each : { ...each, span: shiftedSpan(each.span, by) },
    ),
  }));
}
