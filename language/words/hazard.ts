/** How a figure was come by. */
export type Mark = 'read on a public page' | 'from memory';

/** A limit in parts per million of the air, or in the agency's own words, and the time that it is averaged over. */
export interface LimitValue {
  readonly ppm?: number;
  readonly says?: string;
  readonly over?: string;
}

/** A limit in the air at the workplace. */
export interface ExposureLimit {
  readonly agency: string;
  readonly values: readonly LimitValue[];
  /** the year of the list or of the page that was read */
  readonly date: number;
  readonly mark: Mark;
}

/** A step has the hazard where its verb is listed and, if anything more is said, one of the materials at work answers to it. */
export interface Applies {
  readonly verbs: readonly string[];
  /** resin families */
  readonly families?: readonly string[];
  /** kinds of entry or of consumable */
  readonly kinds?: readonly string[];
  /** words in the name or title of a fibre */
  readonly fibres?: readonly string[];
  /** only where the part weighs more, kg */
  readonly heavierThan?: number;
  /** only where a pot of the step holds more, kg */
  readonly potOver?: number;
}

export interface Hazard {
  readonly name: string;
  readonly title: string;
  /** one line for a hover or a page: what to do */
  readonly brief: string;
  /** what it does to whom */
  readonly harm: string;
  /** kg/mol, of a vapour whose limits are told in ppm */
  readonly molarMass?: number;
  readonly limits: readonly ExposureLimit[];
  /** where harm and advice come from */
  readonly source: string;
  readonly applies: readonly Applies[];
  /** rules whose pages carry the brief line */
  readonly rules: readonly string[];
}
