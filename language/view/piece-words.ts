import { say } from './text.ts';

/** `1.2 m by 400 mm in 2 lanes` */
export const pieceWords = (length: string, width: string, lanes: number): string =>
  lanes < 2
    ? say('{length} by {width}', { length, width })
    : say('{length} by {width} in {lanes} lanes', { length, width, lanes });
