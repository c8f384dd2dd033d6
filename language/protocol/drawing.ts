import type { WirePlace, WirePosition } from './place.ts';

export type DrawingView = 'plan' | 'section';

export interface DrawnRecipe {
  readonly recipe: string;
  readonly size?: string;
}

/** Request `laybook/drawing`: the plan or the section of the recipe at a position, or of one that was shown before. */
export const drawingRequest = 'laybook/drawing';
export interface DrawingParams {
  readonly uri: string;
  readonly view: DrawingView;
  readonly position?: WirePosition;
  readonly recipe?: DrawnRecipe;
  /** the size that is drawn where the position stands in none */
  readonly size?: string;
  /** marks of groups that the asker has, by their keys: those that are still the same come back without their shapes */
  readonly known?: Readonly<Record<string, string>>;
}

export interface DrawingResult {
  /** none where nothing can be drawn */
  readonly picture?: Picture;
  /** why, in a sentence */
  readonly nothing?: string;
  /** the text cannot be read just now: what is drawn may lack a line */
  readonly broken?: { readonly words: string; readonly line: number };
}

/** A drawing as plain data in millimetres of the drawing, y downwards; a group for each thing of the recipe. */
export interface Picture {
  readonly uri: string;
  readonly view: DrawingView;
  readonly recipe: DrawnRecipe;
  /** all sizes of the recipe, that as written left out */
  readonly sizes: readonly string[];
  readonly title: string;
  /** left, top, width and height */
  readonly box: readonly [number, number, number, number];
  /** between strokes of a hatch */
  readonly pitch: number;
  /** layers that there is something of, from the back to the front */
  readonly layers: readonly { readonly layer: string; readonly label: string }[];
  readonly groups: readonly PictureGroup[];
}

/** A thing of a drawing. Groups come as they are painted: what is large lies below what is small. */
export interface PictureGroup {
  readonly key: string;
  /** its number in the order in which things are spoken of */
  readonly order: number;
  readonly layer: string;
  /** of the line in the recipe's model */
  readonly path: string;
  /** another one as soon as anything of it is another */
  readonly mark: string;
  readonly what: string;
  readonly where: string;
  readonly size: string;
  /** the line behind it */
  readonly place?: WirePlace;
  /** its last line, from zero */
  readonly lastLine?: number;
  /** angle of the fibres, degrees counter-clockwise from x */
  readonly hatch?: number;
  /** absent: as they were */
  readonly shapes?: readonly PictureShape[];
}

export type PictureShape =
  | {
      readonly kind: 'path';
      readonly d: string;
      readonly closed?: boolean;
      readonly dashed?: boolean;
      /** degrees counter-clockwise */
      readonly hatch?: number;
    }
  | { readonly kind: 'circle'; readonly x: number; readonly y: number; readonly r: number }
  | {
      readonly kind: 'text';
      readonly x: number;
      readonly y: number;
      /** of the letters */
      readonly size: number;
      readonly text: string;
      /** degrees clockwise, as screens turn */
      readonly turn?: number;
      readonly anchor?: 'middle' | 'end';
    };

/** Request `laybook/drawingFile`: the same as a file; bytes of a PDF come as base64. */
export const drawingFileRequest = 'laybook/drawingFile';
export type DrawingFormat = 'svg' | 'pdf' | 'dxf';
export interface DrawingFileParams {
  readonly uri: string;
  readonly view: DrawingView;
  readonly recipe: DrawnRecipe;
  readonly format: DrawingFormat;
  /** layers that are left out */
  readonly without: readonly string[];
}

export interface DrawingFileResult {
  readonly text?: string;
  readonly base64?: string;
  readonly nothing?: string;
}
