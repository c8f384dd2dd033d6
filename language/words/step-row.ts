import type { Group, Place, ProcessKind, Resource, Verb } from './types.ts';

/** A verb as it is written in the tables: what is the same for most verbs is left out. */
export interface StepRow extends Pick<Verb, 'word' | 'meaning' | 'example' | 'sheet'> {
  readonly at?: readonly Place[];
  readonly alone?: string;
  readonly takes?: Verb['takes'];
  readonly default?: string;
  readonly source?: string;
  readonly instead?: readonly string[];
  readonly material?: readonly string[];
  readonly needs?: readonly string[];
  readonly occupies?: readonly Resource[];
  readonly consumes?: Verb['consumes'];
  readonly caution?: string;
  readonly processes?: readonly ProcessKind[];
  readonly clauses?: readonly string[];
  readonly mistaken?: readonly string[];
  readonly block?: true;
}

export const EVERY_PROCESS: readonly ProcessKind[] = ['hand', 'bagged', 'infusion', 'prepreg'];
export const UNDER_A_BAG: readonly ProcessKind[] = ['bagged', 'infusion', 'prepreg'];
/** Clauses that any step may carry: hands and a deadline. */
export const ANY_STEP: readonly string[] = ['people', 'within'];
const HANDS_AT_THE_TOOL: readonly Resource[] = ['tool', 'people'];

/** Rows of one group as verbs: on the tool, by hand, in every process, unless the row says otherwise. */
export function steps(group: Group, rows: readonly StepRow[]): readonly Verb[] {
  return rows.map((row) => ({
    ...row,
    group,
    at: row.at ?? ['process'],
    needs: row.needs ?? [],
    occupies: row.occupies ?? HANDS_AT_THE_TOOL,
    processes: row.processes ?? EVERY_PROCESS,
    clauses: row.clauses ?? [],
  }));
}
