import { hottest } from '../../../calc/cure/equivalent.ts';
import { isKnown, text } from '../../../calc/figure/figure.ts';
import type { Place, Step } from '../../../calc/model/index.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import {
  allSaid,
  amountOf,
  clauseWith,
  firstClause,
  flat,
  hasWord,
  head,
  subject,
} from '../../../calc/plan/reading.ts';
import { TEMPERATURE } from '../../../calc/quantity/index.ts';
import { laidStack } from '../../../calc/stack/laid.figure.ts';
import { spansOf } from '../kit/cures.ts';
import { kelvin } from '../kit/shown.ts';
import { allOf, firstOf, stepsOf, type WorkedStep } from '../kit/steps.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** What has a limit and lies in the heat. */
interface Heated {
  readonly name: string;
  readonly limit: number;
  /** where it is named in the recipe */
  readonly path: string;
  readonly fact?: Place;
}

const IN_THE_BAG: ReadonlySet<string> = new Set([
  'release',
  'tape',
  'tack',
  'peel',
  'perforated',
  'film',
  'bleeder',
  'mesh',
  'caul',
  'intensifier',
  'dam',
  'breather',
  'feed',
  'vent',
  'bag',
]);

export const cureOverLimit = rule({
  name: 'cure/over-limit',
  severity: 'error',
  title: 'something is heated over its limit',
  on: 'recipe',
  check(context) {
    const steps = stepsOf(context);
    const out = firstOf(steps, 'demould');
    const told = new Set<string>();
    for (const heat of allOf(steps, 'cure', 'postcure', 'release', 'dry', 'heat')) {
      const peak = heat.inside === undefined ? peakOf(context, heat) : undefined;
      if (peak === undefined) continue;
      const inTool = out === undefined || steps.indexOf(heat) < steps.indexOf(out);
      for (const each of heatedBy(context, heat, inTool)) {
        if (peak.temperature <= each.limit + 0.5 || told.has(each.path)) continue;
        told.add(each.path);
        const shown = { name: each.name, limit: kelvin(each.limit), temperature: kelvin(peak.temperature) };
        context.report({
          at: each.path,
          message: text('{name} bears {limit}, it is heated to {temperature}', shown),
          related: [
            {
              at: { entry: context.recipe.entry, path: peak.path },
              message: text('heated to {temperature} here', shown),
            },
            ...(each.fact === undefined ? [] : [{ at: each.fact, message: text('{name} bears {limit}', shown) }]),
          ],
        });
      }
    }
  },
});

/** The hottest of a step: a schedule, `heat tool to 60 degC`, `dry ... at 80 degC`, or `bake 30 min at 120 degC`. */
function peakOf(
  context: RecipeContext,
  worked: WorkedStep,
): { readonly temperature: number; readonly path: string } | undefined {
  const { step } = worked;
  if (step.verb === 'heat') {
    const amount = amountOf(head(step), TEMPERATURE);
    return amount === undefined ? undefined : { temperature: amount.si, path: step.path };
  }
  if (step.verb === 'release' || step.verb === 'dry') {
    const clause = step.verb === 'release' ? clauseWith(step, 'bake') : undefined;
    if (step.verb === 'release' && clause === undefined) return undefined;
    const said = clause === undefined ? allSaid(step) : flat(clause);
    const amount = amountOf(said, TEMPERATURE);
    return amount === undefined ? undefined : { temperature: amount.si, path: clause?.path ?? step.path };
  }
  const spans = spansOf(context, [worked]);
  if (!isKnown(spans)) return undefined;
  const most = hottest(spans.value);
  const span = spans.value.find(({ to, from }) => Math.max(to, from) === most);
  return most === undefined ? undefined : { temperature: most, path: span?.path ?? step.path };
}

function heatedBy(context: RecipeContext, { step }: WorkedStep, inTool: boolean): readonly Heated[] {
  const tool = toolOf(context);
  // the tool by itself, or the part with all that is on it
  if (step.verb === 'release' || (step.verb === 'heat' && subject(step) !== 'part' && isTool(context, subject(step))))
    return tool;
  if (step.verb === 'heat' && subject(step) !== 'part') return [];
  const stack = context.ask(laidStack);
  const named = step.verb === 'dry' ? subject(step) : undefined;
  const layers: Heated[] = [];
  for (const { layer, name, path } of isKnown(stack) ? stack.value.layers : []) {
    if (layer.kind !== 'core' && layer.kind !== 'insert') continue;
    if (step.verb !== 'dry' || name === named || layer.material === named)
      layers.push(...ofMaterial(context, layer.material, `${path}.material`));
  }
  if (step.verb === 'dry') return layers;
  const free = step.verb === 'postcure' && !hasWord(head(step), 'on');
  if (!inTool) return free ? layers : [...layers, ...tool];
  const heated = [...tool, ...layers];
  for (const { step: each } of stepsOf(context)) if (IN_THE_BAG.has(each.verb)) heated.push(...inTheBag(context, each));
  return heated;
}

/** What a step puts in the bag, by the limit that its line types or that of its material. */
function inTheBag(context: RecipeContext, step: Step): readonly Heated[] {
  const name = subject(step);
  if (name === undefined) return [];
  const said = firstClause(step, 'limit');
  const typed = said === undefined ? undefined : amountOf(flat(said), TEMPERATURE);
  if (typed !== undefined) return [{ name, limit: typed.si, path: said?.path ?? step.path }];
  return ofMaterial(context, name, step.material === undefined ? step.path : `${step.path}.material`);
}

/** `heat tool`, `heat table` (the mould stands on it), or the tool by its own name. */
const isTool = ({ recipe: { stack } }: RecipeContext, name: string | undefined): boolean =>
  name === 'tool' || name === 'table' || (name !== undefined && name === stack?.tool);

function ofMaterial(context: RecipeContext, name: string | undefined, path: string): readonly Heated[] {
  const fact = name === undefined ? undefined : context.bench.material(name)?.limit;
  return name === undefined || fact === undefined || fact.value === UNKNOWN
    ? []
    : [{ name, limit: fact.value.si, path, fact: fact.at }];
}

function toolOf(context: RecipeContext): readonly Heated[] {
  const { stack } = context.recipe;
  const fact =
    stack?.tool === undefined
      ? undefined
      : (context.bench.tool(stack.tool)?.limit ?? context.bench.material(stack.tool)?.limit);
  return stack?.tool === undefined || fact === undefined || fact.value === UNKNOWN
    ? []
    : [{ name: stack.tool, limit: fact.value.si, path: `${stack.path}.tool`, fact: fact.at }];
}
