import { type Text, text } from '../../calc/figure/figure.ts';
import { safe, sayText } from './text.ts';

/** What mixes and steps take that is called by no name of a material. */
const ours: Readonly<Record<string, Text>> = {
  resin: text('resin'),
  hardener: text('hardener'),
  holes: text('holes'),
  thermocouples: text('thermocouples'),
  release: text('release'),
  tack: text('tack'),
  tube: text('tube'),
  paste: text('paste'),
  paint: text('paint'),
  pieces: text('pieces'),
  mould: text('mould'),
  face: text('face'),
  edge: text('edge'),
  joint: text('joint'),
};

/** What a step takes, or what goes into a pot: a name, or one of a few words. */
export function thingWords(what: string): string {
  const words = Object.hasOwn(ours, what) ? ours[what] : undefined;
  return words === undefined ? safe(what) : sayText(words);
}
