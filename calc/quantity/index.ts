/** The one door of this folder. */
export type * from './types.ts';
export * from './dimension.ts';
