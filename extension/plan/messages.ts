import type { DrawingView, DrawnRecipe, Picture } from '../../language/protocol/drawing.ts';

/** What the page shows beside its picture. */
export interface PlanState {
  readonly view: DrawingView;
  /** the picture is from before the text was broken: by which line */
  readonly old?: string;
  /** something to know of the picture that is shown */
  readonly note?: string;
  /** why there is no picture */
  readonly nothing?: string;
  readonly follows: boolean;
}

/** From the editor to the page; the newest counts. */
export interface ShowMessage {
  readonly kind: 'show';
  readonly version: number;
  readonly state: PlanState;
  /** groups without shapes are as the page has them; no picture: it stays */
  readonly picture?: Picture;
}

/** The groups on the line of the cursor. */
export interface ChooseMessage {
  readonly kind: 'choose';
  readonly keys: readonly string[];
}

/** A drawing to be made an image of, so many pixels long. */
export interface ImageMessage {
  readonly kind: 'image';
  readonly svg: string;
  readonly length: number;
}

export type EditorMessage = ShowMessage | ChooseMessage | ImageMessage;

/** What the page keeps of itself, so that the plan comes back with the window. */
export interface KeptState {
  readonly uri: string;
  readonly recipe: DrawnRecipe;
  readonly view: DrawingView;
  readonly follows: boolean;
  /** layers that are switched off */
  readonly without: readonly string[];
}

export type SaveFormat = 'svg' | 'png' | 'pdf' | 'dxf';

/** From the page to the editor. */
export type PageMessage =
  /** the page has nothing yet; it lacks a shape */
  | { readonly kind: 'ready' }
  | { readonly kind: 'follow'; readonly on: boolean }
  | { readonly kind: 'view'; readonly view: DrawingView }
  /** as written where no size is named */
  | { readonly kind: 'size'; readonly size?: string }
  /** a thing was picked; `open` where the reader wants to be in the text */
  | { readonly kind: 'pick'; readonly key: string; readonly open: boolean }
  | { readonly kind: 'save'; readonly format: SaveFormat; readonly without: readonly string[] }
  | { readonly kind: 'copy'; readonly without: readonly string[] }
  /** the image that was asked for, as base64; none where it could not be made */
  | { readonly kind: 'image'; readonly base64?: string };

export const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isCount = (value: unknown): value is number => typeof value === 'number' && Number.isInteger(value) && value >= 0;
const isShort = (value: unknown): value is string => typeof value === 'string' && value.length <= 4096;
const isNames = (value: unknown): value is readonly string[] =>
  Array.isArray(value) && value.length <= 100 && value.every(isShort);
const isView = (value: unknown): value is DrawingView => value === 'plan' || value === 'section';
const formats: ReadonlySet<unknown> = new Set(['svg', 'png', 'pdf', 'dxf'] satisfies SaveFormat[]);
const isFormat = (value: unknown): value is SaveFormat => formats.has(value);
/** More than any image that we ask for has. */
const mostImage = 50_000_000;

/** A message of the page; undefined where it is none. */
export function readPageMessage(value: unknown): PageMessage | undefined {
  if (!isRecord(value)) return undefined;
  const { kind, on, view, size, key, open, format, without, base64 } = value;
  if (kind === 'ready') return { kind };
  if (kind === 'follow' && typeof on === 'boolean') return { kind, on };
  if (kind === 'view' && isView(view)) return { kind, view };
  if (kind === 'size' && (size === undefined || isShort(size))) return size === undefined ? { kind } : { kind, size };
  if (kind === 'pick' && isShort(key) && typeof open === 'boolean') return { kind, key, open };
  if (kind === 'save' && isFormat(format) && isNames(without)) return { kind, format, without };
  if (kind === 'copy' && isNames(without)) return { kind, without };
  if (kind !== 'image') return undefined;
  if (base64 === undefined) return { kind };
  return typeof base64 === 'string' && base64.length <= mostImage ? { kind, base64 } : undefined;
}

/** A message of the editor; undefined where it is none, or one that a newer one has overtaken. */
export function readEditorMessage(value: unknown, newerThan: number): EditorMessage | undefined {
  if (!isRecord(value)) return undefined;
  const { kind, keys, version, state, picture, svg, length } = value;
  if (kind === 'choose' && Array.isArray(keys) && keys.every((key) => typeof key === 'string')) return { kind, keys };
  if (kind === 'image' && typeof svg === 'string' && isCount(length)) return { kind, svg, length };
  if (kind !== 'show' || !isCount(version) || version <= newerThan) return undefined;
  if (!isRecord(state) || !isView(state.view) || typeof state.follows !== 'boolean') return undefined;
  if (picture !== undefined && !isPicture(picture)) return undefined;
  return value as unknown as ShowMessage;
}

function isPicture(value: unknown): value is Picture {
  if (!isRecord(value) || !isRecord(value.recipe)) return false;
  const { uri, title, box, layers, groups, sizes } = value;
  return (
    typeof uri === 'string' &&
    typeof title === 'string' &&
    Array.isArray(box) &&
    box.length === 4 &&
    box.every(Number.isFinite) &&
    [layers, groups, sizes].every(Array.isArray)
  );
}

/** What a page kept; undefined where it is nothing of the kind. */
export function readKeptState(value: unknown): KeptState | undefined {
  if (!isRecord(value) || !isRecord(value.recipe)) return undefined;
  const { uri, view, follows, without } = value;
  const { recipe, size } = value.recipe;
  if (!isShort(uri) || !isShort(recipe) || (size !== undefined && !isShort(size)) || !isView(view)) return undefined;
  return {
    uri,
    recipe: size === undefined ? { recipe } : { recipe, size },
    view,
    follows: follows !== false,
    without: isNames(without) ? without : [],
  };
}
