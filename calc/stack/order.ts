import type { LaidLayer } from './laid.ts';

/** Cloth: what has fibres. */
export const isCloth = ({ layer }: LaidLayer): boolean => layer.kind === 'ply' || layer.kind === 'strip' || layer.kind === 'patch';

/** Whether a layer runs to the edge of the part all round, so that it adds to the height of the edge. */
export function reachesEdge({ layer }: LaidLayer): boolean {
  if (layer.kind === 'coat') return true;
  if (layer.kind === 'core') return layer.inset === undefined;
  return layer.extent.kind === 'net' || layer.extent.kind === 'to trim' || layer.extent.kind === 'wrap';
}

/** A layer by the name in the text: the exact name, else the copies of the line that has it. */
export function namedLayers(layers: readonly LaidLayer[], name: string): readonly LaidLayer[] {
  const exact = layers.filter((laid) => laid.name === name);
  return exact.length > 0 ? exact : layers.filter((laid) => laid.layer.name === name);
}

/** What lies between a wrapped ply and the face that it lands on, from the tool face; the target with it. */
export function layersBetween(layers: readonly LaidLayer[], ply: LaidLayer, target: LaidLayer): readonly LaidLayer[] {
  return target.index > ply.index ? layers.slice(ply.index + 1, target.index + 1) : layers.slice(target.index, ply.index);
}

/** The layer that a wrapped ply lands on; the last of its copies. */
export function wrapTarget(layers: readonly LaidLayer[], ply: LaidLayer): LaidLayer | undefined {
  const { extent } = ply.layer;
  return extent.kind === 'wrap' && extent.target !== undefined ? namedLayers(layers, extent.target).at(-1) : undefined;
}

/** The wrapped plies that run round the edge of a layer, and so lie outside it. */
export function wrapsRound(layers: readonly LaidLayer[], inner: LaidLayer): readonly LaidLayer[] {
  return layers.filter((ply) => {
    if (ply === inner) return false;
    const target = wrapTarget(layers, ply);
    return target !== undefined && target !== ply && layersBetween(layers, ply, target).includes(inner);
  });
}

/** Inserts and core lie side by side: an insert belongs to the core laid last before it, else to the next one. */
export function coreOf(layers: readonly LaidLayer[], insert: LaidLayer): LaidLayer | undefined {
  const isCore = (laid: LaidLayer) => laid.layer.kind === 'core';
  return layers.slice(0, insert.index).findLast(isCore) ?? layers.slice(insert.index).find(isCore);
}

export function insertsOf(layers: readonly LaidLayer[], core: LaidLayer): readonly LaidLayer[] {
  return layers.filter((laid) => laid.layer.kind === 'insert' && coreOf(layers, laid) === core);
}

/** The core in whose groove a strip lies. */
export function grooveOf(layers: readonly LaidLayer[], strip: LaidLayer): LaidLayer | undefined {
  return layers.find(
    ({ layer }) => layer.kind === 'core' && layer.grooves?.some((g) => g.strip === strip.name || g.strip === strip.layer.name) === true,
  );
}

/** The layers on the two faces of a core. An insert lies beside it and a strip in its groove is part of it. */
export function coreFaces(
  layers: readonly LaidLayer[],
  core: LaidLayer,
): { readonly toolSide?: LaidLayer; readonly bagSide?: LaidLayer } {
  const onFace = (laid: LaidLayer) => laid.layer.kind !== 'insert' && grooveOf(layers, laid) === undefined;
  return {
    toolSide: layers.slice(0, core.index).findLast(onFace),
    bagSide: layers.slice(core.index + 1).find(onFace),
  };
}

/** The first later layer that lies over the whole of this one: all over the part, or over the same zone. */
export function coveredBy(layers: readonly LaidLayer[], inner: LaidLayer): LaidLayer | undefined {
  return layers.slice(inner.index + 1).find((outer) => {
    if (reachesEdge(outer)) return true;
    const [a, b] = [inner.layer.extent, outer.layer.extent];
    return a.kind === 'zone' && b.kind === 'zone' && a.zone === b.zone;
  });
}
