import type { LayerCard, LayerCardResult } from '../../language/protocol/layer-card.ts';

/** The card that is shown, and whether it is from before the text was broken. */
export interface Shown {
  readonly card: LayerCard;
  /** by which line */
  readonly old?: string;
  readonly note?: string;
}

/** While the text is broken the last whole card of the same layer stays; without one, what can be told is shown and says so. */
export function shownNow(last: Shown | undefined, { card, broken }: LayerCardResult): Shown | undefined {
  const whole = last !== undefined && last.note === undefined ? last.card : undefined;
  if (broken === undefined) return card === undefined ? undefined : { card };
  if (whole !== undefined && (card === undefined || sameLayer(whole, card))) return { card: whole, old: broken.words };
  return card === undefined ? undefined : { card, note: broken.words };
}

export function sameLayer(one: LayerCard, other: LayerCard): boolean {
  const [a, b] = [one.layer, other.layer];
  return one.uri === other.uri && a.recipe === b.recipe && a.size === b.size && a.key === b.key;
}
