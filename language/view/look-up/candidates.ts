import { type Fact, type Material, UNKNOWN } from '../../../calc/model/index.ts';
import type { Shelf } from '../../analysis/shelf.ts';

/** More than anybody compares in one list. */
const MOST = 40;

const said = (fact: Fact<string> | undefined): string | undefined =>
  fact === undefined || fact.value === UNKNOWN ? undefined : fact.value;

/** What may stand where a material stands: of its kind, a consumable for the same use. Those of the workspace first. */
export function candidatesFor(material: Material, shelf: Shelf, stock: Iterable<string>): Material[] {
  const own = [...shelf.names('material')].sort();
  const names = new Set([...own, ...[...stock].sort()]);
  names.delete(material.name);
  const use = said(material.consumableKind);
  return [...names]
    .flatMap((name) => shelf.material(name) ?? [])
    .filter((other) => other.kind === material.kind && said(other.consumableKind) === use)
    .slice(0, MOST);
}
