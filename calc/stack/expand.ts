import type { Layer, Mirror, Repeat, Stack, StackItem } from '../model/layer.ts';
import type { Cloth } from '../model/material.ts';
import { mirrorTurn } from './directions.ts';
import { type LaidDrop, type LaidLayer, type LaidStack, type MirrorTurn, NO_DROP, type StackProblem } from './laid.ts';

/** More laid layers than any real part has; a slip of the key must not hold up the editor. */
export const MOST_LAID_LAYERS = 2000;

/** A layer on its way: `suffix` grows from the inside of nested repeats outwards. */
interface Draft {
  readonly layer: Layer;
  readonly suffix: readonly string[];
  readonly angle: number | undefined;
  readonly turnedOver: boolean;
  readonly stagger: number;
  readonly drop: LaidDrop;
  readonly mirrored: MirrorTurn | undefined;
}

const nameOf = ({ layer, suffix }: Draft): string =>
  suffix.length === 0 ? layer.name : `${layer.name}.${suffix.join('.')}`;

/** Coats, inserts, cores, patches and wraps are laid once. */
export const isMirrored = (layer: Layer): boolean =>
  (layer.kind === 'ply' || layer.kind === 'strip') && layer.extent.kind !== 'wrap';

/**
 * The stack line by line as it is laid, from the tool face.
 * @param clothOf the cloth of a material by its name; needed for the turn of mirrored pieces only
 */
export function expandStack(stack: Stack, clothOf: (material: string) => Cloth | undefined): LaidStack {
  const count = countLayers(stack.items).all;
  if (count > MOST_LAID_LAYERS) {
    return {
      layers: [],
      problems: [{ kind: 'too-many-layers', path: stack.path, count: Math.min(count, Number.MAX_SAFE_INTEGER) }],
    };
  }
  const problems: StackProblem[] = [];
  const drafts = expandGroup(stack.items, clothOf, problems);
  const taken = new Map<string, number>();
  const layers = drafts.map((draft, index): LaidLayer => {
    const name = nameOf(draft);
    const before = taken.get(name) ?? 0;
    taken.set(name, before + 1);
    const { layer, angle, turnedOver, stagger, drop, mirrored } = draft;
    const key = before === 0 ? name : `${name} (${before + 1})`;
    // spelled out, so that all laid layers have one form in memory: every rule reads them
    return { name, key, index, layer, path: layer.path, angle, turnedOver, stagger, drop, mirrored };
  });
  return { layers, problems };
}

interface LayerCount {
  readonly all: number;
  readonly mirrored: number;
}

/** Counted before anything is laid, so that `repeat 1000000000` costs nothing, nested or not. At most twice too many for `mirror about`. */
export function countLayers(items: readonly StackItem[]): LayerCount {
  let all = 0;
  let mirrored = 0;
  for (const item of items) {
    if (item.kind === 'mirror') {
      all += mirrored;
      mirrored *= 2;
    } else if (item.kind === 'repeat') {
      const inside = countLayers(item.items);
      const times = timesOf(item);
      all += times * inside.all;
      mirrored += times * inside.mirrored;
    } else {
      all += 1;
      mirrored += isMirrored(item) ? 1 : 0;
    }
  }
  return { all, mirrored };
}

/** A repeat without a usable count lays its group once. */
function timesOf(repeat: Repeat): number {
  const times = repeat.times;
  return times !== undefined && Number.isInteger(times) && times >= 1 ? times : 1;
}

function expandGroup(
  items: readonly StackItem[],
  clothOf: (material: string) => Cloth | undefined,
  problems: StackProblem[],
): Draft[] {
  const laid: Draft[] = [];
  for (const item of items) {
    if (item.kind === 'repeat') laid.push(...repeated(item, expandGroup(item.items, clothOf, problems), problems));
    else if (item.kind === 'mirror') laid.push(...mirrored(item, laid, clothOf, problems));
    else laid.push(first(item));
  }
  return laid;
}

function first(layer: Layer): Draft {
  return {
    layer,
    suffix: [],
    angle: layer.angle === undefined ? undefined : layer.angle.si + (layer.turned?.si ?? 0),
    turnedOver: (layer.turnedOver ?? false) || (layer.faceDown ?? false),
    stagger: 0,
    drop: NO_DROP,
    mirrored: undefined,
  };
}

function repeated(repeat: Repeat, group: readonly Draft[], problems: StackProblem[]): Draft[] {
  const times = timesOf(repeat);
  if (repeat.times !== times) problems.push({ kind: 'bad-repeat', path: repeat.path, count: repeat.times });
  const copies: Draft[] = [];
  if (group.length === 0) return copies;
  for (let i = 0; i < times; i++) {
    for (const draft of group) {
      copies.push({
        ...draft,
        suffix: [String(i + 1), ...draft.suffix],
        angle: draft.angle === undefined ? undefined : draft.angle + i * (repeat.turn?.si ?? 0),
        stagger: draft.stagger + i * (repeat.stagger?.si ?? 0),
        drop: dropped(dropped(draft.drop, repeat.drop, i), draft.layer.drop, i),
        mirrored: draft.mirrored === undefined ? undefined : { ...draft.mirrored, of: withCopy(draft, i + 1) },
      });
    }
  }
  return copies;
}

/** The name of what a mirrored draft mirrors, once the group around both is repeated. */
function withCopy(draft: Draft, copy: number): string {
  const source = [String(copy), ...draft.suffix].slice(0, -1);
  return [draft.layer.name, ...source].join('.');
}

function dropped(drop: LaidDrop, by: Layer['drop'], copies: number): LaidDrop {
  if (by === undefined || copies === 0) return drop;
  const more = copies * by.by.si;
  if (by.end === undefined) return { ...drop, around: drop.around + more };
  return { ...drop, ends: { ...drop.ends, [by.end]: (drop.ends[by.end] ?? 0) + more } };
}

function mirrored(
  mirror: Mirror,
  laid: readonly Draft[],
  clothOf: (material: string) => Cloth | undefined,
  problems: StackProblem[],
): Draft[] {
  const below = belowMirror(mirror, laid, problems);
  for (const draft of below) {
    if (draft.layer.kind === 'patch') {
      problems.push({ kind: 'patch-not-mirrored', path: mirror.path, name: nameOf(draft) });
    }
  }
  const sources = below.filter((draft) => isMirrored(draft.layer)).reverse();
  if (sources.length === 0) problems.push({ kind: 'mirror-of-nothing', path: mirror.path });
  return sources.map((draft) => {
    const cloth = draft.layer.material === undefined ? undefined : clothOf(draft.layer.material);
    const turn = mirrorTurn(nameOf(draft), cloth, draft.angle ?? 0, draft.turnedOver);
    return {
      ...draft,
      suffix: [...draft.suffix, 'm'],
      angle: draft.angle === undefined ? undefined : draft.angle + turn.turn,
      turnedOver: draft.turnedOver !== turn.over,
      mirrored: turn,
    };
  });
}

/** What is mirrored: everything laid so far in the group, or what lies below the layer that is named. */
function belowMirror(mirror: Mirror, laid: readonly Draft[], problems: StackProblem[]): readonly Draft[] {
  if (mirror.about === undefined) return laid;
  const at = laid.findLastIndex((draft) => nameOf(draft) === mirror.about);
  if (at < 0) {
    problems.push({ kind: 'about-unknown', path: mirror.path, name: mirror.about });
    return laid;
  }
  for (const above of laid.slice(at + 1)) {
    problems.push({ kind: 'layers-after-about', path: mirror.path, name: nameOf(above) });
  }
  return laid.slice(0, at);
}
