import type { LayerCard, LayerName } from '../../language/protocol/layer-card.ts';

/** What the card shows. */
export interface CardState {
  readonly card?: LayerCard;
  /** the card is from before the text was broken: by which line */
  readonly old?: string;
  /** something to know of the card that is shown */
  readonly note?: string;
  /** why there is no card */
  readonly nothing?: string;
  /** there is a first layer to show */
  readonly first?: boolean;
  readonly pinned: boolean;
  readonly movesCursor: boolean;
}

/** From the editor to the page; the newest counts. */
export interface ShowMessage {
  readonly kind: 'show';
  readonly version: number;
  readonly state: CardState;
}

/** What the page keeps of itself, so that the card comes back with the window. */
export interface KeptState {
  readonly uri: string;
  readonly layer: LayerName;
  readonly pinned: boolean;
  readonly movesCursor: boolean;
}

/** From the page to the editor. */
export type PageMessage =
  | { readonly kind: 'ready' | 'copy' | 'first' }
  | { readonly kind: 'pin' | 'moveCursor'; readonly on: boolean }
  /** to another layer of the stack */
  | { readonly kind: 'step'; readonly key: string }
  | { readonly kind: 'open'; readonly uri: string; readonly line: number; readonly character: number };

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isCount = (value: unknown): value is number => typeof value === 'number' && Number.isInteger(value) && value >= 0;
const isShort = (value: unknown): value is string => typeof value === 'string' && value.length <= 4096;

/** A message of the page; undefined where it is none. */
export function readPageMessage(value: unknown): PageMessage | undefined {
  if (!isRecord(value)) return undefined;
  const { kind, on, key, uri, line, character } = value;
  if (kind === 'ready' || kind === 'copy' || kind === 'first') return { kind };
  if ((kind === 'pin' || kind === 'moveCursor') && typeof on === 'boolean') return { kind, on };
  if (kind === 'step' && isShort(key)) return { kind, key };
  if (kind === 'open' && isShort(uri) && isCount(line) && isCount(character)) return { kind, uri, line, character };
  return undefined;
}

/** A message of the editor; undefined where it is none, or one that a newer one has overtaken. */
export function readShowMessage(value: unknown, newerThan: number): ShowMessage | undefined {
  if (!isRecord(value) || value.kind !== 'show' || !isCount(value.version) || value.version <= newerThan)
    return undefined;
  const { state } = value;
  if (!isRecord(state) || typeof state.pinned !== 'boolean' || typeof state.movesCursor !== 'boolean') return undefined;
  if (state.card !== undefined && !isCard(state.card)) return undefined;
  return value as unknown as ShowMessage;
}

function isCard(value: unknown): value is LayerCard {
  if (!isRecord(value) || !isRecord(value.layer) || !isRecord(value.stack)) return false;
  const texts = [value.uri, value.title, value.kind, value.recipe, value.summary];
  const lists = [value.stack.layers, value.figures, value.missing, value.touches];
  return texts.every((text) => typeof text === 'string') && lists.every(Array.isArray);
}

/** What a page kept; undefined where it is nothing of the kind. */
export function readKeptState(value: unknown): KeptState | undefined {
  if (!isRecord(value) || !isRecord(value.layer)) return undefined;
  const { uri, layer, pinned, movesCursor } = value;
  const { recipe, size, key } = layer;
  if (!isShort(uri) || !isShort(recipe) || !isShort(key) || (size !== undefined && !isShort(size))) return undefined;
  return {
    uri,
    layer: size === undefined ? { recipe, key } : { recipe, size, key },
    pinned: pinned === true,
    movesCursor: movesCursor === true,
  };
}
