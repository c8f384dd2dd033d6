import type { Picture, PictureGroup } from '../../language/protocol/drawing.ts';

/** The groups that are drawn from a line of a file (from zero). */
export function groupsOnLine({ groups }: Picture, uri: string, line: number): readonly PictureGroup[] {
  return groups.filter(
    ({ place, lastLine = -1 }) => place !== undefined && place.uri === uri && place.line <= line && line <= lastLine,
  );
}
