import { text } from '../../../calc/figure/figure.ts';
import { subject } from '../../../calc/plan/reading.ts';
import type { Fix } from '../../lower/index.ts';
import { precedes } from '../../words/index.ts';
import { after, allOf, between, firstOf, stepsOf, type WorkedStep } from '../kit/steps.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** Pairs that a rule of their own reports, by its name. */
const TOLD_ELSEWHERE: Readonly<Record<string, string>> = {
  'release > lay': 'release/late',
  'tape > lay cloth': 'tape/late',
  'peel > mesh': 'peel/after-mesh',
  'lay coat > tape': 'tape/after-overspray',
  'accelerate > catalyse': 'resin/promoter-and-peroxide',
};

const TOLD_HERE = precedes.filter(({ first, later }) => TOLD_ELSEWHERE[`${first} > ${later}`] === undefined);

/** A step that such a rule already reports as too late is not told a second time for what else it missed. */
const LATE_ANYWAY: Readonly<Record<string, string>> = { release: 'lay', peel: 'mesh' };
/** What is done to one layer or one material comes before that is laid, not before the first of all. */
const OF_ITS_LAYER = ['dry', 'seal core', 'thaw', 'perforate', 'score', 'chamfer'];
/** A green trim is done with a knife while the part is in the tool. */
const bindsTrim = ({ classes }: WorkedStep): boolean => !classes.has('trim green');
/** These may come round again after a first cure, as long as something hardens them. */
const HARDENS = ['cure', 'postcure', 'wait', 'keep', 'hold'];

export const orderBefore = rule({
  name: 'order/before',
  severity: 'error',
  title: 'a step comes after one that it has to precede',
  on: 'recipe',
  check(context) {
    const steps = stepsOf(context);
    const told = new Set<string>();
    for (const { first, later, because } of TOLD_HERE) {
      const pair = broken(steps, first, later);
      if (pair === undefined) continue;
      const anyway = LATE_ANYWAY[first];
      const reported = anyway === undefined ? undefined : firstOf(steps, anyway);
      if (reported !== undefined && steps.indexOf(reported) < steps.indexOf(pair.late)) continue;
      if (told.has(pair.late.step.path)) continue;
      told.add(pair.late.step.path);
      const shown = { first: said(pair.late, first), later: said(pair.early, later), because };
      context.report({
        at: pair.late.step.path,
        message: text('{first} comes after {later}: {because}', shown),
        related: [
          {
            at: { entry: context.recipe.entry, path: pair.early.step.path },
            message: text('{later} stands here', shown),
          },
        ],
        fixes: curesBond(steps, pair, first)
          ? [cureFirst(context, pair)]
          : pair.move
            ? [
                context.edit.moveBefore(
                  text('Move {what} before {later}', { what: shown.first, later: shown.later }),
                  pair.late.step.path,
                  pair.early.step.path,
                ),
              ]
            : [],
      });
    }
  },
});

/** The step that comes too late and the one that came too early. */
interface Pair {
  readonly late: WorkedStep;
  readonly early: WorkedStep;
  readonly move: boolean;
}

/** A cure that a bond waits for stays where it is: the part wants one of its own. */
const curesBond = (steps: readonly WorkedStep[], { late, early }: Pair, first: string): boolean =>
  first === 'cure' && firstOf(between(steps, early, late), 'bond', 'fillet') !== undefined;

function cureFirst(context: RecipeContext, { late, early }: Pair): Fix | undefined {
  const span = context.edit.span(late.step.path);
  const line = span === undefined ? '' : context.edit.text.slice(span.offset, span.end).trim();
  return line === '' || line.includes('\n')
    ? undefined
    : context.edit.lineBefore(text('Add: {what}', { what: line }), early.step.path, line);
}

function broken(steps: readonly WorkedStep[], first: string, later: string): Pair | undefined {
  const firsts = allOf(steps, first);
  if (firsts.length === 0) return undefined;
  const laters = allOf(steps, later);
  if (laters.length === 0) return undefined;
  if (later === 'cure') {
    const last = firsts.at(-1);
    const cure = laters.at(-1);
    if (
      last === undefined ||
      cure === undefined ||
      steps.indexOf(last) < steps.indexOf(cure) ||
      firstOf(after(steps, last), ...HARDENS) !== undefined
    )
      return undefined;
    return { late: last, early: cure, move: last.inside === undefined };
  }
  if (first === 'sand' && later === 'wipe') {
    const dusty = sandedAfterWiping(steps);
    if (dusty !== undefined) return dusty;
  }
  const ofItsLayer = OF_ITS_LAYER.includes(first);
  for (const late of firsts) {
    for (const early of laters) {
      if (early === late || (later === 'trim' && !bindsTrim(early))) continue;
      if (ofItsLayer && !concerns(late, early, first)) continue;
      if (steps.indexOf(late) >= steps.indexOf(early))
        return { late, early, move: late.inside === undefined && early.inside === undefined };
      break;
    }
    if (!ofItsLayer) break;
  }
  return undefined;
}

/** Faces that want no dust on them. */
const ON_A_CLEAN_FACE = ['bond', 'prime', 'paint'];

/** Of several rounds of sanding and wiping the nearest pair before each of these counts: the dust of the last sanding lies there. */
function sandedAfterWiping(steps: readonly WorkedStep[]) {
  let from = 0;
  for (const on of allOf(steps, ...ON_A_CLEAN_FACE)) {
    const round = steps.slice(from, steps.indexOf(on));
    from = steps.indexOf(on) + 1;
    const [late, early] = [allOf(round, 'sand').at(-1), allOf(round, 'wipe').at(-1)];
    if (late === undefined || early === undefined || round.indexOf(late) < round.indexOf(early)) continue;
    return { late, early, move: late.inside === undefined && early.inside === undefined };
  }
  return undefined;
}

/** Whether what is done to one layer or one material is done to what a later step lays. */
function concerns({ step }: WorkedStep, later: WorkedStep, first: string): boolean {
  if (later.layers.length === 0) return true;
  const name = subject(step);
  if (name === undefined) return true;
  const named = later.layers.some((laid) => [laid.name, laid.layer.name, laid.layer.material].includes(name));
  return named || first === 'seal core';
}

/** A step as the bench speaks of it: its verb and what it is about. */
function said({ step, layers }: WorkedStep, name: string): string {
  if (step.lay !== undefined) return `lay ${layers[0]?.name ?? step.lay.what}`;
  const about = step.name ?? subject(step);
  return about === undefined || name.includes(' ') ? step.verb : `${step.verb} ${about}`;
}
