import { text } from '../../calc/figure/figure.ts';
import { freshnessOf, type LotUse, lotsOf, partName, recordsMeant } from '../view/records/lots.ts';
import type { Section } from '../view/report/index.ts';
import { say } from '../view/text.ts';
import { endOf, openBook } from './book.ts';
import { needDay } from './day.ts';
import { type ExitCode, UsageError } from './exit-codes.ts';
import { sectionsText } from './report-text.ts';
import type { Screen } from './screen.ts';

export interface LotsOptions {
  /** number of a lot: only the parts that contain it */
  readonly lot?: string;
  /** name of a recipe: only the lots that went into its parts */
  readonly part?: string;
  /** number or day of one build of that recipe */
  readonly number?: string;
  /** days in which a lot is about to expire */
  readonly within: number;
  /** the day that is taken for today, ISO 8601 */
  readonly today: string;
  readonly format: 'text' | 'json';
  readonly book?: string;
}

/** `laybook lots`: which parts contain which lot, and what is expired or about to be. */
export async function lots(paths: readonly string[], options: LotsOptions, screen: Screen): Promise<ExitCode> {
  if (options.number !== undefined && options.part === undefined)
    throw new UsageError(text('--number says which build of a recipe: --part names the recipe'));
  needDay('--today', options.today);
  const book = await openBook(paths, options.book, screen);
  const records = book.services.analysis.shelf().records.all;
  const meant = options.part === undefined ? records : recordsMeant(records, options.part, options.number);
  if (options.part !== undefined && meant.length === 0)
    throw new UsageError(
      text('no record tells of {recipe}', { recipe: [options.part, options.number ?? ''].join(' ').trim() }),
    );
  const found = lotsOf(meant).filter(({ code }) => options.lot === undefined || code === options.lot);
  if (options.lot !== undefined && found.length === 0)
    throw new UsageError(text('no record names a lot {lot}', { lot: options.lot }));
  if (options.format === 'json') screen.out(lotsJson(found, options));
  else screen.out(sectionsText(say('Lots'), sectionsOf(found, options), screen));

  return endOf(book, false);
}

function sectionsOf(found: readonly LotUse[], options: LotsOptions): Section[] {
  const { today, within } = options;
  if (options.lot !== undefined) {
    return found.map((lot) => ({
      title: `${lot.material} ${lot.code}`,
      lead: say('Parts that contain this lot.'),
      lines: lot.parts.map(partName),
    }));
  }
  const words = { expired: say('expired'), soon: say('about to expire'), good: '', 'no date': say('no date') };
  const rows = found.map((lot) => [
    lot.material,
    lot.code,
    lot.expires ?? '',
    words[freshnessOf(lot, today, within)],
    String(lot.parts.length),
    lot.parts.at(-1) === undefined ? '' : partName(lot.parts.at(-1) as LotUse['parts'][number]),
  ]);
  return [
    {
      title: say('Lots by material'),
      lead:
        within === 1
          ? say('As of {today}; a lot that expires within 1 day is about to.', { today })
          : say('As of {today}; a lot that expires within {within} days is about to.', { today, within }),
      table: {
        head: [say('material'), say('lot'), say('expires'), '', say('parts'), say('last part')],
        right: [4],
        rows,
      },
    },
  ];
}

function lotsJson(found: readonly LotUse[], { today, within }: LotsOptions): string {
  const told = found.map((lot) => ({
    material: lot.material,
    lot: lot.code,
    ...(lot.expires === undefined ? {} : { expires: lot.expires }),
    state: freshnessOf(lot, today, within),
    parts: lot.parts.map(({ recipe, size, date, title }) => ({ recipe, size, date, title })),
  }));
  return `${JSON.stringify({ schema: 'laybook/lots@1', today, within, lots: told }, undefined, 2)}\n`;
}
