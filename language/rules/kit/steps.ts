import { definePick, isKnown, known } from '../../../calc/figure/index.ts';
import type { Step } from '../../../calc/model/index.ts';
import { own } from '../../../calc/own.ts';
import { layPlan } from '../../../calc/plan/lay.figure.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { classesOf as classesOfVerb } from '../../words/index.ts';
import type { RecipeContext } from '../rule.ts';

/** A step as it comes in the work, with what it is in the partial order and what it lays. */
export interface WorkedStep {
  readonly step: Step;
  /** classes of the partial order, the broad ones too: `lay cloth` is also `lay` */
  readonly classes: ReadonlySet<string>;
  /** layers that it lays, from the tool face */
  readonly layers: readonly LaidLayer[];
  /** the block that it stands in */
  readonly inside: Step | undefined;
}

/** Kinds of layer that narrow `lay`. */
const LAID_AS: Readonly<Record<LaidLayer['layer']['kind'], string>> = {
  coat: 'lay coat',
  core: 'lay core',
  insert: 'lay core',
  ply: 'lay cloth',
  strip: 'lay cloth',
  patch: 'lay cloth',
};

/** What is joined in a kit lies on the bench, and lines of `infuse` and `cure` are no work of their own in the order. */
const OF_A_BLOCK: Readonly<Record<string, readonly string[]>> = { infuse: ['vacuum'] };

function classesFor(step: Step, layers: readonly LaidLayer[], inside: Step | undefined): ReadonlySet<string> {
  if (inside !== undefined && own(OF_A_BLOCK, inside.verb)?.includes(step.verb) !== true) return noClasses;
  if (step.lay !== undefined) {
    const classes = new Set(classesOfVerb(step.verb));
    for (const { layer } of layers) classes.add(LAID_AS[layer.kind]);
    if (step.lay.what === 'kit') classes.add('lay kit');
    return classes;
  }
  const first = step.arguments[0];
  // a verb that is asked for as `pull peel` or `seal edge` stands in the order by both words
  if (first?.kind === 'word') return new Set(classesOfVerb(step.verb)).add(`${step.verb} ${first.word}`);
  const classes = ofVerbAlone.get(step.verb) ?? new Set(classesOfVerb(step.verb));
  ofVerbAlone.set(step.verb, classes);
  return classes;
}

const noClasses: ReadonlySet<string> = new Set();
const ofVerbAlone = new Map<string, ReadonlySet<string>>();

export const workedSteps = definePick<readonly WorkedStep[]>('worked_steps', (bench) => {
  const plan = bench.ask(layPlan);
  const steps: WorkedStep[] = [];
  const { process } = bench.recipe;
  if (process !== undefined) addSteps(process.steps, undefined, isKnown(plan) ? plan.value.layersOf : noLays, steps);
  byClass.set(steps, classesOf(steps));
  return known(steps);
});

type Lays = ReadonlyMap<string, readonly LaidLayer[]>;

const noLays: Lays = new Map();
const noLayers: readonly LaidLayer[] = [];

function addSteps(steps: readonly Step[], inside: Step | undefined, lays: Lays, into: WorkedStep[]): void {
  for (const step of steps) {
    const layers = lays.get(step.path) ?? noLayers;
    into.push({ step, layers, classes: classesFor(step, layers, inside), inside });
    if (step.steps !== undefined) addSteps(step.steps, step, lays, into);
  }
}

/** The steps of a class, for the lists that all rules look through: those of a whole process. */
const byClass = new WeakMap<readonly WorkedStep[], ReadonlyMap<string, readonly WorkedStep[]>>();

function classesOf(steps: readonly WorkedStep[]): ReadonlyMap<string, readonly WorkedStep[]> {
  const found = new Map<string, WorkedStep[]>();
  for (const worked of steps) {
    for (const name of worked.classes) {
      const others = found.get(name);
      if (others === undefined) found.set(name, [worked]);
      else others.push(worked);
    }
  }
  return found;
}

/** All steps of the process in order, those in blocks behind the line that opens the block. None where there is no process. */
export function stepsOf(context: RecipeContext): readonly WorkedStep[] {
  const steps = context.ask(workedSteps);
  return isKnown(steps) ? steps.value : none;
}

export const allOf = (steps: readonly WorkedStep[], ...classes: readonly string[]): readonly WorkedStep[] =>
  ofClasses(steps, classes);

export const firstOf = (steps: readonly WorkedStep[], ...classes: readonly string[]): WorkedStep | undefined =>
  ofClasses(steps, classes)[0];

/** Most rules ask for what a recipe does not do, or does once: then no step is looked at. */
function ofClasses(steps: readonly WorkedStep[], classes: readonly string[]): readonly WorkedStep[] {
  const index = byClass.get(steps);
  if (index === undefined) return ofAny(steps, classes);
  let only: readonly WorkedStep[] = none;
  for (const name of classes) {
    const own = index.get(name);
    if (own === undefined) continue;
    if (only !== none) return ofAny(steps, classes);
    only = own;
  }
  return only;
}

const none: readonly WorkedStep[] = [];

function ofAny(steps: readonly WorkedStep[], classes: readonly string[]): readonly WorkedStep[] {
  const found: WorkedStep[] = [];
  for (const worked of steps) {
    for (const name of classes) {
      if (!worked.classes.has(name)) continue;
      found.push(worked);
      break;
    }
  }
  return found;
}

/** Steps behind another one. */
export const after = (steps: readonly WorkedStep[], one: WorkedStep | undefined): readonly WorkedStep[] =>
  one === undefined ? [] : steps.slice(steps.indexOf(one) + 1);

export const before = (steps: readonly WorkedStep[], one: WorkedStep | undefined): readonly WorkedStep[] =>
  one === undefined ? [] : steps.slice(0, steps.indexOf(one));

/** Steps between two, without them. */
export const between = (steps: readonly WorkedStep[], from: WorkedStep, to: WorkedStep): readonly WorkedStep[] =>
  steps.slice(steps.indexOf(from) + 1, steps.indexOf(to));
