import type { StackBand } from '../../../language/protocol/layer-card.ts';
import { bandHeights, labelPlaces } from './heights.ts';

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface PlacedBand {
  readonly band: StackBand;
  readonly box: Box;
  /** where its name stands */
  readonly label: number;
}

export interface StackLayout {
  /** as they are painted: what lies in a core comes after it */
  readonly bands: readonly PlacedBand[];
  readonly toScale: boolean;
  readonly bottom: number;
  /** of the lowest name */
  readonly lowest: number;
}

export interface StackSize {
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** the least height of a band */
  readonly least: number;
  /** the least distance of two names */
  readonly label: number;
}

/** Where each band lies, the bag face on top. What lies in a core is drawn in it, side by side. */
export function layOut(layers: readonly StackBand[], size: StackSize): StackLayout {
  const keys = new Set(layers.map(({ key }) => key));
  const isInside = ({ inside }: StackBand): boolean => inside !== undefined && keys.has(inside);
  const main = layers.filter((band) => !isInside(band)).reverse();
  const { heights, toScale } = bandHeights(
    main.map(({ thickness }) => thickness),
    size.height,
    size.least,
  );
  const boxes = new Map<string, Box>();
  let y = size.top;
  for (const [i, band] of main.entries()) {
    const height = heights[i] as number;
    boxes.set(band.key, { ...across(band, size.width), y, height });
    y += height;
  }
  const inner = layers.filter(isInside);
  for (const band of inner) {
    const host = boxes.get(band.inside as string);
    const core = main.find(({ key }) => key === band.inside);
    if (host !== undefined && core !== undefined) boxes.set(band.key, boxIn(host, core, band, inner, size.least));
  }
  const placed = [...main, ...inner].flatMap((band) => {
    const box = boxes.get(band.key);
    return box === undefined ? [] : [{ band, box }];
  });
  const middles = placed
    .map(({ box }, i) => ({ i, middle: box.y + box.height / 2 }))
    .sort((a, b) => a.middle - b.middle);
  const places = labelPlaces(
    middles.map(({ middle }) => middle),
    size.label,
    y,
  );
  const labels = new Map(middles.map(({ i }, at) => [i, places[at] as number]));
  return {
    bands: placed.map((each, i) => ({ ...each, label: labels.get(i) ?? 0 })),
    toScale,
    bottom: y,
    lowest: places.at(-1) ?? y,
  };
}

/** A patch and a strip are narrower than the part. */
function across({ whole, kind }: StackBand, width: number): Pick<Box, 'x' | 'width'> {
  if (whole || kind === 'core' || kind === 'coat') return { x: 0, width };
  return { x: width * 0.22, width: width * 0.56 };
}

/** An insert as thick as its core fills it; a strip in a groove lies at the face that it is laid from. */
function boxIn(host: Box, core: StackBand, band: StackBand, inner: readonly StackBand[], least: number): Box {
  const mates = inner.filter(({ inside }) => inside === core.key);
  const slot = host.width / (mates.length * 2 + 1);
  const share = band.thickness === undefined || !core.thickness ? 1 : Math.min(1, band.thickness / core.thickness);
  const height = Math.min(host.height, Math.max(least, host.height * share));
  return { x: host.x + slot * (mates.indexOf(band) * 2 + 1), y: host.y + host.height - height, width: slot, height };
}
