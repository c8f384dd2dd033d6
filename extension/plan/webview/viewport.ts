/** The part of a drawing that is seen, in its own units. */
export interface Viewport {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** No closer than this share of the drawing, and no farther than so many times its size. */
const closest = 1 / 400;
const farthest = 4;

export const whole = ([x, y, width, height]: readonly [number, number, number, number]): Viewport => ({
  x,
  y,
  width,
  height,
});

/** Smaller than 1 goes closer; the point (in the drawing) stays where it is on the screen. */
export function zoomed(view: Viewport, factor: number, at: { x: number; y: number }, all: Viewport): Viewport {
  const width = Math.min(all.width * farthest, Math.max(all.width * closest, view.width * factor));
  const by = width / view.width;
  return {
    x: at.x - (at.x - view.x) * by,
    y: at.y - (at.y - view.y) * by,
    width,
    height: view.height * by,
  };
}

export const middleOf = ({ x, y, width, height }: Viewport): { x: number; y: number } => ({
  x: x + width / 2,
  y: y + height / 2,
});

/** Moved by shares of what is seen; a point of the drawing always stays in it. */
export function panned(view: Viewport, across: number, down: number, all: Viewport): Viewport {
  const keep = (low: number, size: number, from: number, length: number): number =>
    Math.min(from + length - size * 0.1, Math.max(from - size * 0.9, low));
  return {
    ...view,
    x: keep(view.x + across * view.width, view.width, all.x, all.width),
    y: keep(view.y + down * view.height, view.height, all.y, all.height),
  };
}

export const viewBox = ({ x, y, width, height }: Viewport): string =>
  [x, y, width, height].map((value) => Math.round(value * 1000) / 1000).join(' ');
