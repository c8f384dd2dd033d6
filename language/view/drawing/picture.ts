import { boundsOf } from '../../../calc/drawing/bounds.ts';
import { drawingLayers } from '../../../calc/drawing/layers.ts';
import type { DrawnThings, Thing } from '../../../calc/drawing/plan/thing.ts';
import type { Recipe } from '../../../calc/model/index.ts';
import { checksumOf } from '../../export/made-by.ts';
import type { DrawingView, Picture, PictureGroup } from '../../protocol/drawing.ts';
import type { WirePlace } from '../../protocol/place.ts';
import type { Style } from '../text.ts';
import { say, show } from '../text.ts';
import { layerNames } from './layer-names.ts';
import { hatchDegrees, shapesOf } from './shapes.ts';

/** The lines of the text that a thing is drawn from. */
export interface Lines {
  readonly place: WirePlace;
  readonly last: number;
}

export interface PictureOf {
  readonly uri: string;
  readonly view: DrawingView;
  readonly recipe: Recipe;
  readonly style: Style;
  linesOf(path: string): Lines | undefined;
}

const letters = new TextEncoder();

/** Round a drawing, a share of its larger side. */
const room = 0.03;
/** Between strokes of a hatch, a share of the larger side. */
const pitch = 1 / 100;

/** A drawing as plain data, a group for each of its things. Shapes of a drawing are worked out once. */
export function pictureOf(drawing: DrawnThings, { uri, view, recipe, style, linesOf }: PictureOf): Picture {
  const { low, high, things, title } = drawing;
  const [width, height] = [(high.x - low.x) * 1000, (high.y - low.y) * 1000];
  const around = Math.max(width, height) * room;
  const layers = drawingLayers.filter((layer) => things.some((thing) => thing.layer === layer));
  const order = new Map(layers.map((layer, i) => [layer, i]));
  const seen = new Map<string, number>();
  const groups = things.map((thing, i) => ({
    back: order.get(thing.layer) ?? 0,
    room: roomOf(thing),
    group: groupOf(thing, { key: keyOf(thing, seen), order: i }, linesOf(thing.source.path), style),
  }));
  groups.sort((a, b) => a.back - b.back || b.room - a.room);
  return {
    uri,
    view,
    recipe: { recipe: recipe.name, ...(recipe.size === undefined ? {} : { size: recipe.size }) },
    sizes: recipe.sizes,
    title,
    box: [low.x * 1000 - around, -high.y * 1000 - around, width + 2 * around, height + 2 * around],
    pitch: Math.max(width, height) * pitch,
    layers: layers.map((layer) => ({ layer, label: say(layerNames[layer]) })),
    groups: groups.map(({ group }) => group),
  };
}

/** Copies of a line have names of their own; what has not is counted. */
function keyOf({ layer, source: { path, name = '' } }: Thing, seen: Map<string, number>): string {
  const key = `${layer} ${path} ${name}`;
  const before = seen.get(key) ?? 0;
  seen.set(key, before + 1);
  return before === 0 ? key : `${key} ${before + 1}`;
}

/** m2 of the box round its closed lines, by which small things lie above large ones. */
function roomOf({ items }: Thing): number {
  const { low, high } = boundsOf(items.filter((item) => item.kind === 'line' && item.closed));
  return (high.x - low.x) * (high.y - low.y);
}

function groupOf(
  thing: Thing,
  named: Pick<PictureGroup, 'key' | 'order'>,
  lines: Lines | undefined,
  style: Style,
): PictureGroup {
  const { layer, source, hatch, items } = thing;
  const shapes = shapesOf(items);
  const body = {
    what: show(thing.what, style),
    where: show(thing.where, style),
    size: show(thing.size, style),
    ...(hatch === undefined ? {} : { hatch: hatchDegrees(hatch) }),
    shapes,
  };
  return {
    ...named,
    layer,
    path: source.path,
    mark: checksumOf(letters.encode(JSON.stringify(body))),
    ...body,
    ...(lines === undefined ? {} : { place: lines.place, lastLine: lines.last }),
  };
}

/** Without the shapes that the asker has. */
export function lessKnown(picture: Picture, known: Readonly<Record<string, string>> | undefined): Picture {
  if (known === undefined) return picture;
  return {
    ...picture,
    groups: picture.groups.map((group) => {
      if (!Object.hasOwn(known, group.key) || known[group.key] !== group.mark) return group;
      const { shapes: _, ...rest } = group;
      return rest;
    }),
  };
}
