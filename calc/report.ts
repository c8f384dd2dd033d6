import { bagSize, pleatsNeeded, tapeLength } from './bag/bag.figure.ts';
import { layerArea, layerPiece, type Piece } from './cloth/area.figure.ts';
import { type DartNeed, dartNeed } from './cloth/darts.figure.ts';
import { type WrapReach, wrapReach } from './cloth/wrap.figure.ts';
import {
  consumableCost,
  consumableCostOrder,
  cost,
  costOrder,
  labourCost,
  labourCostOrder,
  materialCost,
  materialCostOrder,
  mouldCost,
  mouldCostOrder,
  overheadCost,
  overheadCostOrder,
  stepCost,
} from './cost/cost.figure.ts';
import { currency, layerCost } from './cost/price.figure.ts';
import { layerDrape } from './curve/drape.figure.ts';
import { gaussCurvature } from './curve/surface.ts';
import { toolCurve } from './curve/tool.figure.ts';
import { evaluate, type Verdict } from './expect/evaluate.ts';
import { type Bench, benchOf, type Figure, type FigureDefinition, ifKnown, isKnown, knownBy } from './figure/index.ts';
import { layerFraction } from './laminate/fraction.figure.ts';
import { heightSoFar } from './laminate/height.figure.ts';
import { fibreFraction, thickness } from './laminate/laminate.figure.ts';
import {
  dryMass,
  type LayerResin,
  layerDryMass,
  layerMass,
  layerResin,
  layerShare,
  mass,
} from './laminate/mass.figure.ts';
import { layerThickness } from './laminate/thickness.figure.ts';
import type { Book, Expectation, ProcessKind, Recipe, Step } from './model/index.ts';
import { outlineSize, partArea } from './outline/part.figure.ts';
import { type StepAmount, stepAmount } from './plan/amount.figure.ts';
import { stepStandingTime, stepWorkingTime } from './plan/step.figure.ts';
import { standingTime, workingTime } from './plan/total.figure.ts';
import { ANGLE, AREA, type Dimension, LENGTH, MASS, MONEY, NUMBER, PRESSURE, TIME } from './quantity/index.ts';
import { batches, mixSplit, potLife } from './resin/batches.figure.ts';
import type { MixSplit } from './resin/mix.figure.ts';
import { resinElsewhere, resinInPart, resinsUsed, resinToMix } from './resin/needs.figure.ts';
import { gelTime, openTime } from './resin/time.figure.ts';
import { laidStack } from './stack/laid.figure.ts';
import type { LaidLayer, StackProblem } from './stack/laid.ts';
import { isCloth } from './stack/order.ts';
import { airPressure, drivingPressure, leakLimit, pumpLeaves } from './vacuum/vacuum.figure.ts';

/** One named number of a report; the name is public. */
export interface ReportFigure {
  readonly name: string;
  readonly dimension: Dimension;
  /** of money alone */
  readonly currency?: string;
  readonly figure: Figure<number>;
}

export interface LayerRow {
  readonly laid: LaidLayer;
  readonly figures: readonly ReportFigure[];
  /** none for a coat */
  readonly piece?: Figure<Piece>;
  readonly resin: Figure<LayerResin>;
  /** of a wrapped ply */
  readonly wrap?: Figure<WrapReach>;
  readonly darts?: Figure<DartNeed>;
}

export interface StepRow {
  readonly step: Step;
  /** 0 for the lines of the process, 1 for those in a block */
  readonly depth: number;
  readonly figures: readonly ReportFigure[];
  readonly amount: Figure<StepAmount>;
}

export interface ResinRow {
  readonly name: string;
  readonly figures: readonly ReportFigure[];
  readonly split: Figure<MixSplit>;
}

export interface ExpectRow {
  readonly expectation: Expectation;
  readonly verdict: Verdict;
}

/** Everything that is computed of one recipe in one size, in the order in which it is shown. */
export interface Report {
  readonly recipe: string;
  readonly title?: string;
  readonly size?: string;
  readonly revision?: number;
  readonly quantity: number;
  readonly currency?: string;
  readonly figures: readonly ReportFigure[];
  readonly layers: readonly LayerRow[];
  readonly problems: readonly StackProblem[];
  readonly resins: readonly ResinRow[];
  readonly steps: readonly StepRow[];
  readonly expects: readonly ExpectRow[];
}

interface Column {
  readonly name: string;
  readonly dimension: Dimension;
  of(bench: Bench, key: string): Figure<number>;
  /** processes that it makes sense for; all where absent */
  readonly only?: readonly ProcessKind[];
}

const column = (definition: FigureDefinition<number>, dimension: Dimension, only?: readonly ProcessKind[]): Column => ({
  name: definition.name,
  dimension,
  of: (bench, key) => bench.ask(definition, key),
  only,
});

function pick<T>(
  name: string,
  definition: FigureDefinition<T>,
  dimension: Dimension,
  of: (value: T) => number,
  only?: readonly ProcessKind[],
): Column {
  return {
    name,
    dimension,
    only,
    of: (bench, key) => ifKnown(bench.ask(definition, key), (v, reasons) => knownBy(of(v), reasons)),
  };
}

const VACUUM: readonly ProcessKind[] = ['bagged', 'infusion', 'prepreg'];
const LIQUID: readonly ProcessKind[] = ['hand', 'bagged', 'infusion'];

/** The figures of a part. Names are public: they stand in machine output, in this order. */
const PART: readonly Column[] = [
  column(partArea, AREA),
  pick('outline_length', outlineSize, LENGTH, (size) => size.length),
  pick('outline_width', outlineSize, LENGTH, (size) => size.width),
  column(thickness, LENGTH),
  column(mass, MASS),
  column(dryMass, MASS),
  pick('fibre_by_weight', fibreFraction, NUMBER, (f) => f.byWeight),
  pick('fibre_by_volume', fibreFraction, NUMBER, (f) => f.byVolume),
  pick('resin_in_part', resinInPart, MASS, (r) => r.total),
  pick('resin_elsewhere', resinElsewhere, MASS, (r) => r.total, LIQUID),
  pick('resin_to_mix', resinToMix, MASS, (r) => r.total),
  pick('batches', batches, NUMBER, (b) => b.batches, LIQUID),
  column(gelTime, TIME, LIQUID),
  column(potLife, TIME, LIQUID),
  column(openTime, TIME, ['bagged']),
  column(airPressure, PRESSURE, VACUUM),
  column(pumpLeaves, PRESSURE, VACUUM),
  column(drivingPressure, PRESSURE, ['infusion']),
  pick('leak_limit_rise', leakLimit, PRESSURE, (l) => l.rise, VACUUM),
  pick('leak_limit_time', leakLimit, TIME, (l) => l.time, VACUUM),
  pick('bag_length', bagSize, LENGTH, (b) => b.length, VACUUM),
  pick('bag_width', bagSize, LENGTH, (b) => b.width, VACUUM),
  column(pleatsNeeded, NUMBER, VACUUM),
  column(tapeLength, LENGTH, VACUUM),
  column(workingTime, TIME),
  column(standingTime, TIME),
  column(materialCost, MONEY),
  column(consumableCost, MONEY),
  column(labourCost, MONEY),
  column(mouldCost, MONEY),
  column(overheadCost, MONEY),
  column(cost, MONEY),
  column(materialCostOrder, MONEY),
  column(consumableCostOrder, MONEY),
  column(labourCostOrder, MONEY),
  column(mouldCostOrder, MONEY),
  column(overheadCostOrder, MONEY),
  column(costOrder, MONEY),
];

const LAYER: readonly Column[] = [
  column(layerArea, AREA),
  column(layerThickness, LENGTH),
  column(heightSoFar, LENGTH),
  column(layerDryMass, MASS),
  pick('layer_resin', layerResin, MASS, (r) => r.total),
  column(layerMass, MASS),
  column(layerShare, NUMBER),
  column(layerCost, MONEY),
];

const CLOTH: readonly Column[] = [
  pick('layer_fibre_by_volume', layerFraction, NUMBER, (f) => f.byVolume),
  pick('layer_fibre_by_weight', layerFraction, NUMBER, (f) => f.byWeight),
];

const STEP: readonly Column[] = [
  column(stepWorkingTime, TIME),
  column(stepStandingTime, TIME),
  column(stepCost, MONEY),
];

const RESIN: readonly Column[] = [
  pick('resin_in_part', resinInPart, MASS, (r) => r.total),
  pick('resin_elsewhere', resinElsewhere, MASS, (r) => r.total),
  pick('resin_to_mix', resinToMix, MASS, (r) => r.total),
  pick('batches', batches, NUMBER, (b) => b.batches),
  pick('batch_mass', batches, MASS, (b) => b.mass),
  column(gelTime, TIME),
  column(potLife, TIME),
];

/** Names and dimensions of all part figures, in order. */
export const PART_FIGURES: readonly Pick<Column, 'name' | 'dimension'>[] = PART;

function filled(columns: readonly Column[], bench: Bench, key: string, money: string | undefined): ReportFigure[] {
  const kind = bench.recipe.process?.kind;
  return columns
    .filter(({ only }) => only === undefined || kind === undefined || only.includes(kind))
    .map(({ name, dimension, of }) => {
      const row = { name, dimension, figure: of(bench, key) };
      return dimension === MONEY && money !== undefined ? { ...row, currency: money } : row;
    });
}

/** The report of a recipe, as it stands for one size, over the book. */
export function reportOf(recipe: Recipe, book: Book): Report {
  const bench = benchOf(recipe, book);
  const unit = bench.ask(currency);
  const money = isKnown(unit) ? unit.value : undefined;
  const stack = bench.ask(laidStack);
  const resins = bench.ask(resinsUsed);
  return {
    recipe: recipe.name,
    title: recipe.title,
    size: recipe.size,
    revision: recipe.revision,
    quantity: recipe.quantity,
    currency: money,
    figures: filled(PART, bench, '', money),
    layers: isKnown(stack) ? stack.value.layers.map((laid) => layerRow(bench, laid, money)) : [],
    problems: isKnown(stack) ? stack.value.problems : [],
    resins: isKnown(resins)
      ? resins.value.map((name) => ({
          name,
          figures: filled(RESIN, bench, name, money),
          split: bench.ask(mixSplit, name),
        }))
      : [],
    steps: stepRows(bench, recipe.process?.steps ?? [], 0, money),
    expects: recipe.expects.map((expectation) => ({
      expectation,
      verdict: evaluate(bench, expectation.test, expectation.path),
    })),
  };
}

/** Of a layer of cloth on a face that is curved both ways, and of nothing else. */
const DRAPED: readonly Column[] = [
  pick('edge_excess', layerDrape, LENGTH, (drape) => drape?.excess ?? 0),
  pick('drape_shear', layerDrape, ANGLE, (drape) => drape?.shear ?? 0),
];

function columnsOf(bench: Bench, laid: LaidLayer): readonly Column[] {
  if (!isCloth(laid)) return LAYER;
  const curve = toolCurve(bench);
  const draped = curve !== undefined && gaussCurvature(curve.curvature) !== 0;
  return [...LAYER, ...CLOTH, ...(draped ? DRAPED : [])];
}

function layerRow(bench: Bench, laid: LaidLayer, money: string | undefined): LayerRow {
  const { key } = laid;
  const wrapped = laid.layer.extent.kind === 'wrap';
  return {
    laid,
    figures: filled(columnsOf(bench, laid), bench, key, money),
    resin: bench.ask(layerResin, key),
    ...(laid.layer.kind === 'coat' ? {} : { piece: bench.ask(layerPiece, key) }),
    ...(wrapped ? { wrap: bench.ask(wrapReach, key), darts: bench.ask(dartNeed, key) } : {}),
  };
}

function stepRows(bench: Bench, steps: readonly Step[], depth: number, money: string | undefined): StepRow[] {
  return steps.flatMap((step) => [
    { step, depth, figures: filled(STEP, bench, step.path, money), amount: bench.ask(stepAmount, step.path) },
    ...stepRows(bench, step.steps ?? [], depth + 1, money),
  ]);
}
