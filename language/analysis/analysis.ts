import { Cancellation, interruptAndCheck, type LangiumDocument, type LangiumDocuments, URI } from 'langium';
import { text } from '../../calc/figure/figure.ts';
import { type Bench, benchOf } from '../../calc/figure/index.ts';
import type { EntryKey, Place, Recipe } from '../../calc/model/index.ts';
import type { DrawnFile } from '../../calc/read-drawing/drawn.ts';
import { readingProblems } from '../grammar/messages.ts';
import { type EntryModel, type Lowered, type Span, spanOf } from '../lower/index.ts';
import type { Finding } from '../rules/finding.ts';
import type { Names } from '../rules/names.ts';
import type { Runner, Severities } from '../rules/runner.ts';
import { nearestWords } from '../words/nearest.ts';
import { type Change, contentsOf, contentsWith } from './contents.ts';
import { type DocumentEntries, entriesOf } from './entries.ts';
import { exampleOf } from './examples.ts';
import { KeptFindings } from './kept-findings.ts';
import { type Placed, Shelf } from './shelf.ts';

/** The stock library as the analysis needs it: names without reading, and the document of a name. */
export interface StockPort {
  names(namespace: 'material' | 'tool'): Iterable<string>;
  document(namespace: 'material' | 'tool', name: string): LangiumDocument | undefined;
}

/** The drawings of the book; another version after each that says something else. */
export interface DrawingsPort {
  readonly version: number;
  of(address: string): DrawnFile | undefined;
}

export interface AnalysisOptions {
  readonly documents: LangiumDocuments;
  readonly stock: StockPort;
  readonly drawings: DrawingsPort;
  readonly runner: Runner;
  readonly severities: () => Severities;
  /** the documents of the workspace that were read, linked or taken away since this was asked last, by their addresses */
  readonly touched: () => ReadonlySet<string>;
}

const nothingReached = (): { shared: boolean; records: boolean; readonly recipes: Set<string> } => ({
  shared: false,
  records: false,
  recipes: new Set(),
});

/** More findings of one file than anybody reads; the rest is said in one line. */
const mostFindings = 300;

/**
 * What the book says: entries lowered, the shelf that figures are asked of, and the findings. Every view asks here; nothing is
 * computed again that an edit did not reach.
 */
export class Analysis {
  private readonly options: AnalysisOptions;
  private readonly byDocument = new Map<string, DocumentEntries>();
  private readonly stocked = new Map<string, DocumentEntries>();
  private current: Shelf | undefined;
  private readonly kept: KeptFindings;
  private reach = nothingReached();
  /** documents with a recipe that says something of another: what it says may change with that one */
  private readonly leaning = new Set<string>();
  private drawnAt = 0;

  constructor(options: AnalysisOptions) {
    this.options = options;
    this.kept = new KeptFindings(options.runner);
  }

  get runner(): Runner {
    return this.options.runner;
  }

  /** The book as it stands now. */
  shelf(): Shelf {
    const touched = this.options.touched();
    const { drawings } = this.options;
    const drawn = this.drawnAt !== drawings.version;
    if (this.current !== undefined && touched.size === 0 && !drawn) return this.current;
    // A recipe that is like another may have its outline, and with it the drawing that it names.
    if (drawn) this.reach.recipes.add('');
    this.drawnAt = drawings.version;
    const changes: Change[] = [];
    for (const uri of new Set([...touched, ...this.leaning])) {
      const before = this.byDocument.get(uri);
      const document = this.options.documents.getDocument(URI.parse(uri));
      const now = document === undefined ? undefined : entriesOf(document, 'workspace', before);
      if (now === before) continue;
      if (now === undefined) this.byDocument.delete(uri);
      else this.byDocument.set(uri, now);
      if (now === undefined || now.bases.length === 0) this.leaning.delete(uri);
      else this.leaning.add(uri);
      this.noteChange(before, now);
      changes.push({ before, now });
    }
    if (changes.length > 0 || drawn || this.current === undefined) {
      this.current = new Shelf(
        contentsWith(this.current?.contents, changes) ?? contentsOf([...this.byDocument.values()]),
        (namespace, name) => this.fromStock(namespace, name),
        this.current,
        (address) => drawings.of(address),
      );
    }
    return this.current;
  }

  /** Documents that an entry of another document reaches, since this was asked last. */
  takeAffected(): LangiumDocument[] {
    this.shelf();
    const { shared, records, recipes } = this.reach;
    this.reach = nothingReached();
    if (!shared && !records && recipes.size === 0) return [];
    const reached = new Set(recipes.size > 0 ? this.leaning : []);
    for (const { uri, lowered } of this.shelf().contents.records) {
      const { model } = lowered;
      if (records || (model.kind === 'record' && model.record.recipe !== undefined && recipes.has(model.record.recipe)))
        reached.add(uri);
    }
    return this.options.documents.all
      .filter(({ uri }) => {
        const address = uri.toString();
        return shared ? (this.byDocument.get(address)?.entries.length ?? 0) > 0 : reached.has(address);
      })
      .toArray();
  }

  /** What is shared by all recipes reaches every entry: by name, by likeness, as a duplicate. A recipe reaches those that are like it, and its records; a record the others, with which it may share a lot or a tool. */
  private noteChange(before: DocumentEntries | undefined, now: DocumentEntries | undefined): void {
    const old = new Map(before?.entries.map(({ entry, model }) => [entry, model]));
    for (const { entry, model } of now?.entries ?? []) {
      const last = old.get(entry);
      if (last !== model) this.noteModel(model, last === undefined);
      old.delete(entry);
    }
    for (const model of old.values()) this.noteModel(model, true);
  }

  /** A name that comes or goes may be another's duplicate, or what another line meant. */
  private noteModel(model: EntryModel, comesOrGoes: boolean): void {
    const { kind } = model;
    if (kind === 'shop' || kind === 'material' || kind === 'tool' || (kind === 'recipe' && comesOrGoes))
      this.reach.shared = true;
    else if (kind === 'record') this.reach.records = true;
    else if (kind === 'recipe') for (const recipe of model.recipes) this.reach.recipes.add(recipe.name);
  }

  entries(document: LangiumDocument): readonly Lowered[] {
    this.shelf();
    return (this.byDocument.get(document.uri.toString()) ?? this.stockEntries(document)).entries;
  }

  bench(recipe: Recipe): Bench {
    return benchOf(recipe, this.shelf());
  }

  /** The entry that a position of a document lies in. */
  entryAt(document: LangiumDocument, offset: number): Lowered | undefined {
    const root = document.parseResult.value as unknown as { readonly entries: readonly { readonly $cstNode?: Span }[] };
    // an entry ends where the next begins: its line ends are its own
    const index = root.entries.findLastIndex(
      (entry) => entry.$cstNode !== undefined && entry.$cstNode.offset <= offset && offset <= entry.$cstNode.end,
    );
    return index < 0 ? undefined : this.entries(document)[index];
  }

  /** Where a place stands: the document and the range in its text. */
  locate(place: Place, near?: LangiumDocument): { readonly uri: string; readonly span: Span } | undefined {
    const own = near === undefined ? undefined : this.entries(near).find((entry) => entry.entry === place.entry);
    if (own !== undefined && near !== undefined) return found(near.uri.toString(), own, place.path);
    const placed = this.placedOf(place.entry);
    return placed === undefined ? undefined : found(placed.uri, placed.lowered, place.path);
  }

  /** All findings of a document, accepted ones among them, in order of the text. */
  async findings(
    document: LangiumDocument,
    token: Cancellation.CancellationToken = Cancellation.CancellationToken.None,
  ): Promise<Finding[]> {
    const source = document.textDocument.getText();
    const shelf = this.shelf();
    const entries = this.entries(document);
    const { runner } = this.options;
    const severities = this.options.severities();
    const names = this.names(shelf);
    const perEntry: Finding[] = [];
    for (const lowered of entries) {
      await interruptAndCheck(token);
      const namespace = namespaceOf(lowered);
      const first = namespace === undefined ? undefined : firstOf(shelf, namespace, lowered);
      perEntry.push(...this.kept.of(lowered, source, first, shelf, names, severities));
    }
    const taken = new Set(
      perEntry
        .filter((finding) => finding.rule === 'line/not-understood')
        .map((finding) => lineStart(source, finding.span.offset)),
    );
    const reading = readingProblems(source, document.parseResult, exampleOf)
      .filter((problem) => problem.rule !== 'line/not-understood' || !taken.has(lineStart(source, problem.offset)))
      .map(
        (problem): Finding => ({
          rule: problem.rule,
          severity: runner.rule(problem.rule)?.severity ?? 'error',
          message: text('{words}', { words: problem.message }),
          span: { offset: problem.offset, end: problem.offset + problem.length },
          fixes: [],
          related:
            problem.related === undefined
              ? []
              : [
                  {
                    span: { offset: problem.related.offset, end: problem.related.offset + problem.related.length },
                    message: text('{words}', { words: problem.related.message }),
                  },
                ],
        }),
      );
    return limited(
      [...reading.filter((finding) => severities[finding.rule] !== 'off'), ...perEntry].sort(
        (a, b) => a.span.offset - b.span.offset || a.span.end - b.span.end,
      ),
    );
  }

  /** What the rules would find in a recipe if it said something else; nothing of it is kept. */
  findingsIf(lowered: Lowered, source: string, recipes: readonly Recipe[]): Finding[] {
    const shelf = this.shelf();
    const checked = {
      lowered: { ...lowered, model: { kind: 'recipe' as const, recipes } },
      text: source,
      first: undefined,
    };
    return this.options.runner.findings(checked, shelf, this.names(shelf), this.options.severities());
  }

  /** Names of the stock library; no file of it is read for them. */
  stockNames(namespace: 'material' | 'tool'): Iterable<string> {
    return this.options.stock.names(namespace);
  }

  private names(shelf: Shelf): Names {
    return {
      nearest: (namespace, name) =>
        nearestWords(
          name,
          [...shelf.names(namespace), ...(namespace === 'recipe' ? [] : this.options.stock.names(namespace))],
          3,
        ),
      hasLikeness: (recipe) => shelf.contents.likenesses().has(recipe),
      stockFacts: (namespace, name) => factsOf(this.fromStock(namespace, name)),
    };
  }

  private placedOf(entry: EntryKey): Placed | undefined {
    if (entry === 'shop') return this.shelf().contents.shops[0];
    const [first, second, ...rest] = entry.split('/');
    if (first === 'stock') return this.fromStock(second as 'material' | 'tool', rest.join('/'));
    if (first === 'record') return this.shelf().records.placed(entry);
    const namespace = first as 'material' | 'tool' | 'recipe';
    return this.shelf().contents.named[namespace]?.get([second, ...rest].join('/'))?.[0];
  }

  private fromStock(namespace: 'material' | 'tool', name: string): Placed | undefined {
    const document = this.options.stock.document(namespace, name);
    if (document === undefined) return undefined;
    const { entries } = this.stockEntries(document);
    const lowered = entries.find((entry) => entry.name === name && entry.model.kind === namespace);
    return lowered === undefined ? undefined : { uri: document.uri.toString(), lowered };
  }

  private stockEntries(document: LangiumDocument): DocumentEntries {
    const uri = document.uri.toString();
    const now = entriesOf(document, 'stock', this.stocked.get(uri));
    this.stocked.set(uri, now);
    return now;
  }
}

/** Names of what an entry says of itself. */
function factsOf(placed: Placed | undefined): readonly string[] | undefined {
  const model = placed?.lowered.model;
  if (model?.kind === 'material') return Object.keys(model.material);
  return model?.kind === 'tool' ? Object.keys(model.tool) : undefined;
}

function found(uri: string, lowered: Lowered, path: string): { uri: string; span: Span } | undefined {
  const span = spanOf(lowered.places, path);
  return span === undefined ? undefined : { uri, span };
}

function namespaceOf(lowered: Lowered): 'material' | 'tool' | 'recipe' | 'shop' | undefined {
  const { kind } = lowered.model;
  return kind === 'record' || kind === 'nothing' ? undefined : kind;
}

/** The entry of the same name that counts, if it is another one. */
function firstOf(
  shelf: Shelf,
  namespace: 'material' | 'tool' | 'recipe' | 'shop',
  lowered: Lowered,
): Lowered | undefined {
  const all = namespace === 'shop' ? shelf.contents.shops : shelf.contents.named[namespace].get(lowered.name);
  const first = all?.[0]?.lowered;
  return first === lowered ? undefined : first;
}

const lineStart = (source: string, offset: number): number => source.lastIndexOf('\n', offset - 1) + 1;

function limited(findings: readonly Finding[]): Finding[] {
  const shown = findings.slice(0, mostFindings);
  const last = shown.at(-1);
  if (findings.length <= mostFindings || last === undefined) return [...findings];
  return [
    ...shown,
    {
      ...last,
      severity: 'info',
      rule: 'line/not-understood',
      message: text('and {count} more findings in this file', { count: findings.length - mostFindings }),
      fixes: [],
      related: [],
    },
  ];
}
