import { layerPiece } from '../cloth/area.figure.ts';
import { CLOTH_WASTE, CORE_WASTE } from '../cloth/habits.ts';
import {
  allKnown,
  type Bench,
  cannot,
  defineFigure,
  definePick,
  type Figure,
  type FigureDefinition,
  factOf,
  ifKnown,
  isKnown,
  known,
  knownBy,
  type MaterialFacts,
  reason,
  text,
  typed,
  usual,
  whenKnown,
} from '../figure/index.ts';
import { onceFor } from '../kept.ts';
import { densityOf, factPlace, layerArealWeight, layerMaterial, materialAt } from '../laminate/fraction.figure.ts';
import { layerResin } from '../laminate/mass.figure.ts';
import { layerThickness } from '../laminate/thickness.figure.ts';
import { type Fact, type Price, UNKNOWN } from '../model/index.ts';
import { isImpossible } from '../outcome.ts';
import { inRecipe } from '../outline/part.figure.ts';
import { catalystDose } from '../resin/dose.figure.ts';
import { laidLayer } from '../stack/laid.figure.ts';
import type { LaidLayer } from '../stack/laid.ts';
import { isCloth } from '../stack/order.ts';
import { type Bought, priceOf } from './price.ts';
import { taken } from './purchase.ts';

/** Currency that costs are reckoned in: of the shop. Without one every price must be in the same. */
export const currency = definePick<string>('currency', (bench) =>
  factOf(bench.shop?.currency, 'the currency of the shop', { entry: bench.shop?.entry ?? 'shop', path: 'currency' }),
);

const none: readonly Fact<Price>[] = [];

/** The prices of an entry that are told; it never changes, and a hundred recipes may ask. */
const knownPrices = onceFor((facts: readonly Fact<Price>[]): readonly Price[] =>
  facts.flatMap((f) => (f.value === UNKNOWN ? [] : [f.value])),
);

/** Money for what is used of a material. */
export function costOf(bench: Bench, material: MaterialFacts, bought: Bought): Figure<number> {
  const what = () => text('the price of {material}', { material: material.name });
  const facts = bench.prices(material.name) ?? none;
  const at = facts[0]?.at ?? factPlace(material, 'price');
  const prices = knownPrices(facts);
  if (prices.length === 0) return typed<number>(facts[0]?.value === UNKNOWN ? UNKNOWN : undefined, what(), at);
  const found = priceOf(prices, bought);
  if (isImpossible(found))
    return cannot(reason('computed', text('{what}: {problem}', { what: what(), problem: found.problem }), { at }));
  const money = bench.ask(currency);
  const { amount } = found.price;
  if (isKnown(money) && amount.currency !== undefined && amount.currency !== money.value) {
    return cannot(
      reason(
        'typed',
        text('{what} is in {own}, the costs of the shop are in {currency}', {
          what: what(),
          own: amount.currency,
          currency: money.value,
        }),
        { at },
      ),
    );
  }
  const words = found.prorated
    ? text('{price}, pro rata for its thickness', { price: amount })
    : text('{price}', { price: amount });
  const fact = facts.find((f) => f.value === found.price);
  return known(
    found.cost,
    reason(at.entry.startsWith('stock/') ? 'stock' : 'typed', words, { at: fact?.at ?? at, source: fact?.source }),
  );
}

/** What one kg of mixed resin costs: with its catalyst, or with the fillers of a paste; money/kg. */
export const resinPrice: FigureDefinition<number> = defineFigure<number>('resin_price', (bench, name) =>
  ifKnown(materialAt(bench, name, 'the resin', inRecipe(bench, bench.recipe.process?.path ?? '')), (resin) => {
    const from = resin.madeFrom?.value;
    if (from !== undefined && bench.prices(name) === undefined) return ofPaste(bench, resin, from);
    const density = resin.density === undefined ? undefined : densityOf(resin);
    const volume = density !== undefined && isKnown(density) && density.value > 0 ? 1 / density.value : undefined;
    return whenKnown(
      { own: costOf(bench, resin, { mass: 1, volume }), dose: bench.ask(catalystDose, name) },
      ({ own, dose }, reasons) => {
        if (dose === undefined) return knownBy(own, reasons);
        return ifKnown(materialAt(bench, dose.material, 'the catalyst', factPlace(resin, 'catalyst')), (catalyst) =>
          ifKnown(costOf(bench, catalyst, { mass: dose.dose }), (each, more) => known(own + each, ...reasons, ...more)),
        );
      },
    );
  }),
);

function ofPaste(bench: Bench, paste: MaterialFacts, from: string): Figure<number> {
  if (from === UNKNOWN || from === paste.name)
    return typed<number>(
      from === UNKNOWN ? UNKNOWN : undefined,
      text('what {paste} is made from', { paste: paste.name }),
      factPlace(paste, 'from'),
    );
  const fillers = (paste.fillers ?? []).map((f) => {
    if (f.value === UNKNOWN)
      return typed<{ share: number; cost: number }>(UNKNOWN, text('a filler of {paste}', { paste: paste.name }), f.at);
    const { material, share } = f.value;
    return ifKnown(materialAt(bench, material, 'the filler', f.at), (filler) =>
      ifKnown(costOf(bench, filler, { mass: share.si }), (cost, reasons) =>
        knownBy({ share: share.si, cost }, reasons),
      ),
    );
  });
  return whenKnown(
    { base: bench.ask(resinPrice, from), fillers: allKnown(fillers) },
    ({ base, fillers: all }, reasons) => {
      const share = all.reduce((sum, f) => sum + f.share, 0);
      return known(
        base * Math.max(0, 1 - share) + all.reduce((sum, f) => sum + f.cost, 0),
        reason('computed', 'resin and fillers by their shares', { reasons }),
      );
    },
  );
}

/** What a layer costs without resin: off the roll or the sheet with the cutting waste. */
function dryCost(bench: Bench, laid: LaidLayer): Figure<number> {
  const { key } = laid;
  if (laid.layer.kind === 'coat') return known(0);
  const waste = usual(bench, isCloth(laid) ? CLOTH_WASTE : CORE_WASTE);
  return whenKnown(
    { material: bench.ask(layerMaterial, key), piece: bench.ask(layerPiece, key), waste },
    ({ material, piece, waste: share }, reasons) => {
      const area = taken(piece.area, share);
      if (isImpossible(area)) return cannot(reason('computed', area.problem, { at: inRecipe(bench, laid.path) }));
      const roll = material.roll?.value;
      const width = roll === undefined || roll === UNKNOWN ? undefined : roll.width.si;
      const lanes = width === undefined ? undefined : Math.max(1, Math.ceil(piece.width / width - 1e-9));
      const tape = laid.layer.extent.kind === 'strip' && lanes !== undefined ? piece.length * lanes : undefined;
      return ifKnown(isCloth(laid) ? ofRoll(bench, key, area) : ofSheet(bench, laid, material, area), (more) => {
        const bought = {
          area,
          length: tape ?? (width === undefined || !(width > 0) ? undefined : area / width),
          pieces: 1,
          ...more,
        };
        return ifKnown(costOf(bench, material, bought), (cost, priced) => known(cost, ...priced, ...reasons));
      });
    },
  );
}

const ofRoll = (bench: Bench, key: string, area: number): Figure<Bought> => {
  const weight = bench.ask(layerArealWeight, key);
  return known(isKnown(weight) ? { mass: area * weight.value } : {});
};

function ofSheet(bench: Bench, laid: LaidLayer, material: MaterialFacts, area: number): Figure<Bought> {
  return ifKnown(bench.ask(layerThickness, laid.key), (thickness) => {
    const volume = area * thickness;
    const density = material.density === undefined ? undefined : densityOf(material);
    const sheet = material.sheet?.value;
    const whole = sheet === undefined || sheet === UNKNOWN ? 0 : sheet.length.si * sheet.width.si;
    return known({
      thickness,
      volume,
      ...(density !== undefined && isKnown(density) ? { mass: volume * density.value } : {}),
      ...(whole > 0 ? { pieces: area / whole } : {}),
    });
  });
}

/** What a layer costs with the resin in it; money. */
export const layerCost = defineFigure<number>('layer_cost', (bench, key) =>
  ifKnown(bench.ask(laidLayer, key), (laid) =>
    whenKnown({ dry: dryCost(bench, laid), resin: bench.ask(layerResin, key) }, ({ dry, resin }, reasons) => {
      const wet = resin.items.filter((i) => bench.material(i.resin)?.kind !== 'prepreg');
      const each = wet.map((i) =>
        ifKnown(bench.ask(resinPrice, i.resin), (price, more) => knownBy(price * i.mass, more)),
      );
      return ifKnown(allKnown(each), (each, more) =>
        known(
          dry + each.reduce((sum, c) => sum + c, 0),
          reason('computed', 'what is cut, with waste, and the resin in it', { reasons: [...reasons, ...more] }),
        ),
      );
    }),
  ),
);
