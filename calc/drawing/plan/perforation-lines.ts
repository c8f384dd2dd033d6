import { quantity, text } from '../../figure/figure.ts';
import type { FlatPiece } from '../../piece/flat-piece.ts';
import { LENGTH } from '../../quantity/index.ts';
import type { LaidLayer } from '../../stack/laid.ts';
import { penOf, type Thing } from './thing.ts';

/** More holes than an eye counts: the nearest to the middle are drawn, and the row says so. */
const mostHoles = 1500;

/** The holes of a core where they are drilled. */
export function perforationThings(laid: LaidLayer, pieces: readonly FlatPiece[]): Thing[] {
  const holes = pieces.flatMap(({ drills }) => drills);
  const [first] = holes;
  if (first === undefined) return [];
  const source = { path: pathOf(laid), name: laid.name };
  const pen = penOf('perforation', source);
  const drawn =
    holes.length <= mostHoles
      ? holes
      : [...holes].sort((a, b) => Math.hypot(a.at.x, a.at.y) - Math.hypot(b.at.x, b.at.y)).slice(0, mostHoles);
  const figures = { count: holes.length, diameter: quantity(first.diameter, LENGTH), drawn: drawn.length };
  return [
    {
      layer: 'perforation',
      source,
      what: text('holes in {name}', { name: laid.name }),
      where: text('all over the core'),
      size:
        drawn.length < holes.length
          ? text('{count} of {diameter}, of which {drawn} in the middle are drawn', figures)
          : text('{count} of {diameter}', figures),
      items: drawn.map(({ at, diameter }) => pen.circle(at, diameter / 2)),
    },
  ];
}

/** The clause that asks for them. */
const pathOf = ({ path, layer }: LaidLayer): string =>
  layer.clauses.find(({ word }) => word === 'perforate')?.path ?? path;
