import path from 'node:path';
import type { Drawing, DrawingLayer } from '../../calc/drawing/drawing.ts';
import { drawingLayers } from '../../calc/drawing/layers.ts';
import { text } from '../../calc/figure/figure.ts';
import { isCannot, isKnown } from '../../calc/figure/index.ts';
import { dxf } from '../export/dxf.ts';
import { sealed } from '../export/made-by.ts';
import { screenSvg } from '../export/svg.ts';
import type { DrawingView } from '../protocol/drawing.ts';
import { drawingAlone } from '../view/drawing/at-cursor.ts';
import { type Style, safe, sayText } from '../view/text.ts';
import { endOf, openBook } from './book.ts';
import { type ExitCode, UsageError } from './exit-codes.ts';
import { recipeNamed } from './named-recipe.ts';
import { told } from './paths.ts';
import type { Screen } from './screen.ts';
import { writeOne, wrongEnding } from './write-files.ts';
import { perhapsOf } from './wrong-calls.ts';

export interface DrawOptions {
  readonly out: string;
  readonly size?: string;
  /** all that there are where nothing is said */
  readonly layers?: string;
  readonly paper: 'a4' | 'letter';
  readonly units: Style['units'];
  readonly force?: boolean;
  readonly book?: string;
}

/** What a drawing is written as, by the ending of its file. */
const writers: Readonly<Record<string, (drawing: Drawing, options: DrawOptions) => Promise<Uint8Array> | Uint8Array>> =
  {
    '.svg': (drawing) => sealed(screenSvg(drawing, { styled: true, marked: true })),
    '.dxf': (drawing) => sealed(dxf(drawing)),
    '.pdf': async (drawing, { paper }) =>
      (await (await import('../export/pdf/index.ts')).drawingPdf(drawing, { paper })).bytes,
  };

/** `laybook draw`: the plan or the section of a recipe as a file. */
export async function draw(
  name: string,
  view: DrawingView,
  paths: readonly string[],
  options: DrawOptions,
  screen: Screen,
): Promise<ExitCode> {
  const ending = path.extname(options.out).toLowerCase();
  const write = Object.hasOwn(writers, ending) ? writers[ending] : undefined;
  if (write === undefined) throw wrongEnding(['.svg', '.pdf', '.dxf'], ending);
  const without = layersLeftOut(options.layers);
  const book = await openBook(paths, options.book, screen);
  const recipe = recipeNamed(book, name, options.size);
  const style: Style = { units: options.units };
  const drawing = drawingAlone(book.services.analysis.bench(recipe), view, { style: () => style }, without);
  if (!isKnown(drawing)) {
    const [why] = isCannot(drawing) ? drawing.because : [];
    const problem = text('{name} cannot be drawn', { name });
    throw new UsageError(
      why === undefined ? problem : text('{problem}: {why}', { problem, why: sayText(why.text, style) }),
    );
  }
  const bytes = await write(drawing.value, options);
  await writeOne(options.out, bytes, { from: screen.folder, ...(options.force ? { force: true } : {}) });
  screen.out(`${safe(told(path.resolve(screen.folder, options.out), screen.folder))}: ${safe(drawing.value.title)}\n`);
  return endOf(book, false);
}

/** `outline,cloth,process`: those that are not named are left out. */
function layersLeftOut(named: string | undefined): ReadonlySet<DrawingLayer> | undefined {
  if (named === undefined) return undefined;
  const wanted = named.split(',').map((each) => each.trim());
  for (const each of wanted) {
    if ((drawingLayers as readonly string[]).includes(each)) continue;
    throw new UsageError(perhapsOf(text('a drawing has no layer {layer}', { layer: each }), each, drawingLayers));
  }
  return new Set(drawingLayers.filter((layer) => !wanted.includes(layer)));
}
