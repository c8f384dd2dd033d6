import { processSteps } from '../bag/bag.figure.ts';
import {
  allKnown,
  type Bench,
  cannot,
  defineFigure,
  type Figure,
  factOf,
  ifKnown,
  isKnown,
  known,
  knownBy,
  type MaterialFacts,
  quantity,
  reason,
  siOf,
  text,
  typed,
  whenKnown,
  worked,
} from '../figure/index.ts';
import { densityOf, factPlace, materialAt } from '../laminate/fraction.figure.ts';
import { UNKNOWN } from '../model/index.ts';
import { following, isImpossible } from '../outcome.ts';
import { inRecipe } from '../outline/part.figure.ts';
import { amountOf, flat, head, subject } from '../plan/reading.ts';
import { MASS, NUMBER } from '../quantity/index.ts';
import { doseByWeight } from './catalyst.ts';
import { catalystDose, type Dose } from './dose.figure.ts';
import { splitMix } from './mix.ts';
import { resinMaterial, resinName } from './needs.figure.ts';

/** A balance as it stands in many shops. */
export const USUAL_SCALE = { value: 0.001, source: 'common practice: a balance that shows 1 g' };

/** The step of the shop's balance, kg. */
export const scaleStep = defineFigure<number>('scale_step', (bench) => {
  const { shop } = bench;
  if (shop?.scale !== undefined) return siOf(factOf(shop.scale, 'the step of the scale', shop.scale.at));
  const words = text('step of the scale: {step}', { step: quantity(USUAL_SCALE.value, MASS) });
  return known(USUAL_SCALE.value, reason('trade', words, { source: USUAL_SCALE.source }));
});

/** What is stirred into the mix besides: `tint grey_paste 2 % by weight`. */
export const additions = defineFigure<readonly { readonly material: string; readonly share: number }[]>(
  'additions',
  (bench, key) =>
    whenKnown({ name: resinName(bench, key), steps: bench.ask(processSteps) }, ({ name, steps }) => {
      if (name !== bench.recipe.process?.resin) return known([]);
      const tints = steps
        .filter((step) => step.verb === 'tint')
        .map((step) => {
          const share =
            amountOf(head(step), NUMBER) ??
            step.clauses.map((c) => amountOf(flat(c), NUMBER)).find((a) => a !== undefined);
          return ifKnown(
            typed(
              share,
              text('how much {what} is stirred in', { what: subject(step) ?? 'pigment' }),
              inRecipe(bench, step.path),
            ),
            (share, reasons) => knownBy({ material: subject(step) ?? 'pigment', share: share.si }, reasons),
          );
        });
      return allKnown(tints);
    }),
);

export interface MixPart {
  /** `resin`, `hardener`, or the name of a catalyst, a pigment, a filler */
  readonly what: string;
  /** kg, in steps of the scale */
  readonly mass: number;
  /** m3, of a catalyst that is measured by volume */
  readonly volume?: number;
}

export interface MixSplit {
  readonly parts: readonly MixPart[];
  /** kg of resin with hardener or catalyst; pigment is on top */
  readonly total: number;
  /** largest deviation from the ratio, a share */
  readonly error: number;
}

const PART_NAMES = ['resin', 'hardener'] as const;

/** The dose of catalyst that a resin is mixed with. */
type DoseOf = (resin: string) => Figure<Dose | undefined>;

/** So much of a resin (kg, with hardener or catalyst) by weight, to the step of the scale. */
export function mixOf(
  bench: Bench,
  key: string,
  total: number,
  doseOf: DoseOf = (resin) => bench.ask(catalystDose, resin),
): Figure<MixSplit> {
  const inputs = {
    resin: bench.ask(resinMaterial, key),
    step: bench.ask(scaleStep),
    more: bench.ask(additions, key),
  };
  return whenKnown(inputs, (v, reasons) => {
    const extras = v.more.map(({ material, share }) => ({ what: material, mass: toStep(total * share, v.step) }));
    const filled = fillers(v.resin, total, v.step);
    const liquid = total - filled.reduce((sum, f) => sum + f.mass, 0);
    return ifKnown(splitOf(bench, v.resin, key, liquid, v.step, doseOf), (base, more) =>
      known(
        { ...base, parts: [...base.parts, ...filled, ...extras] },
        ...more,
        reason(
          'computed',
          text('{total} in steps of {step}', { total: quantity(total, MASS), step: quantity(v.step, MASS) }),
          { reasons },
        ),
      ),
    );
  });
}

const toStep = (mass: number, step: number): number => (step > 0 ? Math.round(mass / step) * step : mass);

/** A paste made in the shop: so much of the whole is filler. */
function fillers(paste: MaterialFacts, total: number, step: number): MixPart[] {
  return (paste.fillers ?? []).flatMap((f) =>
    f.value === UNKNOWN ? [] : [{ what: f.value.material, mass: toStep(total * f.value.share.si, step) }],
  );
}

function splitOf(
  bench: Bench,
  resin: MaterialFacts,
  key: string,
  total: number,
  step: number,
  doseOf: DoseOf,
): Figure<MixSplit> {
  if (!(total > 0)) return cannot(reason('computed', text('there is no {resin} to mix', { resin: resin.name })));
  if (resin.madeFrom !== undefined) {
    return ifKnown(
      factOf(resin.madeFrom, text('what {resin} is made from', { resin: resin.name }), factPlace(resin, 'from')),
      (from) =>
        ifKnown(materialAt(bench, from, 'the resin', factPlace(resin, 'from')), (base) =>
          base.madeFrom === undefined
            ? splitOf(bench, base, from, total, step, doseOf)
            : cannot(
                reason('typed', text('{name} is made from a paste', { name: resin.name }), {
                  at: factPlace(resin, 'from'),
                }),
              ),
        ),
    );
  }
  if (resin.catalyst !== undefined) return catalysed(bench, key === '' ? resin.name : key, total, step, doseOf);
  const at = factPlace(resin, 'mix');
  return ifKnown(factOf(resin.mix, text('the mix ratio of {resin}', { resin: resin.name }), at), (mix, reasons) => {
    if (mix.basis !== 'by weight') {
      const by =
        mix.basis === 'by volume'
          ? text('{name} is mixed by volume, and the density of its parts is not given', { name: resin.name })
          : text('the mix of {name} is not said by weight or by volume', { name: resin.name });
      return cannot(reason('typed', by, { at }));
    }
    const split = following(
      splitMix(total, mix.ratio, step),
      (s): MixSplit => ({
        parts: s.parts.map((mass, i) => ({ what: PART_NAMES[i] ?? `part ${i + 1}`, mass })),
        total: s.total,
        error: s.ratioError,
      }),
    );
    return worked(split, text('{ratio} by weight', { ratio: mix.ratio.join(':') }), { at, reasons });
  });
}

function catalysed(bench: Bench, key: string, total: number, step: number, doseOf: DoseOf): Figure<MixSplit> {
  return ifKnown(doseOf(key), (dose, reasons) => {
    if (dose === undefined) return cannot(reason('computed', text('{name} takes no catalyst', { name: key })));
    return ifKnown(
      materialAt(bench, dose.material, 'the catalyst', { entry: `material/${key}`, path: 'catalyst' }),
      (catalyst) => {
        const density = densityOf(catalyst);
        const resin = toStep(total, step);
        const exact = doseByWeight(resin, dose.dose, isKnown(density) ? density.value : 1000);
        if (isImpossible(exact)) return worked<MixSplit>(exact, '');
        // what the scale does not show is dosed with a syringe, and is never left out
        const mass = toStep(exact.mass, step) || Number(exact.mass.toPrecision(2));
        const parts: MixPart[] = [
          { what: 'resin', mass: resin },
          { what: dose.material, mass, ...(isKnown(density) ? { volume: exact.volume } : {}) },
        ];
        const error = exact.mass > 0 ? Math.abs(mass / exact.mass - 1) : 0;
        return known(
          { parts, total: resin + mass, error },
          reason(
            'computed',
            text('{dose} by weight of {material}', { dose: quantity(dose.dose, NUMBER), material: dose.material }),
            { reasons },
          ),
        );
      },
    );
  });
}
