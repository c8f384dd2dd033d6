import {
  type Bench,
  defineFigure,
  type Figure,
  ifKnown,
  isKnown,
  known,
  missing,
  quantity,
  reason,
  reasonsOf,
  text,
  typed,
  whenKnown,
  worked,
} from '../figure/index.ts';
import { given, notNegative, positive } from '../outcome.ts';
import { inRecipe } from '../outline/part.figure.ts';
import { AREAL_WEIGHT, LENGTH, sameDimension } from '../quantity/index.ts';
import { laidLayer } from '../stack/laid.figure.ts';
import type { LaidLayer } from '../stack/laid.ts';
import {
  densityOf,
  layerArealWeight,
  layerFibreDensity,
  layerMaterial,
  layerVolumeFraction,
} from './fraction.figure.ts';
import { layerThickness as clothThickness } from './thickness.ts';

/** Thickness of one laid layer, m. */
export const layerThickness = defineFigure<number>('layer_thickness', (bench, key) => {
  const laid = bench.ask(laidLayer, key);
  if (!isKnown(laid)) return laid;
  switch (laid.value.layer.kind) {
    case 'core':
    case 'insert':
      return sheetThickness(bench, laid.value);
    case 'coat':
      return filmThickness(bench, laid.value);
    default:
      return ofCloth(bench, key);
  }
});

function sheetThickness(bench: Bench, laid: LaidLayer): Figure<number> {
  const at = inRecipe(bench, laid.path);
  return ifKnown(
    typed(laid.layer.thickness, text('the thickness of {layer}', { layer: laid.name }), at),
    (typed, reasons) =>
      worked(
        given([positive(text('the thickness of {layer}', { layer: laid.name }), typed.si)], () => typed.si),
        text('{thickness} as typed', { thickness: typed }),
        { at, reasons },
      ),
  );
}

function ofCloth(bench: Bench, key: string): Figure<number> {
  const w = bench.ask(layerArealWeight, key);
  const fibre = bench.ask(layerFibreDensity, key);
  const fraction = bench.ask(layerVolumeFraction, key);
  if (!isKnown(w) || !isKnown(fibre) || !isKnown(fraction)) return missing(w, fibre, fraction);
  const shown = { weight: quantity(w.value, AREAL_WEIGHT) };
  return worked(
    clothThickness(w.value, fibre.value, fraction.value),
    text('{weight} of fibre over its density and fraction by volume: t = w / (rho V)', shown),
    { source: 'mass balance of the fibre, no voids', reasons: reasonsOf(w, fibre, fraction) },
  );
}

/** A film is typed as it is measured, each coat wet, or by its weight, each coat. */
function filmThickness(bench: Bench, laid: LaidLayer): Figure<number> {
  const at = inRecipe(bench, laid.path);
  const coats = laid.layer.coats ?? 1;
  return ifKnown(typed(laid.layer.film, text('the film of {layer}', { layer: laid.name }), at), (film, reasons) => {
    const { amount } = film;
    if (sameDimension(amount.dimension, LENGTH)) {
      const words =
        coats === 1
          ? text('1 coat of {film}; it shrinks by some per cent as it cures', { film: amount })
          : text('{coats} coats of {film}; it shrinks by some per cent as it cures', { coats, film: amount });
      return worked(
        given([notNegative('the film', amount.si), positive('the number of coats', coats)], () => amount.si * coats),
        words,
        { at, reasons },
      );
    }
    return ifKnown(bench.ask(layerMaterial, laid.key), (material) =>
      ifKnown(densityOf(material), (density, more) => {
        const words =
          coats === 1
            ? text('1 coat of {film} over the density', { film: amount })
            : text('{coats} coats of {film} over the density', { coats, film: amount });
        const found = given(
          [
            notNegative('the film', amount.si),
            positive('the density', density),
            positive('the number of coats', coats),
          ],
          () => (amount.si * coats) / density,
        );
        return worked(found, words, { at, reasons: [...reasons, ...more] });
      }),
    );
  });
}

/** What a coat weighs on each m2, all its coats together; kg/m2. */
export const coatArealWeight = defineFigure<number>('coat_areal_weight', (bench, key) =>
  ifKnown(bench.ask(laidLayer, key), (laid) => {
    const at = inRecipe(bench, laid.path);
    const coats = laid.layer.coats ?? 1;
    return ifKnown(typed(laid.layer.film, text('the film of {layer}', { layer: laid.name }), at), (film, reasons) => {
      if (sameDimension(film.amount.dimension, AREAL_WEIGHT))
        return known(
          film.amount.si * coats,
          reason(
            'computed',
            coats === 1
              ? text('1 coat of {film}', { film: film.amount })
              : text('{coats} coats of {film}', { coats, film: film.amount }),
            { reasons },
          ),
        );
      return whenKnown({ thickness: bench.ask(layerThickness, key), material: bench.ask(layerMaterial, key) }, (v) =>
        ifKnown(densityOf(v.material), (density, more) =>
          known(
            v.thickness * density,
            reason('computed', 'wet film times density', { reasons: [...reasons, ...more] }),
          ),
        ),
      );
    });
  }),
);
