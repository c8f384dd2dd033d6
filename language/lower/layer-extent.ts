import { type Extent, type LayerKind, UNKNOWN } from '../../calc/model/index.ts';
import type { Clause } from '../grammar/generated/ast.ts';
import { checked } from './amounts.ts';
import { firstAmount, known, lowerSaid, partOf, type Said } from './arguments.ts';
import { needs } from './layer-clauses.ts';
import { evaluate } from './lets.ts';
import type { Lowering } from './lowering.ts';
import { pointIn } from './part.ts';
import { nodeSpan, propertySpan } from './places.ts';
import { lowerShape } from './shapes.ts';

/** How far the piece goes; `net` where nothing is said. */
export function lowerExtent(low: Lowering, kind: LayerKind, clauses: readonly Clause[], path: string): Extent {
  for (const clause of clauses) {
    if (clause.$type === 'WrapClause') {
      const landing = evaluate(low, clause.landing);
      const length =
        landing === undefined || landing === UNKNOWN
          ? landing
          : checked(low, landing, 'length', nodeSpan(clause.landing));
      if (clause.target === undefined) needs(low, clause, 'wrap onto body by 25 mm');
      else low.place(`${path}.wrap.target`, propertySpan(clause, 'target'));
      if (clause.landing !== undefined) low.place(`${path}.wrap.landing`, clause.landing);
      return {
        kind: 'wrap',
        way: clause.way ?? 'onto',
        ...(clause.target === undefined ? {} : { target: clause.target.$refText }),
        ...(length === undefined ? {} : { landing: length }),
      };
    }
    if (clause.$type === 'OverClause') {
      if (clause.zone === undefined) needs(low, clause, 'over mount');
      else return { kind: 'zone', zone: clause.zone.$refText };
    }
    if (clause.$type === 'ShapeClause') {
      const shape = lowerShape(low, clause.shape);
      const centre = centredIn(low, clauses);
      return { kind: 'shape', ...(shape === undefined ? {} : { shape }), ...(centre === undefined ? {} : { centre }) };
    }
    if (clause.$type === 'Phrase' && clause.word === 'net') return { kind: 'net', typed: true };
    if (clause.$type === 'PartClause' && clause.parts[0]?.prep === 'to' && namesTrim(clause.parts[0].values))
      return { kind: 'to trim' };
    if (clause.$type === 'AmountClause' && kind === 'strip') return stripExtent(low, lowerSaid(low, clause), clauses);
  }
  if (kind === 'strip') return { kind: 'strip' };
  return { kind: 'net', typed: false };
}

const namesTrim = (values: readonly { $type: string }[]): boolean =>
  values.some(
    (value) => value.$type === 'WordArg' && (value as { word?: { $refText: string } }).word?.$refText === 'trim',
  );

/** `60 mm by 620 mm`: width, then length along the strip */
function stripExtent(low: Lowering, said: Said, clauses: readonly Clause[]): Extent {
  const width = known(firstAmount(low, said.values, 'length'));
  const length = known(firstAmount(low, partOf(said, 'by')?.values ?? [], 'length'));
  const centre = centredIn(low, clauses);
  return {
    kind: 'strip',
    ...(width === undefined ? {} : { width }),
    ...(length === undefined ? {} : { length }),
    ...(centre === undefined ? {} : { centre }),
  };
}

function centredIn(low: Lowering, clauses: readonly Clause[]) {
  const clause = clauses.find((c) => c.$type === 'Phrase' && c.word === 'centred');
  return clause?.$type === 'Phrase' ? pointIn(low, lowerSaid(low, clause), clause) : undefined;
}
