import type { Place } from '../model/place.ts';
import type { Dimension, Quantity } from '../quantity/types.ts';

/**
 * What may stand in a text: quantities are formatted by the view, in the unit system that the reader chose; texts inside of a
 * text are words of their own (`the gel time`, `a or b`) and are translated by themselves. A string is a name, or words that are
 * looked up as they stand: no name holds a space, so none is taken for words.
 */
export type Shown = Quantity | string | number | Text;

/**
 * Words with named figures, so that machine output carries the numbers: `{reach} past the outline`. The English template is the
 * key of its translations: it is a literal, never put together.
 */
export interface Text {
  readonly template: string;
  readonly figures: Readonly<Record<string, Shown>>;
}

/** Words without figures may be plain: they are their own template. */
export type Words = Text | string;

/** A number that went beyond all bounds on its way is told so where it is shown: see `formatQuantity`. */
export const text = (template: string, figures: Readonly<Record<string, Shown>> = nothing): Text => ({
  template,
  figures,
});

const nothing: Readonly<Record<string, Shown>> = {};

export const isText = (shown: Shown): shown is Text => typeof shown === 'object' && 'template' in shown;

/** Where a value came from. */
export type Origin = 'typed' | 'shop' | 'stock' | 'trade' | 'computed';

/** One step of the chain of reasons. */
export interface Reason {
  readonly text: Text;
  readonly from: Origin;
  /** source of a method or a default value */
  readonly source?: string;
  readonly at?: Place;
  readonly reasons?: readonly Reason[];
  /** nothing computes this yet: an information, as against an input that is missing */
  readonly notYet?: true;
}

export interface KnownFigure<T> {
  readonly value: T;
  readonly reasons: readonly Reason[];
}

/** What is missing, and where. */
export interface CannotTell {
  readonly cannot: true;
  readonly because: readonly Reason[];
}

/** A heavy figure that is being computed, or one that nothing computes yet. */
export interface Pending {
  readonly pending: true;
}

export type Figure<T = number> = KnownFigure<T> | CannotTell | Pending;

export function known<T>(value: T, ...reasons: readonly Reason[]): KnownFigure<T> {
  return { value, reasons };
}

/** `known` by the reasons that an input came with, as they are. */
export function knownBy<T>(value: T, reasons: readonly Reason[]): KnownFigure<T> {
  return { value, reasons };
}

export function cannot(...because: readonly Reason[]): CannotTell {
  return { cannot: true, because };
}

/** Says that nothing computes this yet. No input of the writer's is missing. */
export function notYet(words: Words, at?: Place): CannotTell {
  return cannot({ from: 'computed', text: typeof words === 'string' ? text(words) : words, at, notYet: true });
}

/** Whether nothing but an unwritten computation stands in the way. */
export const isNotYet = <T>(figure: Figure<T>): boolean =>
  isCannot(figure) && figure.because.length > 0 && figure.because.every((why) => why.notYet === true);

export const isKnown = <T>(figure: Figure<T>): figure is KnownFigure<T> => 'value' in figure;
export const isCannot = <T>(figure: Figure<T>): figure is CannotTell => 'cannot' in figure;

export function reason(
  from: Origin,
  words: Words,
  more: { readonly source?: string; readonly at?: Place; readonly reasons?: readonly Reason[] } = {},
): Reason {
  // spelled out, so that all reasons are of one shape: many thousand are made
  const { source, at, reasons } = more;
  return { from, text: typeof words === 'string' ? text(words) : words, source, at, reasons };
}

const none: readonly Reason[] = [];

type Values<F extends Readonly<Record<string, Figure<unknown>>>> = {
  readonly [K in keyof F]: F[K] extends Figure<infer T> ? T : never;
};

/**
 * Goes on only when every input is known; otherwise all that is missing flows through (each reason once).
 * `then` gets the values and, as second argument, the reasons of all inputs to hang under its own. The inputs are used up: an
 * object of their values beside them would be the dearest part of most figures.
 */
export function whenKnown<F extends Readonly<Record<string, Figure<unknown>>>, R>(
  inputs: F,
  then: (values: Values<F>, reasons: readonly Reason[]) => Figure<R>,
): Figure<R> {
  for (const name in inputs) if (!isKnown(inputs[name] as Figure<unknown>)) return missing(...Object.values(inputs));
  const values = inputs as Record<string, unknown>;
  const isAsked = then.length > 1;
  let reasons = none;
  for (const name in values) {
    const known = values[name] as KnownFigure<unknown>;
    if (isAsked) reasons = joined(reasons, known.reasons);
    values[name] = known.value;
  }
  return then(values as Values<F>, reasons);
}

/** Mostly one of two inputs has reasons, which are taken as they are. */
function joined(left: readonly Reason[], right: readonly Reason[]): readonly Reason[] {
  if (right.length === 0) return left;
  return left.length === 0 ? right : [...left, ...right];
}

/**
 * All that is missing among some figures, each reason once, unless one of them is still computed. A figure that is asked for often
 * is written without functions inside of it: `if (!isKnown(a)) return a`, `if (!isKnown(a) || !isKnown(b)) return missing(a, b)`.
 */
export function missing(...figures: readonly Figure<unknown>[]): CannotTell | Pending {
  const because: Reason[] = [];
  for (const figure of figures) {
    if (isCannot(figure)) because.push(...figure.because);
    else if (!isKnown(figure)) return figure;
  }
  return cannot(...unique(because));
}

/** The reasons of several inputs, to hang under those of what comes of them. */
export function reasonsOf(...inputs: readonly KnownFigure<unknown>[]): readonly Reason[] {
  let reasons = none;
  for (const input of inputs) reasons = joined(reasons, input.reasons);
  return reasons;
}

/** `whenKnown` of one figure: goes on with its value and its reasons, or passes on what is missing. */
export function ifKnown<T, R>(figure: Figure<T>, then: (value: T, reasons: readonly Reason[]) => Figure<R>): Figure<R> {
  return isKnown(figure) ? then(figure.value, figure.reasons) : figure;
}

function unique(reasons: readonly Reason[]): readonly Reason[] {
  if (reasons.length < 2) return reasons;
  const seen = new Set<string>();
  return reasons.filter((r) => {
    const key = `${r.at?.entry ?? ''} ${r.at?.path ?? ''} ${r.text.template} ${JSON.stringify(r.text.figures)}`;
    return seen.has(key) ? false : seen.add(key) !== undefined;
  });
}

/** A scalar figure in SI with its dimension, for views and machine output. */
export function quantity(si: number, dimension: Dimension, currency?: string): Quantity {
  return currency === undefined ? { si, dimension } : { si, dimension, currency };
}
