import { URI } from 'langium';
import type { WithAnalysis } from '../analysis/module.ts';
import { stockScheme } from '../book/stock.ts';
import type { WireOffer } from '../protocol/paper.ts';
import type { Calibration } from '../view/records/calibrate.ts';
import { type Style, sayText } from '../view/text.ts';

/**
 * Values that the builds come to, as edits: the fact in place where the workspace has it, else a line more in the entry of the
 * material, else, for a material of the stock library, an entry of its own at the end of the recipe's file.
 */
export function offersOf(
  services: WithAnalysis,
  calibrations: readonly Calibration[],
  uri: string,
  style: Style,
): WireOffer[] {
  return calibrations.flatMap((offer) => {
    const says = sayText(offer.says, style);
    const place = offer.at === undefined ? undefined : services.analysis.locate(offer.at);
    const address = place?.uri ?? uri;
    const document = services.shared.workspace.LangiumDocuments.getDocument(URI.parse(address))?.textDocument;
    if (document === undefined) return [];
    if (place !== undefined) {
      const text = document.getText().slice(place.span.offset, place.span.end);
      // a line of the fact may carry clauses and remarks: only what says the value is another
      const [from, to] = [document.positionAt(place.span.offset), document.positionAt(place.span.end)];
      const kept = /\s*(,.*|\n)?$/s.exec(text)?.[0] ?? '';
      return [{ says, line: offer.line, uri: address, from, to, text: `${offer.line}${kept}` }];
    }
    if (offer.entry.kind !== 'material') return [];
    const { name, word } = offer.entry;
    const own = inOwnEntry(services, name, offer.line);
    if (own !== undefined) return [{ says, line: offer.line, ...own }];
    const end = document.positionAt(document.getText().length);
    const text = `\n${word} ${name} like stock {\n  ${offer.line}\n}\n`;
    return [{ says, line: offer.line, uri: address, from: end, to: end, text }];
  });
}

/** A line at the end of the entry that the workspace has of a material. */
function inOwnEntry(services: WithAnalysis, name: string, line: string): Omit<WireOffer, 'says' | 'line'> | undefined {
  const placed = services.analysis.shelf().placed('material', name);
  const document =
    placed && services.shared.workspace.LangiumDocuments.getDocument(URI.parse(placed.uri))?.textDocument;
  if (placed === undefined || document === undefined || placed.uri.startsWith(`${stockScheme}:`)) return undefined;
  const text = document.getText();
  const brace = text.lastIndexOf('}', placed.lowered.source.end - 1);
  if (brace < placed.lowered.source.offset) return undefined;
  const start = text.lastIndexOf('\n', brace) + 1;
  const alone = text.slice(start, brace).trim() === '';
  const at = document.positionAt(alone ? start : brace);
  return { uri: placed.uri, from: at, to: at, text: alone ? `  ${line}\n` : `\n  ${line}\n` };
}
