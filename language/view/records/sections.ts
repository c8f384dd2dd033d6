import { quantity, type Text, text } from '../../../calc/figure/figure.ts';
import type { BuildRecord } from '../../../calc/model/index.ts';
import { isImpossible } from '../../../calc/outcome.ts';
import { NUMBER } from '../../../calc/quantity/index.ts';
import { median } from '../../../calc/record/control.ts';
import { showNumber } from '../figures.ts';
import type { Section } from '../report/section.ts';
import { type Style, say, sayText, show } from '../text.ts';
import { translated } from '../translation.ts';
import { buildQuantities, bySize, isOutside, type PlanOf, type Series, seriesOf } from './builds.ts';
import { type Calibration, calibrationsOf } from './calibrate.ts';
import { differenceLines, namesOf } from './reasons.ts';

/** All that the records of a recipe say, for one size after the other. */
export interface RecordsPage {
  readonly sizes: readonly { readonly size?: string; readonly builds: number; readonly series: readonly Series[] }[];
  readonly sections: readonly Section[];
  readonly calibrations: readonly Calibration[];
  /** builds of revisions whose plan is not to be had */
  readonly withoutPlan: readonly { readonly revision: number; readonly builds: number }[];
}

/** `why`: why the past plans that are lacking are not to be had, where that is known. */
export function recordsPage(records: readonly BuildRecord[], planOf: PlanOf, style: Style, why?: Text): RecordsPage {
  const lacking = records.filter((record) => record.revision !== undefined && planOf(record) === undefined);
  const sizes = [...bySize(records)].map(([size, builds]) => ({
    ...(size === undefined ? {} : { size }),
    builds: builds.length,
    series: buildQuantities.map((kind) => seriesOf(builds, kind, planOf)).filter(({ points }) => points.length > 0),
  }));
  const calibrations = calibrationsOf(records, planOf);
  const sections = sizes.flatMap(({ size, series }) => {
    const builds = records.filter((record) => record.size === size);
    return [
      buildSection(size, builds, series, style),
      reasonSection(size, builds, series, planOf, style),
      spreadSection(size, series, style),
    ];
  });
  return {
    sizes,
    calibrations,
    withoutPlan: revisionsOf(lacking),
    sections: [withoutPlanSection(lacking, why), ...sections, calibrationSection(calibrations, style)].filter(
      ({ lines, table }) => (lines?.length ?? 0) + (table?.rows.length ?? 0) > 0,
    ),
  };
}

function revisionsOf(lacking: readonly BuildRecord[]): RecordsPage['withoutPlan'] {
  const counts = new Map<number, number>();
  for (const { revision = 0 } of lacking) counts.set(revision, (counts.get(revision) ?? 0) + 1);
  return [...counts].sort(([a], [b]) => a - b).map(([revision, builds]) => ({ revision, builds }));
}

/** Builds that nothing compares are told of, and not passed over. */
function withoutPlanSection(lacking: readonly BuildRecord[], why: Text | undefined): Section {
  const lines = revisionsOf(lacking).map(({ revision, builds }) =>
    builds === 1
      ? say('Revision {revision}: 1 build is not compared with its plan.', { revision })
      : say('Revision {revision}: {builds} builds are not compared with their plan.', { revision, builds }),
  );
  return {
    title: say('Without a plan'),
    lead: sayText(why ?? text('The text of these revisions is not to be had from git.')),
    lines,
  };
}

const nameOf = (size: string | undefined): string =>
  size === undefined ? say('Builds') : say('Builds of size {size}', { size });

/** Build by build: what was measured, and how far off the plan. */
function buildSection(
  size: string | undefined,
  builds: readonly BuildRecord[],
  series: readonly Series[],
  style: Style,
): Section {
  const rows = builds.map((record) => [
    record.title ?? '',
    record.date ?? '',
    record.revision === undefined ? '' : String(record.revision),
    ...series.map((each) => cellOf(each, record, style)),
  ]);
  return {
    title: nameOf(size),
    lead: say('What was measured, and in brackets how far off the plan of its revision.'),
    table: {
      head: [say('build'), say('date'), say('rev.'), ...series.map(({ kind }) => translated(kind.title))],
      right: [2, ...series.map((_, i) => i + 3)],
      rows,
    },
  };
}

/** What the differences come to. */
function reasonSection(
  size: string | undefined,
  builds: readonly BuildRecord[],
  series: readonly Series[],
  planOf: PlanOf,
  style: Style,
): Section {
  const fills = series.find(({ kind }) => kind.name === 'fill')?.points.map(({ value }) => value) ?? [];
  const usual = median(fills);
  const lines = differenceLines(builds, planOf, isImpossible(usual) ? undefined : usual, style);
  return {
    title:
      size === undefined
        ? say('What the differences come to')
        : say('What the differences of size {size} come to', { size }),
    lead: say('Figures that would explain a difference; which of them it was, the bench knows.'),
    lines,
  };
}

function cellOf({ kind, points }: Series, record: BuildRecord, style: Style): string {
  const point = points.find((each) => each.record === record);
  if (point === undefined) return '';
  const value = showNumber(point.value, kind.dimension, style);
  if (point.plan === undefined || !(point.plan > 0)) return value;
  // the plan of a leak is a limit: under it nothing is off
  if (kind.limit)
    return point.value > point.plan
      ? say('{value} (limit {plan})', { value, plan: showNumber(point.plan, kind.dimension, style) })
      : value;
  const off = point.value / point.plan - 1;
  const sign = off > 0 ? '+' : '';
  return `${value} (${sign}${show({ ...quantity(Math.round(off * 1000) / 1000, NUMBER), unit: '%' }, style)})`;
}

/** The shop's own spread, and what drifts. */
function spreadSection(size: string | undefined, series: readonly Series[], style: Style): Section {
  const rows = series.flatMap(({ kind, points, limits, drift }) => {
    if (limits === undefined) return [];
    const number = (value: number): string => showNumber(value, kind.dimension, style);
    const out = points.filter(({ value }) => isOutside(value, limits));
    return [
      [
        translated(kind.title),
        String(points.length),
        number(limits.mean),
        number(Math.max(0, limits.low)),
        number(limits.high),
        drift === undefined ? '' : say('{drift} a build', { drift: { ...quantity(drift, NUMBER), unit: '%' } }, style),
        namesOf(out.map(({ record }) => record)),
      ],
    ];
  });
  return {
    title: size === undefined ? say('Spread') : say('Spread of size {size}', { size }),
    lead: say(
      'Limits that chance alone keeps within: mean +- 3 MR / 1.128 of single values (NIST/SEMATECH e-Handbook, 6.3.2.2). A drift is told where it is beyond chance (Mann and Kendall).',
    ),
    table: {
      head: [say('quantity'), say('builds'), say('mean'), say('low'), say('high'), say('drift'), say('outside')],
      right: [1, 2, 3, 4, 5],
      rows,
    },
  };
}

function calibrationSection(calibrations: readonly Calibration[], style: Style): Section {
  return {
    title: say('Values that the builds come to'),
    lead: say('Taken over only where the shop says so.'),
    lines: calibrations.map(({ says, line }) => `${sayText(says, style)}: ${line}`),
  };
}
