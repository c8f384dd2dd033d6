import type { DrawnFile } from '../read-drawing/drawn.ts';
import type { Material } from './material.ts';
import type { EntryKey } from './place.ts';
import type { Recipe } from './recipe.ts';
import type { Amount, AmountRange, Fact, Remarks } from './value.ts';

export interface Shop extends Remarks {
  readonly entry: EntryKey;
  readonly title?: string;
  readonly currency?: Fact<string>;
  /** money per second */
  readonly labour?: Fact<Amount>;
  readonly overhead?: Fact<Amount>;
  readonly ambient?: Fact<Amount>;
  readonly humidity?: Fact<Amount>;
  readonly elevation?: Fact<Amount>;
  readonly pump?: Fact<Amount>;
  readonly people?: Fact<number>;
  /** smallest step of the balance, kg */
  readonly scale?: Fact<Amount>;
  readonly oven?: Fact<{ readonly size: readonly Amount[]; readonly limit?: Amount }>;
  /** `habit leak 5 mbar in 10 min`: thresholds that rules take, by the habit's name */
  readonly habits?: Readonly<Record<string, Fact<Habit>>>;
  /** `stores epoxy_slow 12 kg on 2026-05-01` */
  readonly stores?: readonly Fact<{ readonly material: string; readonly amount: Amount; readonly date?: string }>[];
}

export interface Habit {
  readonly amounts: readonly Amount[];
  readonly within?: Amount;
  readonly words: readonly string[];
}

export interface Tool extends Remarks {
  readonly entry: EntryKey;
  readonly name: string;
  readonly title?: string;
  readonly origin: 'workspace' | 'stock';
  readonly like?: string;
  readonly source?: string;
  readonly flat?: Fact<{ readonly length: Amount; readonly width: Amount }>;
  /** radii of the face; hollow but for the ways that are crowned */
  readonly curved?: Fact<{
    readonly along?: Amount;
    readonly across?: Amount;
    readonly crowned?: readonly ('along' | 'across')[];
  }>;
  readonly file?: Fact<string>;
  readonly flange?: Fact<Amount>;
  readonly draft?: Fact<Amount>;
  readonly depth?: Fact<Amount>;
  readonly limit?: Fact<Amount>;
  readonly count?: Fact<number>;
  readonly cost?: Fact<{ readonly amount: Amount; readonly parts?: number }>;
  readonly expands?: Fact<Amount>;
  readonly handed?: Fact<true>;
}

/** What a recipe may look up. An entry of the workspace stands before the stock library; `like` is already resolved. */
export interface Book {
  readonly shop?: Shop;
  material(name: string): Material | undefined;
  tool(name: string): Tool | undefined;
  recipe(name: string, size?: string): Recipe | undefined;
  /** a drawing that an outline names, by its address; the same object for the same content */
  drawing?(address: string): DrawnFile | undefined;
  /** records of parts that were built from this lot of a material, in order of their days */
  recordsOfLot(material: string, code: string): readonly BuildRecord[];
  /** records of parts whose recipe is laid on this tool, in order of their days */
  recordsOnTool(tool: string): readonly BuildRecord[];
}

/** `lot epoxy_slow "A-1182" expires 2026-11-30` */
export interface RecordedLot {
  readonly material: string;
  readonly code: string;
  readonly expires?: string;
  readonly path: string;
}

/** A build record: what really happened. Dates are ISO 8601 `YYYY-MM-DD`. */
export interface BuildRecord extends Remarks {
  readonly entry: EntryKey;
  readonly recipe?: string;
  readonly size?: string;
  readonly date?: string;
  readonly title?: string;
  readonly revision?: number;
  readonly lots: readonly RecordedLot[];
  readonly readings: readonly Reading[];
}

/** Any other line: `vacuum 22 mbar absolute, dry`, `mixed gel 0.41 kg with 8.2 g mekp_50`, `barcol 24, 22, 26 on skin`. */
export interface Reading {
  readonly key: string;
  readonly amounts: readonly Amount[];
  readonly range?: AmountRange;
  readonly words: readonly string[];
  readonly texts: readonly string[];
  readonly path: string;
}
