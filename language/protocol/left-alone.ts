/** Initialization option `leftAlone`: keys of texts that have twice brought the server down. It does not read them again and says so. */
export interface LeftAloneOption {
  readonly leftAlone?: readonly string[];
}

/** The same for the same text on both sides: its length and its sum (Fowler, Noll and Vo, FNV-1a, 32 bits, over UTF-16 units). */
export function keyOfText(text: string): string {
  let sum = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) sum = Math.imul(sum ^ text.charCodeAt(i), 0x01000193);
  return `${text.length}:${(sum >>> 0).toString(16)}`;
}
