import type { AstNode } from 'langium';
import { text } from '../../calc/figure/figure.ts';
import { type Lay, type Process, type Step, type StepClause, UNKNOWN } from '../../calc/model/index.ts';
import type {
  Check,
  Clause,
  Lay as LayNode,
  Port,
  ProcessLine,
  Process as ProcessNode,
  Step as StepNode,
} from '../grammar/generated/ast.ts';
import { verb as verbNamed, verbSpelled } from '../words/index.ts';
import { amountOf, lowerArgument, lowerSaid, phrasesOf, plain, type Said, sayAll, wordAt } from './arguments.ts';
import { lowerTest } from './asks.ts';
import { clauseWord, withChanges } from './clauses.ts';
import type { Mutable } from './facts.ts';
import { grainOf, withGrains } from './grain.ts';
import type { Lowering } from './lowering.ts';
import { type Overrides, overridesAmong } from './overrides.ts';
import { headSpan, nodeSpan, propertySpan, type Span } from './places.ts';
import { isRemark, lowerRemarks, reportOpenText } from './remarks.ts';
import { checkHead, checkStepClause, knownVerb } from './step-words.ts';
import { reportStrayWords } from './stray.ts';
import { reportUnknownLine } from './unknown.ts';

type StepLine = Exclude<ProcessLine, { $type: 'Change' | 'Without' | 'Note' | 'Junk' }>;

/** `base`: the process that this one is like; its steps come first, those with the same verb and name are replaced. */
export function lowerProcess(
  low: Lowering,
  node: ProcessNode,
  path: string,
  overrides: Overrides,
  base?: Process,
): Process {
  low.placeHead(path, node);
  if (node.kind === undefined && base === undefined) {
    low.problem(
      'line/not-understood',
      low.places.get(path),
      'which process? process infusion, hand, bagged or prepreg with RESIN at 20 degC {',
    );
  }
  if (node.resin !== undefined) low.place(`${path}.resin`, propertySpan(node, 'resin'));
  else if (/\bwith\s*$/.test(headText(node)))
    low.problem(
      'line/not-understood',
      low.places.get(path),
      'which resin stands behind `with`? process infusion with epoxy_slow at 23 degC {',
    );
  const process: Mutable<Process> = {
    path,
    ...(base?.kind === undefined ? {} : { kind: base.kind }),
    ...(base?.resin === undefined ? {} : { resin: base.resin }),
    ...(base?.temperature === undefined ? {} : { temperature: base.temperature }),
    steps: [],
    ...lowerRemarks(
      low,
      path,
      node.remarks,
      node.steps.filter((line) => line.$type === 'Note'),
      true,
    ),
  };
  if (node.kind !== undefined) process.kind = node.kind;
  if (node.resin !== undefined) process.resin = node.resin.$refText;
  if (node.temperature !== undefined) {
    low.place(`${path}.temperature`, node.temperature);
    const argument = lowerArgument(low, node.temperature);
    const temperature =
      argument === undefined ? undefined : amountOf(low, { argument, node: node.temperature }, 'temperature');
    if (temperature !== undefined && temperature !== UNKNOWN) process.temperature = temperature;
  }
  const own = lowerSteps(low, node.steps, path, overrides);
  process.steps = base === undefined ? own : merged(base.steps, own);
  return process;
}

function headText(node: ProcessNode): string {
  const span = headSpan(node);
  return span === undefined ? '' : (node.$cstNode?.root.fullText.slice(span.offset, span.end) ?? '');
}

/**
 * A changed line replaces the step of the same verb and name; a new one goes behind. Of several that are called alike the first
 * takes the place of the first.
 */
function merged(base: readonly Step[], own: readonly Step[]): Step[] {
  const left = [...own];
  const steps = base.map((step) => {
    const at = left.findIndex((each) => keyOf(each) === keyOf(step));
    return at < 0 ? step : (left.splice(at, 1)[0] ?? step);
  });
  return [...steps, ...left];
}

/** What a step is called by: its name, the layers that it lays or works on, its words. */
function keyOf({ verb, name, lay, text: words, arguments: [first] }: Step): string {
  const [named] = verbNamed(verb)?.takes ?? [];
  const about = named?.names?.some((kind) => kind === 'layer' || kind === 'zone') === true;
  const subject = about && first?.kind === 'word' ? first.word : '';
  return [verb, name ?? lay?.first ?? lay?.what ?? words ?? subject].join(' ');
}

export function lowerSteps(low: Lowering, lines: readonly ProcessLine[], path: string, outer: Overrides): Step[] {
  const inner = overridesAmong(lines);
  const steps: Step[] = [];
  for (const [index, line] of lines.entries()) {
    if (line.$type === 'Note' || line.$type === 'Change' || line.$type === 'Without') continue;
    if (line.$type !== 'Port' && line.$type !== 'Lay' && line.$type !== 'Check' && line.$type !== 'Step') {
      reportUnknownLine(low, line, 'recipe');
      continue;
    }
    const name = line.$type === 'Port' ? (line.name ?? line.verb) : line.verb;
    if (outer.without(name) || inner.without(name)) continue;
    const [changes, later] = [outer.changesOf(name), inner.changesOf(name)];
    steps.push(
      lowerStep(
        low,
        line,
        `${path}.${index}`,
        withChanges(line.clauses, later.length === 0 ? changes : [...changes, ...later]),
        outer,
      ),
    );
  }
  return steps;
}

function lowerStep(
  low: Lowering,
  line: StepLine,
  path: string,
  clauses: readonly Clause[],
  overrides: Overrides,
): Step {
  if (line.$type === 'Step' && line.steps.length > 0) low.placeHead(path, line);
  else low.place(path, line);
  const { notes, accepts } = lowerRemarks(low, path, clauses);
  // what is absent is spelled out: steps of one form in memory are read twice as fast, and every rule reads them
  const step: Mutable<Step> = {
    path,
    verb: line.verb,
    name: undefined,
    material: undefined,
    arguments: [],
    phrases: [],
    clauses: [],
    steps: undefined,
    lay: undefined,
    text: undefined,
    test: undefined,
    notes,
    accepts,
  };
  if (line.$type === 'Port') readPort(low, line, step);
  else if (line.$type === 'Lay') readLay(low, line, step);
  else if (line.$type === 'Check') readCheck(low, line, step);
  else readVerb(low, line, step, overrides);
  step.clauses = lowerStepClauses(low, path, clauses, step.verb);
  return step;
}

function lowerStepClauses(low: Lowering, path: string, clauses: readonly Clause[], verb: string): Step['clauses'] {
  const lowered: StepClause[] = [];
  for (const clause of clauses) {
    if (isRemark(clause)) continue;
    const word = clauseWord(clause);
    const at = low.placeClause(`${path}.${word}`, clause);
    const said = saidIn(low, clause);
    const grain = grainOf(word, verbNamed(verb));
    if (grain !== undefined) {
      lowered.push({
        word: 'amount',
        path: at,
        arguments: [{ kind: 'amount', amount: grain }],
        phrases: phrasesOf(said),
      });
      continue;
    }
    checkStepClause(low, clause, said, verb);
    lowered.push({ word, path: at, arguments: plain(said.values), phrases: phrasesOf(said) });
  }
  return lowered;
}

function saidIn(low: Lowering, clause: Clause): Said {
  if (clause.$type === 'Phrase' || clause.$type === 'AmountClause') return lowerSaid(low, clause);
  if (clause.$type === 'PartClause') return sayAll(low, clause, [], clause.parts);
  if (clause.$type === 'GrooveClause') return sayAll(low, clause, clause.values, clause.parts);
  return { values: [], parts: [], node: clause };
}

/** `feed f1 spiral_10 from (90 mm from heel, 0 mm) to (90 mm from nose, 0 mm)` */
function readPort(low: Lowering, line: Port, step: Mutable<Step>): void {
  const example =
    line.verb === 'feed'
      ? 'feed f1 spiral_10 from (90 mm from heel, 0 mm) to (90 mm from nose, 0 mm)'
      : 'vent v1 spiral_10 perimeter, 60 mm outside';
  if (line.name === undefined)
    low.problem(
      'line/not-understood',
      line,
      text('a {verb} has a name and what it is made of: {example}', { verb: line.verb, example }),
    );
  else {
    step.name = line.name;
    low.place(`${step.path}.name`, propertySpan(line, 'name'));
  }
  if (line.material !== undefined) {
    step.material = line.material.$refText;
    low.place(`${step.path}.material`, propertySpan(line, 'material'));
  } else if (line.name !== undefined)
    low.problem('line/not-understood', line, text('what is {name} made of? {example}', { name: line.name, example }));
  const said = sayAll(low, line, line.values, line.parts);
  checkHead(low, said, line.verb);
  say(step, said);
}

function readLay(low: Lowering, line: LayNode, step: Mutable<Step>): void {
  const first = line.first?.$refText;
  const last = line.last?.$refText;
  const resin = line.resin?.$refText;
  if (line.whole === undefined && first === undefined)
    low.problem('line/not-understood', line, 'what is laid? lay outer to body, lay rest, or lay stack');
  const lay: Lay = {
    what: line.whole ?? 'layers',
    ...(first === undefined ? {} : { first }),
    ...(last === undefined ? {} : { last }),
    ...(resin === undefined ? {} : { resin }),
  };
  step.lay = lay;
  for (const property of ['first', 'last', 'resin'] as const)
    if (line[property] !== undefined) low.place(`${step.path}.${property}`, propertySpan(line, property));
}

function readCheck(low: Lowering, line: Check, step: Mutable<Step>): void {
  if (line.text === undefined && line.test === undefined)
    low.problem(
      'line/not-understood',
      line,
      'what is checked? check "No bridging at the edge.", or check barcol >= 35',
    );
  if (line.text !== undefined) {
    step.text = line.text;
    reportOpenText(low, line);
  }
  if (line.test !== undefined) step.test = lowerTest(low, line.test, `${step.path}.test`);
}

/** From the start of one to the end of the other. */
function spanTo(from: Span | undefined, node: AstNode | undefined): Span | undefined {
  const last = nodeSpan(node);
  return from === undefined || last === undefined ? from : { offset: from.offset, end: last.end };
}

/** A step by the table of verbs: two words make one verb where the table knows them together. */
function readVerb(low: Lowering, line: StepNode, step: Mutable<Step>, overrides: Overrides): void {
  const said = sayAll(low, line, line.values, line.parts);
  const second = wordAt(said.values);
  const two = second === undefined ? undefined : `${line.verb} ${second}`;
  let values = said.values;
  if (two !== undefined && verbNamed(two) !== undefined) {
    step.verb = two;
    values = values.slice(1);
  }
  const verbSpan = propertySpan(line, 'verb');
  low.place(`${step.path}.verb`, verbSpan);
  // `drop test` is one spelling of other shops
  const spelling = two !== undefined && verbSpelled(two) !== undefined ? two : undefined;
  if (spelling !== undefined) values = values.slice(1);
  const known = verbNamed(step.verb);
  const named = wordAt(values);
  if (known?.material !== undefined && known.material.length > 0 && named !== undefined) {
    step.material = named;
    low.place(`${step.path}.material`, values[0]?.node);
    values = values.slice(1);
  }
  step.verb = knownVerb(
    low,
    spelling ?? step.verb,
    spelling === undefined ? verbSpan : spanTo(verbSpan, said.values[0]?.node),
  );
  values = withGrains(values, known);
  checkHead(low, { ...said, values }, step.verb);
  values.forEach(({ argument, node }, i) => {
    if (argument.kind === 'word') low.place(`${step.path}.arguments.${i}`, node);
  });
  say(step, { ...said, values });
  if (known !== undefined) reportStrayWords(low, known, values, step.material !== undefined);
  const words = values.find(({ argument }) => argument.kind === 'text')?.argument;
  if (words?.kind === 'text') {
    step.text = words.text;
    reportOpenText(low, line);
  }
  if (line.steps.length > 0) step.steps = lowerSteps(low, line.steps, step.path, overrides);
}

function say(step: Mutable<Step>, said: Said): void {
  step.arguments = plain(said.values);
  step.phrases = phrasesOf(said);
}
