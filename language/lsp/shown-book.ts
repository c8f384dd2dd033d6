import { URI } from 'langium';
import type { Place } from '../../calc/model/index.ts';
import type { WithAnalysis } from '../analysis/module.ts';
import { isStock } from '../book/stock.ts';
import type { WirePlace } from '../protocol/place.ts';
import type { CardBook } from '../view/card/book.ts';
import type { HoverBook, TextAt } from '../view/hover/book.ts';
import { say } from '../view/text.ts';
import { locationOf } from './diagnostics.ts';
import { styleOf } from './style.ts';

/** What the views ask that hand out plain data. */
export function cardBook(services: WithAnalysis): CardBook {
  return { ...hoverBook(services), placeAt: (place) => placeAt(services, place) };
}

export function hoverBook(services: WithAnalysis): HoverBook {
  return {
    analysis: services.analysis,
    style: () => styleOf(services),
    textAt: (place) => textAt(services, place),
    get commandLinks() {
      return services.settings.commandLinks;
    },
  };
}

function placeAt(services: WithAnalysis, place: Place): WirePlace | undefined {
  const found = services.analysis.locate(place);
  const location = found && locationOf(services, found.uri, found.span);
  return location && { uri: location.uri, ...location.range.start, name: textAt(services, place)?.name ?? '' };
}

function textAt(services: WithAnalysis, place: Place): TextAt | undefined {
  const found = services.analysis.locate(place);
  const uri = found && URI.parse(found.uri);
  const document = uri && services.shared.workspace.LangiumDocuments.getDocument(uri)?.textDocument;
  if (found === undefined || uri === undefined || document === undefined) return undefined;
  const line = document.positionAt(found.span.offset).line + 1;
  const file = uri.path.slice(uri.path.lastIndexOf('/') + 1);
  const inStock = isStock(uri);
  // A link to a text that was never saved would open a new one.
  const linked = !inStock && uri.scheme !== 'untitled';
  return {
    text: document.getText().slice(found.span.offset, found.span.end),
    link: linked ? `${uri.toString().replace(/[()]/g, (mark) => (mark === '(' ? '%28' : '%29'))}#L${line}` : '',
    name: inStock ? say('stock library: {place}', { place: `${file}:${line}` }) : `${file}:${line}`,
  };
}
