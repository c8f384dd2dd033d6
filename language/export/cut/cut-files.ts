import { arranged, type ToCut } from '../../../calc/drawing/arrange.ts';
import type { Drawing } from '../../../calc/drawing/drawing.ts';
import { drawingOfPiece } from '../../../calc/drawing/of-piece.ts';
import type { Recipe } from '../../../calc/model/index.ts';
import type { FlatPiece } from '../../../calc/piece/flat-piece.ts';
import type { CutBy, CutFormat, CutPaper } from '../../protocol/cut-files.ts';
import { type Style, say } from '../../view/text.ts';
import { dxf } from '../dxf.ts';
import { apart, fileName } from '../file-name.ts';
import { sealed } from '../made-by.ts';
import type { MadePdf } from '../pdf/tiled.ts';
import { cutSvg } from '../svg.ts';
import { labelOf, materialWords, pieceWords, recipeWords } from './labels.ts';

export interface CutOrder {
  readonly format: CutFormat;
  /** a file a piece, or all pieces of a material side by side */
  readonly by: CutBy;
  /** how many parts are cut for */
  readonly quantity: number;
  readonly paper: CutPaper;
}

export interface CutFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** what is on it, in a line */
  readonly words: string;
  /** what whoever cuts it should know */
  readonly notes: readonly string[];
}

/** `more`: lines for whoever lays the pages together. */
export type TiledPdf = (drawing: Drawing, paper: CutPaper, more: readonly string[]) => Promise<MadePdf>;

/** What the writer of files needs beside the pieces. */
export interface CutDesk {
  readonly style: Style;
  /** width of the roll or sheet of a material, m */
  readonly rollWidth: (material: string) => number | undefined;
  /** absent where no PDF can be made: in a browser */
  readonly tiledPdf?: TiledPdf;
}

/** More copies of pieces than this in one drawing no roll holds. */
const mostCopies = 5000;

/** It cannot be done as asked, in words for whoever asked. */
export class CannotCut extends Error {}

/** The files that pieces of a recipe are cut from. Throws `CannotCut`. */
export async function cutFiles(
  recipe: Recipe,
  pieces: readonly FlatPiece[],
  order: CutOrder,
  desk: CutDesk,
): Promise<readonly CutFile[]> {
  if (!Number.isInteger(order.quantity) || order.quantity < 1) throw new CannotCut(say('Cut for at least one part.'));
  const toCut = pieces.map((piece): ToCut => {
    const count = piece.count * order.quantity;
    return { piece, count, label: labelOf(piece, recipe, count, desk.style) };
  });
  const sheets =
    order.by === 'piece' ? toCut.map((each) => pieceSheet(recipe, each, desk)) : materialSheets(recipe, toCut, desk);
  const base = [recipe.name, recipe.size, ...(order.quantity > 1 ? [`x${order.quantity}`] : [])]
    .filter(Boolean)
    .join('-');
  const names = apart(sheets.map(({ name }) => fileName(`${base}-${name}`)));
  const files: CutFile[] = [];
  for (const [i, sheet] of sheets.entries()) {
    const { bytes, notes } = await written(sheet, order, desk);
    files.push({
      name: `${names[i]}.${order.format}`,
      bytes,
      words: sheet.words,
      notes: [...sheet.notes, ...notes],
    });
  }
  return files;
}

interface Sheet {
  readonly name: string;
  readonly drawing: Drawing;
  readonly words: string;
  /** how what is drawn comes to lie in the mould */
  readonly lies: string;
  readonly notes: readonly string[];
}

function pieceSheet(recipe: Recipe, { piece, label, count }: ToCut, { style }: CutDesk): Sheet {
  const words = pieceWords(piece, count, style);
  const title = say('{recipe}: {piece}, {words}', { recipe: recipeWords(recipe), piece: piece.name, words });
  const lies = piece.faceUp
    ? say('Drawn as it lies on the table; the same face comes to lie up in the mould.')
    : say('Drawn as it lies on the table; it is turned over when it is laid.');
  return { name: piece.name, drawing: { ...drawingOfPiece(piece, label), title }, words, lies, notes: [] };
}

function materialSheets(recipe: Recipe, toCut: readonly ToCut[], desk: CutDesk): readonly Sheet[] {
  return [...Map.groupBy(toCut, ({ piece }) => piece.material)].map(([material, group]) => {
    const copies = group.reduce((sum, { count }) => sum + count, 0);
    if (copies > mostCopies)
      throw new CannotCut(
        say('{copies} pieces are more than one drawing takes ({most}): ask for fewer parts at once', {
          copies,
          most: mostCopies,
        }),
      );
    const width = material === undefined ? undefined : desk.rollWidth(material);
    const named = material ?? say('without a material');
    const title = say('{recipe}: {material}', { recipe: recipeWords(recipe), material: named });
    const { drawing, length, tooWide, count } = arranged(title, group, width);
    const notes = tooWide.map((piece) =>
      say('{piece} is wider than {material} comes', { piece: piece.name, material: named }),
    );
    const lies = say(
      'Drawn as they lie on the table, the warp from left to right; a piece that is turned over says so.',
    );
    return {
      name: material ?? 'no-material',
      drawing,
      words: materialWords(count, length, width, desk.style),
      lies,
      notes,
    };
  });
}

async function written(
  { drawing, lies }: Sheet,
  { format, paper }: CutOrder,
  { tiledPdf }: CutDesk,
): Promise<Pick<CutFile, 'bytes' | 'notes'>> {
  if (format === 'svg') return { bytes: sealed(cutSvg(drawing)), notes: [] };
  if (format === 'dxf') return { bytes: sealed(dxf(drawing)), notes: [] };
  if (tiledPdf === undefined) throw new CannotCut(say('An editor in a browser writes no PDF: choose SVG or DXF.'));
  const { bytes, pages, lacking } = await tiledPdf(drawing, paper, [lies]).catch((error: unknown) => {
    // By its name: the bundle that threw it has a class of its own.
    if (!(error instanceof Error) || error.name !== 'TooManyPages') throw error;
    throw new CannotCut(
      say('{title} would take more pages than anybody lays together ({pages}): cut by piece, or with a cutter', {
        title: drawing.title,
        pages: error.message,
      }),
    );
  });
  const signs = lacking.map(
    (letter) => `U+${(letter.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`,
  );
  return {
    bytes,
    notes: [
      say('{pages} pages', { pages }),
      ...(signs.length === 0 ? [] : [say('the font lacks {letters}', { letters: signs.join(', ') })]),
    ],
  };
}
