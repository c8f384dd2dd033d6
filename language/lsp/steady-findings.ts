import { type LangiumDocument, URI } from 'langium';
import { shiftedFixes, shiftedSpan } from '../lower/shifted.ts';
import type { Finding } from '../rules/finding.ts';
import { rules } from '../rules/generated/rules.ts';
import type { Rule } from '../rules/rule.ts';
import { type Line, lineAround } from './typed-line.ts';
import type { Typing } from './typing.ts';

interface Told {
  readonly text: string;
  readonly findings: readonly Finding[];
}

/** What is told of a line while it is typed. */
const ofSyntax: ReadonlySet<string> = new Set(['line/not-understood', 'line/missing-brace', 'line/surplus-brace']);

/** A line in which one of these finds something is not finished: what is found because of it is not yet so. */
const ofReading: ReadonlySet<string> = new Set([
  'name/unknown',
  ...(rules as readonly Rule[]).filter(({ on }) => on === 'reading').map(({ name }) => name),
]);

/**
 * What the editor is told while somebody types: of the line that is typed only what cannot be read in it, and what was found of it
 * before and still holds; of all other lines, in other texts too, what was found before. So nothing comes and goes with every key,
 * and a metre on the way to a millimetre is no fault. All is told as it is when the line is left; when typing rests, as soon as the
 * line can be read.
 */
export class SteadyFindings {
  readonly #told = new WeakMap<LangiumDocument, Told>();
  /** documents of which something is held back */
  readonly #held = new Set<string>();
  readonly #typing: Typing;
  readonly #toldAgain = new Set<() => void>();

  constructor(typing: Typing) {
    this.#typing = typing;
  }

  /** What is told of a document in which this is found. */
  of(document: LangiumDocument, fresh: readonly Finding[]): readonly Finding[] {
    const uri = document.uri.toString();
    const text = document.textDocument.getText();
    const before = this.#told.get(document);
    const steady = before === undefined ? undefined : this.#whileTyped(uri, before, text, fresh);
    if (steady === undefined) this.#held.delete(uri);
    else this.#held.add(uri);
    const findings = steady ?? fresh;
    this.#told.set(document, { text, findings });
    this.#typing.told(uri);
    return findings;
  }

  /** The documents of which something is held back: those first in which somebody types, for the others wait for them. */
  get held(): readonly URI[] {
    const typed = (uri: string): number => (this.#typing.in(uri) === undefined ? 1 : 0);
    return [...this.#held].sort((a, b) => typed(a) - typed(b)).map((uri) => URI.parse(uri));
  }

  /** Calls back when what was held back has been told, without an edit. */
  onToldAgain(listener: () => void): void {
    this.#toldAgain.add(listener);
  }

  toldAgain(): void {
    for (const listener of this.#toldAgain) listener();
  }

  /** What was told of a document is of its text as it is: nothing waits to be read. */
  isOfText(document: LangiumDocument): boolean {
    return this.#told.get(document)?.text === document.textDocument.getText();
  }

  /** Undefined where all is told. */
  #whileTyped(uri: string, before: Told, text: string, fresh: readonly Finding[]): readonly Finding[] | undefined {
    const typed = this.#typing.in(uri);
    if (typed?.typed === undefined)
      return before.text === text && this.#typing.elsewhere(uri) ? before.findings : undefined;
    const line = lineAround(text, typed.typed);
    const here = fresh.filter((finding) => isOn(finding, line));
    if (typed.rested && !here.some(({ rule }) => ofReading.has(rule))) {
      this.#typing.leave((other) => other === uri);
      return undefined;
    }
    const lineBefore = typed.stale ? line : lineAround(before.text, typed.typed);
    const longer = typed.stale ? 0 : text.length - before.text.length;
    const others = (typed.stale ? fresh : before.findings)
      .filter((finding) => !isOn(finding, lineBefore))
      .map((finding) => moved(finding, finding.span.offset > lineBefore.end ? longer : 0));
    const stood = typed.stale ? [] : before.findings.filter((finding) => isOn(finding, lineBefore));
    const inWord = wordCharacter.test(text[typed.cursor - 1] ?? '');
    const told = typed.rested ? unread(here) : whileHere(here, stood, inWord);
    return [...others, ...told].sort((a, b) => a.span.offset - b.span.offset);
  }
}

/**
 * What is told of the line that is typed: what cannot be read in it, and what stood there before and still holds. In the middle of a
 * word nothing new is told, for it is about to be another word.
 */
function whileHere(here: readonly Finding[], before: readonly Finding[], inWord: boolean): readonly Finding[] {
  const stood = new Set(before.map(({ rule }) => rule));
  if (unread(here).length === 0) return here.filter(({ rule }) => stood.has(rule));
  const said = new Set(before.map(wordsOf));
  return here.filter((finding) => ofSyntax.has(finding.rule) && (!inWord || said.has(wordsOf(finding))));
}

const wordsOf = ({ rule, message }: Finding): string => JSON.stringify([rule, message]);

const unread = (findings: readonly Finding[]): readonly Finding[] => findings.filter(({ rule }) => ofReading.has(rule));

const wordCharacter = /[\p{L}\p{N}_]/u;

function isOn({ span }: Finding, { start, end }: Line): boolean {
  return span.offset <= end && span.end >= start;
}

function moved(finding: Finding, by: number): Finding {
  if (by === 0) return finding;
  return {
    ...finding,
    span: shiftedSpan(finding.span, by),
    fixes: shiftedFixes(finding.fixes, by),
    related: finding.related.map((each) =>
      each.span === undefined ? each : { ...each, span: shiftedSpan(each.span, by) },
    ),
  };
}
