/** Writes the files of a new workshop from three answers: who it is, what it reckons in, how high it lies. */

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
export function newWorkshop({ name, currency, elevation }: WorkshopAnswers): Readonly<Record<string, string>> {
  return {
    'shop.layup': `notation 1

// What holds for the whole workshop. What stands here is a start: put in your own figures.

shop "${titleText(name)}" {
  currency ${currency}
  labour 30 ${currency}/h
  overhead 10 %
  ambient 21 degC
  humidity 55 % RH
  elevation ${Math.max(0, Math.round(elevation))} m                     // sets the air pressure that pushes the resin
  pump 20 mbar absolute
  people 1
  scale 0.1 g                         // the step of the balance; the smallest batch follows from it
}
`,
    'materials.layup': `notation 1

// Only what differs from the stock library, or is not in it: above all your own prices, and the values of your data sheets.

fabric biax_440 like stock {
  price ?                             // unknown as yet; put in what your roll cost, such as 5.10 ${currency}/m2
}
`,
    'tools.layup': `notation 1

// Your moulds, tables and plates.

tool work_table "Flat table, laminated top" {
  flat 2000 mm by 1000 mm
  limit 60 degC
  count 1
}
`,
  };
}
