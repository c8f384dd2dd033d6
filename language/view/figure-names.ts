/** How the public figures of a report are called, in the order of their groups; keys are the names of machine output. */
export interface FigureName {
  readonly label: string;
  readonly group: FigureGroup;
  /** a ratio that is told in per cent */
  readonly percent?: true;
}

export const FIGURE_GROUPS = [
  'The part',
  'Resin',
  'Vacuum and bag',
  'Time',
  'Cost of one part',
  'Cost of the order',
] as const;
export type FigureGroup = (typeof FIGURE_GROUPS)[number];

const named = (group: FigureGroup, label: string): FigureName => ({ group, label });
const share = (group: FigureGroup, label: string): FigureName => ({ group, label, percent: true });

export const partFigureNames: Readonly<Record<string, FigureName>> = {
  part_area: named('The part', 'area'),
  outline_length: named('The part', 'length'),
  outline_width: named('The part', 'width'),
  thickness: named('The part', 'thickness in the middle'),
  mass: named('The part', 'mass'),
  dry_mass: named('The part', 'mass without resin'),
  fibre_by_weight: share('The part', 'fibre by weight'),
  fibre_by_volume: share('The part', 'fibre by volume'),
  resin_in_part: named('Resin', 'resin in the part'),
  resin_elsewhere: named('Resin', 'resin thrown away'),
  resin_to_mix: named('Resin', 'resin to mix'),
  batches: named('Resin', 'batches'),
  gel_time: named('Resin', 'gel time'),
  pot_life: named('Resin', 'pot life'),
  open_time: named('Resin', 'open time'),
  air_pressure: named('Vacuum and bag', 'air pressure'),
  pump_leaves: named('Vacuum and bag', 'pump leaves'),
  driving_pressure: named('Vacuum and bag', 'pressure that drives the resin'),
  leak_limit_rise: named('Vacuum and bag', 'leak test, most rise'),
  leak_limit_time: named('Vacuum and bag', 'leak test, in'),
  bag_length: named('Vacuum and bag', 'bag film, length'),
  bag_width: named('Vacuum and bag', 'bag film, width'),
  pleats_needed: named('Vacuum and bag', 'pleats needed'),
  tape_length: named('Vacuum and bag', 'sealant tape'),
  working_time: named('Time', 'hands'),
  standing_time: named('Time', 'waiting'),
  material_cost: named('Cost of one part', 'material'),
  consumable_cost: named('Cost of one part', 'consumables'),
  labour_cost: named('Cost of one part', 'labour'),
  mould_cost: named('Cost of one part', 'mould'),
  overhead_cost: named('Cost of one part', 'overhead'),
  cost: named('Cost of one part', 'cost'),
  material_cost_order: named('Cost of the order', 'material'),
  consumable_cost_order: named('Cost of the order', 'consumables'),
  labour_cost_order: named('Cost of the order', 'labour'),
  mould_cost_order: named('Cost of the order', 'mould'),
  overhead_cost_order: named('Cost of the order', 'overhead'),
  cost_order: named('Cost of the order', 'cost'),
};

/** Of one layer. */
export const layerFigureNames: Readonly<Record<string, Omit<FigureName, 'group'>>> = {
  layer_area: { label: 'area' },
  layer_thickness: { label: 'thickness' },
  height_so_far: { label: 'height above the tool face' },
  layer_dry_mass: { label: 'dry mass' },
  layer_resin: { label: 'resin' },
  layer_mass: { label: 'wet mass' },
  layer_share: { label: 'share of the part', percent: true },
  layer_cost: { label: 'cost' },
  edge_excess: { label: 'too much cloth at the edge' },
  drape_shear: { label: 'shear of the cloth' },
  layer_fibre_by_volume: { label: 'fibre by volume', percent: true },
  layer_fibre_by_weight: { label: 'fibre by weight', percent: true },
};

/** Of one step. */
export const stepFigureNames: Readonly<Record<string, Omit<FigureName, 'group'>>> = {
  step_working_time: { label: 'hands' },
  step_standing_time: { label: 'waiting' },
  step_cost: { label: 'consumables' },
};
