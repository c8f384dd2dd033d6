import { text, type Usual } from '../../../calc/figure/index.ts';
import { type AmountRange, UNKNOWN } from '../../../calc/model/index.ts';
import { AREAL_WEIGHT, LENGTH, sameDimension } from '../../../calc/quantity/index.ts';
import { habitOf } from '../kit/habit.ts';
import { mendText, TYPED_AREAL_WEIGHT, TYPED_LENGTH } from '../kit/mend-text.ts';
import { about, arealWeight, asTyped, metres } from '../kit/shown.ts';
import { type Wetted, wettedLayers } from '../kit/wetted.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** Where the gelcoat does not say it itself. */
const THINNEST: Usual = {
  habit: 'film_thinnest',
  what: 'thinnest wet film of a gelcoat',
  value: metres(0.0004),
  source: "16 to 24 mil; 18 to 25 mil in a moulder's trade blog, 2009",
};
const THICKEST: Usual = {
  habit: 'film_thickest',
  what: 'thickest wet film of a gelcoat',
  value: metres(0.0006),
  source: "16 to 24 mil; 18 to 25 mil in a moulder's trade blog, 2009",
};

/** No comb reads a wet film finer than this: 24 mil are as good as 600 um. */
const AS_GOOD_AS = 0.02;
/** What the fix counts in, kg/m2. */
const WEIGHT_STEP = 0.005;

export const coatWetFilm = rule({
  name: 'coat/wet-film',
  severity: 'error',
  title: 'a gelcoat is put on too thin or too thick',
  on: 'recipe',
  check(context) {
    for (const wetted of wettedLayers(context)) {
      const { layer } = wetted.laid;
      if (layer.kind !== 'coat' || wetted.resin.kind !== 'gelcoat' || layer.waxed === true) continue;
      // a flow coat closes the laminate off, it is no face in the mould
      if (wetted.resin.waxed === undefined) lookAt(context, wetted);
    }
  },
});

function lookAt(context: RecipeContext, { laid, resin }: Wetted): void {
  const { film } = laid.layer;
  const density = resin.density?.value;
  if (film === undefined) return;
  const weighed = sameDimension(film.amount.dimension, AREAL_WEIGHT);
  if (!weighed && (film.wet !== true || !sameDimension(film.amount.dimension, LENGTH))) return;
  // what is put on by weight lies as thick as its density lets it
  const per = !weighed ? 1 : density === undefined || density === UNKNOWN ? 0 : density.si;
  if (!(per > 0)) return;
  const own = resin.wetFilm?.value;
  const range: Pick<AmountRange, 'low' | 'high'> =
    own === undefined || own === UNKNOWN
      ? { low: metres(habitOf(context.bench, THINNEST)), high: metres(habitOf(context.bench, THICKEST)) }
      : own;
  const wet = film.amount.si / per;
  const thin = wet < range.low.si * (1 - AS_GOOD_AS);
  if (!thin && wet <= range.high.si * (1 + AS_GOOD_AS)) return;
  const end = thin ? range.low : range.high;
  const right = asTyped(weighed ? arealWeight(wholeSteps(end.si * per, thin)) : end);
  const shown = {
    film: film.amount,
    gelcoat: resin.name,
    low: range.low,
    high: range.high,
    ...(weighed ? { wet: metres(about(wet)) } : {}),
  };
  context.report({
    at: laid.path,
    message: weighed ? byWeight(thin, shown) : byFilm(thin, shown),
    ...(resin.wetFilm === undefined
      ? {}
      : { related: [{ at: resin.wetFilm.at, message: text('{gelcoat} takes {low} to {high} wet', shown) }] }),
    fixes: [
      mendText(
        context,
        text('Put on {what}', { what: right }),
        laid.path,
        weighed ? TYPED_AREAL_WEIGHT : TYPED_LENGTH,
        right,
      ),
    ],
  });
}

type Shown = Parameters<typeof text>[1];

const byFilm = (thin: boolean, shown: Shown) =>
  thin
    ? text('{film} wet is too thin for {gelcoat}: under {low} it stays soft and wrinkles under the laminate', shown)
    : text('{film} wet is too thick for {gelcoat}: over {high} it cracks', shown);

const byWeight = (thin: boolean, shown: Shown) =>
  thin
    ? text(
        '{film} of {gelcoat} are {wet} wet, which is too thin: under {low} it stays soft and wrinkles under the laminate',
        shown,
      )
    : text('{film} of {gelcoat} are {wet} wet, which is too thick: over {high} it cracks', shown);

/** Into the range, by weights that are easily read off a scale. */
const wholeSteps = (weight: number, up: boolean): number =>
  (up ? Math.ceil(weight / WEIGHT_STEP - 1e-6) : Math.floor(weight / WEIGHT_STEP + 1e-6)) * WEIGHT_STEP;
