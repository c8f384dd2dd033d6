import { consumableCost, cost, labourCost, materialCost, mouldCost, overheadCost } from '../cost/cost.figure.ts';
import { currency } from '../cost/price.figure.ts';
import {
  type Bench,
  cannot,
  definePick,
  type Figure,
  finiteFigure,
  ifKnown,
  isCannot,
  isKnown,
  isNotYet,
  known,
  knownBy,
  notYet,
  quantity,
  type Reason,
  reason,
  text,
} from '../figure/index.ts';
import { fibreFraction, thicknessAt } from '../laminate/laminate.figure.ts';
import { dryMass, layerMass, mass } from '../laminate/mass.figure.ts';
import { layerThickness } from '../laminate/thickness.figure.ts';
import { type Place, type Test, UNKNOWN } from '../model/index.ts';
import { isImpossible } from '../outcome.ts';
import { inRecipe, outlineSize, partArea, partFrame, placedPoint } from '../outline/part.figure.ts';
import { standingTime, workingTime } from '../plan/total.figure.ts';
import {
  AREA,
  type Dimension,
  LENGTH,
  MASS,
  MONEY,
  NUMBER,
  type Quantity,
  sameDimension,
  TIME,
} from '../quantity/index.ts';
import { resinToMix } from '../resin/needs.figure.ts';
import { gelTime, openTime } from '../resin/time.figure.ts';
import { placeOf } from '../stack/footprint.figure.ts';
import { laidStack } from '../stack/laid.figure.ts';
import { namedLayers } from '../stack/order.ts';

/** How a test of the recipe stands. `not yet`: nothing computes this yet, which is no fault of the recipe. */
export interface Verdict {
  readonly verdict: 'met' | 'not met' | 'cannot tell' | 'not yet';
  /** the figure that was tested */
  readonly actual?: Quantity;
  /** how far it is beyond the nearest limit; 0 where it is met */
  readonly beyond?: Quantity;
  readonly reasons: readonly Reason[];
}

type Asked = (bench: Bench, test: Test) => Figure<Quantity>;

const scalar =
  (of: (bench: Bench, test: Test) => Figure<number>, dimension: Dimension): Asked =>
  (bench, test) => {
    const figure = of(bench, test);
    return isKnown(figure) ? knownBy(quantity(figure.value, dimension), figure.reasons) : figure;
  };

/** Costs compare with a limit in the currency of the shop alone. */
const money =
  (of: (bench: Bench) => Figure<number>): Asked =>
  (bench) =>
    ifKnown(of(bench), (value, reasons) => {
      const unit = bench.ask(currency);
      return knownBy(quantity(value, MONEY, isKnown(unit) ? unit.value : undefined), reasons);
    });

const later =
  (what: string): Asked =>
  () =>
    notYet(text('{what} is not computed yet', { what }));
const measured =
  (what: string): Asked =>
  () =>
    cannot(
      reason('computed', text('{what} is measured at the bench: use check, and write it into the record', { what })),
    );

/** What `expect` and `check` may ask for, by the word of the notation. */
const QUANTITIES: Readonly<Record<string, Asked>> = {
  mass: scalar((bench, test) => (test.on === undefined ? bench.ask(mass) : onLayer(bench, test.on, layerMass)), MASS),
  dry_mass: scalar((bench) => bench.ask(dryMass), MASS),
  thickness: scalar(thicknessOf, LENGTH),
  area: scalar((bench) => bench.ask(partArea), AREA),
  length: scalar((bench) => ifKnown(bench.ask(outlineSize), (size, reasons) => knownBy(size.length, reasons)), LENGTH),
  width: scalar((bench) => ifKnown(bench.ask(outlineSize), (size, reasons) => knownBy(size.width, reasons)), LENGTH),
  fibre: scalar(fibreOf, NUMBER),
  resin: scalar((bench) => ifKnown(bench.ask(resinToMix, ''), (mix, reasons) => knownBy(mix.total, reasons)), MASS),
  gel: scalar((bench) => bench.ask(gelTime, ''), TIME),
  open: scalar((bench) => bench.ask(openTime, ''), TIME),
  working: scalar((bench) => bench.ask(workingTime), TIME),
  standing: scalar((bench) => bench.ask(standingTime), TIME),
  cost: money((bench) => bench.ask(cost)),
  material: money((bench) => bench.ask(materialCost)),
  consumables: money((bench) => bench.ask(consumableCost)),
  labour: money((bench) => bench.ask(labourCost)),
  mould: money((bench) => bench.ask(mouldCost)),
  overhead: money((bench) => bench.ask(overheadCost)),
  fill: later('the time to fill'),
  sag: later('the sag under a load'),
  margin: later('the margin under a load'),
  stiffness: later('the stiffness'),
  strength: later('the strength'),
  deflection: later('the deflection under a load'),
  warp: later('the warp'),
  barcol: measured('Barcol hardness'),
  shore_d: measured('Shore hardness'),
  wet_film: measured('the wet film'),
};

/** The words that a test may begin with. */
export const TESTED: readonly string[] = Object.keys(QUANTITIES);

function onLayer(bench: Bench, name: string, of: typeof layerMass): Figure<number> {
  return ifKnown(bench.ask(laidStack), (stack) => {
    const laid = namedLayers(stack.layers, name)[0];
    if (laid === undefined)
      return cannot(reason('typed', text('no layer is called {name}', { name }), { at: inRecipe(bench, '') }));
    return bench.ask(of, laid.key);
  });
}

function thicknessOf(bench: Bench, test: Test): Figure<number> {
  if (test.on !== undefined) return onLayer(bench, test.on, layerThickness);
  const { at } = test;
  if (at === undefined || typeof at === 'string') {
    return ifKnown(placeOf(bench, at ?? 'middle'), (point) => thicknessAt(bench, point));
  }
  return ifKnown(bench.ask(partFrame), (frame) => {
    const point = placedPoint(frame, at);
    return isImpossible(point)
      ? cannot(reason('typed', point.problem, { at: inRecipe(bench, '') }))
      : thicknessAt(bench, point);
  });
}

function fibreOf(bench: Bench, test: Test): Figure<number> {
  const limit = test.limit === UNKNOWN ? undefined : test.limit;
  const basis = test.basis ?? (limit ?? test.low ?? test.high)?.basis;
  return ifKnown(bench.ask(fibreFraction), (fibre, reasons) => {
    if (basis?.endsWith('volume') === true) return knownBy(fibre.byVolume, reasons);
    if (basis?.endsWith('weight') === true) return knownBy(fibre.byWeight, reasons);
    return cannot(reason('typed', 'a fibre fraction is by weight or by volume', {}));
  });
}

/** The figure that a test is about. */
export function testedFigure(bench: Bench, test: Test, at: Place): Figure<Quantity> {
  const asked = Object.hasOwn(QUANTITIES, test.what) ? QUANTITIES[test.what] : undefined;
  if (asked !== undefined) return finiteFigure(test.what, asked(bench, test));
  return cannot(reason('typed', text('nothing is computed that is called {what}', { what: test.what }), { at }));
}

/** Whether a test of the recipe is met, with the figure. `path` is the line of the test. */
export function evaluate(bench: Bench, test: Test, path: string): Verdict {
  const at = inRecipe(bench, path);
  const figure = testedFigure(bench, test, at);
  if (isNotYet(figure)) return { verdict: 'not yet', reasons: isCannot(figure) ? figure.because : [] };
  if (isCannot(figure)) return { verdict: 'cannot tell', reasons: figure.because };
  if (!isKnown(figure)) return { verdict: 'not yet', reasons: [] };
  const limits = limitsOf(test, at);
  if (isCannot(limits)) return { verdict: 'cannot tell', actual: figure.value, reasons: limits.because };
  if (!isKnown(limits)) return { verdict: 'cannot tell', actual: figure.value, reasons: [] };
  return compare(figure.value, limits.value, figure.reasons, at);
}

/** How every `expect` of the recipe stands, in order of the text. */
export const verdicts = definePick<readonly (Verdict & { readonly path: string; readonly test: Test })[]>(
  'verdicts',
  (bench) => known(bench.recipe.expects.map(({ path, test }) => ({ path, test, ...evaluate(bench, test, path) }))),
);

interface Limits {
  readonly low?: Quantity;
  readonly high?: Quantity;
  /** the limit itself does not meet the test */
  readonly strict: boolean;
}

function limitsOf(test: Test, at: Place): Figure<Limits> {
  const { comparison, limit, low, high } = test;
  if (limit === UNKNOWN) return cannot(reason('typed', 'the limit is not known (?)', { at }));
  if (comparison !== undefined && limit !== undefined) {
    const strict = comparison === '<' || comparison === '>';
    return known(comparison.startsWith('<') ? { high: limit, strict } : { low: limit, strict });
  }
  if (low !== undefined && high !== undefined) return known({ low, high, strict: false });
  const tolerance = low?.tolerance?.si;
  if (low !== undefined && tolerance !== undefined) {
    return known({ low: { ...low, si: low.si - tolerance }, high: { ...low, si: low.si + tolerance }, strict: false });
  }
  return cannot(reason('typed', 'the test has no limit', { at }));
}

/** Rounding in the last digits must not fail a test. */
const NEAR = 1e-9;

function compare(actual: Quantity, { low, high, strict }: Limits, reasons: readonly Reason[], at: Place): Verdict {
  for (const limit of [low, high]) {
    if (limit === undefined) continue;
    if (!sameDimension(limit.dimension, actual.dimension)) {
      return {
        verdict: 'cannot tell',
        actual,
        reasons: [reason('typed', text('{limit} is no limit for this figure', { limit }), { at })],
      };
    }
    if (limit.currency !== undefined && actual.currency !== undefined && limit.currency !== actual.currency) {
      const words = text('the limit is in {limit}, the costs are in {actual}', {
        limit: limit.currency,
        actual: actual.currency,
      });
      return { verdict: 'cannot tell', actual, reasons: [reason('typed', words, { at })] };
    }
  }
  const room = NEAR * Math.max(Math.abs(actual.si), Math.abs(low?.si ?? 0), Math.abs(high?.si ?? 0));
  const under = low === undefined ? -Infinity : low.si - actual.si;
  const over = high === undefined ? -Infinity : actual.si - high.si;
  const by = Math.max(under, over);
  const met = strict ? by < 0 : by <= room;
  return { verdict: met ? 'met' : 'not met', actual, beyond: { ...actual, si: met ? 0 : Math.max(0, by) }, reasons };
}
