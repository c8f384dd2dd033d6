import {
  allKnown,
  type Bench,
  cannot,
  defineFigure,
  definePick,
  type Figure,
  type FigureDefinition,
  ifKnown,
  isKnown,
  known,
  knownBy,
  missing,
  quantity,
  reason,
  reasonsOf,
  type Text,
  text,
  typed,
  usual,
  worked,
} from '../figure/index.ts';
import { stackHeight } from '../laminate/height.figure.ts';
import type { Step, StepClause } from '../model/index.ts';
import { isImpossible } from '../outcome.ts';
import { offsetPerimeter } from '../outline/offset.ts';
import { inRecipe, outlinePerimeter, partFrame } from '../outline/part.figure.ts';
import type { Point } from '../outline/shape.ts';
import { own } from '../own.ts';
import {
  allSaid,
  allSteps,
  amountOf,
  clauseWith,
  countOf,
  firstClause,
  flat,
  hasWord,
  pastEdge,
} from '../plan/reading.ts';
import { LENGTH, type Quantity } from '../quantity/index.ts';
import { bagFilm, tapeLength as tapeFormula } from './film.ts';
import { HEM, PLEAT_HEIGHT, SHEET_PAST, TAPE_CLEARANCE } from './habits.ts';
import { linePoints } from './line-points.ts';
import { pleatsNeeded as pleatsFormula } from './pleats.ts';
import { sheetOver } from './sheet.ts';

/** All steps of the process in order, those in blocks too. */
export const processSteps = definePick<readonly Step[]>('process_steps', (bench) =>
  ifKnown(typed(bench.recipe.process, 'the process', inRecipe(bench, '')), (process) => known(allSteps(process.steps))),
);

/** Each step as a figure of its own, that many ask for. */
const stepsByPath = definePick<ReadonlyMap<string, Figure<Step>>>('steps_by_path', (bench) =>
  ifKnown(bench.ask(processSteps), (steps) => {
    const byPath = new Map<string, Figure<Step>>();
    for (const step of steps) byPath.set(step.path, known(step));
    return known(byPath);
  }),
);

/** One step by its path. No figure of its own: there would be one for each step of every recipe. */
export function stepAt(bench: Bench, path: string): Figure<Step> {
  const steps = bench.ask(stepsByPath);
  if (!isKnown(steps)) return steps;
  return steps.value.get(path) ?? cannot(reason('typed', text('the process has no step {path}', { path })));
}

/** What a figure of each step gives, of all steps in one list. */
export function ofSteps<T>(bench: Bench, figure: FigureDefinition<readonly T[]>): Figure<readonly T[]> {
  return ifKnown(bench.ask(processSteps), (steps) =>
    ifKnown(allKnown(steps.map(({ path }) => bench.ask(figure, path))), (each, reasons) =>
      knownBy(each.flat(), reasons),
    ),
  );
}

/** How far a sheet of a step runs past the edge of the part, m; negative: short of it. */
export function sheetPast(bench: Bench, step: Step): Figure<number> {
  const said = pastEdge(step);
  if (said !== undefined)
    return known(
      said,
      reason('typed', text('{past} past the edge', { past: quantity(said, LENGTH) }), {
        at: inRecipe(bench, step.path),
      }),
    );
  const habit = own(SHEET_PAST, step.verb);
  return habit === undefined ? known(0) : usual(bench, habit);
}

/** Area of the sheet that a step lays over the part, m2; all its layers. */
export const sheetArea = defineFigure<number>('sheet_area', (bench, path) => {
  const step = stepAt(bench, path);
  const frame = bench.ask(partFrame);
  const height = bench.ask(stackHeight);
  if (!isKnown(step) || !isKnown(frame) || !isKnown(height)) return missing(step, frame, height);
  const past = sheetPast(bench, step.value);
  if (!isKnown(past)) return past;
  const said = clauseWith(step.value, 'layer', 'layers');
  const layers = Math.max(1, said === undefined ? 1 : (countOf(flat(said)) ?? 1));
  const one = sheetOver(frame.value.shape, past.value, height.value);
  return worked(
    isImpossible(one) ? one : one * layers,
    text('the outline, {past} past its edge, and the way up the stack', { past: quantity(past.value, LENGTH) }),
    { at: inRecipe(bench, path), reasons: reasonsOf(past, step, frame, height) },
  );
});

/** Length of a feed or a vent on the part, m: round the outline, or through its points. */
export const lineLength = defineFigure<number>('line_length', (bench, path) => {
  const found = stepAt(bench, path);
  const frame = bench.ask(partFrame);
  if (!isKnown(found) || !isKnown(frame)) return missing(found, frame);
  const step = found.value;
  const at = inRecipe(bench, path);
  if (hasWord(allSaid(step), 'perimeter')) {
    const out = pastEdge(step) ?? 0;
    const words = text('round the part, {out} outside its edge', { out: quantity(out, LENGTH) });
    return worked(offsetPerimeter(frame.value.shape, Math.max(0, out)), words, { at });
  }
  const points = linePoints(frame.value, step);
  if (points.length === 0)
    return typed<number>(
      undefined,
      text('where {step} runs (from (x, y) to (x, y), along an end, or perimeter)', { step: step.name ?? step.verb }),
      at,
    );
  let length = 0;
  let from: Point | undefined;
  for (const to of points) {
    if (isImpossible(to)) return worked<number>(to, '', { at });
    if (from !== undefined) length += Math.hypot(to.x - from.x, to.y - from.y);
    from = to;
  }
  return known(length, reason('computed', 'from point to point', { at }));
});

const SHEETS = ['peel', 'perforated', 'film', 'mesh', 'bleeder', 'breather'];

/** How far outside the edge of the part the sealant tape lies, m: as typed, else clear of all that is under the bag. */
export const tapeOffset = defineFigure<number>('tape_offset', (bench) => {
  const steps = bench.ask(processSteps);
  if (!isKnown(steps)) return steps;
  const tape = steps.value.find((s) => s.verb === 'tape');
  const said = tape === undefined ? undefined : pastEdge(tape);
  if (tape !== undefined && said !== undefined)
    return known(
      said,
      reason('typed', text('tape {out} outside the edge', { out: quantity(said, LENGTH) }), {
        at: inRecipe(bench, tape.path),
      }),
    );
  const sheets: Figure<number>[] = [];
  let outermost = 0;
  for (const step of steps.value) {
    if (SHEETS.includes(step.verb)) sheets.push(sheetPast(bench, step));
    else if (step.verb === 'feed' || step.verb === 'vent') outermost = Math.max(outermost, pastEdge(step) ?? 0);
  }
  const outs = allKnown(sheets);
  const clear = usual(bench, TAPE_CLEARANCE);
  if (!isKnown(outs) || !isKnown(clear)) return missing(outs, clear);
  for (const out of outs.value) outermost = Math.max(outermost, out);
  const reasons = reasonsOf(outs, clear);
  return known(outermost + clear.value, reason('computed', 'outside the outermost sheet or line', { reasons }));
});

export interface PleatsAsked {
  readonly count: number;
  /** m */
  readonly height: number;
  readonly typed: boolean;
}

/** What the bag says of its pleats. */
function saidOfPleats(steps: readonly Step[]): StepClause | undefined {
  const bag = steps.find((s) => s.verb === 'bag');
  return bag === undefined ? undefined : firstClause(bag, 'pleats');
}

/** How high each pleat stands, m: as the bag says, else the habit. */
function heightOfPleats(bench: Bench, clause: StepClause | undefined): Figure<number> {
  const height = clause === undefined ? undefined : amountOf(flat(clause), LENGTH);
  return height === undefined ? usual(bench, PLEAT_HEIGHT) : known(height.si);
}

/** `pleats 4 of 40 mm` on the bag, else as many as are needed. */
export const pleats = defineFigure<PleatsAsked>('pleats', (bench) => {
  const steps = bench.ask(processSteps);
  if (!isKnown(steps)) return steps;
  const clause = saidOfPleats(steps.value);
  const height = heightOfPleats(bench, clause);
  const count = clause === undefined ? undefined : countOf(flat(clause));
  if (clause === undefined || count === undefined) {
    const needed = bench.ask(pleatsNeeded);
    if (!isKnown(height) || !isKnown(needed)) return missing(height, needed);
    return knownBy({ count: needed.value, height: height.value, typed: false }, reasonsOf(height, needed));
  }
  if (!isKnown(height)) return height;
  return known(
    { count, height: height.value, typed: true },
    reason('typed', count === 1 ? text('1 pleat') : text('{count} pleats', { count }), {
      at: inRecipe(bench, clause.path),
      reasons: height.reasons,
    }),
  );
});

/** Pleats that the film needs to come down to the tool all round the stack. */
export const pleatsNeeded = defineFigure<number>('pleats_needed', (bench) => {
  const steps = bench.ask(processSteps);
  const stack = bench.ask(stackHeight);
  if (!isKnown(steps) || !isKnown(stack)) return missing(steps, stack);
  const height = heightOfPleats(bench, saidOfPleats(steps.value));
  if (!isKnown(height)) return height;
  return worked(
    pleatsFormula(stack.value, height.value),
    text('twice the {height} of the stack on each side, at twice the height of each pleat', {
      height: quantity(stack.value, LENGTH),
    }),
    { reasons: reasonsOf(steps, stack, height) },
  );
});

export interface BagSize {
  readonly length: number;
  readonly width: number;
  /** m2 */
  readonly area: number;
}

/** Film to cut for the bag. */
export const bagSize = defineFigure<BagSize>('bag_size', (bench) => {
  const frame = bench.ask(partFrame);
  const tape = bench.ask(tapeOffset);
  const height = bench.ask(stackHeight);
  const folds = bench.ask(pleats);
  const hem = usual(bench, HEM);
  if (!isKnown(frame) || !isKnown(tape) || !isKnown(height) || !isKnown(folds) || !isKnown(hem))
    return missing(frame, tape, height, folds, hem);
  const { bounds } = frame.value;
  const span = {
    length: bounds.length + 2 * tape.value,
    width: bounds.width + 2 * tape.value,
    stackHeight: height.value,
    hem: hem.value,
  };
  return worked(bagFilm(span, folds.value), 'from tape to tape, with the pleats and a hem on each side', {
    reasons: reasonsOf(frame, tape, height, folds, hem),
  });
});

const tapeWords = (out: Quantity, count: number): Text =>
  count === 0
    ? text('round the part, {out} outside its edge', { out })
    : count === 1
      ? text('round the part, {out} outside its edge, and twice the height of 1 pleat', { out })
      : text('round the part, {out} outside its edge, and twice the height of {count} pleats', { out, count });

/** Sealant tape round the bag and up and down its pleats, m. */
export const tapeLength = defineFigure<number>('tape_length', (bench) => {
  const frame = bench.ask(partFrame);
  const tape = bench.ask(tapeOffset);
  const round = bench.ask(outlinePerimeter);
  if (!isKnown(frame) || !isKnown(tape) || !isKnown(round)) return missing(frame, tape, round);
  const bag = bench.ask(pleats);
  const folds = isKnown(bag) ? bag.value : noFolds;
  const way = offsetPerimeter(frame.value.shape, tape.value);
  const length = isImpossible(way) ? way : tapeFormula(way, folds);
  const words = tapeWords(quantity(tape.value, LENGTH), folds.count);
  return worked(length, words, { reasons: reasonsOf(frame, tape, round) });
});

const noFolds = { count: 0, height: 0 };
