import { text } from '../../../calc/figure/figure.ts';
import type { Usual } from '../../../calc/figure/index.ts';
import { habitOf } from '../kit/habit.ts';
import { addStep } from '../kit/missing-step.ts';
import { about, kelvin, viscosity } from '../kit/shown.ts';
import { firstOf, stepsOf } from '../kit/steps.ts';
import { resinViscosity } from '../kit/thickness-of-resin.ts';
import { familyOf, hasStyrene } from '../kit/wetted.ts';
import { rule } from '../rule.ts';
import { THICKEST } from './too-viscous.ts';

const DEGAS_FROM: Usual = {
  habit: 'degas',
  what: 'resin that keeps its stirred-in air',
  value: viscosity(0.4),
  source: 'common practice',
};

export const resinDegas = rule({
  name: 'resin/degas',
  severity: 'info',
  title: 'a thick resin is infused with the air that was stirred in',
  on: 'recipe',
  check(context) {
    const { process } = context.recipe;
    if (process?.kind !== 'infusion' || process.resin === undefined) return;
    if (firstOf(stepsOf(context), 'degas') !== undefined) return;
    const found = resinViscosity(context);
    const from = habitOf(context.bench, DEGAS_FROM);
    if (found === undefined || found.value <= from || found.value > habitOf(context.bench, THICKEST)) return;
    if (hasStyrene(familyOf(context, context.bench.material(process.resin)))) return;
    const shown = {
      resin: process.resin,
      viscosity: viscosity(about(found.value)),
      temperature: kelvin(found.temperature),
      from: viscosity(from),
    };
    context.report({
      at: `${process.path}.resin`,
      message: text(
        '{resin} has {viscosity} at {temperature}: over {from} the air that was stirred in stays in; degas the mix, or let it stand',
        shown,
      ),
      related: [{ at: found.fact.at, message: text('the viscosity of {resin}', shown) }],
      fixes: [addStep(context, 'mix', 'degas 10 min')],
    });
  },
});
