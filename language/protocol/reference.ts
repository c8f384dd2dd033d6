/** Request `laybook/reference`: a chapter of the reference, or without a name the list of chapters. */
export const referenceRequest = 'laybook/reference';
export interface ReferenceParams {
  readonly chapter?: string;
}
export interface ReferenceResult {
  /** Markdown */
  readonly markdown: string;
  readonly chapters: readonly { readonly name: string; readonly title: string; readonly about: string }[];
}
