import type { Bench } from '../../../calc/figure/index.ts';
import type { BuildRecord } from '../../../calc/model/index.ts';
import { type Dimension, MASS, PRESSURE, TIME } from '../../../calc/quantity/index.ts';
import { type ControlLimits, driftScore, driftSlope, individualsLimits } from '../../../calc/record/control.ts';
import { planned } from '../../../calc/record/plan.ts';
import { type BuildQuantity, measured } from '../../../calc/record/readings.ts';

/** How a quantity of builds is shown. */
export interface QuantityKind {
  readonly name: BuildQuantity;
  readonly title: string;
  readonly dimension: Dimension;
  /** a leak is told as the rise in so many seconds */
  readonly over?: number;
  /** the plan is the most that is allowed */
  readonly limit?: true;
}

export const buildQuantities: readonly QuantityKind[] = [
  { name: 'mass', title: 'mass', dimension: MASS },
  { name: 'resin', title: 'resin mixed', dimension: MASS },
  { name: 'fill', title: 'fill time', dimension: TIME },
  { name: 'leak', title: 'leak in 10 min', dimension: PRESSURE, over: 600, limit: true },
  { name: 'hours', title: 'timed steps', dimension: TIME },
];

/** Where the plan of a build is found: of the revision that its record names. */
export type PlanOf = (record: BuildRecord) => Bench | undefined;

export interface Point {
  readonly record: BuildRecord;
  /** SI; of a leak, Pa in `over` seconds */
  readonly value: number;
  readonly plan?: number;
}

/** One quantity over the builds of a recipe in one size, in the order of their days. */
export interface Series {
  readonly kind: QuantityKind;
  readonly points: readonly Point[];
  readonly limits?: ControlLimits;
  /** by build, where the values drift beyond chance */
  readonly drift?: number;
}

/** Beyond 1.96 standard deviations either way one series in twenty looks so by chance. */
const BEYOND_CHANCE = 1.96;

export function seriesOf(records: readonly BuildRecord[], kind: QuantityKind, planOf: PlanOf): Series {
  const times = kind.over ?? 1;
  const points = records.flatMap((record): Point[] => {
    const value = measured(record, kind.name);
    if (value === undefined) return [];
    const bench = planOf(record);
    const plan = bench === undefined ? undefined : planned(bench, record, kind.name);
    return [{ record, value: value * times, ...(plan === undefined ? {} : { plan: plan * times }) }];
  });
  // what the plan asks for may change from revision to revision: then it is the way off it that drifts
  const compared = points.every(({ plan }) => plan !== undefined && plan > 0)
    ? points.map(({ value, plan }) => value / (plan as number))
    : points.map(({ value }) => value);
  const limits = individualsLimits(points.map(({ value }) => value));
  const [score, slope] = [driftScore(compared), driftSlope(compared)];
  const drifts = typeof score === 'number' && Math.abs(score) > BEYOND_CHANCE && typeof slope === 'number';
  const whole = compared.reduce((sum, value) => sum + value, 0) / Math.max(1, compared.length);
  return {
    kind,
    points,
    ...('problem' in limits ? {} : { limits }),
    ...(drifts && whole > 0 ? { drift: slope / whole } : {}),
  };
}

/** Builds by size, that as written first. */
export function bySize(records: readonly BuildRecord[]): Map<string | undefined, readonly BuildRecord[]> {
  const sizes = new Map<string | undefined, BuildRecord[]>();
  for (const record of records) {
    const list = sizes.get(record.size);
    if (list === undefined) sizes.set(record.size, [record]);
    else list.push(record);
  }
  return new Map([...sizes].sort(([a], [b]) => (a === undefined ? -1 : b === undefined ? 1 : a < b ? -1 : 1)));
}

/** Whether a value lies beyond the limits of the shop, by more than rounding. */
export const isOutside = (value: number, { low, high, mean }: Pick<ControlLimits, 'low' | 'high' | 'mean'>): boolean =>
  value < low - 1e-6 * Math.abs(mean) || value > high + 1e-6 * Math.abs(mean);
