/** Writes the files of a new workshop from three answers: who it is, what it reckons in, how high it lies. */

import { words as english, type Words } from './words.ts';

export interface WorkshopAnswers {
  readonly name: string;
  /** ISO 4217 code */
  readonly currency: string;
  /** height above the sea, metres; below it counts as at it */
  readonly elevation: number;
}

/** Currencies that prices may be written in, ISO 4217. */
export const currencies = ['EUR', 'GBP', 'USD', 'CHF', 'SEK', 'NOK', 'DKK', 'PLN', 'CAD', 'AUD', 'NZD', 'JPY'] as const;

/** A title stands between quotation marks on one line. */
const titleText = (name: string): string => name.replace(/["\\\r\n]/g, ' ').trim();

/** Texts by file name. */
export function newWorkshop(
  { name, currency, elevation }: WorkshopAnswers,
  words: Words = english,
): Readonly<Record<string, string>> {
  return {
    'shop.layup': `notation 1

// ${words.shop}

shop "${titleText(name)}" {
  currency ${currency}
  labour 30 ${currency}/h
  overhead 10 %
  ambient 21 degC
  humidity 55 % RH
  elevation ${Math.max(0, Math.round(elevation))} m                     // ${words.elevation}
  pump 20 mbar absolute
  people 1
  scale 0.1 g                         // ${words.scale}
}
`,
    'materials.layup': `notation 1

// ${words.materials}

fabric biax_440 like stock {
  price ?                             // ${words.price.replace('{price}', `5.10 ${currency}/m2`)}
}
`,
    'tools.layup': `notation 1

// ${words.tools}

tool work_table "${words.table}" {
  flat 2000 mm by 1000 mm
  limit 60 degC
  count 1
}
`,
  };
}
