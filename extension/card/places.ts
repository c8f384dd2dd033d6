import type { LayerCard } from '../../language/protocol/layer-card.ts';
import type { WirePlace, WireReason } from '../../language/protocol/place.ts';

/** The place of a card that is asked for; undefined where the card speaks of no such place. */
export function knownPlace(card: LayerCard, wanted: Omit<WirePlace, 'name'>): WirePlace | undefined {
  return placesOf(card).find(
    ({ uri, line, character }) => uri === wanted.uri && line === wanted.line && character === wanted.character,
  );
}

function placesOf({ place, piece, figures, missing, touches }: LayerCard): WirePlace[] {
  const reasons = [...(piece?.reasons ?? []), ...figures.flatMap((figure) => figure.reasons), ...missing];
  return [place, ...touches.map((touch) => touch.place), ...reasons.flatMap(of)].filter((each) => each !== undefined);
}

const of = ({ at, reasons }: WireReason): (WirePlace | undefined)[] => [at, ...reasons.flatMap(of)];
