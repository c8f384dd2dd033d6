import { safe } from '../view/text.ts';
import { ascii } from './ascii.ts';

/** Names that Windows keeps for devices, whatever ending they have. */
const reserved = /^(con|prn|aux|nul|com\d|lpt\d|conin\$|conout\$|clock\$)(\.|$)/i;

const longest = 80;

/**
 * A name of others as the beginning of a file's name: letters, digits, `_`, `.` and `-` of ASCII, on any disk, and never a way
 * into another folder.
 */
export function fileName(words: string): string {
  const plain = ascii(safe(words), () => '-')
    .replace(/\//g, ' of ')
    .replace(/[^A-Za-z0-9_.-]+/g, '-')
    .replace(/\.{2,}/g, '.')
    .replace(/-{2,}/g, '-')
    .slice(0, longest)
    .replace(/^[-.]+|[-.]+$/g, '');
  const named = plain === '' ? 'unnamed' : plain;
  return reserved.test(named) ? `_${named}` : named;
}

/** The names with a number behind those that a disk takes for one before, whatever their capitals. */
export function apart(names: readonly string[]): readonly string[] {
  const taken = new Set<string>();
  return names.map((name) => {
    let free = name;
    for (let count = 2; taken.has(free.toLowerCase()); count++) free = `${name}-${count}`;
    taken.add(free.toLowerCase());
    return free;
  });
}
