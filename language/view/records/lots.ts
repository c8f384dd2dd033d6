import type { BuildRecord } from '../../../calc/model/index.ts';

/** A lot of a material, and the parts that it went into. */
export interface LotUse {
  readonly material: string;
  readonly code: string;
  /** ISO 8601; the earliest where records differ */
  readonly expires?: string;
  readonly parts: readonly BuildRecord[];
}

/** Every lot that a record names, by material and number. */
export function lotsOf(records: readonly BuildRecord[]): LotUse[] {
  const found = new Map<string, { material: string; code: string; expires?: string; parts: BuildRecord[] }>();
  for (const record of records) {
    for (const { material, code, expires } of record.lots) {
      const key = JSON.stringify([material, code]);
      const lot = found.get(key) ?? { material, code, parts: [] };
      if (!lot.parts.includes(record)) lot.parts.push(record);
      if (expires !== undefined && (lot.expires === undefined || expires < lot.expires)) lot.expires = expires;
      found.set(key, lot);
    }
  }
  return [...found.values()].sort((a, b) => order(a.material, b.material) || order(a.code, b.code));
}

const order = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

export type Freshness = 'expired' | 'soon' | 'good' | 'no date';

/** How a lot stands on a day (ISO 8601): what expires within so many days is about to. */
export function freshnessOf({ expires }: Pick<LotUse, 'expires'>, today: string, within: number): Freshness {
  if (expires === undefined) return 'no date';
  if (expires < today) return 'expired';
  return daysBetween(today, expires) <= within ? 'soon' : 'good';
}

/** Days from one day to another, both ISO 8601. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / 86_400_000);
}

/** `sled_deck short 2026-05-14 no. 31` */
export function partName({ recipe, size, date, title }: BuildRecord): string {
  return [recipe, size, date, title].filter((word) => word !== undefined).join(' ');
}

/** The records that a reader means by a recipe, and by a number or day if he says one. */
export function recordsMeant(records: readonly BuildRecord[], recipe: string, which?: string): readonly BuildRecord[] {
  return records.filter(
    (record) =>
      record.recipe === recipe &&
      (which === undefined || record.date === which || record.title === which || digits(record.title) === which),
  );
}

/** The number in `no. 31`. */
export const digits = (title: string | undefined): string | undefined => /\d+/.exec(title ?? '')?.[0];
