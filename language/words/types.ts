import type { Basis, DimensionName } from '../../calc/quantity/types.ts';

/**
 * The shapes of the table that says what words mean. One row a word and sense: hover, completion, units, defaults and the
 * notation reference read it. Words are not reserved, so a word is always looked up together with the place it stands in.
 */

const ENTRIES = [
  'shop',
  'fibre',
  'fabric',
  'prepreg',
  'resin',
  'gelcoat',
  'catalyst',
  'paste',
  'core',
  'consumable',
  'tool',
  'recipe',
  'record',
] as const;
const BLOCKS = ['part', 'stack', 'process', 'kit', 'infuse', 'cure', 'postcure', 'load', 'size'] as const;
const LAYERS = ['coat', 'ply', 'strip', 'patch', 'core', 'insert', 'repeat', 'mirror'] as const;
/** Facts whose value is one of a few words. */
const CHOICES = [
  'layers',
  'binder',
  'fraction',
  'family',
  'resists',
  'kind',
  'edge',
  'cosmetic',
  'angles',
  'outline',
  'stack',
  'habit',
  'until',
  'when',
  'darts',
  'process',
  'postcure',
  'trim',
  'lay',
  'expect',
  'vacuum',
] as const;

type Of<T extends readonly string[]> = T[number];

/** `book` is the outside of all entries; `anywhere` holds the connectives and what any line may carry. */
export type Place =
  | 'anywhere'
  | 'book'
  | Of<typeof ENTRIES>
  | Of<typeof BLOCKS>
  | `clause of ${Of<typeof LAYERS>}`
  | 'clause of step'
  | 'clause of part'
  | 'clause of fact'
  | `value of ${Of<typeof CHOICES>}`;

export const PLACES: readonly Place[] = [
  'anywhere',
  'book',
  ...ENTRIES,
  ...BLOCKS,
  ...LAYERS.map((layer) => `clause of ${layer}` as const),
  'clause of step',
  'clause of part',
  'clause of fact',
  ...CHOICES.map((choice) => `value of ${choice}` as const),
];

/** What stands behind a word where it is no quantity: a name, words in quotes, `100:31`, `(x, y)`, a date, a bare count, an outline. */
export type ArgumentKind = 'name' | 'text' | 'point' | 'date' | 'count' | 'shape' | 'word' | 'test' | 'expression';

/** One argument, in the order of the line. */
export interface Argument {
  readonly dimension: DimensionName | ArgumentKind;
  /** the connective that leads to it: `by`, `at`, `to`, `of` ... */
  readonly after?: string;
  /** it stands in front of the word: `80 mm past edge`, `5 coats` */
  readonly before?: true;
  readonly optional?: true;
  /** more of them may follow, each behind a comma */
  readonly repeated?: true;
  /** what the number may be reckoned on; one of them must stand behind the unit, unless `basisOptional` */
  readonly basis?: readonly Basis[];
  readonly basisOptional?: true;
  /** the words that may stand here, for a word or beside a name */
  readonly words?: readonly string[];
  /** what the name must name */
  readonly names?: readonly NameKind[];
}

/** The three namespaces of the book and the names inside a recipe. A material may be narrowed to its entry kind. */
export type NameKind =
  | 'material'
  | 'fibre'
  | 'fabric'
  | 'prepreg'
  | 'resin'
  | 'gelcoat'
  | 'catalyst'
  | 'paste'
  | 'core'
  | 'consumable'
  | 'tool'
  | 'recipe'
  | 'layer'
  | 'zone'
  | 'feed'
  | 'vent'
  | 'let'
  | 'load'
  | 'size'
  | 'end'
  /** a thing that no entry describes: a bought bracket; only a slip in another name is told */
  | 'bought piece'
  | 'own';

export interface Word {
  readonly word: string;
  /** for the person at the bench: what it says and what goes wrong, one to three plain sentences */
  readonly meaning: string;
  readonly at: readonly Place[];
  readonly takes?: readonly Argument[];
  /** one whole line (or clause) of the notation */
  readonly example: string;
  /** what is taken where nothing is typed, as it would be typed */
  readonly default?: string;
  /** where the default or the figure comes from; a fact of the trade says `common practice` */
  readonly source?: string;
  /** the spellings of older notations and of other shops that are read with a fix */
  readonly instead?: readonly string[];
}

export const GROUPS = [
  'mould',
  'coat',
  'core',
  'cloth',
  'over the stack',
  'pull',
  'cure',
  'after',
  'wait and check',
] as const;
export type Group = (typeof GROUPS)[number];
export type ProcessKind = 'hand' | 'bagged' | 'infusion' | 'prepreg';
export type Resource = 'tool' | 'people' | 'oven' | 'bench' | 'pump';

/** What a step uses up. How much follows from the named geometry; a typed clause wins. */
export interface Use {
  /** a consumable kind (`consumable-kinds.ts`), or what is named in the step */
  readonly what: string;
  readonly by: 'area' | 'area past edge' | 'area short of edge' | 'perimeter' | 'length' | 'mass' | 'each' | 'volume';
  readonly why: string;
}

/** A work step of a process. Another verb costs a row. */
export interface Verb extends Word {
  readonly group: Group;
  /** what the material directly behind the verb may be: consumable kinds or entry kinds; absent: none stands there */
  readonly material?: readonly string[];
  readonly needs: readonly string[];
  readonly occupies: readonly Resource[];
  readonly consumes?: readonly Use[];
  /** imperative line for the build sheet; {material}, {amount} stand for what the line says */
  readonly sheet: string;
  /** that line where the step says nothing but its verb */
  readonly alone?: string;
  readonly caution?: string;
  readonly processes: readonly ProcessKind[];
  /** clause words that it takes, besides `note`, `accept` and `people` */
  readonly clauses: readonly string[];
  /** clause words that a rule knows as a mistake here: read, and never offered */
  readonly mistaken?: readonly string[];
  /** the step may carry a block of steps */
  readonly block?: true;
}

/** A class of steps in the partial order: a verb, or a verb with what it is done to. */
export type StepClass = string;

export interface Precedence {
  readonly first: StepClass;
  readonly later: StepClass;
  readonly because: string;
  readonly source: string;
}

/** What a process kind cannot do without. */
export interface Need {
  readonly step: StepClass;
  readonly because: string;
  readonly source: string;
}
