/** Translations of the texts of the server, by their English templates. */
export type Translation = Readonly<Record<string, string>>;

let current: ReadonlyMap<string, string> = new Map();
let numbers: string | undefined;

/**
 * The language of the reader, for all that this process shows: a server has one editor, a terminal one reader. Output for machines
 * stays English, so whoever writes it sets no translation. `locale` (BCP 47) writes the numbers where a view does not say it.
 */
export function useTranslation(translation: Translation | undefined, locale?: string): void {
  numbers = locale;
  current = new Map(Object.entries(translation ?? {}).filter(([, words]) => words !== ''));
}

/** How numbers are written, where that was said; none: as the notation is typed. */
export const usedLocale = (): string | undefined => numbers;

/** A template in the language of the reader; the English one where it has no translation. */
export const translated = (english: string): string => current.get(english) ?? english;

/** What an editor or a file handed over as a translation: templates by their English ones; anything else in it is left out. */
export function readTranslation(given: unknown): Translation | undefined {
  if (typeof given !== 'object' || given === null) return undefined;
  return Object.fromEntries(
    Object.entries(given).filter((entry): entry is [string, string] => typeof entry[1] === 'string'),
  );
}
