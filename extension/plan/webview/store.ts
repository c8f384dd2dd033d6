import type { Picture, PictureGroup, PictureShape } from '../../../language/protocol/drawing.ts';

/** A group with its shapes. */
export interface WholeGroup extends PictureGroup {
  readonly shapes: readonly PictureShape[];
}

export interface WholePicture extends Picture {
  readonly groups: readonly WholeGroup[];
}

/** A picture with the shapes that came before; undefined where one of them is lacking. */
export function completed(next: Picture, before: WholePicture | undefined): WholePicture | undefined {
  const had = new Map(before?.groups.map((group) => [group.key, group]));
  const groups: WholeGroup[] = [];
  for (const group of next.groups) {
    const known = had.get(group.key);
    const shapes = group.shapes ?? (known?.mark === group.mark ? known.shapes : undefined);
    if (shapes === undefined) return undefined;
    groups.push({ ...group, shapes });
  }
  return { ...next, groups };
}
