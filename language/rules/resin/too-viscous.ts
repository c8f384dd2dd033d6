import { isKnown, text } from '../../../calc/figure/figure.ts';
import { type Usual, usual } from '../../../calc/figure/index.ts';
import { about, kelvin, viscosity } from '../kit/shown.ts';
import { resinViscosity } from '../kit/thickness-of-resin.ts';
import { rule } from '../rule.ts';
import { COLDEST } from './below-temperature.ts';

export const THICKEST: Usual = {
  habit: 'viscosity',
  what: 'thickest resin for infusion',
  value: viscosity(0.6),
  source: 'infusion resins 80 to 400 mPa.s, laminating epoxies from 600, from memory',
};

export const resinTooViscous = rule({
  name: 'resin/too-viscous',
  severity: 'warning',
  title: 'a resin too thick for infusion',
  on: 'recipe',
  check(context) {
    const { process } = context.recipe;
    const found = resinViscosity(context);
    const most = usual(context.bench, THICKEST);
    const coldest = usual(context.bench, COLDEST);
    if (process?.kind !== 'infusion' || found === undefined || !isKnown(most) || found.value <= most.value) return;
    // cold resin is thick by its temperature, which resin/below-temperature reports
    if (isKnown(coldest) && found.temperature < coldest.value - 0.5) return;
    const shown = {
      resin: process.resin ?? 'the resin',
      viscosity: viscosity(about(found.value)),
      temperature: kelvin(found.temperature),
      most: viscosity(most.value),
    };
    context.report({
      at: `${process.path}.resin`,
      message: text(
        '{resin} has {viscosity} at {temperature}: over {most} it is a laminating resin and will not run through the cloth',
        shown,
      ),
      related: [{ at: found.fact.at, message: text('the viscosity of {resin}', shown) }],
    });
  },
});
