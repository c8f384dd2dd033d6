/** Flat pieces on a long outline: one ply from nothing, and the edit of one of twenty. */
import { Bench as FigureBench } from '../../calc/figure/bench.ts';
import type { Layer, Recipe } from '../../calc/model/index.ts';
import { flatPieces, flatPiecesOf } from '../../calc/piece/flat-pieces.figure.ts';
import { bookOf, deg, layer, mm, SLED } from '../harness/sled-model.ts';
import { type Bench, shortest } from './measure.ts';

/** A board with waves of a few millimetres in 2,000 points; `phase` makes it another one. */
const outline = (phase: number) => ({
  kind: 'polygon' as const,
  points: Array.from({ length: 2000 }, (_, i) => {
    const a = (2 * Math.PI * i) / 2000;
    const r = 0.5 + 0.04 * Math.sin(3 * a + phase) + 0.004 * Math.sin(11 * a);
    return { x: 1.6 * r * Math.cos(a), y: r * Math.sin(a) };
  }),
});

const body = layer('core', 'body', 'foam_80', 'stack.body', { thickness: mm(20) });
const wrapped = (i: number, landing: number): Layer =>
  layer('ply', `p${i}`, 'triax_680', `stack.${i}`, {
    angle: deg(0),
    extent: { kind: 'wrap', way: 'onto', target: 'body', landing: mm(landing) },
    darts: 'auto',
  });
const recipe = (phase: number, plies: readonly Layer[]): Recipe => ({
  ...SLED,
  part: { ...SLED.part!, outline: outline(phase), zones: [] },
  stack: { ...SLED.stack!, items: [...plies, body] },
});

export const measure: Bench = async () => {
  const book = bookOf();
  let phase = 0;
  const fresh = () => {
    // a shape that was never seen
    phase += 0.01;
    new FigureBench(recipe(phase, [wrapped(0, 25)]), book).ask(flatPiecesOf, 'p0');
  };
  for (let i = 0; i < 15; i++) fresh();
  const one = await shortest(fresh);
  const twenty = Array.from({ length: 20 }, (_, i) => wrapped(i, 25 + i));
  new FigureBench(recipe(0, twenty), book).ask(flatPieces);
  let landing = 60;
  const edit = await shortest(() => {
    landing += 0.1;
    const plies = twenty.map((ply, i) => (i === 7 ? wrapped(7, landing) : ply));
    new FigureBench(recipe(0, plies), book).ask(flatPieces);
  });
  return [
    { name: 'a wrapped, darted ply on a new outline of 2,000 points', value: one, unit: 'ms', budget: 5 },
    { name: 'one of 20 such plies has another landing: all pieces again', value: edit, unit: 'ms', budget: 16 },
  ];
};
