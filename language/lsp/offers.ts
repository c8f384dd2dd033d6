import { URI } from 'langium';
import type { WithAnalysis } from '../analysis/module.ts';
import type { WireOffer } from '../protocol/paper.ts';
import type { Calibration } from '../view/records/calibrate.ts';
import { type Style, sayText } from '../view/text.ts';

/** Values that the builds come to, as edits: the fact in place where the workspace has it, else an entry of its own at the end of the recipe's file. */
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
    const end = document.positionAt(document.getText().length);
    const text = `\nfabric ${offer.entry.name} like stock {\n  ${offer.line}\n}\n`;
    return [{ says, line: offer.line, uri: address, from: end, to: end, text }];
  });
}
