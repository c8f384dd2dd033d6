import { quantity, type Text, text } from '../../../calc/figure/figure.ts';
import type { Bench } from '../../../calc/figure/index.ts';
import { isKnown } from '../../../calc/figure/index.ts';
import { fractionFact } from '../../../calc/laminate/fraction.figure.ts';
import { PROCESS_WORDS } from '../../../calc/laminate/fraction-defaults.ts';
import { layerDryMass } from '../../../calc/laminate/mass.figure.ts';
import { type BuildRecord, type Place, UNKNOWN } from '../../../calc/model/index.ts';
import { isImpossible } from '../../../calc/outcome.ts';
import { NUMBER, TEMPERATURE } from '../../../calc/quantity/index.ts';
import { median } from '../../../calc/record/control.ts';
import { explainMass } from '../../../calc/record/explain.ts';
import { massPlan } from '../../../calc/record/mass-plan.ts';
import { amountIn, measured, readingsOf } from '../../../calc/record/readings.ts';
import { laidStack } from '../../../calc/stack/laid.figure.ts';
import { isCloth } from '../../../calc/stack/order.ts';
import type { PlanOf } from './builds.ts';

/** A value that the builds of a shop come to, as an edit that the shop may accept or leave. */
export interface Calibration {
  /** name of the material and the word that its entry begins with, or the shop */
  readonly entry:
    | { readonly kind: 'material'; readonly name: string; readonly word: string }
    | { readonly kind: 'shop' };
  /** the fact: its word, and the whole line */
  readonly word: string;
  readonly line: string;
  /** what it is now, and what the builds say, and how many there are */
  readonly says: Text;
  readonly builds: number;
  /** the fact as it stands, if the workspace has it */
  readonly at?: Place;
}

/** Fewer builds say nothing about a shop. Common practice. */
const FEWEST = 5;
const shareOf = (si: number) => ({ ...quantity(si, NUMBER), unit: '%' });

export function calibrationsOf(records: readonly BuildRecord[], planOf: PlanOf): Calibration[] {
  return [...fractionCalibration(records, planOf), ...ambientCalibration(records, planOf)];
}

/** The fibre fraction that the masses come to, for the cloth that most of the part is made of. */
function fractionCalibration(records: readonly BuildRecord[], planOf: PlanOf): Calibration[] {
  const found: { readonly now: number; readonly planned: number; readonly bench: Bench }[] = [];
  for (const record of records) {
    // what was done otherwise is no habit
    if (readingsOf(record, 'differs').length > 0) continue;
    const [bench, mass] = [planOf(record), measured(record, 'mass')];
    const plan = bench === undefined ? undefined : massPlan(bench);
    if (bench === undefined || mass === undefined || plan === undefined) continue;
    const told = explainMass(plan, mass);
    if (isImpossible(told)) continue;
    found.push({ now: told.fibreByVolume.now, planned: told.fibreByVolume.planned, bench });
  }
  const last = found.at(-1);
  const [now, planned] = [median(found.map((each) => each.now)), median(found.map((each) => each.planned))];
  if (last === undefined || found.length < FEWEST || isImpossible(now) || isImpossible(planned)) return [];
  const name = mainCloth(last.bench);
  if (name === undefined || Math.abs(now - planned) < 0.005) return [];
  const percent = (Math.round(now * 1000) / 10).toFixed(1);
  const kind = last.bench.recipe.process?.kind;
  // a prepreg brings its resin: what its cloth holds is no habit of the shop
  if (kind === 'prepreg') return [];
  const material = last.bench.material(name);
  const fact = material && fractionFact(material, kind);
  // a fraction that is said of every process stays so
  const everywhere = fact !== undefined && fact.value !== UNKNOWN && fact.value.process === undefined;
  const way = everywhere || kind === undefined ? '' : ` ${PROCESS_WORDS[kind][0]}`;
  return [
    {
      entry: { kind: 'material', name, word: material?.kind ?? 'fabric' },
      word: 'fraction',
      line: `fraction ${percent} % by volume${way}`,
      says: text('{builds} builds weigh as {now} fibre by volume in {name}, planned were {planned}', {
        builds: found.length,
        now: shareOf(now),
        planned: shareOf(planned),
        name,
      }),
      builds: found.length,
      ...(fact === undefined || fact.at.entry.startsWith('stock/') ? {} : { at: fact.at }),
    },
  ];
}

function mainCloth(bench: Bench): string | undefined {
  const stack = bench.ask(laidStack);
  if (!isKnown(stack)) return undefined;
  const masses = new Map<string, number>();
  for (const laid of stack.value.layers.filter(isCloth)) {
    const dry = bench.ask(layerDryMass, laid.key);
    const name = laid.layer.material;
    if (name !== undefined && isKnown(dry)) masses.set(name, (masses.get(name) ?? 0) + dry.value);
  }
  return [...masses].sort(([, a], [, b]) => b - a)[0]?.[0];
}

/** The temperature that the shop really has, where it differs from what is planned by. */
function ambientCalibration(records: readonly BuildRecord[], planOf: PlanOf): Calibration[] {
  const readings = records.flatMap((record) => {
    const si = amountIn(readingsOf(record, 'ambient')[0], TEMPERATURE)?.si;
    return si === undefined ? [] : [si];
  });
  const middle = median(readings);
  const last = records.at(-1);
  const shop = last === undefined ? undefined : planOf(last)?.shop;
  const ambient = shop?.ambient?.value;
  if (readings.length < FEWEST || isImpossible(middle) || ambient === undefined || typeof ambient === 'string')
    return [];
  if (Math.abs(middle - ambient.si) < 2) return [];
  const celsius = (Math.round((middle - 273.15) * 2) / 2).toString();
  return [
    {
      entry: { kind: 'shop' },
      word: 'ambient',
      line: `ambient ${celsius} degC`,
      says: text('{builds} builds were made at {now} in the middle, the shop says {planned}', {
        builds: readings.length,
        now: quantity(middle, TEMPERATURE),
        planned: ambient,
      }),
      builds: readings.length,
      ...(shop?.ambient === undefined ? {} : { at: shop.ambient.at }),
    },
  ];
}
