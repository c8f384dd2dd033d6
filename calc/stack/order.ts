import { onceFor } from '../kept.ts';
import type { LaidLayer } from './laid.ts';

type Layers = readonly LaidLayer[];

/** Cloth: what has fibres. */
export const isCloth = ({ layer }: LaidLayer): boolean =>
  layer.kind === 'ply' || layer.kind === 'strip' || layer.kind === 'patch';

/** Whether a layer runs to the edge of the part all round, so that it adds to the height of the edge. */
export function reachesEdge({ layer }: LaidLayer): boolean {
  if (layer.kind === 'coat') return true;
  if (layer.kind === 'core') return layer.inset === undefined;
  return layer.extent.kind === 'net' || layer.extent.kind === 'to trim' || layer.extent.kind === 'wrap';
}

/** A layer by the name in the text: the exact name, else the copies of the line that has it. */
export function namedLayers(layers: Layers, name: string): Layers {
  const { byName, byLine } = linksOf(layers);
  return byName.get(name) ?? byLine.get(name) ?? [];
}

/** What lies between a wrapped ply and the face that it lands on, from the tool face; the target with it. */
export function layersBetween(layers: Layers, ply: LaidLayer, target: LaidLayer): Layers {
  return target.index > ply.index
    ? layers.slice(ply.index + 1, target.index + 1)
    : layers.slice(target.index, ply.index);
}

/** The layer that a wrapped ply lands on: of several copies the next one laid, else the last before it. */
export const wrapTarget = (layers: Layers, ply: LaidLayer): LaidLayer | undefined => linksOf(layers).targetOf.get(ply);

/** The wrapped plies that run round the edge of a layer, and so lie outside it. */
export function wrapsRound(layers: Layers, inner: LaidLayer): Layers {
  return linksOf(layers)
    .wraps.filter(({ ply, from, to }) => ply !== inner && from <= inner.index && inner.index <= to)
    .map(({ ply }) => ply);
}

/** Inserts and core lie side by side: an insert belongs to the core laid last before it, else to the next one. */
export const coreOf = (layers: Layers, insert: LaidLayer): LaidLayer | undefined => linksOf(layers).coreOf.get(insert);

export const insertsOf = (layers: Layers, core: LaidLayer): Layers => linksOf(layers).insertsOf.get(core) ?? [];

const BESIDE: ReadonlySet<string> = new Set(['core', 'insert', 'strip']);

/** The pieces of one core: what lies beside each other with no cloth between, as the lines stand. */
export function piecesBeside(layers: Layers, core: LaidLayer): Layers {
  let [from, to] = [core.index, core.index];
  while (BESIDE.has(layers[from - 1]?.layer.kind ?? '')) from--;
  while (BESIDE.has(layers[to + 1]?.layer.kind ?? '')) to++;
  return layers.slice(from, to + 1).filter(({ layer }) => layer.kind === 'core');
}

/** The core in whose groove a strip lies. */
export function grooveOf(layers: Layers, strip: LaidLayer): LaidLayer | undefined {
  const { grooves } = linksOf(layers);
  return grooves.get(strip.name) ?? grooves.get(strip.layer.name);
}

/** The layers on the two faces of a core. An insert lies beside it and a strip in its groove is part of it. */
export function coreFaces(
  layers: Layers,
  core: LaidLayer,
): { readonly toolSide?: LaidLayer; readonly bagSide?: LaidLayer } {
  const onFace = (laid: LaidLayer | undefined) =>
    laid === undefined || (laid.layer.kind !== 'insert' && grooveOf(layers, laid) === undefined);
  let [below, above] = [core.index - 1, core.index + 1];
  while (!onFace(layers[below])) below--;
  while (!onFace(layers[above])) above++;
  return { toolSide: layers[below], bagSide: layers[above] };
}

/** The first later layer that lies over the whole of this one: all over the part, or over the same zone. */
export function coveredBy(layers: Layers, inner: LaidLayer): LaidLayer | undefined {
  for (let i = inner.index + 1; i < layers.length; i++) {
    const outer = layers[i];
    if (outer === undefined || reachesEdge(outer)) return outer;
    const [a, b] = [inner.layer.extent, outer.layer.extent];
    if (a.kind === 'zone' && b.kind === 'zone' && a.zone === b.zone) return outer;
  }
  return undefined;
}

/** What refers to what in one stack, found once: a stack may have two thousand layers. */
interface Links {
  readonly byName: ReadonlyMap<string, Layers>;
  readonly byLine: ReadonlyMap<string, Layers>;
  readonly grooves: ReadonlyMap<string, LaidLayer>;
  readonly coreOf: ReadonlyMap<LaidLayer, LaidLayer>;
  readonly insertsOf: ReadonlyMap<LaidLayer, Layers>;
  readonly targetOf: ReadonlyMap<LaidLayer, LaidLayer>;
  /** positions that a wrap runs round, the target included */
  readonly wraps: readonly { readonly ply: LaidLayer; readonly from: number; readonly to: number }[];
}

const linksOf = onceFor((layers: Layers): Links => {
  const [byName, byLine] = [grouped(layers, (l) => l.name), grouped(layers, (l) => l.layer.name)];
  const grooves = new Map<string, LaidLayer>();
  for (const laid of layers) {
    if (laid.layer.kind !== 'core') continue;
    for (const { strip } of laid.layer.grooves ?? [])
      if (strip !== undefined && !grooves.has(strip)) grooves.set(strip, laid);
  }
  const coreOf = coresOfInserts(layers);
  const insertsOf = new Map<LaidLayer, LaidLayer[]>();
  for (const [insert, core] of coreOf) add(insertsOf, core, insert);
  const targetOf = new Map<LaidLayer, LaidLayer>();
  const wraps: Links['wraps'][number][] = [];
  for (const ply of layers) {
    const { extent } = ply.layer;
    if (extent.kind !== 'wrap' || extent.target === undefined) continue;
    const copies = byName.get(extent.target) ?? byLine.get(extent.target) ?? [];
    const target = copies.find((copy) => copy.index > ply.index) ?? copies.findLast((copy) => copy.index < ply.index);
    if (target === undefined) continue;
    targetOf.set(ply, target);
    wraps.push(
      target.index > ply.index
        ? { ply, from: ply.index + 1, to: target.index }
        : { ply, from: target.index, to: ply.index - 1 },
    );
  }
  return { byName, byLine, grooves, coreOf, insertsOf, targetOf, wraps };
});

function grouped(layers: Layers, by: (laid: LaidLayer) => string): Map<string, LaidLayer[]> {
  const groups = new Map<string, LaidLayer[]>();
  for (const laid of layers) add(groups, by(laid), laid);
  return groups;
}

function add<K>(groups: Map<K, LaidLayer[]>, key: K, laid: LaidLayer): void {
  const group = groups.get(key);
  if (group === undefined) groups.set(key, [laid]);
  else group.push(laid);
}

function coresOfInserts(layers: Layers): Map<LaidLayer, LaidLayer> {
  const found = new Map<LaidLayer, LaidLayer>();
  const waiting: LaidLayer[] = [];
  let core: LaidLayer | undefined;
  for (const laid of layers) {
    if (laid.layer.kind === 'core') {
      if (core === undefined) for (const insert of waiting) found.set(insert, laid);
      core = laid;
    } else if (laid.layer.kind === 'insert') {
      if (core === undefined) waiting.push(laid);
      else found.set(laid, core);
    }
  }
  return found;
}
