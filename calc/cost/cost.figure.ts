import { processSteps } from '../bag/bag.figure.ts';
import {
  type Bench,
  cannot,
  defineFigure,
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
  siOf,
  text,
  typed,
  worked,
} from '../figure/index.ts';
import { materialAt } from '../laminate/fraction.figure.ts';
import { overLayers } from '../laminate/mass.figure.ts';
import { UNKNOWN } from '../model/index.ts';
import { inRecipe } from '../outline/part.figure.ts';
import { type StepItem, stepAmount, takesNothing } from '../plan/amount.figure.ts';
import { averageWorkingTime } from '../plan/total.figure.ts';
import { AREA, LENGTH, MASS, type Quantity, sameDimension, VOLUME } from '../quantity/index.ts';
import { additions } from '../resin/mix.figure.ts';
import { resinInPart, resinsUsed, resinToMix } from '../resin/needs.figure.ts';
import { labourCost as labourFormula } from './labour.ts';
import { mouldShare, orderCost, partCost } from './part-cost.ts';
import { costOf, layerCost, resinPrice } from './price.figure.ts';
import type { Bought } from './price.ts';
import { sumOf } from './sum.ts';

/** Cost of all that is laid and mixed for one part: with cutting waste, and the resin that is thrown away; money. */
export const materialCost = defineFigure<number>('material_cost', (bench) => {
  const layers = overLayers(bench, (laid) => bench.ask(layerCost, laid.key), 'sum of all layers');
  const more = resinThrownAway(bench);
  if (!isKnown(layers) || !isKnown(more)) return missing(layers, more);
  const words = 'layers with their waste, and the resin that does not stay in the part';
  return known(layers.value + more.value, reason('computed', words, { reasons: reasonsOf(layers, more) }));
});

/** Resin mixed and not in the part, and what is stirred into it. */
function resinThrownAway(bench: Bench): Figure<number> {
  const names = bench.ask(resinsUsed);
  return isKnown(names) ? sumOf(names.value.map((name) => thrownAway(bench, name))) : names;
}

function thrownAway(bench: Bench, name: string): Figure<number> {
  const mix = bench.ask(resinToMix, name);
  const inside = bench.ask(resinInPart, name);
  const extras = bench.ask(additions, name);
  if (!isKnown(mix) || !isKnown(inside) || !isKnown(extras)) return missing(mix, inside, extras);
  const { total } = mix.value;
  const price = total > 0 ? bench.ask(resinPrice, name) : nothing;
  const stirredIn = sumOf(extras.value.map(({ material, share }) => costOfExtra(bench, material, total * share)));
  if (!isKnown(price) || !isKnown(stirredIn)) return missing(price, stirredIn);
  const cost = (total - inside.value.total) * price.value + stirredIn.value;
  return knownBy(cost, reasonsOf(price, stirredIn));
}

function costOfExtra(bench: Bench, name: string, mass: number): Figure<number> {
  const at = inRecipe(bench, bench.recipe.process?.path ?? '');
  const material = materialAt(bench, name, 'what is stirred in', at);
  return isKnown(material) ? costOf(bench, material.value, { mass }) : material;
}

const nothing = known(0);

const measure = (amount: Quantity): Bought => {
  if (sameDimension(amount.dimension, AREA)) return { area: amount.si };
  if (sameDimension(amount.dimension, LENGTH)) return { length: amount.si, pieces: 1 };
  if (sameDimension(amount.dimension, MASS)) return { mass: amount.si };
  return sameDimension(amount.dimension, VOLUME) ? { volume: amount.si } : { pieces: amount.si };
};

/** Kinds whose price is that of the mix: with catalyst and fillers. */
const MIXED: ReadonlySet<string> = new Set(['resin', 'gelcoat', 'paste']);

/** Cost of one thing that a step uses up. */
function bought(bench: Bench, item: StepItem, path: string): Figure<number> {
  const words = text('the material of {what}', { what: item.what });
  const found = materialAt(bench, item.material, words, inRecipe(bench, path));
  if (!isKnown(found)) return found;
  const material = found.value;
  const amount = measure(item.amount);
  if (amount.mass !== undefined && MIXED.has(material.kind)) {
    const price = bench.ask(resinPrice, material.name);
    return isKnown(price) ? knownBy(price.value * amount.mass, price.reasons) : price;
  }
  return costOf(bench, material, inEveryMeasure(amount, material));
}

/** What is taken by area has a length off its roll, what is weighed a volume, and the other way round. */
function inEveryMeasure({ area, length, mass, volume, pieces }: Bought, material: MaterialFacts): Bought {
  const roll = material.roll?.value;
  const width = roll === undefined || roll === UNKNOWN ? material.width?.value : roll.width;
  const across = width === undefined || width === UNKNOWN ? undefined : width.si;
  const told = material.density?.value;
  const density = told === undefined || told === UNKNOWN || !(told.si > 0) ? undefined : told.si;
  return {
    area: length !== undefined && across !== undefined ? length * across : area,
    length: area !== undefined && across !== undefined && across > 0 ? area / across : length,
    mass: volume !== undefined && density !== undefined ? volume * density : mass,
    volume: mass !== undefined && density !== undefined ? mass / density : volume,
    pieces,
  };
}

/** Cost of the consumables of one step; money. */
export const stepCost = defineFigure<number>('step_cost', (bench, path) => {
  const amount = bench.ask(stepAmount, path);
  if (!isKnown(amount)) return amount;
  const each: Figure<number>[] = [];
  for (const item of amount.value.items) if (item.bought) each.push(bought(bench, item, path));
  // most steps use nothing up
  return each.length === 0 ? nothing : sumOf(each);
});

/** Cost of what is used up and thrown away: tape, film, sheets, lines, release; money. */
export const consumableCost = defineFigure<number>('consumable_cost', (bench) => {
  const steps = bench.ask(processSteps);
  if (!isKnown(steps)) return steps;
  const each: Figure<number>[] = [];
  for (const step of steps.value) if (!takesNothing(step)) each.push(bench.ask(stepCost, step.path));
  const sum = sumOf(each);
  if (!isKnown(sum)) return sum;
  return known(sum.value, reason('computed', 'consumables of all steps', { reasons: sum.reasons }));
});

/** Cost of hands for the average part of the order; money. */
export const labourCost = defineFigure<number>('labour_cost', (bench) => {
  const { shop } = bench;
  const wage = factOf(shop?.labour, 'the labour rate of the shop', { entry: shop?.entry ?? 'shop', path: 'labour' });
  const time = bench.ask(averageWorkingTime);
  if (!isKnown(time) || !isKnown(wage)) return missing(time, wage);
  const words = text('working time at {wage}', { wage: wage.value });
  return worked(labourFormula(time.value, wage.value.si), words, { reasons: reasonsOf(time, wage) });
});

/** Share of the mould that one part pays; money. Nothing where the tool states no cost. */
export const mouldCost = defineFigure<number>('mould_cost', (bench) => {
  const { stack } = bench.recipe;
  if (stack?.tool === undefined) return known(0, reason('computed', 'the stack names no tool'));
  const tool = bench.tool(stack.tool);
  if (tool === undefined)
    return cannot(
      reason('typed', text('nothing among the tools is called {name}', { name: stack.tool }), {
        at: inRecipe(bench, stack.path),
      }),
    );
  if (tool.cost === undefined)
    return known(
      0,
      reason('computed', text('{tool} states no cost: none is counted', { tool: tool.name }), {
        at: { entry: tool.entry, path: 'cost' },
      }),
    );
  return ifKnown(factOf(tool.cost, text('the cost of {tool}', { tool: tool.name }), tool.cost.at), (cost, reasons) =>
    ifKnown(
      typed(
        cost.parts,
        text('over how many parts the cost of {tool} is spread', { tool: tool.name }),
        tool.cost?.at ?? { entry: tool.entry, path: 'cost' },
      ),
      (parts) =>
        worked(
          mouldShare(cost.amount.si, parts),
          parts === 1
            ? text('{cost} over 1 part', { cost: cost.amount })
            : text('{cost} over {parts} parts', { cost: cost.amount, parts }),
          { reasons },
        ),
    ),
  );
});

/** All costs of one part before and with overhead. */
const whole = defineFigure<{ readonly overhead: number; readonly total: number }>('cost_of_part', (bench) => {
  const share = bench.shop?.overhead;
  const overhead = share === undefined ? noOverhead : siOf(factOf(share, 'the overhead of the shop', share.at));
  const material = bench.ask(materialCost);
  const consumables = bench.ask(consumableCost);
  const labour = bench.ask(labourCost);
  const mould = bench.ask(mouldCost);
  if (!isKnown(material) || !isKnown(consumables) || !isKnown(labour) || !isKnown(mould) || !isKnown(overhead))
    return missing(material, consumables, labour, mould, overhead);
  const direct = {
    material: material.value,
    consumables: consumables.value,
    labour: labour.value,
    mould: mould.value,
  };
  return worked(partCost(direct, overhead.value), 'material, consumables, labour, mould and overhead', {
    reasons: reasonsOf(material, consumables, labour, mould, overhead),
  });
});

const noOverhead = known(0, reason('computed', 'the shop states no overhead: none is added'));

/** Overhead that one part bears; money. */
export const overheadCost = defineFigure<number>('overhead_cost', (bench) =>
  ifKnown(bench.ask(whole), (whole, reasons) => knownBy(whole.overhead, reasons)),
);

/** Everything that one part costs; money. */
export const cost = defineFigure<number>('cost', (bench) =>
  ifKnown(bench.ask(whole), (whole, reasons) => knownBy(whole.total, reasons)),
);

/** The same for all parts that the order asks for. */
function forOrder(of: FigureDefinition<number>): FigureDefinition<number> {
  return defineFigure<number>(`${of.name}_order`, (bench) =>
    ifKnown(bench.ask(of), (one, reasons) => {
      const { quantity: parts } = bench.recipe;
      const all = orderCost({ material: 0, consumables: 0, labour: 0, mould: 0, overhead: 0, total: one }, parts);
      return 'problem' in all
        ? cannot(reason('typed', all.problem, { at: inRecipe(bench, 'quantity') }))
        : known(
            all.total,
            reason('computed', parts === 1 ? text('1 part') : text('{parts} parts', { parts }), { reasons }),
          );
    }),
  );
}

export const materialCostOrder = forOrder(materialCost);
export const consumableCostOrder = forOrder(consumableCost);
export const labourCostOrder = forOrder(labourCost);
export const mouldCostOrder = forOrder(mouldCost);
export const overheadCostOrder = forOrder(overheadCost);
export const costOrder = forOrder(cost);
