import { safe } from '../view/text.ts';

const escapes: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** What XML 1.0 (2.2) does not allow, beside what never reaches a screen: half a pair of UTF-16, and two that are no characters. */
const noCharacter = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]|[\ufffe\uffff]/g;

/** Words of others as text or attribute of an XML file. */
export const xmlText = (words: string): string =>
  safe(words)
    .replace(noCharacter, '')
    .replace(/[&<>"']/g, (sign) => escapes[sign] ?? '');
