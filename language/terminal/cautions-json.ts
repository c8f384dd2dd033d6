import { vapourDensity } from '../../calc/air/vapour.ts';
import type { Caution } from '../view/cautions.ts';
import { DEFERRAL } from '../words/cautions.ts';
import type { Hazard, LimitValue } from '../words/hazard.ts';
import type { SiNumber } from './si.ts';

const PPM = 1e-6;

/** What can hurt at the steps of a recipe, for machines: limits with agency, date and how they were come by. */
export function cautionsJson(cautions: readonly Caution[]): object {
  return {
    deferral: DEFERRAL,
    hazards: cautions.map(({ hazard, steps }) => ({
      name: hazard.name,
      title: hazard.title,
      brief: hazard.brief,
      harm: hazard.harm,
      steps: [...new Set(steps.map(({ verb }) => verb))],
      limits: hazard.limits.map(({ agency, values, date, mark }) => ({
        agency,
        values: values.map((value) => limitJson(value, hazard)),
        date,
        mark,
      })),
      source: hazard.source,
    })),
  };
}

/** As a share of the air by volume, and as the mass in a m3 of it where the vapour is one substance; else in the agency's words. */
function limitJson({ ppm, says, over }: LimitValue, { molarMass }: Hazard): object {
  const si = (value: number, unit: string): SiNumber => ({ value: Number(value.toPrecision(2)), unit });
  return {
    ...(ppm === undefined ? {} : { share: si(ppm * PPM, '1') }),
    ...(ppm === undefined || molarMass === undefined
      ? {}
      : { concentration: si(vapourDensity(ppm * PPM, molarMass), 'kg/m3') }),
    ...(says === undefined ? {} : { says }),
    ...(over === undefined ? {} : { over }),
  };
}
