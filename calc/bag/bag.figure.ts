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
  quantity,
  reason,
  type Text,
  text,
  typed,
  usual,
  whenKnown,
  worked,
} from '../figure/index.ts';
import { stackHeight } from '../laminate/height.figure.ts';
import type { Step } from '../model/index.ts';
import { following, isImpossible } from '../outcome.ts';
import { offsetPerimeter } from '../outline/offset.ts';
import { inRecipe, outlinePerimeter, partFrame } from '../outline/part.figure.ts';
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
export const sheetArea = defineFigure<number>('sheet_area', (bench, path) =>
  whenKnown(
    { step: stepAt(bench, path), frame: bench.ask(partFrame), height: bench.ask(stackHeight) },
    ({ step, frame, height }, reasons) =>
      ifKnown(sheetPast(bench, step), (past, more) => {
        const said = clauseWith(step, 'layer', 'layers');
        const layers = Math.max(1, said === undefined ? 1 : (countOf(flat(said)) ?? 1));
        const area = following(sheetOver(frame.shape, past, height), (one) => one * layers);
        return worked(
          area,
          text('the outline, {past} past its edge, and the way up the stack', { past: quantity(past, LENGTH) }),
          { at: inRecipe(bench, path), reasons: [...more, ...reasons] },
        );
      }),
  ),
);

/** Length of a feed or a vent on the part, m: round the outline, or through its points. */
export const lineLength = defineFigure<number>('line_length', (bench, path) =>
  whenKnown({ step: stepAt(bench, path), frame: bench.ask(partFrame) }, ({ step, frame }) => {
    const at = inRecipe(bench, path);
    const said = allSaid(step);
    if (hasWord(said, 'perimeter')) {
      const out = pastEdge(step) ?? 0;
      const words = text('round the part, {out} outside its edge', { out: quantity(out, LENGTH) });
      return worked(offsetPerimeter(frame.shape, Math.max(0, out)), words, { at });
    }
    const points = linePoints(frame, step);
    if (points.length === 0)
      return typed<number>(
        undefined,
        text('where {step} runs (from (x, y) to (x, y), along an end, or perimeter)', { step: step.name ?? step.verb }),
        at,
      );
    let length = 0;
    for (const [i, to] of points.entries()) {
      const from = points[i - 1];
      if (isImpossible(to)) return worked<number>(to, '', { at });
      if (from !== undefined && !isImpossible(from)) length += Math.hypot(to.x - from.x, to.y - from.y);
    }
    return known(length, reason('computed', 'from point to point', { at }));
  }),
);

const SHEETS = ['peel', 'perforated', 'film', 'mesh', 'bleeder', 'breather'];

/** How far outside the edge of the part the sealant tape lies, m: as typed, else clear of all that is under the bag. */
export const tapeOffset = defineFigure<number>('tape_offset', (bench) =>
  ifKnown(bench.ask(processSteps), (steps) => {
    const tape = steps.find((s) => s.verb === 'tape');
    const said = tape === undefined ? undefined : pastEdge(tape);
    if (tape !== undefined && said !== undefined)
      return known(
        said,
        reason('typed', text('tape {out} outside the edge', { out: quantity(said, LENGTH) }), {
          at: inRecipe(bench, tape.path),
        }),
      );
    const outs = steps.filter((s) => SHEETS.includes(s.verb)).map((s) => sheetPast(bench, s));
    const lines = steps.filter((s) => s.verb === 'feed' || s.verb === 'vent').map((s) => pastEdge(s) ?? 0);
    return whenKnown({ outs: allKnown(outs), clear: usual(bench, TAPE_CLEARANCE) }, (v, reasons) =>
      known(
        Math.max(0, ...v.outs, ...lines) + v.clear,
        reason('computed', 'outside the outermost sheet or line', { reasons }),
      ),
    );
  }),
);

export interface PleatsAsked {
  readonly count: number;
  /** m */
  readonly height: number;
  readonly typed: boolean;
}

/** `pleats 4 of 40 mm` on the bag, else as many as are needed. */
export const pleats = defineFigure<PleatsAsked>('pleats', (bench) =>
  ifKnown(bench.ask(processSteps), (steps) => {
    const bag = steps.find((s) => s.verb === 'bag');
    const clause = bag === undefined ? undefined : firstClause(bag, 'pleats');
    const list = clause === undefined ? [] : flat(clause);
    const height = amountOf(list, LENGTH);
    const heightFigure = height === undefined ? usual(bench, PLEAT_HEIGHT) : known(height.si);
    const count = countOf(list);
    if (count !== undefined) {
      return ifKnown(heightFigure, (height, reasons) =>
        known<PleatsAsked>(
          { count, height, typed: true },
          reason('typed', count === 1 ? text('1 pleat') : text('{count} pleats', { count }), {
            at: inRecipe(bench, clause?.path ?? ''),
            reasons,
          }),
        ),
      );
    }
    return whenKnown({ height: heightFigure, needed: bench.ask(pleatsNeeded) }, (v, reasons) =>
      knownBy({ count: v.needed, height: v.height, typed: false }, reasons),
    );
  }),
);

/** Pleats that the film needs to come down to the tool all round the stack. */
export const pleatsNeeded = defineFigure<number>('pleats_needed', (bench) =>
  whenKnown({ steps: bench.ask(processSteps), stack: bench.ask(stackHeight) }, ({ steps, stack }, reasons) => {
    const bag = steps.find((s) => s.verb === 'bag');
    const clause = bag === undefined ? undefined : firstClause(bag, 'pleats');
    const height = clause === undefined ? undefined : amountOf(flat(clause), LENGTH);
    return ifKnown(height === undefined ? usual(bench, PLEAT_HEIGHT) : known(height.si), (height, more) =>
      worked(
        pleatsFormula(stack, height),
        text('twice the {height} of the stack on each side, at twice the height of each pleat', {
          height: quantity(stack, LENGTH),
        }),
        { reasons: [...reasons, ...more] },
      ),
    );
  }),
);

export interface BagSize {
  readonly length: number;
  readonly width: number;
  /** m2 */
  readonly area: number;
}

/** Film to cut for the bag. */
export const bagSize = defineFigure<BagSize>('bag_size', (bench) =>
  whenKnown(
    {
      frame: bench.ask(partFrame),
      tape: bench.ask(tapeOffset),
      height: bench.ask(stackHeight),
      pleats: bench.ask(pleats),
      hem: usual(bench, HEM),
    },
    ({ frame, tape, height, pleats: p, hem }, reasons) => {
      const span = {
        length: frame.bounds.length + 2 * tape,
        width: frame.bounds.width + 2 * tape,
        stackHeight: height,
        hem,
      };
      return worked(bagFilm(span, p), 'from tape to tape, with the pleats and a hem on each side', { reasons });
    },
  ),
);

const tapeWords = (out: Quantity, count: number): Text =>
  count === 0
    ? text('round the part, {out} outside its edge', { out })
    : count === 1
      ? text('round the part, {out} outside its edge, and twice the height of 1 pleat', { out })
      : text('round the part, {out} outside its edge, and twice the height of {count} pleats', { out, count });

/** Sealant tape round the bag and up and down its pleats, m. */
export const tapeLength = defineFigure<number>('tape_length', (bench) =>
  whenKnown(
    { frame: bench.ask(partFrame), tape: bench.ask(tapeOffset), round: bench.ask(outlinePerimeter) },
    ({ frame, tape }, reasons) => {
      const bag = bench.ask(pleats);
      const folds = isKnown(bag) ? bag.value : { count: 0, height: 0 };
      const length = following(offsetPerimeter(frame.shape, tape), (way) => tapeFormula(way, folds));
      return worked(length, tapeWords(quantity(tape, LENGTH), folds.count), { reasons });
    },
  ),
);
