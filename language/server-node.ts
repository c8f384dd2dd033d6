/** The language server as a process of its own. */
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import type { Drawing } from '../calc/drawing/drawing.ts';
import { ClientFiles } from './lsp/client-files.ts';
import { DiskOrClientFiles } from './lsp/disk-or-client-files.ts';
import type { Machine } from './lsp/machine.ts';
import { startLayupServer } from './lsp/start.ts';

const connection = createConnection(ProposedFeatures.all);

/** Loaded when somebody wants a page: nobody waits for it at the start. */
async function pdfOf(drawing: Drawing): Promise<string> {
  const { drawingPdf } = await import('./export/pdf/index.ts');
  const { bytes } = await drawingPdf(drawing, { paper: 'a4' });
  return Buffer.from(bytes).toString('base64');
}

const tiledPdf: Machine['tiledPdf'] = async (...given) => (await import('./export/pdf/index.ts')).tiledPdf(...given);

const sheetPdf: Machine['sheetPdf'] = async (sheet, paper, font) => {
  const pdf = await import('./export/pdf/index.ts');
  try {
    const fonts = font === undefined ? {} : { fonts: { regular: font } };
    const { bytes, lacking } = await pdf.sheetPdf(sheet, { paper, ...fonts });
    return { base64: Buffer.from(bytes).toString('base64'), lacking };
  } catch (error) {
    if (error instanceof pdf.FontError) return { badFont: error.file };
    throw error;
  }
};

// A fault in one answer must not take away all the others: it is logged, and the server goes on.
const log = (kind: string) => (error: unknown) =>
  connection.console.error(`${kind}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
process.on('uncaughtException', log('Unhandled error'));
process.on('unhandledRejection', log('Unhandled rejection'));

startLayupServer(connection, () => new DiskOrClientFiles(new ClientFiles(connection)), { pdfOf, tiledPdf, sheetPdf });
