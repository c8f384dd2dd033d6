import { processSteps } from '../bag/bag.figure.ts';
import {
  allKnown,
  type Bench,
  cannot,
  defineFigure,
  type Figure,
  type FigureDefinition,
  factOf,
  ifKnown,
  known,
  knownBy,
  reason,
  text,
  typed,
  whenKnown,
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

/** Cost of all that is laid and mixed for one part: with cutting waste, and the resin that is thrown away; money. */
export const materialCost = defineFigure<number>('material_cost', (bench) =>
  whenKnown(
    {
      layers: overLayers(bench, (laid) => bench.ask(layerCost, laid.key), 'sum of all layers'),
      more: resinThrownAway(bench),
    },
    ({ layers, more }, reasons) =>
      known(
        layers + more,
        reason('computed', 'layers with their waste, and the resin that does not stay in the part', { reasons }),
      ),
  ),
);

/** Resin mixed and not in the part, and what is stirred into it. */
function resinThrownAway(bench: Bench): Figure<number> {
  return ifKnown(bench.ask(resinsUsed), (names) => {
    const each = names.map((name) =>
      whenKnown(
        { mix: bench.ask(resinToMix, name), inside: bench.ask(resinInPart, name), extras: bench.ask(additions, name) },
        ({ mix, inside, extras }) => {
          const price = mix.total > 0 ? bench.ask(resinPrice, name) : known(0);
          const added = extras.map((e) =>
            ifKnown(
              materialAt(bench, e.material, 'what is stirred in', inRecipe(bench, bench.recipe.process?.path ?? '')),
              (material) => costOf(bench, material, { mass: mix.total * e.share }),
            ),
          );
          return whenKnown({ price, added: allKnown(added) }, (v, reasons) =>
            knownBy((mix.total - inside.total) * v.price + v.added.reduce((s, c) => s + c, 0), reasons),
          );
        },
      ),
    );
    return ifKnown(allKnown(each), (each, reasons) =>
      knownBy(
        each.reduce((sum, c) => sum + c, 0),
        reasons,
      ),
    );
  });
}

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
  return ifKnown(
    materialAt(bench, item.material, text('the material of {what}', { what: item.what }), inRecipe(bench, path)),
    (material) => {
      const amount = measure(item.amount);
      if (amount.mass !== undefined && MIXED.has(material.kind))
        return ifKnown(bench.ask(resinPrice, material.name), (price, reasons) =>
          knownBy(price * item.amount.si, reasons),
        );
      const roll = material.roll?.value;
      const width = roll === undefined || roll === UNKNOWN ? material.width?.value : roll.width;
      const across = width === undefined || width === UNKNOWN ? undefined : width.si;
      const converted: Bought = {
        ...amount,
        ...(amount.area !== undefined && across !== undefined && across > 0 ? { length: amount.area / across } : {}),
        ...(amount.length !== undefined && across !== undefined ? { area: amount.length * across } : {}),
        ...densityMeasures(amount, material.density?.value),
      };
      return costOf(bench, material, converted);
    },
  );
}

function densityMeasures(amount: Bought, density: Quantity | typeof UNKNOWN | undefined): Bought {
  if (density === undefined || density === UNKNOWN || !(density.si > 0)) return {};
  if (amount.mass !== undefined) return { volume: amount.mass / density.si };
  return amount.volume === undefined ? {} : { mass: amount.volume * density.si };
}

/** Cost of the consumables of one step; money. */
export const stepCost = defineFigure<number>('step_cost', (bench, path) =>
  ifKnown(bench.ask(stepAmount, path), (amount) => {
    const items = amount.items.filter((i) => i.bought);
    // most steps use nothing up
    if (items.length === 0) return known(0);
    return ifKnown(allKnown(items.map((i) => bought(bench, i, path))), (each, reasons) =>
      knownBy(
        each.reduce((sum, c) => sum + c, 0),
        reasons,
      ),
    );
  }),
);

/** Cost of what is used up and thrown away: tape, film, sheets, lines, release; money. */
export const consumableCost = defineFigure<number>('consumable_cost', (bench) =>
  ifKnown(bench.ask(processSteps), (steps) =>
    ifKnown(allKnown(steps.flatMap((s) => (takesNothing(s) ? [] : [bench.ask(stepCost, s.path)]))), (each, reasons) =>
      known(
        each.reduce((sum, c) => sum + c, 0),
        reason('computed', 'consumables of all steps', { reasons }),
      ),
    ),
  ),
);

/** Cost of hands for the average part of the order; money. */
export const labourCost = defineFigure<number>('labour_cost', (bench) => {
  const { shop } = bench;
  const wage = factOf(shop?.labour, 'the labour rate of the shop', { entry: shop?.entry ?? 'shop', path: 'labour' });
  return whenKnown({ time: bench.ask(averageWorkingTime), wage }, (v, reasons) =>
    worked(labourFormula(v.time, v.wage.si), text('working time at {wage}', { wage: v.wage }), { reasons }),
  );
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
  const overhead =
    share === undefined
      ? known(0, reason('computed', 'the shop states no overhead: none is added'))
      : ifKnown(factOf(share, 'the overhead of the shop', share.at), (o, reasons) => knownBy(o.si, reasons));
  const inputs = {
    material: bench.ask(materialCost),
    consumables: bench.ask(consumableCost),
    labour: bench.ask(labourCost),
    mould: bench.ask(mouldCost),
    overhead,
  };
  return whenKnown(inputs, ({ overhead: o, ...direct }, reasons) =>
    worked(partCost(direct, o), 'material, consumables, labour, mould and overhead', { reasons }),
  );
});

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
