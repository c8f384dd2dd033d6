import type { Book, BuildRecord, Material, Recipe, Shop, Tool } from '../../calc/model/index.ts';
import type { DrawnFile } from '../../calc/read-drawing/drawn.ts';
import type { Lowered } from '../lower/index.ts';
import { withLikeness } from './likeness.ts';
import { RecordIndex } from './record-index.ts';

/** Where an entry stands: its document, and what it says. */
export interface Placed {
  readonly uri: string;
  readonly lowered: Lowered;
}

type Named = 'material' | 'tool' | 'recipe';

/** What the workspace holds, by name; the first entry of a name counts, the others are duplicates. */
export interface Contents {
  readonly shops: readonly Placed[];
  readonly records: readonly Placed[];
  readonly named: Readonly<Record<Named, ReadonlyMap<string, readonly Placed[]>>>;
  /** the names of recipes that others are like; gathered when somebody asks */
  readonly likenesses: () => ReadonlySet<string>;
}

export type DrawingFinder = (address: string) => DrawnFile | undefined;

export type StockFinder = (namespace: 'material' | 'tool', name: string) => Placed | undefined;

/** The book that figures are asked of: workspace before stock, likeness worked in. One object for one state of the workspace. */
export class Shelf implements Book {
  readonly contents: Contents;
  private readonly stock: StockFinder;
  private readonly drawings: DrawingFinder;
  private readonly materials = new Map<string, Material | undefined>();
  private readonly tools = new Map<string, Tool | undefined>();
  private readonly before: Shelf | undefined;
  private indexed: RecordIndex | undefined;

  /** `before`: the book as it stood; entries that came out the same there are the same objects here. */
  constructor(contents: Contents, stock: StockFinder, before?: Shelf, drawings: DrawingFinder = () => undefined) {
    this.contents = contents;
    this.stock = stock;
    this.drawings = drawings;
    this.before = before === undefined ? undefined : before.withoutPast();
  }

  get shop(): Shop | undefined {
    const model = this.contents.shops[0]?.lowered.model;
    return model?.kind === 'shop' ? model.shop : undefined;
  }

  material(name: string): Material | undefined {
    if (!this.materials.has(name))
      this.materials.set(
        name,
        this.resolved(
          this.own<Material>('material', name) ?? this.stocked<Material>('material', name),
          'material',
          this.before?.materials.get(name),
        ),
      );
    return this.materials.get(name);
  }

  tool(name: string): Tool | undefined {
    if (!this.tools.has(name))
      this.tools.set(
        name,
        this.resolved(
          this.own<Tool>('tool', name) ?? this.stocked<Tool>('tool', name),
          'tool',
          this.before?.tools.get(name),
        ),
      );
    return this.tools.get(name);
  }

  recipe(name: string, size?: string): Recipe | undefined {
    const model = this.contents.named.recipe.get(name)?.[0]?.lowered.model;
    return model?.kind === 'recipe' ? model.recipes.find((recipe) => recipe.size === size) : undefined;
  }

  drawing(address: string): DrawnFile | undefined {
    return this.drawings(address);
  }

  recordsOfLot(material: string, code: string): readonly BuildRecord[] {
    return this.records.ofLot(material, code);
  }

  recordsOnTool(tool: string): readonly BuildRecord[] {
    return this.records.onTool(tool);
  }

  /** What has been built, by lot, by tool and by its key. */
  get records(): RecordIndex {
    this.indexed ??= new RecordIndex(this.contents.records, (name, size) => this.recipe(name, size));
    return this.indexed;
  }

  /** Names of a namespace in the workspace. */
  names(namespace: Named): Iterable<string> {
    return this.contents.named[namespace].keys();
  }

  placed(namespace: Named, name: string): Placed | undefined {
    return (
      this.contents.named[namespace].get(name)?.[0] ??
      (namespace === 'recipe' ? undefined : this.stock(namespace, name))
    );
  }

  private own<T extends Material | Tool>(namespace: 'material' | 'tool', name: string): T | undefined {
    return modelOf<T>(this.contents.named[namespace].get(name)?.[0]);
  }

  private stocked<T extends Material | Tool>(namespace: 'material' | 'tool', name: string): T | undefined {
    return modelOf<T>(this.stock(namespace, name));
  }

  private resolved<T extends Material | Tool>(
    entry: T | undefined,
    namespace: 'material' | 'tool',
    last: T | undefined,
  ): T | undefined {
    if (entry?.like === undefined) return entry;
    const whole = withLikeness<T>(entry, (at) => {
      const own = at.like === 'stock' || at.like === at.name ? undefined : this.own<T>(namespace, at.like ?? '');
      return own ?? this.stocked<T>(namespace, at.like === 'stock' ? at.name : (at.like ?? ''));
    });
    return last !== undefined && shallowSame(last, whole) ? last : whole;
  }

  private withoutPast(): Shelf {
    if (this.before === undefined) return this;
    const copy = new Shelf(this.contents, this.stock, undefined, this.drawings);
    for (const [name, material] of this.materials) copy.materials.set(name, material);
    for (const [name, tool] of this.tools) copy.tools.set(name, tool);
    return copy;
  }
}

function modelOf<T extends Material | Tool>(placed: Placed | undefined): T | undefined {
  const model = placed?.lowered.model;
  if (model?.kind === 'material') return model.material as T;
  return model?.kind === 'tool' ? (model.tool as T) : undefined;
}

/** Facts are kept objects, so equal entries have equal members. */
function shallowSame(left: object, right: object): boolean {
  const mine = Object.entries(left);
  const others = right as Record<string, unknown>;
  return mine.length === Object.keys(right).length && mine.every(([key, value]) => others[key] === value);
}
