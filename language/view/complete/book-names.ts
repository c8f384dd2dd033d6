import { type AstNode, AstUtils } from 'langium';
import { localNames } from '../../book/local-names.ts';
import { namespaceOf } from '../../book/namespaces.ts';
import type { LayupServices } from '../../book/services.ts';
import { type StockEntry, stockUri } from '../../book/stock.ts';
import { isMaterial, isRecipe, isTool, type Material, type Named, type Recipe } from '../../grammar/generated/ast.ts';
import { targetOf } from '../leaves.ts';
import { nodeText } from '../ranges.ts';
import type { EntryName, LocalName, MaterialName, NamesPort } from './names-port.ts';

/** Names of the workspace and of the stock library. A stock file is looked at as text: it need not be parsed for its names. */
export class NamesOfBook implements NamesPort {
  readonly #services: LayupServices;
  readonly #ofNode = new WeakMap<Material, MaterialName>();
  #stock: readonly MaterialName[] | undefined;

  constructor(services: LayupServices) {
    this.#services = services;
  }

  materials(): readonly MaterialName[] {
    const own = new Map<string, MaterialName>();
    for (const node of this.#nodes())
      if (isMaterial(node) && node.name !== undefined) own.set(node.name, this.#material(node, node.name));
    this.#stock ??= this.#services.stock.entries.filter(isMaterialEntry).map((entry) => this.#stockMaterial(entry));
    return [...own.values(), ...this.#stock.filter((material) => !own.has(material.name))];
  }

  tools(): readonly EntryName[] {
    const stock = this.#services.stock.entries.filter((entry) => entry.kind === 'tool');
    return unique([...this.#entries(isTool), ...stock.map(({ name, title }) => entryName(name, title))]);
  }

  recipes(): readonly EntryName[] {
    return unique(this.#entries(isRecipe));
  }

  inside(recipe: string): readonly LocalName[] {
    const node = this.#services.names.entries('recipe', recipe)[0]?.node;
    if (!isRecipe(node)) return [];
    const names = [...this.#services.names.likenesses(node)].flatMap(localNamesOf);
    return names.filter(
      (name, i) => names.findIndex((other) => other.name === name.name && other.kind === name.kind) === i,
    );
  }

  usedIn(recipe: string): readonly string[] {
    const node = this.#services.names.entries('recipe', recipe)[0]?.node;
    if (!isRecipe(node)) return [];
    return [...new Set([...this.#services.names.likenesses(node)].flatMap(materialsOf))];
  }

  currency(): string {
    const shop = this.#services.shared.workspace.IndexManager.shops()[0]?.node;
    const code = shop === undefined ? undefined : /^\s*currency\s+([A-Z]{3})\b/m.exec(nodeText(shop))?.[1];
    return code ?? 'EUR';
  }

  drawing(file: string): ReturnType<NonNullable<NamesPort['drawing']>> {
    const drawing = this.#services.shared.workspace.Drawings.named(file);
    if (drawing === undefined) return undefined;
    const ids = drawing.curves.flatMap(({ id }) => (id === undefined ? [] : [id]));
    return { layers: drawing.layers, ids: [...new Set(ids)] };
  }

  *#nodes(): Generator<AstNode> {
    for (const { node } of this.#services.shared.workspace.IndexManager.allElements())
      if (node !== undefined) yield node;
  }

  #entries(is: (node: AstNode) => boolean): EntryName[] {
    return [...this.#nodes()].filter(is).flatMap((node) => {
      const { name, title } = node as Named & { readonly title?: string };
      return name === undefined ? [] : [entryName(name, title)];
    });
  }

  #material(node: Material, name: string): MaterialName {
    const known = this.#ofNode.get(node);
    if (known !== undefined) return known;
    const material = this.#likeAnother(materialName(name, node.kind, node.title, false, nodeText(node)), node);
    this.#ofNode.set(node, material);
    return material;
  }

  /** What it is for, where its entry leaves that to the one of the stock library that it is like. */
  #likeAnother(material: MaterialName, node: Material): MaterialName {
    if (material.kind !== 'consumable' || material.consumableKind !== undefined) return material;
    const like = /^\w+\s+\w+\s+like\s+(\w+)/.exec(nodeText(node))?.[1];
    const entry = this.#services.stock.entries.find(({ name }) => name === (like === 'stock' ? material.name : like));
    const consumableKind = entry && this.#stockMaterial(entry).consumableKind;
    return consumableKind === undefined ? material : { ...material, consumableKind };
  }

  #stockMaterial({ name, kind, title, file, line }: StockEntry): MaterialName {
    const lines = (this.#services.stock.text(stockUri(file)) ?? '').split('\n').slice(line);
    const end = lines.findIndex((one) => one.startsWith('}'));
    return materialName(name, kind, title, true, lines.slice(0, end + 1).join('\n'));
  }
}

/** Names of the materials that a recipe types, in the order of its text. */
function materialsOf(recipe: AstNode): string[] {
  const found: { readonly at: number; readonly name: string }[] = [];
  for (const node of AstUtils.streamAst(recipe)) {
    for (const { reference } of AstUtils.streamReferences(node)) {
      if ('ref' in reference && isMaterial(targetOf(node, reference)))
        found.push({ at: reference.$refNode?.offset ?? 0, name: reference.$refText });
    }
  }
  return found.sort((a, b) => a.at - b.at).map(({ name }) => name);
}

const isMaterialEntry = (entry: StockEntry): boolean => !['tool', 'recipe', 'shop', 'record'].includes(entry.kind);

const entryName = (name: string, title: string | undefined): EntryName =>
  title === undefined ? { name } : { name, title };

const unique = (names: readonly EntryName[]): EntryName[] => [
  ...new Map(names.map((entry) => [entry.name, entry])).values(),
];

function materialName(
  name: string,
  kind: string,
  title: string | undefined,
  stock: boolean,
  text: string,
): MaterialName {
  const purpose = kind === 'consumable' ? /^\s*kind\s+(\w+)/m.exec(text)?.[1] : undefined;
  const weight = arealWeight(text);
  return {
    name,
    kind,
    stock,
    ...(purpose === undefined ? {} : { consumableKind: purpose }),
    ...(title === undefined ? {} : { title }),
    ...(weight === undefined ? {} : { detail: weight }),
  };
}

/** The weights of the layers together, where they are in one unit. */
function arealWeight(text: string): string | undefined {
  const layers = /^\s*layers\s+(.*)$/m.exec(text)?.[1];
  const weights = [...(layers ?? '').matchAll(/(\d+(?:\.\d+)?)\s+((?:g|oz)\/\w+)/g)];
  const unit = weights[0]?.[2];
  if (unit === undefined || weights.some((weight) => weight[2] !== unit)) return undefined;
  return `${Number(weights.reduce((sum, weight) => sum + Number(weight[1]), 0).toPrecision(6))} ${unit}`;
}

function localNamesOf(recipe: Recipe): LocalName[] {
  return [...localNames(recipe)].flatMap(([name, nodes]) =>
    nodes.flatMap((node): LocalName[] => {
      const namespace = namespaceOf(node);
      if (namespace === undefined || namespace === 'material' || namespace === 'tool' || namespace === 'recipe')
        return [];
      const head = 'verb' in node ? node.verb : 'kind' in node ? String(node.kind) : namespace;
      return [{ name, kind: namespace === 'port' ? (head as 'feed' | 'vent') : namespace, detail: head }];
    }),
  );
}
