import { limits } from './limits.ts';

export const isDxf = (file: string): boolean => /\.dxf$/i.test(file);

/** The largest file that is read, bytes. */
export const mostBytesOf = (file: string): number => (isDxf(file) ? limits.dxfText : limits.svgText);
