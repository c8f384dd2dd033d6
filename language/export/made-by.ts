/**
 * Files that we write say so, with a checksum of their other bytes: what nobody has changed since may be written over, and
 * nothing else. The mark is plain ASCII in every format.
 */

const words = 'made by laybook ';
const blank = '0'.repeat(14);

/** What the writers put into a file; `sealed` fills the checksum in. */
export const mark = `${words}${blank}`;

/** The mark of a file that was sealed, as the bytes of ASCII. */
const pattern = new RegExp(`${words}([0-9a-f]{${blank.length}})`);

/** The file with the checksum in its mark. Throws where a writer has left the mark out. */
export function sealed(content: string | Uint8Array): Uint8Array {
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content.slice();
  const at = markIn(bytes);
  if (at === undefined || at.checksum !== blank) throw new Error('a file without its mark');
  put(bytes, at.start, checksumOf(bytes));
  return bytes;
}

/** The same for a file of text. */
export const sealedText = (content: string): string => new TextDecoder().decode(sealed(content));

/** Whether a file was made by us and has not been changed since. */
export function madeByLaybook(bytes: Uint8Array): boolean {
  const at = markIn(bytes);
  if (at === undefined) return false;
  const before = bytes.slice();
  put(before, at.start, blank);
  return checksumOf(before) === at.checksum;
}

function markIn(bytes: Uint8Array): { readonly start: number; readonly checksum: string } | undefined {
  const found = pattern.exec(new TextDecoder('latin1').decode(bytes));
  return found === null ? undefined : { start: found.index + words.length, checksum: found[1] ?? '' };
}

function put(bytes: Uint8Array, start: number, text: string): void {
  for (let i = 0; i < text.length; i++) bytes[start + i] = text.charCodeAt(i);
}

/** A 53 bit checksum: two multiplicative hashes of 32 bits (Knuth, The Art of Computer Programming 3, 6.4), mixed. It tells a slip, not an intruder. */
export function checksumOf(bytes: Uint8Array): string {
  let [a, b] = [0xdeadbeef, 0x41c6ce57];
  for (const byte of bytes) {
    a = Math.imul(a ^ byte, 2654435761);
    b = Math.imul(b ^ byte, 1597334677);
  }
  a = Math.imul(a ^ (a >>> 16), 2246822507) ^ Math.imul(b ^ (b >>> 13), 3266489909);
  b = Math.imul(b ^ (b >>> 16), 2246822507) ^ Math.imul(a ^ (a >>> 13), 3266489909);
  return (4294967296 * (0x1fffff & b) + (a >>> 0)).toString(16).padStart(blank.length, '0');
}
