/** Bytes in messages that hold texts alone. */

/** At a time, so that no call has too many arguments. */
const slice = 0x8000;

export function toBase64(bytes: Uint8Array): string {
  let letters = '';
  for (let at = 0; at < bytes.length; at += slice) letters += String.fromCharCode(...bytes.subarray(at, at + slice));
  return btoa(letters);
}

export const fromBase64 = (base64: string): Uint8Array =>
  Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
