import { allKnown, type Bench, defineFigure, type Figure, ifKnown, known, reason, whenKnown } from '../figure/index.ts';
import { layerArealWeight } from '../laminate/fraction.figure.ts';
import { layerDryMass, layerResin } from '../laminate/mass.figure.ts';
import { laidStack } from '../stack/laid.figure.ts';
import type { LaidLayer } from '../stack/laid.ts';
import { isCloth } from '../stack/order.ts';
import { flatPieces } from './flat-pieces.figure.ts';

/** A dry piece as it lies on the bench, kg: with all that is trimmed off later. */
export interface PieceMass {
  readonly piece: string;
  readonly material?: string;
  readonly mass: number;
}

/** kg of resin that a piece brings with it for each kg of fibre: a prepreg is weighed with its own. */
function resinInIt(bench: Bench, { key, layer }: LaidLayer): Figure<number> {
  const kind = layer.material === undefined ? undefined : bench.material(layer.material)?.kind;
  if (kind !== 'prepreg') return known(0);
  return whenKnown({ dry: bench.ask(layerDryMass, key), resin: bench.ask(layerResin, key) }, ({ dry, resin }) =>
    known(dry > 0 ? resin.total / dry : 0),
  );
}

/** What the pieces of the stack weigh when they are cut: cloth by the area of its flat piece, core and inserts as in the part. */
export const pieceMasses = defineFigure<readonly PieceMass[]>('piece_masses', (bench) =>
  whenKnown({ stack: bench.ask(laidStack), pieces: bench.ask(flatPieces) }, ({ stack, pieces }, reasons) => {
    const masses = stack.layers.flatMap((laid) => {
      const { material } = laid.layer;
      const named = (piece: string, mass: number): PieceMass => ({
        piece,
        ...(material === undefined ? {} : { material }),
        mass,
      });
      const own = isCloth(laid) ? pieces.filter(({ of, kind }) => kind === 'cloth' && of === laid.name) : [];
      if (own.length === 0)
        return [ifKnown(bench.ask(layerDryMass, laid.key), (mass) => known(named(laid.name, mass)))];
      return own.map(({ name, area }) =>
        whenKnown({ weight: bench.ask(layerArealWeight, laid.key), more: resinInIt(bench, laid) }, ({ weight, more }) =>
          known(named(name, area * weight * (1 + more))),
        ),
      );
    });
    return ifKnown(allKnown(masses), (all, more) =>
      known(
        all.filter(({ mass }) => mass > 0),
        reason('computed', 'area as it is cut, times what a square metre weighs', { reasons: [...reasons, ...more] }),
      ),
    );
  }),
);
