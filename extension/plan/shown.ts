import type { DrawingResult, Picture } from '../../language/protocol/drawing.ts';

/** The picture that is shown, without its shapes, and whether it is from before the text was broken. */
export interface Shown {
  readonly picture: Picture;
  /** by which line */
  readonly old?: string;
  readonly note?: string;
}

/** While the text is broken the last whole picture of the recipe stays; without one, what can be drawn is drawn and says so. */
export function shownNow(last: Shown | undefined, { picture, broken }: DrawingResult): Shown | undefined {
  if (broken === undefined) return picture === undefined ? undefined : { picture };
  if (last !== undefined && last.note === undefined && (picture === undefined || sameRecipe(last.picture, picture)))
    return { picture: last.picture, old: broken.words };
  return picture === undefined ? undefined : { picture, note: broken.words };
}

export const sameRecipe = (one: Picture, other: Picture): boolean =>
  one.uri === other.uri &&
  one.view === other.view &&
  one.recipe.recipe === other.recipe.recipe &&
  one.recipe.size === other.recipe.size;

/** Marks of what a page has been sent, by the keys of groups. */
export const marksOf = ({ groups }: Picture): Record<string, string> =>
  Object.fromEntries(groups.map(({ key, mark }) => [key, mark]));
