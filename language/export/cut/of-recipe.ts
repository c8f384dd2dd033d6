import { type Bench, isKnown } from '../../../calc/figure/index.ts';
import { flatPieces, flatPiecesMissing } from '../../../calc/piece/flat-pieces.figure.ts';
import { safe, say, sayText } from '../../view/text.ts';
import { CannotCut, type CutDesk, type CutFile, type CutOrder, cutFiles } from './cut-files.ts';

export interface RecipeCut {
  readonly files: readonly CutFile[];
  /** what has no piece, and why: a line each */
  readonly missing: readonly string[];
}

/** Width of the roll or the sheet that a material comes as, m. */
export function rollWidth(bench: Bench, name: string): number | undefined {
  const material = bench.material(name);
  const widths = [material?.roll?.value, material?.sheet?.value].map((each) =>
    typeof each === 'object' ? each.width : undefined,
  );
  const width = [...widths, material?.width?.value].find((each) => typeof each === 'object');
  return typeof width === 'object' ? width.si : undefined;
}

/** The files that the pieces of a recipe are cut from. Throws `CannotCut` where there is no piece at all. */
export async function cutFilesOf(bench: Bench, order: CutOrder, desk: Omit<CutDesk, 'rollWidth'>): Promise<RecipeCut> {
  const pieces = bench.ask(flatPieces);
  const left = bench.ask(flatPiecesMissing);
  const missing = (isKnown(left) ? left.value : []).map(({ of, because }) =>
    say('{name}: {why}', { name: of, why: because[0]?.text ?? '' }, desk.style),
  );
  if (!isKnown(pieces) || pieces.value.length === 0) {
    const why = 'because' in pieces ? pieces.because.map(({ text }) => sayText(text, desk.style)) : missing;
    throw new CannotCut(
      say('nothing of {recipe} can be cut: {why}', {
        recipe: bench.recipe.name,
        why: safe(why.slice(0, 3).join('; ')) || say('it has no layer and no sheet'),
      }),
    );
  }
  const files = await cutFiles(bench.recipe, pieces.value, order, {
    ...desk,
    rollWidth: (material) => rollWidth(bench, material),
  });
  return { files, missing };
}
