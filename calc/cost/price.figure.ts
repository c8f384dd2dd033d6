import { layerPiece, type Piece } from '../cloth/area.figure.ts';
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
  missing,
  reason,
  reasonsOf,
  text,
  typed,
  usual,
  whenKnown,
} from '../figure/index.ts';
import { onceFor } from '../kept.ts';
import { densityOf, factPlace, layerArealWeight, layerMaterial, materialAt } from '../laminate/fraction.figure.ts';
import { layerResin, type ResinItem } from '../laminate/mass.figure.ts';
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
import { sumOf } from './sum.ts';

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
  const facts = bench.prices(material.name) ?? none;
  const at = facts[0]?.at ?? factPlace(material, 'price');
  const prices = knownPrices(facts);
  if (prices.length === 0)
    return typed<number>(facts[0]?.value === UNKNOWN ? UNKNOWN : undefined, priceWords(material), at);
  const found = priceOf(prices, bought);
  if (isImpossible(found)) {
    const words = text('{what}: {problem}', { what: priceWords(material), problem: found.problem });
    return cannot(reason('computed', words, { at }));
  }
  const money = bench.ask(currency);
  const { amount } = found.price;
  if (isKnown(money) && amount.currency !== undefined && amount.currency !== money.value) {
    const words = text('{what} is in {own}, the costs of the shop are in {currency}', {
      what: priceWords(material),
      own: amount.currency,
      currency: money.value,
    });
    return cannot(reason('typed', words, { at }));
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

const priceWords = ({ name }: MaterialFacts) => text('the price of {material}', { material: name });

/** What one kg of mixed resin costs: with its catalyst, or with the fillers of a paste; money/kg. */
export const resinPrice: FigureDefinition<number> = defineFigure<number>('resin_price', (bench, name) => {
  const found = materialAt(bench, name, 'the resin', inRecipe(bench, bench.recipe.process?.path ?? ''));
  if (!isKnown(found)) return found;
  const resin = found.value;
  const from = resin.madeFrom?.value;
  if (from !== undefined && bench.prices(name) === undefined) return ofPaste(bench, resin, from);
  const density = densityIn(resin);
  const volume = density !== undefined && density > 0 ? 1 / density : undefined;
  const own = costOf(bench, resin, { mass: 1, volume });
  const dosed = bench.ask(catalystDose, name);
  if (!isKnown(own) || !isKnown(dosed)) return missing(own, dosed);
  const dose = dosed.value;
  if (dose === undefined) return knownBy(own.value, reasonsOf(own, dosed));
  const catalyst = materialAt(bench, dose.material, 'the catalyst', factPlace(resin, 'catalyst'));
  if (!isKnown(catalyst)) return catalyst;
  const more = costOf(bench, catalyst.value, { mass: dose.dose });
  return isKnown(more) ? knownBy(own.value + more.value, reasonsOf(own, dosed, more)) : more;
});

/** kg/m3, where it is told. */
function densityIn(material: MaterialFacts): number | undefined {
  const density = material.density === undefined ? undefined : densityOf(material);
  return density !== undefined && isKnown(density) ? density.value : undefined;
}

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
  const { key, layer } = laid;
  if (layer.kind === 'coat') return nothing;
  const found = bench.ask(layerMaterial, key);
  const piece = bench.ask(layerPiece, key);
  const waste = usual(bench, isCloth(laid) ? CLOTH_WASTE : CORE_WASTE);
  if (!isKnown(found) || !isKnown(piece) || !isKnown(waste)) return missing(found, piece, waste);
  const material = found.value;
  const area = taken(piece.value.area, waste.value);
  if (isImpossible(area)) return cannot(reason('computed', area.problem, { at: inRecipe(bench, laid.path) }));
  const length = offRoll(laid, material, piece.value, area);
  const bought = isCloth(laid) ? ofCloth(bench, key, area, length) : ofSheet(bench, key, material, area, length);
  if (!isKnown(bought)) return bought;
  const cost = costOf(bench, material, bought.value);
  if (!isKnown(cost)) return cost;
  return knownBy(cost.value, [...cost.reasons, ...reasonsOf(found, piece, waste)]);
}

const nothing = known(0);

/** m off the roll; a strip is taken in lanes of its own length. */
function offRoll({ layer }: LaidLayer, material: MaterialFacts, piece: Piece, area: number): number | undefined {
  const roll = material.roll?.value;
  if (roll === undefined || roll === UNKNOWN) return undefined;
  const width = roll.width.si;
  if (layer.extent.kind === 'strip') return piece.length * Math.max(1, Math.ceil(piece.width / width - 1e-9));
  return width > 0 ? area / width : undefined;
}

function ofCloth(bench: Bench, key: string, area: number, length: number | undefined): Figure<Bought> {
  const weight = bench.ask(layerArealWeight, key);
  return known({ area, length, mass: isKnown(weight) ? area * weight.value : undefined, pieces: 1 });
}

function ofSheet(
  bench: Bench,
  key: string,
  material: MaterialFacts,
  area: number,
  length: number | undefined,
): Figure<Bought> {
  const thickness = bench.ask(layerThickness, key);
  if (!isKnown(thickness)) return thickness;
  const volume = area * thickness.value;
  const density = densityIn(material);
  const mass = density === undefined ? undefined : volume * density;
  const sheet = material.sheet?.value;
  const whole = sheet === undefined || sheet === UNKNOWN ? 0 : sheet.length.si * sheet.width.si;
  return known({ area, length, mass, volume, pieces: whole > 0 ? area / whole : 1, thickness: thickness.value });
}

/** What a layer costs with the resin in it; money. */
export const layerCost = defineFigure<number>('layer_cost', (bench, key) => {
  const laid = bench.ask(laidLayer, key);
  if (!isKnown(laid)) return laid;
  const dry = dryCost(bench, laid.value);
  const resin = bench.ask(layerResin, key);
  if (!isKnown(dry) || !isKnown(resin)) return missing(dry, resin);
  const wet = costOfResin(bench, resin.value.items);
  if (!isKnown(wet)) return wet;
  return known(
    dry.value + wet.value,
    reason('computed', 'what is cut, with waste, and the resin in it', { reasons: reasonsOf(dry, resin, wet) }),
  );
});

/** What the resin of a layer costs; a prepreg brings its own. */
function costOfResin(bench: Bench, items: readonly ResinItem[]): Figure<number> {
  const each: Figure<number>[] = [];
  for (const { resin, mass } of items) {
    if (bench.material(resin)?.kind === 'prepreg') continue;
    const price = bench.ask(resinPrice, resin);
    each.push(isKnown(price) ? knownBy(price.value * mass, price.reasons) : price);
  }
  return sumOf(each);
}
