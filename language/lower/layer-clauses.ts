import { text } from '../../calc/figure/figure.ts';
import { either } from '../../calc/figure/listed.ts';
import type { Amount, Layer, LayerKind } from '../../calc/model/index.ts';
import type { DimensionName } from '../../calc/quantity/index.ts';
import type { Clause } from '../grammar/generated/ast.ts';
import { nearestWords } from '../words/nearest.ts';
import {
  amountOf,
  countOf,
  firstAmount,
  known,
  lowerSaid,
  partOf,
  type Read,
  type Said,
  sayAll,
  wordAt,
  wordsOf,
} from './arguments.ts';
import { clauseWord } from './clauses.ts';
import { firstRead, type Mutable, needBasis } from './facts.ts';
import type { Lowering } from './lowering.ts';
import { pointIn } from './part.ts';
import { nodeSpan, propertySpan } from './places.ts';
import { slopeOf } from './slope.ts';

type Into = Mutable<Layer>;
type ClauseReader = (low: Lowering, clause: Clause, said: Said, into: Into, path: string) => void;

/** What a clause that can be `Phrase`, `AmountClause` or `PartClause` says. */
function saidOf(low: Lowering, clause: Clause): Said {
  if (clause.$type === 'Phrase' || clause.$type === 'AmountClause') return lowerSaid(low, clause);
  if (clause.$type === 'PartClause') return sayAll(low, clause, [], clause.parts);
  return { values: [], parts: [], node: clause };
}

export function needs(low: Lowering, clause: Clause, example: string): void {
  low.problem(
    'line/not-understood',
    clause,
    text('`{word}` is not finished: {example}', { word: clauseWord(clause), example }),
  );
}

function one(field: keyof Layer, dimension: DimensionName, example: string): ClauseReader {
  return (low, clause, said, into) => {
    const amount = amountOf(low, firstRead(said), dimension);
    if (firstRead(said) === undefined) needs(low, clause, example);
    else if (amount !== undefined) (into as Record<string, unknown>)[field] = amount;
  };
}

const flag =
  (field: keyof Layer): ClauseReader =>
  (_low, _clause, _said, into) => {
    (into as Record<string, unknown>)[field] = true;
  };

/** `at heel` */
export function endAt(low: Lowering, said: Said): string | undefined {
  const values = partOf(said, 'at')?.values ?? [];
  const end = wordAt(values);
  low.endUsed(end, values[0]?.node);
  return end;
}

const tab: ClauseReader = (low, clause, said, into) => {
  const length = known(firstAmount(low, said.values, 'length'));
  const end = endAt(low, said);
  if (length === undefined) needs(low, clause, 'tab 60 mm at heel');
  else into.tabs = [...(into.tabs ?? []), { length, ...(end === undefined ? {} : { end }) }];
};

/** `darts auto`, `darts 16` */
const darts: ClauseReader = (low, clause, said, into) => {
  const count = said.values[0]?.argument.kind === 'amount' ? countOf(low, said.values[0]) : undefined;
  if (wordAt(said.values) === 'auto') into.darts = 'auto';
  else if (count !== undefined) into.darts = count;
  else needs(low, clause, 'darts auto, or darts 16');
};

/** `turned over`, `turned 90 deg` */
const turned: ClauseReader = (low, clause, said, into) => {
  if (partOf(said, 'over') !== undefined) into.turnedOver = true;
  else {
    const angle = known(firstAmount(low, said.values, 'angle'));
    if (angle === undefined) needs(low, clause, 'turned over, or turned 90 deg');
    else into.turned = angle;
  }
};

/** `join lap 50 mm at (..)`, `join butt` */
const join: ClauseReader = (low, clause, said, into, path) => {
  const kind = wordAt(said.values);
  if (kind !== 'lap' && kind !== 'butt') return needs(low, clause, 'join lap 50 mm, or join butt');
  const lap = known(firstAmount(low, said.values, 'length'));
  const at = partOf(said, 'at') === undefined ? undefined : pointIn(low, said, clause);
  low.place(`${path}.join`, clause);
  into.joins = [
    ...(into.joins ?? []),
    { kind, ...(lap === undefined ? {} : { lap }), ...(at === undefined ? {} : { at }) },
  ];
};

const fraction =
  (of: 'fibre' | 'resin'): ClauseReader =>
  (low, clause, said, into) => {
    const read = firstRead(said);
    const amount = known(amountOf(low, read, 'ratio'));
    if (read === undefined) needs(low, clause, of === 'fibre' ? 'fibre 36 % by weight' : 'resin 42 % by weight');
    if (amount === undefined) return;
    needBasis(low, amount, 'mixture', read);
    into.fraction = { of, amount };
  };

/** `perforate 2 mm every 50 mm` */
const perforate: ClauseReader = (low, clause, said, into) => {
  const lengths = said.values.filter(({ argument }) => argument.kind === 'amount');
  const every = wordsOf(said.values).includes('every');
  const diameter = known(amountOf(low, lengths[0], 'length'));
  const pitch = known(amountOf(low, lengths[1], 'length'));
  if (lengths.length < 2 || !every) needs(low, clause, 'perforate 2 mm every 50 mm');
  if (pitch !== undefined && pitch.si < 1e-3) {
    low.problem(
      'unit/suspicious',
      lengths[1]?.node,
      text('holes every {pitch} leave no core: is the unit right?', { pitch }),
    );
    return;
  }
  into.perforation = { ...(diameter === undefined ? {} : { diameter }), ...(pitch === undefined ? {} : { pitch }) };
};

const drop: ClauseReader = (low, clause, said, into) => {
  const by = known(firstAmount(low, said.values, 'length'));
  const end = endAt(low, said);
  if (by === undefined) needs(low, clause, 'drop 20 mm, or drop 120 mm at tip');
  else into.drop = { by, ...(end === undefined ? {} : { end }) };
};

/** `score 1 mm every 30 mm from bag face` */
const score: ClauseReader = (low, _clause, said, into) => {
  const lengths = [...said.values, ...said.parts.flatMap((p) => p.values)].filter(
    ({ argument }) => argument.kind === 'amount',
  );
  const [width, pitch, depth] = lengths.map((read: Read) => known(amountOf(low, read, 'length')));
  const from = wordAt(partOf(said, 'from')?.values ?? []);
  into.score = {
    ...(from === 'tool' || from === 'bag' ? { from } : {}),
    ...(width === undefined ? {} : { width }),
    ...(pitch === undefined ? {} : { pitch }),
    ...(depth === undefined ? {} : { depth }),
  };
};

const pieces: ClauseReader = (low, clause, said, into) => {
  const count = countOf(low, said.values[0]);
  if (count === undefined || count === 0) needs(low, clause, 'pieces 3');
  else into.pieces = count;
};

/** `bedded bond_paste 400 g/m2` */
const bedded: ClauseReader = (low, clause, said, into, path) => {
  const material = wordAt(said.values);
  if (material === undefined) return needs(low, clause, 'bedded bond_paste');
  low.place(`${path}.bedded`, clause);
  const amount = known(firstAmount(low, said.values, 'areal weight'));
  into.bedded = { material, ...(amount === undefined ? {} : { amount }) };
};

const warp: ClauseReader = (low, clause, said, into) => {
  const axis = wordsOf(said.values).find((word) => word === 'x' || word === 'y');
  if (axis === 'x' || axis === 'y') into.warpAlong = axis;
  else needs(low, clause, 'warp along x');
};

/** `chamfer 20 deg`, `chamfer 3:1` */
const chamfer: ClauseReader = (low, clause, said, into, path) => {
  const angle = slopeOf(said.values);
  if (angle === undefined) one('chamfer', 'angle', 'chamfer 20 deg')(low, clause, said, into, path);
  else into.chamfer = angle;
};

const size: ClauseReader = () => undefined;

const cloth: Readonly<Record<string, ClauseReader>> = {
  tab,
  darts,
  turned,
  join,
  drop,
  warp,
  oversize: one('oversize', 'length', 'oversize 35 mm'),
  lap: one('lap', 'length', 'lap 50 mm'),
  face: flag('faceDown'),
  fibre: fraction('fibre'),
  resin: fraction('resin'),
  net: size,
  to: size,
  centred: size,
  amount: size,
};
const solid: Readonly<Record<string, ClauseReader>> = {
  bedded,
  inset: one('inset', 'length', 'inset 40 mm'),
  chamfer,
  sealed: flag('sealed'),
  seal: flag('sealed'),
  centred: size,
  moisture: one('moisture', 'ratio', 'moisture 14 % by weight'),
  net: size,
};
const core: Readonly<Record<string, ClauseReader>> = {
  ...solid,
  perforate,
  score,
  pieces,
  clearance: size,
  depth: size,
};
const insert: Readonly<Record<string, ClauseReader>> = {
  ...solid,
  clearance: one('clearance', 'length', 'clearance 1 mm'),
};
const coat: Readonly<Record<string, ClauseReader>> = {
  brush: (_l, _c, _s, into) => {
    into.applied = 'brush';
  },
  roller: (_l, _c, _s, into) => {
    into.applied = 'roller';
  },
  spray: (_l, _c, _s, into) => {
    into.applied = 'spray';
  },
  waxed: flag('waxed'),
  dark: flag('dark'),
  // `2 coats`
  amount: (low, _clause, said, into) => {
    const count = countOf(low, said.values[0]);
    if (count !== undefined && count > 0) into.coats = count;
  },
};
export const clauseWords: Readonly<Record<LayerKind, Readonly<Record<string, ClauseReader>>>> = {
  ply: cloth,
  strip: cloth,
  patch: cloth,
  core,
  insert,
  coat,
};

const typedElsewhere: ReadonlySet<string> = new Set(['note', 'accept', 'source', 'wrap', 'groove', 'over', 'shape']);

/** Reads the clauses of a layer line into it. A word that may not stand there is reported with the nearest ones. */
export function lowerClauses(
  low: Lowering,
  kind: LayerKind,
  clauses: readonly Clause[],
  into: Into,
  path: string,
): void {
  const readers = clauseWords[kind];
  const listed: { word: string; path: string }[] = [];
  for (const clause of clauses) {
    const word = clauseWord(clause);
    const at = low.placeClause(`${path}.${word}`, clause);
    listed.push({ word, path: at });
    if (typedElsewhere.has(word)) continue;
    const reader = Object.hasOwn(readers, word) ? readers[word] : undefined;
    if (reader !== undefined) reader(low, clause, saidOf(low, clause), into, path);
    else reportClause(low, kind, clause, word);
  }
  into.clauses = listed;
  const grooves = clauses.filter((c) => c.$type === 'GrooveClause');
  if (kind === 'core' && grooves.length === 0) for (const clause of clauses) reportWithoutGroove(low, clause);
  if (grooves.length > 0) {
    const clearance = ofAllGrooves(low, clauses, 'clearance');
    const depth = ofAllGrooves(low, clauses, 'depth');
    into.grooves = grooves.map((groove, i) => {
      const at = low.place(i === 0 ? `${path}.groove` : `${path}.groove.${i}`, groove);
      const sizes = sayAll(low, groove, groove.values, groove.parts);
      const lengths = [...sizes.values, ...(partOf(sizes, 'by')?.values ?? [])].map((read) =>
        known(amountOf(low, read, 'length')),
      );
      const strip = groove.strip?.$refText;
      if (strip === undefined && lengths.length === 0) needs(low, groove, 'groove for keel');
      return {
        path: at,
        ...(strip === undefined ? {} : { strip }),
        ...(lengths[0] === undefined ? {} : { width: lengths[0] }),
        ...(lengths[1] === undefined ? (depth === undefined ? {} : { depth }) : { depth: lengths[1] }),
        ...(clearance === undefined ? {} : { clearance }),
      };
    });
  }
}

/** The room beside a strip, where the core has no groove for one. */
function reportWithoutGroove(low: Lowering, clause: Clause): void {
  const word = clauseWord(clause);
  if (word !== 'clearance' && word !== 'depth') return;
  low.problem(
    'line/not-understood',
    clause,
    text('`{word}` is of a groove, and this core has none: groove for keel, {word} 1 mm', { word }),
  );
}

/** `clearance 1 mm`, `depth 2 mm`: the room beside a strip and the depth, in all grooves of the core. */
function ofAllGrooves(low: Lowering, clauses: readonly Clause[], word: 'clearance' | 'depth'): Amount | undefined {
  const clause = clauses.find((c) => c.$type === 'Phrase' && c.word === word);
  return clause === undefined ? undefined : known(firstAmount(low, saidOf(low, clause).values, 'length'));
}

function reportClause(low: Lowering, kind: LayerKind, clause: Clause, word: string): void {
  if (word === '') return;
  const near = nearestWords(
    word,
    [...Object.keys(clauseWords[kind]), 'wrap', 'groove', 'over', 'note', 'accept'].filter(
      (w) => /^[a-z]/.test(w) && w !== 'amount',
    ),
  );
  const span = clause.$type === 'Phrase' ? propertySpan(clause, 'word') : nodeSpan(clause);
  low.problem(
    'line/not-understood',
    span,
    near.length === 0
      ? text('`{word}` is no clause of {kind}', { word, kind })
      : text('`{word}` is no clause of {kind}: is {near} meant?', { word, kind, near: either(near) }),
    span === undefined || clause.$type !== 'Phrase'
      ? []
      : near.map((w) => ({
          title: text('Write {what}', { what: w }),
          edits: [{ offset: span.offset, end: span.end, text: w }],
        })),
  );
}
