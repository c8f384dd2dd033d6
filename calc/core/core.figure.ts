import { cutsGain, scoreCuts } from '../curve/core-bend.figure.ts';
import {
  allKnown,
  type Bench,
  defineFigure,
  type Figure,
  ifKnown,
  isKnown,
  known,
  knownBy,
  missing,
  quantity,
  reasonsOf,
  text,
  typed,
  usual,
  whenKnown,
  worked,
} from '../figure/index.ts';
import { layerThickness } from '../laminate/thickness.figure.ts';
import { following, isImpossible, type Outcome } from '../outcome.ts';
import { shapeArea } from '../outline/measure.ts';
import { cutoutsOf, inRecipe } from '../outline/part.figure.ts';
import { AREA, LENGTH, VOLUME } from '../quantity/index.ts';
import { grooveRoom, kerfVolume, perforation } from '../resin/core-cuts.ts';
import { type Footprint, footprintArea, grownBy, layerFootprint } from '../stack/footprint.figure.ts';
import { laidLayer, laidStack } from '../stack/laid.figure.ts';
import type { LaidLayer } from '../stack/laid.ts';
import { insertsOf, namedLayers } from '../stack/order.ts';
import { chamferRun, prismatoid } from './solid.ts';

/** Room that a strip has in its groove, on each side and at each end, where no clearance is typed. */
export const CLEARANCE = {
  habit: 'clearance',
  what: 'room beside a strip in its groove',
  value: quantity(0.0005, LENGTH),
  source: 'common practice: half a millimetre each side',
};

/** Area of the inserts that lie in a core, m2. */
const insertArea = defineFigure<number>('insert_area', (bench, key) =>
  whenKnown({ core: bench.ask(laidLayer, key), stack: bench.ask(laidStack) }, ({ core, stack }) => {
    const areas = insertsOf(stack.layers, core).map((insert) =>
      ifKnown(bench.ask(layerFootprint, insert.key), (f) =>
        worked(footprintArea(f), text('the insert {name}', { name: insert.name })),
      ),
    );
    return ifKnown(allKnown(areas), (areas, reasons) =>
      knownBy(
        areas.reduce((sum, a) => sum + a, 0),
        reasons,
      ),
    );
  }),
);

/** What is left of a core's toe face, m2: inserts and cutouts are taken out. */
export const coreArea = defineFigure<number>('core_area', (bench, key) =>
  whenKnown(
    { footprint: bench.ask(layerFootprint, key), inserts: bench.ask(insertArea, key), holes: cutoutArea(bench, key) },
    (v, reasons) => {
      const shown = { inset: quantity(v.footprint.inset, LENGTH), inserts: quantity(v.inserts, AREA) };
      const area = following(footprintArea(v.footprint), (a) => Math.max(0, a - v.inserts - v.holes));
      return worked(area, text('the face, {inset} inside the finished edge, less {inserts} of inserts', shown), {
        reasons,
      });
    },
  ),
);

/** Cutouts of the part go through a core that covers it all; m2. */
function cutoutArea(bench: Bench, key: string): Figure<number> {
  return whenKnown(
    { footprint: bench.ask(layerFootprint, key), cutouts: bench.ask(cutoutsOf) },
    ({ footprint, cutouts }) => {
      if (!footprint.whole) return known(0);
      let sum = 0;
      for (const cutout of cutouts) {
        const area = shapeArea(cutout.shape);
        if (isImpossible(area)) return worked<number>(area, '');
        sum += area;
      }
      return known(sum * grownBy(footprint));
    },
  );
}

/** Cuts into a core and what they hold, m3. */
export interface CoreCuts {
  readonly holes: { readonly count: number; readonly volume: number };
  readonly kerfs: number;
  /** taken out for grooves */
  readonly grooves: number;
  /** of that, what their strips leave free */
  readonly grooveRoom: number;
}

/** Holes, saw cuts and grooves of a core. */
export const coreCuts = defineFigure<CoreCuts>('core_cuts', (bench, key) => {
  const found = bench.ask(laidLayer, key);
  const area = bench.ask(coreArea, key);
  const thickness = bench.ask(layerThickness, key);
  if (!isKnown(found) || !isKnown(area) || !isKnown(thickness)) return missing(found, area, thickness);
  const core = found.value;
  const holes = holesOf(bench, core, area.value, thickness.value);
  const kerfs = kerfsOf(bench, core, area.value, thickness.value);
  const grooves = allKnown((core.layer.grooves ?? []).map((_, i) => grooveOf(bench, core, i, thickness.value)));
  if (!isKnown(holes) || !isKnown(kerfs) || !isKnown(grooves)) return missing(holes, kerfs, grooves);
  let cut = 0;
  let room = 0;
  for (const groove of grooves.value) {
    cut += groove.cut;
    room += groove.room;
  }
  const cuts = { holes: holes.value, kerfs: kerfs.value, grooves: cut, grooveRoom: room };
  return knownBy(cuts, reasonsOf(holes, kerfs, grooves));
});

const noHoles: Figure<CoreCuts['holes']> = known({ count: 0, volume: 0 });
const nothing = known(0);

function holesOf(bench: Bench, core: LaidLayer, area: number, thickness: number): Figure<CoreCuts['holes']> {
  const holes = core.layer.perforation;
  if (holes === undefined) return noHoles;
  const at = inRecipe(bench, core.path);
  const sizes = {
    diameter: typed(holes.diameter, text('the diameter of the holes in {core}', { core: core.name }), at),
    pitch: typed(holes.pitch, text('the distance between the holes in {core}', { core: core.name }), at),
  };
  return whenKnown(sizes, ({ diameter, pitch }, reasons) => {
    const found = following(perforation(area, diameter.si, pitch.si, thickness), (p) => ({
      count: p.holes,
      volume: p.volume,
    }));
    return worked(found, text('holes of {diameter} every {pitch} both ways', { diameter, pitch }), { at, reasons });
  });
}

/** The cuts of a score, as they are once the core is bent. */
function kerfsOf(bench: Bench, core: LaidLayer, area: number, thickness: number): Figure<number> {
  const { score } = core.layer;
  if (score === undefined) return nothing;
  const at = inRecipe(bench, core.path);
  return whenKnown(
    {
      pitch: typed(score.pitch, text('the distance between the cuts in {core}', { core: core.name }), at),
      gain: cutsGain(bench, core.key),
    },
    ({ pitch, gain }, reasons) => {
      const cuts = scoreCuts(score, pitch.si, thickness);
      const volume = following(kerfVolume({ ...cuts, ways: 2 }), (each) => Math.max(0, each + gain) * area);
      const shown = { width: quantity(cuts.width, LENGTH), depth: quantity(cuts.depth, LENGTH), pitch };
      return worked(volume, text('cuts {width} wide and {depth} deep every {pitch} both ways', shown), { at, reasons });
    },
  );
}

/** Place, size and depth of a groove follow from its strip; what is typed wins. */
function grooveOf(
  bench: Bench,
  core: LaidLayer,
  i: number,
  thickness: number,
): Figure<{ readonly cut: number; readonly room: number }> {
  const groove = core.layer.grooves?.[i];
  const at = inRecipe(bench, groove?.path ?? core.path);
  const strip = groove?.strip;
  return whenKnown(
    {
      name: typed(strip, text('what the groove in {core} is for', { core: core.name }), at),
      stack: bench.ask(laidStack),
    },
    (v) => {
      const laid = namedLayers(v.stack.layers, v.name)[0];
      if (laid === undefined) return typed<never>(undefined, text('a layer called {name}', { name: v.name }), at);
      const inputs = {
        footprint: bench.ask(layerFootprint, laid.key),
        strip: bench.ask(layerThickness, laid.key),
        clearance: groove?.clearance === undefined ? usual(bench, CLEARANCE) : known(groove.clearance.si),
      };
      return whenKnown(inputs, ({ footprint, strip: t, clearance }, reasons) => {
        const found = grooveVolumes(footprint, t, clearance, groove?.width?.si, groove?.depth?.si, thickness);
        return worked(found, text('the groove for {strip}', { strip: v.name }), { at, reasons });
      });
    },
  );
}

function grooveVolumes(
  footprint: Footprint,
  strip: number,
  clearance: number,
  width: number | undefined,
  depth: number | undefined,
  core: number,
): Outcome<{ cut: number; room: number }> {
  const { shape } = footprint.placed;
  if (shape.kind !== 'rectangle') return { problem: 'a groove follows from a strip, which has a length and a width' };
  const size = {
    length: shape.length + 2 * clearance,
    width: width ?? shape.width + 2 * clearance,
    depth: Math.min(depth ?? strip, core),
  };
  return following(
    grooveRoom({ ...size, filled: Math.min(strip, size.depth) * shape.length * Math.min(shape.width, size.width) }),
    (room) => ({
      cut: size.length * size.width * size.depth,
      room,
    }),
  );
}

/** Volume of the material that is left of a core, m3. */
export const coreVolume = defineFigure<number>('core_volume', (bench, key) =>
  whenKnown(
    {
      core: bench.ask(laidLayer, key),
      footprint: bench.ask(layerFootprint, key),
      thickness: bench.ask(layerThickness, key),
      area: bench.ask(coreArea, key),
      cuts: bench.ask(coreCuts, key),
    },
    ({ core, footprint, thickness, area, cuts }, reasons) => {
      const whole = following(footprintArea(footprint), (toe) =>
        following(
          slopedVolume(footprint, core.layer.chamfer?.si, thickness, toe),
          (volume) => volume - (toe - area) * thickness,
        ),
      );
      const left = following(whole, (volume) => Math.max(0, volume - cuts.holes.volume - cuts.kerfs - cuts.grooves));
      return worked(
        left,
        text('the core less its inserts, holes, cuts and grooves ({cut})', {
          cut: quantity(cuts.holes.volume + cuts.kerfs + cuts.grooves, VOLUME),
        }),
        { reasons },
      );
    },
  ),
);

function slopedVolume(footprint: Footprint, chamfer: number | undefined, thickness: number, toe: number): Outcome {
  if (chamfer === undefined) return toe * thickness;
  return following(chamferRun(chamfer, thickness), (run) =>
    following(footprintArea(footprint, run / 2), (middle) =>
      following(footprintArea(footprint, run), (top) => prismatoid(toe, middle, top, thickness)),
    ),
  );
}

/** Volume of an insert, m3. */
export const insertVolume = defineFigure<number>('insert_volume', (bench, key) =>
  whenKnown(
    { footprint: bench.ask(layerFootprint, key), thickness: bench.ask(layerThickness, key) },
    ({ footprint, thickness }, reasons) =>
      worked(
        following(footprintArea(footprint), (area) => area * thickness),
        'area times thickness',
        { reasons },
      ),
  ),
);
