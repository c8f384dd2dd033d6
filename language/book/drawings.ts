import { AstUtils, type FileSystemProvider, type LangiumDocument, URI, UriUtils } from 'langium';
import { type Text, text } from '../../calc/figure/figure.ts';
import type { DrawnFile, ReadDrawing } from '../../calc/read-drawing/drawn.ts';
import { mostBytesOf } from '../../calc/read-drawing/file-kind.ts';
import type { FileShape } from '../grammar/generated/ast.ts';
import { drawingFile, liesIn } from './drawing-files.ts';
import { drawingText } from './drawing-text.ts';

/** Files that can be told to lie in a folder as they really are: a link may lead out of it. */
export interface ConfinedFiles extends FileSystemProvider {
  /** What is in a file of a folder, no more of it than `mostBytes`; fails where it lies elsewhere. */
  readInside(uri: URI, folder: URI, mostBytes: number): Promise<Uint8Array>;
}

/** What `readInside` fails with where a file lies, through a link, in another folder. */
export class LiesOutside extends Error {}

/** What `readInside` fails with where a name is that of a folder or of another thing that is no file. */
export class IsNoFile extends Error {}

interface Known {
  readonly source: string | undefined;
  readonly file: DrawnFile;
}

/** Counts drawings that were read and taken apart; for tests and the bench. */
export const drawingCounters = { read: 0 };

/**
 * The drawings that recipes name, kept by what is in them: a file that is written again with the same content is the same object,
 * and no figure is computed again.
 */
export class Drawings {
  /** grows whenever a drawing says something else */
  version = 0;
  private readonly known = new Map<string, Known>();
  private readonly stale = new Set<string>();
  private readonly files: () => FileSystemProvider;
  private readonly folders: () => readonly URI[];

  /** `folders`: those of the workspace. */
  constructor(files: () => FileSystemProvider, folders: () => readonly URI[]) {
    this.files = files;
    this.folders = folders;
  }

  /** A drawing by its address, once it has been looked for. */
  of(address: string): DrawnFile | undefined {
    return this.known.get(address)?.file;
  }

  /** A drawing that was read, by its name as a recipe has it. */
  named(file: string): ReadDrawing | undefined {
    const end = `/${file.replaceAll('\\', '/').replace(/^(\.{1,2}\/)+/, '')}`;
    for (const [address, known] of this.known)
      if (URI.parse(address).path.endsWith(end) && 'drawing' in known.file) return known.file.drawing;
    return undefined;
  }

  /** Says that a file has changed; it is read again when a recipe that names it is. */
  changed(uri: URI): void {
    this.stale.add(uri.toString());
  }

  /** Reads what a recipe's file names and is not known yet. */
  async load(document: LangiumDocument): Promise<void> {
    if (!mayNameFiles.test(document.textDocument.getText())) return;
    for (const node of AstUtils.streamAst(document.parseResult.value)) {
      if (node.$type !== 'FileShape') continue;
      const uri = drawingFile(document.uri, (node as FileShape).file);
      const address = uri?.toString();
      if (uri === undefined || address === undefined || (this.known.has(address) && !this.stale.has(address))) continue;
      this.stale.delete(address);
      await this.read(address, uri, document.uri);
    }
  }

  private async read(address: string, uri: URI, recipe: URI): Promise<void> {
    const before = this.known.get(address);
    const found = await this.sourceOf(uri, recipe);
    if (typeof found === 'string') {
      if (before?.source === found) return;
      drawingCounters.read++;
      // what reads drawings is read with the first of them
      const { readDrawing, tooLarge } = await import('../../calc/read-drawing/read.ts');
      const drawing = found === cut ? tooLarge(uri.path) : readDrawing(uri.path, found);
      this.known.set(address, { source: found, file: { drawing } });
    } else {
      const missing = before?.source === undefined ? before?.file : undefined;
      if (missing !== undefined && 'missing' in missing && missing.missing.template === found.template) return;
      this.known.set(address, { source: undefined, file: { missing: found } });
    }
    this.version++;
  }

  /** The text of a drawing, `cut` where it is too large, or why it is not read. */
  private async sourceOf(uri: URI, recipe: URI): Promise<string | Text> {
    const folder = this.folders().find((each) => liesIn(each, recipe)) ?? UriUtils.dirname(recipe);
    if (!liesIn(folder, uri)) return outside;
    const files = this.files();
    const most = mostBytesOf(uri.path);
    try {
      if (!isConfined(files)) return await files.readFile(uri);
      // one byte more than is read shows that there is more
      const bytes = await files.readInside(uri, folder, most + 1);
      return bytes.length > most ? cut : drawingText(bytes);
    } catch (error) {
      if (error instanceof LiesOutside) return outside;
      return error instanceof IsNoFile
        ? text('that is no file; is it a folder?')
        : text('there is no such file beside the recipe');
    }
  }
}

/** Stands for the text of a file that is too large: no drawing begins so. */
const cut = '\uFFFF';

const mayNameFiles = /\bfile\s+"/;

const outside = text('the drawing lies outside of the workspace folder');

const isConfined = (files: FileSystemProvider): files is ConfinedFiles => 'readInside' in files;
