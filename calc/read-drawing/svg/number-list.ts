import { numberPattern } from '../number-pattern.ts';

const one = new RegExp(`[\\s,]*(${numberPattern})(?:deg|px)?`, 'y');

/**
 * The numbers of a list: parted by spaces or commas, or by nothing where the next one begins with its sign or its point
 * (`10-5.5.5`, SVG 1.1, sections 7.6 and 9.7.1); undefined where something else stands among them.
 */
export function numberList(typed: string): readonly number[] | undefined {
  const numbers: number[] = [];
  let at = 0;
  for (;;) {
    one.lastIndex = at;
    const found = one.exec(typed);
    if (found === null) return /^[\s,]*$/.test(typed.slice(at)) ? numbers : undefined;
    at = one.lastIndex;
    const number = Number(found[1]);
    if (!Number.isFinite(number)) return undefined;
    numbers.push(number);
  }
}
