import { type Bench, isKnown } from '../../../calc/figure/index.ts';
import type { BuildRecord, Recipe, Step } from '../../../calc/model/index.ts';
import { allSteps } from '../../../calc/plan/reading.ts';
import { doseAt } from '../../../calc/resin/dose.figure.ts';
import { liquidsNamed } from '../../../calc/resin/named-liquids.ts';
import { resinsUsed } from '../../../calc/resin/needs.figure.ts';
import { type StepPot, stepPots } from '../../../calc/resin/step-pots.figure.ts';
import { laidStack } from '../../../calc/stack/laid.figure.ts';
import { say } from '../text.ts';
import { digits } from './lots.ts';

/** One thing that a record tells, asked for when it is known. */
export interface Question {
  /** what the line begins with: asked only while no line begins so */
  readonly key: string;
  readonly ask: string;
  /** an answer as it would be given */
  readonly example: string;
  /** the most numbers that the answer may have, comma by comma; absent: it is words */
  readonly numbers?: number;
  /** the line of the record */
  line(answer: string): string;
  /** what a blank in the text stands for */
  readonly blank: string;
}

/** What is known of the build beforehand. */
export interface BuildHead {
  readonly recipe: string;
  readonly size?: string;
  /** ISO 8601 */
  readonly date: string;
  readonly number: string;
  readonly revision?: number;
}

const quoted = (words: string): string => `"${words.replaceAll('"', "'")}"`;

/** A bare number takes the unit that is usual for it. */
const withUnit = (answer: string, unit: string): string =>
  /^-?\d+(\.\d+)?$/.test(answer.trim()) ? `${answer.trim()} ${unit}` : answer.trim();

/** The parts of an answer between commas. */
const parts = (answer: string): string[] => answer.split(',').map((each) => each.trim());

const measure = (key: string, ask: string, unit: string, example: string): Question => ({
  key,
  ask,
  example,
  numbers: 1,
  line: (answer) => `${key} ${withUnit(answer, unit)}`,
  blank: `${key} ? ${unit}`,
});

/** Everything that a record of this recipe should say, in the order in which the bench comes to know it. */
export function questionsOf(recipe: Recipe, bench: Bench): Question[] {
  const steps = allSteps(recipe.process?.steps ?? []);
  const materials = materialsOf(recipe, bench);
  const pots = potQuestions(steps, bench);
  const tested = new Set(steps.flatMap(({ test }) => (test?.what === 'barcol' ? [test.on] : [])));
  return [
    { key: 'by', ask: say('Built by'), example: 'RT', line: (answer) => `by ${quoted(answer)}`, blank: 'by "?"' },
    ...materials.map((name) => lotQuestion(name, SPOILS.has(bench.material(name)?.kind ?? ''))),
    ...materials.filter((name) => bench.material(name)?.kind === 'prepreg').map(outQuestion),
    AMBIENT(),
    ...pots.laid,
    ...(steps.some(({ lay }) => lay !== undefined)
      ? [measure('step lay', say('Hands at laying, minutes'), 'min', '35')]
      : []),
    ...(recipe.process?.kind !== undefined && recipe.process.kind !== 'hand' ? [VACUUM()] : []),
    ...(steps.some(({ verb }) => verb === 'leak test') ? [LEAK()] : []),
    ...pots.poured,
    ...(recipe.process?.kind === 'infusion' ? [measure('fill', say('Filled in, minutes'), 'min', '4')] : []),
    ...[...tested].map(barcolQuestion),
    measure('mass', say('The part weighs, kg'), 'kg', '1.74'),
    wordsQuestion('differs', say('What was done otherwise than the recipe says')),
    wordsQuestion('note', say('What else')),
  ];
}

/** Kinds of material that have a date. */
const SPOILS: ReadonlySet<string> = new Set(['resin', 'gelcoat', 'paste', 'prepreg']);

const AMBIENT = (): Question => ({
  key: 'ambient',
  ask: say('Shop: degC, humidity in %'),
  example: '19, 60',
  numbers: 2,
  line: (answer) => {
    const [temperature = '', humidity] = parts(answer);
    return `ambient ${withUnit(temperature, 'degC')}${humidity === undefined || humidity === '' ? '' : `, ${withUnit(humidity, '% RH')}`}`;
  },
  blank: 'ambient ? degC, ?',
});

const VACUUM = (): Question => ({
  key: 'vacuum',
  ask: say('Vacuum of the dry bag, mbar absolute'),
  example: '22',
  numbers: 1,
  line: (answer) => `vacuum ${withUnit(answer, 'mbar absolute')}, dry`,
  blank: 'vacuum ? mbar absolute, dry',
});

const LEAK = (): Question => ({
  key: 'leak',
  ask: say('Leak: mbar, minutes'),
  example: '3, 10',
  numbers: 2,
  line: (answer) => {
    const [rise = '', time] = parts(answer);
    return `leak ${withUnit(rise, 'mbar')}${time === undefined ? '' : ` in ${withUnit(time, 'min')}`}`;
  },
  blank: 'leak ? mbar in ? min',
});

const barcolQuestion = (on: string | undefined): Question => ({
  key: on === undefined ? 'barcol' : `barcol ${on}`,
  ask: on === undefined ? say('Barcol readings') : say('Barcol readings on {layer}', { layer: on }),
  example: '33, 36, 34',
  numbers: 40,
  line: (answer) => `barcol ${on === undefined ? '' : `${on} `}${parts(answer).join(', ')}`,
  blank: on === undefined ? 'barcol ?' : `barcol ${on} ?`,
});

const wordsQuestion = (key: string, ask: string): Question => ({
  key,
  ask,
  example: '',
  line: (answer) => `${key} ${quoted(answer)}`,
  blank: `${key} "?"`,
});

const outQuestion = (material: string): Question => ({
  key: `out ${material}`,
  ask: say('{material}: hours out of the freezer for this part', { material }),
  example: '12',
  numbers: 1,
  line: (answer) => `out ${material} ${withUnit(answer, 'h')}`,
  blank: `out ${material} ? h`,
});

const lotQuestion = (material: string, spoils: boolean): Question => ({
  key: `lot ${material}`,
  ask: say('Lot of {material}, and the day it expires', { material }),
  example: 'A-1182, 2026-11-30',
  line: (answer) => {
    const [code = '', day] = parts(answer);
    return `lot ${material} ${quoted(code)}${day === undefined || day === '' ? '' : ` expires ${day}`}`;
  },
  blank: `lot ${material} "?"${spoils ? ' expires ?' : ''}`,
});

/** What stays in the part, each once. */
function materialsOf(recipe: Recipe, bench: Bench): string[] {
  const names = new Set<string>();
  const stack = bench.ask(laidStack);
  for (const { layer } of isKnown(stack) ? stack.value.layers : []) {
    const kind = layer.material === undefined ? undefined : bench.material(layer.material)?.kind;
    if (layer.material !== undefined && kind !== undefined) names.add(layer.material);
  }
  const resins = bench.ask(resinsUsed);
  for (const name of isKnown(resins) ? resins.value : [recipe.process?.resin ?? '']) if (name !== '') names.add(name);
  for (const step of allSteps(recipe.process?.steps ?? []))
    for (const name of liquidsNamed(bench, step)) names.add(name);
  return [...names];
}

/** Pots of the steps that lay wet, and those that are poured into a closed bag. */
function potQuestions(
  steps: readonly Step[],
  bench: Bench,
): { readonly laid: readonly Question[]; readonly poured: readonly Question[] } {
  const of = (step: Step): Question[] => {
    const pots = bench.ask(stepPots, step.path);
    return isKnown(pots) ? pots.value.flatMap((pot) => potQuestionsOf(step, pot, bench)) : [];
  };
  return {
    laid: steps.filter(({ lay }) => lay !== undefined).flatMap(of),
    poured: steps.filter(({ lay }) => lay === undefined).flatMap(of),
  };
}

/** More pots than this are asked for as one. */
const mostPots = 12;

/** Each of several pots is a line of the record: what they hold together is compared with the plan. */
function potQuestionsOf(step: Step, { resin, pots }: StepPot, bench: Bench): Question[] {
  const question = potQuestion(step, resin, bench);
  if (pots === 1 || pots > mostPots) return [question];
  return Array.from({ length: pots }, (_, i) => ({
    ...question,
    ask: say('Pot {pot} of {pots}. {question}', { pot: i + 1, pots, question: question.ask }),
  }));
}

/** A pot of resin that is mixed of parts is a batch; one with catalyst is told for the layer that it was mixed for. */
function potQuestion(step: Step, resin: string, bench: Bench): Question {
  const dose = doseAt(bench, resin, step.path);
  const catalyst = isKnown(dose) ? dose.value?.material : undefined;
  const layer = step.lay?.first ?? step.verb;
  if (catalyst === undefined || step.lay === undefined)
    return {
      key: 'batch',
      ask: say('Batch of {resin}: kg, degC', { resin }),
      example: '1.15, 19.5',
      numbers: 2,
      line: (answer) => {
        const [mass = '', temperature] = parts(answer);
        return `batch ${withUnit(mass, 'kg')}${temperature === undefined ? '' : ` at ${withUnit(temperature, 'degC')}`}`;
      },
      blank: 'batch ? kg at ? degC',
    };
  return {
    key: `mixed ${layer}`,
    ask: say('Mixed for {layer}: kg of {resin}, g of {catalyst}', { layer, resin, catalyst }),
    example: '0.41, 8.2',
    numbers: 2,
    line: (answer) => {
      const [mass = '', grams] = parts(answer);
      return `mixed ${layer} ${withUnit(mass, 'kg')}${grams === undefined ? '' : ` with ${withUnit(grams, 'g')} ${catalyst}`}`;
    },
    blank: `mixed ${layer} ? kg with ? g ${catalyst}`,
  };
}

/** The text of a record; a line that is not known yet stands as a comment, so that the file is whole at any time. */
export function recordText(head: BuildHead, lines: readonly string[]): string {
  const words = ['record', head.recipe, head.size, head.date, quoted(`no. ${head.number}`)];
  return [
    'notation 1',
    '',
    `${words.filter((word) => word !== undefined).join(' ')} {`,
    ...(head.revision === undefined ? [] : [`  revision ${head.revision}`]),
    ...lines.map((line) => `  ${line}`),
    '}',
    '',
  ].join('\n');
}

/** Where a record lies: a file of its own, so that two builds never meet in one. */
export const recordFile = ({ recipe, date, number }: BuildHead): string =>
  `records/${recipe}/${date}-${number.replace(/[^\w.-]/g, '_')}.layup`;

/** One more than the highest number so far. */
export function nextNumber(records: readonly BuildRecord[]): string {
  const numbers = records.map(({ title }) => Number(digits(title) ?? 0));
  return String(Math.max(0, ...numbers) + 1);
}

/** What is wrong with an answer before it is read as a line; nothing where it is numbers enough. */
export function wrongNumbers({ numbers, example }: Question, answer: string): string | undefined {
  if (numbers === undefined) return undefined;
  const given = parts(answer);
  if (given.length > numbers)
    return numbers === 1
      ? say('1 number at most: {example}', { example })
      : say('{most} numbers at most, with commas between: {example}', { most: numbers, example });
  const odd = given.find((each) => !/^-?\d+(\.\d+)?(\s*\p{L}.*|\s*%.*|\s*°.*)?$/u.test(each));
  return odd === undefined ? undefined : say('{given} is no number; as in {example}', { given: odd, example });
}

/** Which questions the lines of a record answer: a question that is asked twice is answered by two lines. */
export function answeredBy(lines: readonly string[], questions: readonly Question[]): ReadonlySet<Question> {
  const left = [...lines];
  const found = questions.filter(({ key }) => {
    const at = left.findIndex((line) => answers(line, key));
    if (at >= 0) left.splice(at, 1);
    return at >= 0;
  });
  return new Set(found);
}

export const answers = (line: string, key: string): boolean => line === key || line.startsWith(`${key} `);
