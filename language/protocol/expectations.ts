import type { WirePlace, WireRange } from './place.ts';

/** Request `laybook/expectations`: the `expect` lines of a file and how they stand. */
export const expectationsRequest = 'laybook/expectations';
export interface ExpectationsParams {
  readonly uri: string;
}
export interface ExpectationsResult {
  /** version of the text that it holds for; absent where the file is not open */
  readonly version?: number;
  readonly recipes: readonly ExpectingRecipe[];
}

/** A recipe as it stands for one size, with what it expects. */
export interface ExpectingRecipe {
  readonly recipe: string;
  readonly size?: string;
  readonly range: WireRange;
  /** the text cannot be read just now: lines may be missing */
  readonly broken: boolean;
  readonly expects: readonly WireExpectation[];
}

export interface WireExpectation {
  /** stays the same while the limit is typed over: what is tested, and which of several alike */
  readonly id: string;
  /** `mass <= 2.3 kg` */
  readonly words: string;
  readonly range: WireRange;
  readonly verdict: 'met' | 'not met' | 'cannot tell' | 'not yet';
  /** `<= 2.3 kg` */
  readonly expected: string;
  readonly actual?: string;
  /** `by 120 g` */
  readonly beyond?: string;
  readonly why: readonly { readonly words: string; readonly at?: WirePlace }[];
}

/** Request `laybook/recipeFiles`: the files that the server knows, for an editor that cannot search a folder that is on no disk. */
export const recipeFilesRequest = 'laybook/recipeFiles';
export interface RecipeFilesResult {
  readonly uris: readonly string[];
}

/** Notification `laybook/figuresChanged`: figures of these files may have changed. */
export const figuresChangedNotification = 'laybook/figuresChanged';
export interface FiguresChanged {
  readonly uris: readonly string[];
}
