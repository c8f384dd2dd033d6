import { text } from '../../calc/figure/figure.ts';
import {
  type Amount,
  type Layer,
  type LayerKind,
  type Mirror,
  type Repeat,
  type Stack,
  type StackItem,
  UNKNOWN,
} from '../../calc/model/index.ts';
import { countLayers, MOST_LAID_LAYERS } from '../../calc/stack/expand.ts';
import { connectives } from '../grammar/connectives.ts';
import type {
  Clause,
  ClothLayer,
  CoatLayer,
  CoreLayer,
  Mirror as MirrorNode,
  Repeat as RepeatNode,
  StackLine,
  Stack as StackNode,
} from '../grammar/generated/ast.ts';
import { amountOf, countOf, firstAmount, known, lowerArgument, lowerSaid, sayAll } from './arguments.ts';
import { withChanges } from './clauses.ts';
import type { Mutable } from './facts.ts';
import { endAt, lowerClauses } from './layer-clauses.ts';
import { lowerExtent } from './layer-extent.ts';
import type { Lowering } from './lowering.ts';
import type { Overrides } from './overrides.ts';
import { propertySpan } from './places.ts';
import { lowerRemarks } from './remarks.ts';
import { reportUnknownLine } from './unknown.ts';

export function lowerStack(low: Lowering, node: StackNode, path: string, overrides: Overrides): Stack {
  low.placeHead(path, node);
  const tool = node.tool?.$refText ?? node.caul?.$refText;
  if (node.from === undefined)
    low.problem(
      'line/not-understood',
      low.places.get(path),
      'a stack says what it is laid on: `stack from tool table {`, and somewhere `tool table { flat 1200 mm by 800 mm }`',
    );
  else if (tool === undefined)
    low.problem('line/not-understood', low.places.get(path), 'which tool is it laid on? stack from tool sled_tool {');
  else low.place(`${path}.tool`, propertySpan(node, node.tool === undefined ? 'caul' : 'tool'));
  const remarks = lowerRemarks(
    low,
    path,
    node.remarks,
    node.layers.filter((line) => line.$type === 'Note'),
    true,
  );
  const items = lowerLines(low, node.layers, path, overrides);
  reportTooManyLayers(low, items, path);
  return {
    path,
    ...(node.from === undefined ? {} : { from: node.from }),
    ...(tool === undefined ? {} : { tool }),
    items,
    ...remarks,
  };
}

/** A slip of the key in a `repeat`: such a stack is not worked out. */
function reportTooManyLayers(low: Lowering, items: readonly StackItem[], path: string): void {
  const count = countLayers(items).all;
  if (count <= MOST_LAID_LAYERS) return;
  low.problem(
    'unit/suspicious',
    low.places.get(path),
    text('the stack would have {count} layers; more than {most} are not worked out', {
      count: count > 1e6 ? 'more than a million' : count,
      most: MOST_LAID_LAYERS,
    }),
  );
}

function lowerLines(low: Lowering, lines: readonly StackLine[], path: string, overrides: Overrides): StackItem[] {
  const items: StackItem[] = [];
  lines.forEach((line, index) => {
    const at = `${path}.${index}`;
    if (line.$type === 'Repeat') items.push(lowerRepeat(low, line, at, overrides));
    else if (line.$type === 'Mirror') items.push(lowerMirror(low, line, at));
    else if (line.$type === 'Unknown') reportUnknownLine(low, line, 'stack');
    else if (line.$type !== 'Note') {
      if (line.name !== undefined && overrides.without(line.name)) return;
      const layer = lowerLayer(low, line, at, overrides.changesOf(line.name));
      if (layer !== undefined) items.push(layer);
    }
  });
  return items;
}

type LayerNode = ClothLayer | CoatLayer | CoreLayer;

const example: Readonly<Record<LayerKind, string>> = {
  ply: 'ply outer biax_440 at 45 deg',
  strip: 'strip keel uni_c300 at 0 deg, 60 mm by 620 mm',
  patch: 'patch pad biax_440 at 45 deg, over mount',
  core: 'core body foam_80 12 mm',
  insert: 'insert bolts birch_ply 12 mm, rectangle 110 mm by 80 mm',
  coat: 'coat gel gel_iso 500 um wet, brush',
};
const materialWord: Readonly<Record<LayerKind, string>> = {
  ply: 'cloth',
  strip: 'cloth',
  patch: 'cloth',
  core: 'core',
  insert: 'material',
  coat: 'gelcoat or resin',
};

/** A name that links words elsewhere (`ply under glass_twill_280`) cannot be one: the line has a name, and none that can be read. */
function reportNoName(low: Lowering, node: LayerNode): void {
  const { kind } = node;
  const at = node.$cstNode?.offset ?? 0;
  const word = /^\w+[ \t]+(\w+)[ \t]+\w/.exec(node.$cstNode?.root.fullText.slice(at, at + 100) ?? '')?.[1];
  low.problem(
    'line/not-understood',
    node,
    word !== undefined && connectives.has(word)
      ? text('`{word}` joins words of a line, so it can be no name: `{other}` can', { word, other: `${word}_${kind}` })
      : text('`{kind}` needs a name and its {material}: {example}', {
          kind,
          material: materialWord[kind],
          example: example[kind],
        }),
  );
}

/** A layer of which nothing is said. All is spelled out, so that layers have one form in memory: every rule and figure reads them. */
const bare: Layer = {
  kind: 'ply',
  name: '',
  path: '',
  material: undefined,
  angle: undefined,
  extent: { kind: 'net', typed: false },
  clauses: [],
  darts: undefined,
  oversize: undefined,
  tabs: undefined,
  turnedOver: undefined,
  turned: undefined,
  faceDown: undefined,
  lap: undefined,
  joins: undefined,
  fraction: undefined,
  wetResin: undefined,
  warpAlong: undefined,
  drop: undefined,
  film: undefined,
  coats: undefined,
  applied: undefined,
  waxed: undefined,
  dark: undefined,
  thickness: undefined,
  inset: undefined,
  moisture: undefined,
  clearance: undefined,
  chamfer: undefined,
  perforation: undefined,
  grooves: undefined,
  score: undefined,
  pieces: undefined,
  bedded: undefined,
  sealed: undefined,
  notes: undefined,
  accepts: undefined,
};

function lowerLayer(low: Lowering, node: LayerNode, path: string, changes: readonly Clause[]): Layer | undefined {
  low.place(path, node);
  const kind = node.kind;
  if (node.name === undefined) {
    reportNoName(low, node);
    return undefined;
  }
  low.place(`${path}.name`, propertySpan(node, 'name'));
  const clauses = withChanges(node.clauses, changes);
  const { notes, accepts } = lowerRemarks(low, path, clauses);
  const layer: Mutable<Layer> = { ...bare, kind, name: node.name, path, notes, accepts };
  if (node.material === undefined) {
    low.problem(
      'line/not-understood',
      node,
      text('which {material} is {name}? {example}', {
        material: materialWord[kind],
        name: node.name,
        example: example[kind],
      }),
    );
  } else {
    layer.material = node.material.$refText;
    low.place(`${path}.material`, propertySpan(node, 'material'));
  }
  if (node.$type === 'ClothLayer') readCloth(low, node, layer);
  else if (node.$type === 'CoatLayer') readCoat(low, node, layer);
  else readCore(low, node, layer);
  layer.extent = lowerExtent(low, kind, clauses, path);
  lowerClauses(low, kind, clauses, layer, path);
  return layer;
}

function readCloth(low: Lowering, node: ClothLayer, layer: Mutable<Layer>): void {
  if (node.angle !== undefined) {
    const argument = lowerArgument(low, node.angle);
    const angle = argument === undefined ? undefined : known(amountOf(low, { argument, node: node.angle }, 'angle'));
    if (angle !== undefined) layer.angle = angle;
    low.place(`${layer.path}.angle`, node.angle);
  } else if (/\bat\s*(?=[,\r\n]|$)/.test(headText(node))) {
    low.problem(
      'line/not-understood',
      node,
      text('the direction is missing behind `at`: {example}', { example: example[layer.kind] }),
    );
  }
  if (node.resin !== undefined) {
    layer.wetResin = node.resin.$refText;
    low.place(`${layer.path}.resin`, propertySpan(node, 'resin'));
  }
}

function headText(node: ClothLayer): string {
  const cst = node.$cstNode;
  const line = cst?.text ?? '';
  const end = line.search(/[,\r\n]|\/\//);
  return end < 0 ? line : line.slice(0, end);
}

/** `500 um wet`, `250 g/m2` */
function readCoat(low: Lowering, node: CoatLayer, layer: Mutable<Layer>): void {
  const said = sayAll(low, node, node.values, []);
  const read = said.values[0];
  const argument = read?.argument;
  if (argument?.kind !== 'amount') return;
  const isFilm = argument.amount.dimension.length === 1 && argument.amount.dimension.mass === 0;
  const amount = known(amountOf(low, read, isFilm ? 'length' : 'areal weight'));
  if (amount === undefined) return;
  if (isFilm && amount.basis !== 'wet' && amount.basis !== 'dry') {
    const end = low.spanFor(read?.node)?.end;
    low.problem(
      'unit/wet-or-dry',
      read?.node,
      text('a film of {film} says when it is measured: wet or dry', { film: amount }),
      end === undefined
        ? []
        : ['wet', 'dry'].map((word) => ({
            title: text('Write {what}', { what: word }),
            edits: [{ offset: end, end, text: ` ${word}` }],
          })),
    );
  }
  layer.film = { amount, ...(isFilm ? { wet: amount.basis !== 'dry' } : {}) };
}

function readCore(low: Lowering, node: CoreLayer, layer: Mutable<Layer>): void {
  if (node.thickness === undefined) {
    if (node.material !== undefined)
      low.problem(
        'line/not-understood',
        node,
        text('how thick is {name}? {example}', { name: layer.name, example: example[layer.kind] }),
      );
    return;
  }
  const argument = lowerArgument(low, node.thickness);
  const thickness = argument === undefined ? undefined : amountOf(low, { argument, node: node.thickness }, 'length');
  if (thickness !== undefined && thickness !== UNKNOWN && thickness.si <= 0) {
    low.problem(
      'unit/suspicious',
      node.thickness,
      text('{found} cannot be: a core has a thickness above zero', { found: thickness }),
    );
  } else if (thickness !== undefined) layer.thickness = thickness;
  low.place(`${layer.path}.thickness`, node.thickness);
}

/** `repeat 3, stagger 60 mm, turn 90 deg { ... }` */
function lowerRepeat(low: Lowering, node: RepeatNode, path: string, overrides: Overrides): Repeat {
  low.placeHead(path, node);
  const argument = node.times === undefined ? undefined : lowerArgument(low, node.times);
  const times =
    argument === undefined || node.times === undefined ? undefined : countOf(low, { argument, node: node.times });
  if (node.times === undefined) low.problem('line/not-understood', low.places.get(path), 'how many times? repeat 3 {');
  else if (times === 0)
    low.problem('unit/suspicious', node.times, 'a group that is repeated is laid once or more: repeat 3 {');
  const repeat: Mutable<Repeat> = {
    kind: 'repeat',
    path,
    items: lowerLines(low, node.layers, path, overrides),
    ...(times === undefined ? {} : { times }),
    ...lowerRemarks(
      low,
      path,
      node.clauses,
      node.layers.filter((line) => line.$type === 'Note'),
      true,
    ),
  };
  for (const clause of node.clauses) {
    if (clause.$type !== 'Phrase') continue;
    const said = lowerSaid(low, clause);
    if (clause.word === 'stagger') assign(repeat, 'stagger', known(firstAmount(low, said.values, 'length')));
    else if (clause.word === 'turn') assign(repeat, 'turn', known(firstAmount(low, said.values, 'angle')));
    else if (clause.word === 'drop') {
      const by = known(firstAmount(low, said.values, 'length'));
      const end = endAt(low, said);
      if (by !== undefined) repeat.drop = { by, ...(end === undefined ? {} : { end }) };
    } else
      low.problem(
        'line/not-understood',
        clause,
        text('`{word}` is no clause of repeat: stagger, turn or drop', { word: clause.word }),
      );
  }
  return repeat;
}

function assign(repeat: Mutable<Repeat>, field: 'stagger' | 'turn', value: Amount | undefined): void {
  if (value !== undefined) repeat[field] = value;
}

function lowerMirror(low: Lowering, node: MirrorNode, path: string): Mirror {
  low.place(path, node);
  const about = node.about?.$refText;
  if (about !== undefined) low.place(`${path}.about`, propertySpan(node, 'about'));
  return { kind: 'mirror', path, ...(about === undefined ? {} : { about }), ...lowerRemarks(low, path, node.clauses) };
}
