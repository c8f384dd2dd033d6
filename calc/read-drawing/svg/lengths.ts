import type { DrawingUnit } from '../drawn.ts';
import { numberPattern } from '../number-pattern.ts';
import { numberList } from './number-list.ts';

/** m. Source: CSS Values and Units Module Level 3, section 6.2: 1 in = 25.4 mm = 96 px = 72 pt = 6 pc. */
const metresOf: Readonly<Record<string, number>> = {
  mm: 1e-3,
  cm: 1e-2,
  q: 0.25e-3,
  in: 0.0254,
  pt: 0.0254 / 72,
  pc: 0.0254 / 6,
  px: 0.0254 / 96,
};

const pixel = 0.0254 / 96;

export interface Length {
  readonly number: number;
  /** '' where none is typed */
  readonly unit: string;
}

const lengthPattern = new RegExp(`^\\s*(${numberPattern})\\s*([a-zA-Z]*|%)\\s*$`);

/** `100mm`, `12.5`, `50%`; undefined where it is no length. */
function readLength(typed: string | undefined): Length | undefined {
  const found = lengthPattern.exec((typed ?? '').slice(0, 60));
  if (found === null) return undefined;
  const unit = (found[2] ?? '').toLowerCase();
  const number = Number(found[1]);
  return Number.isFinite(number) && (unit === '' || unit === '%' || unit in metresOf) ? { number, unit } : undefined;
}

/** m; undefined for shares and bare numbers. */
const inMetres = ({ number, unit }: Length): number | undefined => {
  const metres = metresOf[unit];
  return metres === undefined ? undefined : number * metres;
};

/** A length within the drawing, in its own units: `px` there is one of them. */
export function inUserUnits(typed: string | undefined, otherwise = 0): number {
  if (typed === undefined || typed.trim() === 'auto') return otherwise;
  const length = readLength(typed);
  if (length === undefined || length.unit === '%') return Number.NaN;
  return length.unit === '' ? length.number : (inMetres(length) ?? Number.NaN) / pixel;
}

export interface ViewBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export function readViewBox(typed: string | undefined): ViewBox | undefined {
  const [x, y, width, height, more] = numberList(typed ?? '') ?? [];
  if (x === undefined || y === undefined || width === undefined || height === undefined || more !== undefined)
    return undefined;
  return width > 0 && height > 0 ? { x, y, width, height } : undefined;
}

/**
 * What one unit of the drawing is. Millimetres where the file does not say; pixels are as many to the inch as the standard has them,
 * but programs mean different things by them.
 */
export function unitOfDrawing(attributes: Readonly<Record<string, string>>): DrawingUnit & { readonly tall: number } {
  const box = readViewBox(attributes.viewBox);
  const [width, height] = [readLength(attributes.width), readLength(attributes.height)];
  const named = [width, height].find((length) => length !== undefined && length.unit !== '' && length.unit !== '%');
  if (named === undefined) return { name: 'mm', metres: 1e-3, tall: 1e-3, unclear: 'not said' };
  // the page has a size, but the drawing counts in pixels of it: some programs put 90 of them to the inch, some 72
  if (box === undefined) return { name: 'px', metres: pixel, tall: pixel, unclear: 'pixels' };
  const across = width === undefined ? undefined : inMetres(width);
  const down = height === undefined ? undefined : inMetres(height);
  const [wide, tall] = [across && across / box.width, down && down / box.height];
  const keeps = !/^\s*none\b/.test(attributes.preserveAspectRatio ?? '');
  const least = Math.min(wide ?? Infinity, tall ?? Infinity);
  const unclear = named.unit === 'px' ? ({ unclear: 'pixels' } as const) : {};
  if (!Number.isFinite(least) || least <= 0) return { name: 'mm', metres: 1e-3, tall: 1e-3, unclear: 'not said' };
  return keeps
    ? { name: named.unit, metres: least, tall: least, ...unclear }
    : { name: named.unit, metres: wide ?? least, tall: tall ?? least, ...unclear };
}
