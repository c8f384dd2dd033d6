import * as vscode from 'vscode';
import type { FigureChanges } from '../figures-changed.ts';
import { Latest } from '../latest.ts';

const { t } = vscode.l10n;
const pauseMs = 400;

/** What a book holds, in the order in which it is listed: by the kind that the server tells an entry by. */
const shelves: readonly { readonly kind: vscode.SymbolKind; readonly title: string; readonly icon: string }[] = [
  { kind: vscode.SymbolKind.Package, title: t('Recipes'), icon: 'layers' },
  { kind: vscode.SymbolKind.Class, title: t('Materials'), icon: 'package' },
  { kind: vscode.SymbolKind.Object, title: t('Tools'), icon: 'tools' },
  { kind: vscode.SymbolKind.Event, title: t('Records'), icon: 'history' },
  { kind: vscode.SymbolKind.Namespace, title: t('Shop'), icon: 'home' },
];

interface Shelf {
  readonly kind: vscode.SymbolKind;
  readonly title: string;
  readonly icon: string;
  readonly entries: readonly Entry[];
}

/** An entry of the book. Commands of its menu read it as they read the argument of a lens. */
export interface Entry {
  readonly uri: string;
  readonly recipe: string;
  readonly kind: vscode.SymbolKind;
  readonly at: vscode.Location;
}

/** The entries of the workspace by their kinds, in the Explorer. The same objects stay as long as they say the same. */
export class BookView implements vscode.TreeDataProvider<Shelf | Entry>, vscode.Disposable {
  private readonly changed = new vscode.EventEmitter<void>();
  private readonly latest = new Latest(() => this.read(), pauseMs);
  private readonly subscriptions: vscode.Disposable[];
  private shown: readonly Shelf[] = [];
  readonly onDidChangeTreeData = this.changed.event;

  constructor(changes: FigureChanges) {
    this.subscriptions = [
      this.changed,
      this.latest,
      vscode.window.createTreeView('laybook.book', { treeDataProvider: this, showCollapseAll: true }),
      changes.onDidChange(() => this.latest.request()),
      vscode.workspace.onDidChangeWorkspaceFolders(() => this.latest.request()),
    ];
    void vscode.commands.executeCommand('setContext', 'laybook.active', true);
    this.latest.request();
  }

  dispose(): void {
    for (const each of this.subscriptions) each.dispose();
  }

  getChildren(element?: Shelf | Entry): readonly (Shelf | Entry)[] & (Shelf | Entry)[] {
    if (element === undefined) return [...this.shown];
    return 'entries' in element ? [...element.entries] : [];
  }

  getTreeItem(element: Shelf | Entry): vscode.TreeItem {
    if ('entries' in element) {
      const { Expanded, Collapsed } = vscode.TreeItemCollapsibleState;
      const open = element.kind === vscode.SymbolKind.Package ? Expanded : Collapsed;
      const item = new vscode.TreeItem(element.title, open);
      item.id = element.title;
      item.iconPath = new vscode.ThemeIcon(element.icon);
      item.description = String(element.entries.length);
      return item;
    }
    const { recipe, kind, at } = element;
    const item = new vscode.TreeItem(recipe);
    item.id = `${at.uri.toString()}#${kind}#${recipe}#${at.range.start.line}`;
    item.description = vscode.workspace.asRelativePath(at.uri);
    item.command = { command: 'vscode.open', title: t('Go to it'), arguments: [at.uri, { selection: at.range }] };
    if (kind === vscode.SymbolKind.Package) item.contextValue = 'recipe';
    return item;
  }

  private async read(): Promise<void> {
    const found =
      (await vscode.commands.executeCommand<vscode.SymbolInformation[]>('vscode.executeWorkspaceSymbolProvider', '')) ??
      [];
    const ours = found.filter(({ location }) => location.uri.path.endsWith('.layup'));
    const next = shelves
      .map((shelf) => ({
        ...shelf,
        entries: ours
          .filter(({ kind }) => kind === shelf.kind)
          .map(entryOf)
          .sort(byName),
      }))
      .filter(({ entries }) => entries.length > 0);
    if (JSON.stringify(next) === JSON.stringify(this.shown)) return;
    this.shown = next;
    this.changed.fire();
  }
}

function entryOf({ name, kind, location }: vscode.SymbolInformation): Entry {
  return { uri: location.uri.toString(), recipe: name, kind, at: location };
}

const byName = (one: Entry, other: Entry): number => one.recipe.localeCompare(other.recipe);
