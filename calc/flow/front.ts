import { type Demand, demand, fraction, given, type Outcome, positive } from '../outcome.ts';

/** A preform that resin runs through. Constant viscosity, rigid bed: a time to plan by, within a factor of two. */
export interface Bed {
  /** share of room between the fibres, 1 - Vf */
  readonly porosity: number;
  /** m2, along the flow */
  readonly permeability: number;
}

/** Pa s and Pa */
export interface Drive {
  readonly viscosity: number;
  readonly pressure: number;
}

const demands = (bed: Bed, drive: Drive): Demand[] => [
  fraction('the porosity', bed.porosity),
  positive('the permeability', bed.permeability),
  positive('the viscosity', drive.viscosity),
  positive('the driving pressure', drive.pressure),
];

/** Time (s) from a line feed over `length` (m): phi mu L2 / (2 K dP). Source: Darcy 1856, integrated. */
export function lineFillTime(bed: Bed, drive: Drive, length: number): Outcome {
  return given(
    [...demands(bed, drive), positive('the length of flow', length)],
    () => (bed.porosity * drive.viscosity * length * length) / (2 * bed.permeability * drive.pressure),
  );
}

/** How far (m) a line feed reaches in `time` (s): sqrt(2 K dP t / (phi mu)). */
export function lineReach(bed: Bed, drive: Drive, time: number): Outcome {
  return given([...demands(bed, drive), positive('the time', time)], () =>
    Math.sqrt((2 * bed.permeability * drive.pressure * time) / (bed.porosity * drive.viscosity)),
  );
}

/**
 * Time (s) from a port of radius `port` (m) in the middle out to `radius` (m):
 * phi mu / (2 K dP) [R2 ln(R/r0) - (R2 - r0 2)/2]. Source: Adams, Russel and Rebenfeld 1988.
 */
export function radialFillTime(bed: Bed, drive: Drive, port: number, radius: number): Outcome {
  return given(
    [
      ...demands(bed, drive),
      positive('the radius of the port', port),
      demand(radius > port, 'the radius to fill must be more than that of the port'),
    ],
    () => {
      const shape = radius * radius * Math.log(radius / port) - (radius * radius - port * port) / 2;
      return ((bed.porosity * drive.viscosity) / (2 * bed.permeability * drive.pressure)) * shape;
    },
  );
}

/** Permeability (m2) from a strip that filled `length` (m) in `time` (s): phi mu L2 / (2 t dP). */
export function permeabilityFromStrip(porosity: number, drive: Drive, length: number, time: number): Outcome {
  return given(
    [
      ...demands({ porosity, permeability: 1 }, drive),
      positive('the length of flow', length),
      positive('the time', time),
    ],
    () => (porosity * drive.viscosity * length * length) / (2 * time * drive.pressure),
  );
}
