import { wrapReach } from '../cloth/wrap.figure.ts';
import {
  allKnown,
  type Bench,
  defineFigure,
  type Figure,
  ifKnown,
  known,
  knownBy,
  quantity,
  reason,
  text,
  whenKnown,
  worked,
} from '../figure/index.ts';
import { listed } from '../figure/listed.ts';
import { given, isImpossible, positive } from '../outcome.ts';
import { signedDistance } from '../outline/distance.ts';
import { cutoutsOf, partFrame } from '../outline/part.figure.ts';
import { intoFrame, origin, type Point } from '../outline/shape.ts';
import { LENGTH, NUMBER } from '../quantity/index.ts';
import { covers, layerFootprint } from '../stack/footprint.figure.ts';
import { laidStack } from '../stack/laid.figure.ts';
import type { LaidLayer } from '../stack/laid.ts';
import { grooveOf, insertsOf, isCloth } from '../stack/order.ts';
import { layerFibreDensity, layerVolumeFraction } from './fraction.figure.ts';
import { layerDryMass, layerMass } from './mass.figure.ts';
import { layerThickness } from './thickness.figure.ts';

/** Layers over one place with what each adds there, from the tool face; m. */
export function layersAt(
  bench: Bench,
  point: Point,
): Figure<readonly { readonly laid: LaidLayer; readonly adds: number }[]> {
  return whenKnown({ stack: bench.ask(laidStack), cutouts: bench.ask(cutoutsOf) }, ({ stack, cutouts }) => {
    for (const cutout of cutouts) {
      const inside = signedDistance(cutout.shape, intoFrame(cutout, point));
      if (typeof inside === 'number' && inside < 0) return known([]);
    }
    return ifKnown(allKnown(stack.layers.map((laid) => covered(bench, laid, point))), (there) => {
      const present = stack.layers.filter((laid, i) => there[i] === true && grooveOf(stack.layers, laid) === undefined);
      const here = new Set(present);
      const counted = present.filter(
        (laid) => laid.layer.kind !== 'core' || !insertsOf(stack.layers, laid).some((insert) => here.has(insert)),
      );
      return ifKnown(allKnown(counted.map((laid) => addedAt(bench, laid, point))), (each, reasons) =>
        knownBy(
          counted.map((laid, i) => ({ laid, adds: each[i] ?? 0 })),
          reasons,
        ),
      );
    });
  });
}

const covered = (bench: Bench, laid: LaidLayer, point: Point): Figure<boolean> =>
  ifKnown(bench.ask(layerFootprint, laid.key), (footprint) => worked(covers(footprint, point), ''));

/** A wrapped ply lies double where it lands. */
function addedAt(bench: Bench, laid: LaidLayer, point: Point): Figure<number> {
  const thickness = bench.ask(layerThickness, laid.key);
  if (laid.layer.extent.kind !== 'wrap') return thickness;
  return whenKnown({ thickness, wrap: bench.ask(wrapReach, laid.key), frame: bench.ask(partFrame) }, (v, reasons) => {
    const distance = signedDistance(v.frame.shape, point);
    if (isImpossible(distance)) return worked<number>(distance, '');
    return knownBy(v.wrap.landing > 0 && distance > -v.wrap.landing ? 2 * v.thickness : v.thickness, reasons);
  });
}

/** Thickness of the part at a place, m. */
export function thicknessAt(bench: Bench, point: Point): Figure<number> {
  return ifKnown(layersAt(bench, point), (layers, reasons) => {
    const there = layers.map(({ laid, adds }) =>
      text('{name} {thickness}', { name: laid.name, thickness: quantity(adds, LENGTH) }),
    );
    return known(
      layers.reduce((sum, { adds }) => sum + adds, 0),
      reason(
        'computed',
        there.length === 0 ? text('no layer lies there') : text('layers there: {layers}', { layers: listed(there) }),
        { reasons },
      ),
    );
  });
}

/** Thickness of the part at its middle, m. */
export const thickness = defineFigure<number>('thickness', (bench) => thicknessAt(bench, origin));

export interface LaminateFraction {
  readonly byWeight: number;
  readonly byVolume: number;
}

/** Fibre in all the cloth of the part with its resin; coats, cores and inserts left out. */
export const fibreFraction = defineFigure<LaminateFraction>('fibre_fraction', (bench) =>
  ifKnown(bench.ask(laidStack), (stack) => {
    const cloth = stack.layers.filter(isCloth);
    const inputs = {
      fibre: allKnown(cloth.map((laid) => bench.ask(layerDryMass, laid.key))),
      all: allKnown(cloth.map((laid) => bench.ask(layerMass, laid.key))),
      volumes: allKnown(cloth.map((laid) => fibreVolume(bench, laid))),
    };
    return whenKnown(inputs, ({ fibre, all, volumes }, reasons) => {
      const sum = (of: readonly number[]) => of.reduce((total, x) => total + x, 0);
      const [fibres, laminate, volume] = [sum(fibre), sum(all), sum(volumes.map((v) => v.fibre))];
      if (!(laminate > 0)) return worked<LaminateFraction>({ problem: 'there is no cloth in the stack' }, '');
      const resin = sum(volumes.map((v) => v.resin));
      const value = { byWeight: fibres / laminate, byVolume: volume / (volume + resin) };
      return known(
        value,
        reason(
          'computed',
          text('fibre over laminate, {weight} by weight', { weight: quantity(value.byWeight, NUMBER) }),
          { reasons },
        ),
      );
    });
  }),
);

/** m3 of fibre and of resin in a layer, from its mass and its fraction. */
function fibreVolume(bench: Bench, laid: LaidLayer): Figure<{ readonly fibre: number; readonly resin: number }> {
  const inputs = {
    dry: bench.ask(layerDryMass, laid.key),
    density: bench.ask(layerFibreDensity, laid.key),
    fraction: bench.ask(layerVolumeFraction, laid.key),
  };
  return whenKnown(inputs, ({ dry, density, fraction }) =>
    worked(
      given([positive('the density of the fibre', density)], () => ({
        fibre: dry / density,
        resin: ((dry / density) * (1 - fraction)) / fraction,
      })),
      '',
    ),
  );
}
