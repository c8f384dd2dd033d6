/** The recipe that a line of a file belongs to, read from the heads of recipes and sizes alone. */

export interface RecipeHead {
  readonly recipe: string;
  readonly size?: string;
}

const recipeLine = /^\s*recipe\s+([A-Za-z_]\w*)/;
const sizeLine = /^\s*size\s+([A-Za-z_]\w*)/;
/** Blocks of a recipe begin two spaces in: the next one above a line is the one that it stands in. */
const blockLine = /^ {2}\S/;
/** Entries begin at the left margin: another one ends the recipe above it. */
const entryLine = /^[a-z]/;

/** The head that stands last at or above `line` (from 0); before all recipes, and below other entries, none. */
export function recipeHeadAt(text: (line: number) => string, count: number, line: number): RecipeHead | undefined {
  let block: string | undefined;
  for (let index = Math.min(line, count - 1); index >= 0; index--) {
    const words = text(index);
    const recipe = recipeLine.exec(words)?.[1];
    const size = block === undefined ? undefined : sizeLine.exec(block)?.[1];
    if (recipe !== undefined) return size === undefined ? { recipe } : { recipe, size };
    if (entryLine.test(words)) return undefined;
    if (blockLine.test(words)) block ??= words;
  }
  return undefined;
}

/** The recipe that a line belongs to; outside of all, the first one of the file. */
export function recipeNear(text: (line: number) => string, count: number, line: number): RecipeHead | undefined {
  const here = recipeHeadAt(text, count, line);
  if (here !== undefined) return here;
  for (let index = 0; index < count; index++) {
    const recipe = recipeLine.exec(text(index))?.[1];
    if (recipe !== undefined) return { recipe };
  }
  return undefined;
}
