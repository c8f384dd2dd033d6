import type { BuildRecord, EntryKey, Recipe } from '../../calc/model/index.ts';
import type { Placed } from './shelf.ts';

/** The records of the book by what they have in common; found once for one state of the workspace, when somebody asks. */
export class RecordIndex {
  private readonly byLot = new Map<string, BuildRecord[]>();
  private readonly byTool = new Map<string, BuildRecord[]>();
  private readonly byRecipe = new Map<string, BuildRecord[]>();
  private readonly byEntry = new Map<EntryKey, Placed>();

  constructor(records: readonly Placed[], recipe: (name: string, size?: string) => Recipe | undefined) {
    for (const placed of records) {
      const { model } = placed.lowered;
      if (model.kind !== 'record') continue;
      const { record } = model;
      this.byEntry.set(record.entry, placed);
      for (const key of new Set(record.lots.map((lot) => lotKey(lot.material, lot.code)))) add(this.byLot, key, record);
      if (record.recipe !== undefined) add(this.byRecipe, record.recipe, record);
      const tool = record.recipe === undefined ? undefined : recipe(record.recipe, record.size)?.stack?.tool;
      if (tool !== undefined) add(this.byTool, tool, record);
    }
    for (const groups of [this.byLot, this.byTool, this.byRecipe]) for (const list of groups.values()) list.sort(byDay);
  }

  ofLot(material: string, code: string): readonly BuildRecord[] {
    return this.byLot.get(lotKey(material, code)) ?? [];
  }

  /** All builds of a recipe in all sizes, in the order of their days. */
  ofRecipe(name: string): readonly BuildRecord[] {
    return this.byRecipe.get(name) ?? [];
  }

  /** All records of the book. */
  get all(): readonly BuildRecord[] {
    return [...this.byRecipe.values()].flat();
  }

  onTool(tool: string): readonly BuildRecord[] {
    return this.byTool.get(tool) ?? [];
  }

  placed(entry: EntryKey): Placed | undefined {
    return this.byEntry.get(entry);
  }
}

const lotKey = (material: string, code: string): string => JSON.stringify([material, code]);

/** Days are ISO 8601, so they sort as words; of one day, as they stand in the book. */
const byDay = (a: BuildRecord, b: BuildRecord): number => {
  const [first, second] = [a.date ?? '', b.date ?? ''];
  return first < second ? -1 : first > second ? 1 : 0;
};

function add(groups: Map<string, BuildRecord[]>, key: string, record: BuildRecord): void {
  const group = groups.get(key);
  if (group === undefined) groups.set(key, [record]);
  else group.push(record);
}
