import { type Demand, fraction, given, type Outcome, positive } from '../outcome.ts';
import type { Bed } from './front.ts';

/** A layer of preform or mesh, `thickness` m. */
export interface BedLayer extends Bed {
  readonly thickness: number;
}

/**
 * Layers side by side as one bed: permeability and porosity weighted by thickness. True behind the lead of the mesh
 * only.
 */
export function besideEachOther(layers: readonly BedLayer[]): Outcome<Bed> {
  return given(
    [
      some(layers),
      ...layers.flatMap((l) => [
        positive('the thickness of each layer', l.thickness),
        positive('the permeability of each layer', l.permeability),
        fraction('the porosity of each layer', l.porosity),
      ]),
    ],
    () => {
      const thickness = layers.reduce((sum, l) => sum + l.thickness, 0);
      const mean = (of: (l: BedLayer) => number) => layers.reduce((sum, l) => sum + l.thickness * of(l), 0) / thickness;
      return { permeability: mean((l) => l.permeability), porosity: mean((l) => l.porosity) };
    },
  );
}

/** A layer that resin crosses, with its permeability through the thickness (m2). */
export interface CrossedLayer {
  readonly thickness: number;
  readonly through: number;
}

/** Permeability (m2) through layers on top of each other: sum h / sum (h / Kz), resistances in series. */
export function onTopOfEachOther(layers: readonly CrossedLayer[]): Outcome {
  return given(
    [
      some(layers),
      ...layers.flatMap((l) => [
        positive('the thickness of each layer', l.thickness),
        positive('the permeability through each layer', l.through),
      ]),
    ],
    () => layers.reduce((sum, l) => sum + l.thickness, 0) / layers.reduce((sum, l) => sum + l.thickness / l.through, 0),
  );
}

/**
 * How far (m) the front in the mesh runs ahead of that on the tool face: sqrt(6 K_mesh h_mesh h_preform / Kz). It
 * depends on neither viscosity nor pressure. Scaling as in Hsiao, Mathur, Advani, Gillespie and Fink 2000; the factor 6
 * is that of a steady wedge with no storage in the mesh.
 */
export function meshLead(
  mesh: { readonly thickness: number; readonly permeability: number },
  preform: CrossedLayer,
): Outcome {
  return given(
    [
      positive('the thickness of the mesh', mesh.thickness),
      positive('the permeability of the mesh', mesh.permeability),
      positive('the thickness of the preform', preform.thickness),
      positive('the permeability through the preform', preform.through),
    ],
    () => Math.sqrt((6 * mesh.permeability * mesh.thickness * preform.thickness) / preform.through),
  );
}

const some = (layers: readonly unknown[]): Demand => (layers.length > 0 ? undefined : 'there is no layer');
