import { type Figure, isKnown, type MaterialFacts } from '../../../calc/figure/index.ts';
import { type Fact, type LayerKind, UNKNOWN } from '../../../calc/model/index.ts';
import { laidStack } from '../../../calc/stack/laid.figure.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import type { RecipeContext } from '../rule.ts';

/** The value of a figure; none where it cannot be told: a rule then says nothing. */
export const valueOf = <T>(figure: Figure<T>): T | undefined => (isKnown(figure) ? figure.value : undefined);

/** The value of a fact that is given and known. */
export const factValue = <T>(fact: Fact<T> | undefined): T | undefined =>
  fact === undefined || fact.value === UNKNOWN ? undefined : fact.value;

/** The stack as it is laid, from the tool face; empty where there is none. */
export function layersOf(context: RecipeContext): readonly LaidLayer[] {
  const stack = context.ask(laidStack);
  return isKnown(stack) ? stack.value.layers : none;
}

const none: readonly LaidLayer[] = [];

export function ofKind(layers: readonly LaidLayer[], kind: LayerKind): readonly LaidLayer[] {
  const found: LaidLayer[] = [];
  for (const laid of layers) if (laid.layer.kind === kind) found.push(laid);
  return found;
}

/** Plies that are wrapped round an edge. */
export function wrappedIn(layers: readonly LaidLayer[]): readonly LaidLayer[] {
  const found: LaidLayer[] = [];
  for (const laid of layers) if (laid.layer.extent.kind === 'wrap') found.push(laid);
  return found;
}

/** The material of a layer, as it counts in the book. */
export const materialOf = (context: RecipeContext, { layer }: LaidLayer): MaterialFacts | undefined =>
  layer.material === undefined ? undefined : context.bench.material(layer.material);

function stands(found: readonly LaidLayer[], path: string): boolean {
  for (const laid of found) if (laid.path === path) return true;
  return false;
}

/** Copies of one line are told of once. */
export function onePerLine(layers: readonly LaidLayer[]): readonly LaidLayer[] {
  // a stack has few lines: looking through them is quicker than a set, and most rules ask
  const found: LaidLayer[] = [];
  for (const laid of layers) if (!stands(found, laid.path)) found.push(laid);
  return found;
}

/** A length as it is typed in a fix: whole millimetres, rounded up. */
export const typedLength = (si: number): string => `${Math.ceil(si * 1000 - 1e-6)} mm`;

/** Where a clause of a layer stands; one that a size changes stands in the size. */
export const clauseAt = ({ layer }: LaidLayer, word: string): string =>
  layer.clauses.find((clause) => clause.word === word)?.path ?? `${layer.path}.${word}`;
