import { demand, given, type Outcome, positive } from '../outcome.ts';

/** What a part is made of by plan, kg and kg/m3. */
export interface PlannedMass {
  readonly total: number;
  /** of the cloth */
  readonly fibre: number;
  /** in the cloth */
  readonly resinInCloth: number;
  readonly fibreDensity: number;
  readonly resinDensity: number;
}

/** What a measured mass comes to where all of the difference is resin. */
export interface MassExplained {
  /** measured over planned, less 1 */
  readonly off: number;
  /** kg of resin more than planned, negative for less */
  readonly resinMore: number;
  readonly fibreByWeight: { readonly planned: number; readonly now: number };
  readonly fibreByVolume: { readonly planned: number; readonly now: number };
}

/**
 * A mass off the plan as resin: in the cloth it is another fibre fraction, outside it so many grams in core cuts or under
 * the mesh. Vf = (m_f / rho_f) / (m_f / rho_f + m_r / rho_r).
 */
export function explainMass(plan: PlannedMass, measured: number): Outcome<MassExplained> {
  return given(
    [
      positive('the planned mass', plan.total),
      positive('the mass of the cloth', plan.fibre),
      positive('the resin in the cloth', plan.resinInCloth),
      positive('the density of the fibre', plan.fibreDensity),
      positive('the density of the resin', plan.resinDensity),
      positive('the measured mass', measured),
      demand(
        plan.resinInCloth + measured - plan.total > 0,
        'the part weighs less than its dry layers: a layer is missing, or the scale is off',
      ),
    ],
    () => {
      const resinMore = measured - plan.total;
      const by = (resin: number) => ({
        weight: plan.fibre / (plan.fibre + resin),
        volume: plan.fibre / plan.fibreDensity / (plan.fibre / plan.fibreDensity + resin / plan.resinDensity),
      });
      const [planned, now] = [by(plan.resinInCloth), by(plan.resinInCloth + resinMore)];
      return {
        off: measured / plan.total - 1,
        resinMore,
        fibreByWeight: { planned: planned.weight, now: now.weight },
        fibreByVolume: { planned: planned.volume, now: now.volume },
      };
    },
  );
}

/**
 * The temperature (K) at which a resin is `times` as thick as at `planned` (K): a fill time goes with the viscosity
 * (Darcy). `viscosity` gives Pa s at a temperature and falls as it rises; searched by halving between 0 and 120 degC.
 */
export function temperatureForViscosity(
  viscosity: (temperature: number) => Outcome,
  planned: number,
  times: number,
): Outcome {
  const base = viscosity(planned);
  if (typeof base !== 'number') return base;
  return given([positive('the viscosity', base), positive('how many times as thick', times)], () => {
    const wanted = base * times;
    let [low, high] = [273.15, 393.15];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      const at = viscosity(middle);
      if (typeof at !== 'number') return at;
      if (at > wanted) low = middle;
      else high = middle;
    }
    const edge = Math.min(low - 273.15, 393.15 - high);
    return edge < 1e-6 ? { problem: 'no temperature of a shop explains it' } : (low + high) / 2;
  });
}

/** The pressure (Pa) that fills `times` as slowly as `planned` (Pa) does: a fill time goes with its reciprocal. */
export function pressureForFill(planned: number, times: number): Outcome {
  return given(
    [positive('the driving pressure', planned), positive('how many times as slow', times)],
    () => planned / times,
  );
}
