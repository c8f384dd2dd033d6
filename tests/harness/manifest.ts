import { text } from './sources.ts';

/** The texts of the manifest in a language, as translators edit them. */
export function manifestTexts(locale: string): Readonly<Record<string, string>> {
  return JSON.parse(text(`extension/l10n/package.nls${locale === 'en' ? '' : `.${locale}`}.json`));
}

/** package.json as an editor of that language reads it: `%key%` stands for a text. */
export function manifestIn(locale: string) {
  const texts = { ...manifestTexts('en'), ...manifestTexts(locale) };
  return JSON.parse(text('package.json'), (_, value: unknown) => {
    const key = typeof value === 'string' ? /^%([\w.-]+)%$/.exec(value)?.[1] : undefined;
    return key === undefined ? value : (texts[key] ?? value);
  });
}
