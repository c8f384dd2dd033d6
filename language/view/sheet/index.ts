import { isKnown, quantity } from '../../../calc/figure/figure.ts';
import { type Bench, benchOf } from '../../../calc/figure/index.ts';
import type { Accepted, Book, Recipe, Remarks, StackItem } from '../../../calc/model/index.ts';
import { allSteps } from '../../../calc/plan/reading.ts';
import { TEMPERATURE } from '../../../calc/quantity/index.ts';
import { type Report, reportOf } from '../../../calc/report.ts';
import { liquidsNamed } from '../../../calc/resin/named-liquids.ts';
import { workTemperature } from '../../../calc/resin/time.figure.ts';
import { firstBlanks } from '../../words/sheet-blanks.ts';
import { cautionsOf, cautionWords } from '../cautions.ts';
import { figureOf, showFigure } from '../figures.ts';
import { caution } from '../report/index.ts';
import { missingSection } from '../report/missing.ts';
import type { Telling } from '../report/section.ts';
import { type Style, safe, say, show } from '../text.ts';
import { translated } from '../translation.ts';
import { sheetDrawings } from './drawings.ts';
import { cutHead, cutRows, weighTable } from './pieces.ts';
import type { Revisioned, Sheet, SheetOrder } from './sheet.ts';
import { sheetWords } from './sheet-words.ts';
import { acceptedWords, blankOf, sheetSteps } from './steps.ts';

export type { Revisioned, Sheet, SheetOrder } from './sheet.ts';

/** The sheet for one build of a recipe in one size. `findings`: a sentence on what stands open; empty if nothing does. */
export function sheetOf(recipe: Recipe, book: Book, telling: Telling, order: SheetOrder, findings: string): Sheet {
  const bench = benchOf(recipe, book);
  const report = reportOf(recipe, book);
  const { style } = telling;
  const steps = sheetSteps(report, bench, book, style);
  return {
    title: safe(recipe.title ?? recipe.name),
    code: codeOf(recipe, order),
    identity: identityOf(recipe, order),
    facts: factsOf(report, recipe, style, bench),
    blanks: firstBlanks
      .filter(({ label }) => label !== 'date' || order.date === undefined)
      .map((blank) => blankOf(blank, style)),
    lots: lotsOf(recipe, report, bench),
    drawings: sheetDrawings(bench, style),
    cut: { head: cutHead(), rows: cutRows(report, bench, style) },
    weigh: weighTable(report, bench, style),
    steps,
    accepted: acceptedWords(acceptedOf(recipe)).filter(
      (words) => !steps.some(({ accepted }) => accepted.includes(words)),
    ),
    notes: notesOf(recipe),
    hazards: cautionsOf(recipe, book).map((caution) => ({
      title: translated(caution.hazard.title),
      lines: [translated(caution.hazard.brief), ...cautionWords(caution)],
    })),
    open: [...(findings === '' ? [] : [findings]), ...(missingSection(report, telling).lines ?? [])],
    foot: translated(caution),
    words: sheetWords(),
  };
}

/** Recipe, size, revision, number: short, so that the code is coarse enough for a dusty bench. */
export function codeOf(recipe: Recipe, { number, git }: SheetOrder): string {
  return [
    'laybook',
    recipe.name,
    recipe.size ?? '-',
    recipe.revision === undefined ? '-' : `r${recipe.revision}`,
    number ?? '-',
    ...(git === undefined ? [] : [git.differs ? `${git.commit}+` : git.commit]),
  ].join(' ');
}

function identityOf(recipe: Recipe, { number, date, git }: SheetOrder): [string, string][] {
  const rows: [string, string | undefined][] = [
    [say('recipe'), recipe.name],
    [say('size'), recipe.size ?? (recipe.sizes.length > 0 ? say('as written') : undefined)],
    [say('revision'), recipe.revision === undefined ? say('none') : String(recipe.revision)],
    [say('number'), number ?? ''],
    [say('date'), date],
    [say('commit'), git === undefined ? undefined : commitWords(git)],
  ];
  return rows.flatMap(([name, value]): [string, string][] => (value === undefined ? [] : [[name, safe(value)]]));
}

function commitWords({ commit, date, differs }: Revisioned): string {
  if (differs) return say('{commit}, but the text differs from it', { commit });
  return date === undefined ? commit : say('{commit} of {date}', { commit, date });
}

function factsOf(report: Report, recipe: Recipe, style: Style, bench: ReturnType<typeof benchOf>): [string, string][] {
  const figure = (name: string): string | undefined => showFigure(figureOf(report.figures, name), style);
  const temperature = bench.ask(workTemperature);
  const length = figure('outline_length');
  const width = figure('outline_width');
  const rows: [string, string | undefined][] = [
    [say('process'), recipe.process?.kind],
    [say('resin'), recipe.process?.resin],
    [say('at'), isKnown(temperature) ? show(quantity(temperature.value, TEMPERATURE), style) : undefined],
    [say('tool'), recipe.stack?.tool],
    [
      say('size of the part'),
      length === undefined || width === undefined ? undefined : say('{length} by {width}', { length, width }),
    ],
    [say('thickness'), figure('thickness')],
    [say('mass'), figure('mass')],
    [say('resin to mix'), figure('resin_to_mix')],
    [say('hands'), figure('working_time')],
    [say('waiting'), figure('standing_time')],
    [say('parts in the order'), String(recipe.quantity)],
  ];
  return rows.flatMap(([name, value]): [string, string][] => (value === undefined ? [] : [[name, safe(value)]]));
}

/** Materials whose lot is written down: what stays in the part. */
function lotsOf(recipe: Recipe, report: Report, bench: Bench): string[] {
  const names = new Set<string>();
  for (const { laid } of report.layers) if (laid.layer.material !== undefined) names.add(laid.layer.material);
  for (const { name } of report.resins) names.add(name);
  if (recipe.process?.resin !== undefined) names.add(recipe.process.resin);
  for (const step of allSteps(recipe.process?.steps ?? []))
    for (const name of liquidsNamed(bench, step)) names.add(name);
  return [...names];
}

function* remarked(recipe: Recipe): Generator<Remarks> {
  yield recipe;
  const { part, stack, process } = recipe;
  if (part !== undefined) {
    yield part;
    yield* part.zones;
  }
  if (stack !== undefined) {
    yield stack;
    yield* layersIn(stack.items);
  }
  if (process !== undefined) {
    yield process;
    yield* allSteps(process.steps);
  }
  yield* recipe.loads;
  yield* recipe.expects;
}

function* layersIn(items: readonly StackItem[]): Generator<Remarks> {
  for (const item of items) {
    yield item;
    if (item.kind === 'repeat') yield* layersIn(item.items);
  }
}

const acceptedOf = (recipe: Recipe): Accepted[] => [...remarked(recipe)].flatMap(({ accepts }) => accepts ?? []);

/** Notes that stand at no step and at no layer: those are told where they belong. */
function notesOf({ part, stack, process, ...recipe }: Recipe): string[] {
  const whole: (Remarks | undefined)[] = [recipe, part, stack, process];
  return whole.flatMap((remarks) => remarks?.notes ?? []).map(safe);
}
