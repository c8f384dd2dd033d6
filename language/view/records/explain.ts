import { quantity, type Text, text } from '../../../calc/figure/figure.ts';
import { type Bench, isKnown } from '../../../calc/figure/index.ts';
import { type BuildRecord, UNKNOWN } from '../../../calc/model/index.ts';
import { isImpossible, type Outcome } from '../../../calc/outcome.ts';
import { MASS, NUMBER, TEMPERATURE } from '../../../calc/quantity/index.ts';
import { explainMass, temperatureForViscosity } from '../../../calc/record/explain.ts';
import { massPlan } from '../../../calc/record/mass-plan.ts';
import { measured, resinTemperature } from '../../../calc/record/readings.ts';
import { workTemperature } from '../../../calc/resin/time.figure.ts';
import { viscosityAt } from '../../../calc/resin/viscosity.ts';

const share = (si: number) => ({ ...quantity(si, NUMBER), unit: '%' });
/** A mass or a fill time that is off by less than this needs no reason. Common practice. */
const WORTH_TELLING = { mass: 0.03, fill: 0.08 };
const ROOM = 293.15;

/** What the difference of a build to its plan comes to, in numbers; nothing where it is small or cannot be told. */
export function explainBuild(record: BuildRecord, bench: Bench | undefined, usualFill: number | undefined): Text[] {
  if (bench === undefined) return [];
  return [...massExplained(record, bench), ...fillExplained(record, bench, usualFill)];
}

function massExplained(record: BuildRecord, bench: Bench): Text[] {
  const found = measured(record, 'mass');
  const plan = massPlan(bench);
  if (found === undefined || plan === undefined || Math.abs(found / plan.total - 1) < WORTH_TELLING.mass) return [];
  const told = explainMass(plan, found);
  if (isImpossible(told)) return [text('{problem}', { problem: told.problem })];
  const shown = {
    off: share(Math.abs(told.off)),
    now: share(told.fibreByVolume.now),
    planned: share(told.fibreByVolume.planned),
    grams: quantity(Math.abs(told.resinMore), MASS),
  };
  return [
    told.off > 0
      ? text(
          '{off} over plan: a fibre fraction of {now} instead of {planned} by volume, or {grams} more in core and mesh',
          shown,
        )
      : text(
          '{off} under plan: a fibre fraction of {now} instead of {planned} by volume, or {grams} less in core and mesh',
          shown,
        ),
  ];
}

/** A fill time goes with the viscosity: by the temperature of the record, or the temperature that would explain it. */
function fillExplained(record: BuildRecord, bench: Bench, usual: number | undefined): Text[] {
  const fill = measured(record, 'fill');
  const viscosity = viscosityOf(bench);
  const plan = bench.ask(workTemperature);
  if (fill === undefined || usual === undefined || viscosity === undefined || !isKnown(plan)) return [];
  const times = fill / usual;
  if (Math.abs(times - 1) < WORTH_TELLING.fill) return [];
  const was = resinTemperature(record);
  const [then, by_plan] = [was === undefined ? undefined : viscosity(was), viscosity(plan.value)];
  const shown = {
    off: share(Math.abs(times - 1)),
    planned: quantity(plan.value, TEMPERATURE),
  };
  if (
    was !== undefined &&
    typeof then === 'number' &&
    typeof by_plan === 'number' &&
    Math.abs(then / by_plan - 1) > 0.02
  ) {
    const more = { ...shown, was: quantity(was, TEMPERATURE), resin: share(Math.abs(then / by_plan - 1)) };
    const slower = times > 1;
    if (then > by_plan)
      return [
        slower
          ? text(
              'filled {off} more slowly than is usual: at {was} instead of {planned} the resin is {resin} thicker',
              more,
            )
          : text(
              'filled {off} faster than is usual, though at {was} instead of {planned} the resin is {resin} thicker',
              more,
            ),
      ];
    return [
      slower
        ? text(
            'filled {off} more slowly than is usual, though at {was} instead of {planned} the resin is {resin} thinner',
            more,
          )
        : text('filled {off} faster than is usual: at {was} instead of {planned} the resin is {resin} thinner', more),
    ];
  }
  const temperature = temperatureForViscosity(viscosity, plan.value, times);
  if (isImpossible(temperature)) return [];
  const told = { ...shown, temperature: quantity(temperature, TEMPERATURE) };
  return [
    times > 1
      ? text('filled {off} more slowly than is usual: {temperature} instead of {planned} would explain it', told)
      : text('filled {off} faster than is usual: {temperature} instead of {planned} would explain it', told),
  ];
}

function viscosityOf(bench: Bench): ((temperature: number) => Outcome) | undefined {
  const resin = bench.recipe.process?.resin;
  const facts = resin === undefined ? undefined : bench.material(resin)?.viscosity;
  const readings = (facts ?? []).flatMap(({ value }) =>
    value === UNKNOWN ? [] : [{ temperature: value.temperature?.si ?? ROOM, value: value.value.si }],
  );
  if (readings.length === 0) return undefined;
  return (temperature) => {
    const at = viscosityAt(readings, temperature);
    return isImpossible(at) ? at : at.value;
  };
}
