import * as vscode from 'vscode';
import {
  type ExpectationsParams,
  type ExpectationsResult,
  type ExpectingRecipe,
  expectationsRequest,
  type RecipeFilesResult,
  recipeFilesRequest,
  type WireExpectation,
} from '../../language/protocol/expectations.ts';
import type { WireRange } from '../../language/protocol/place.ts';
import type { FigureChanges } from '../figures-changed.ts';
import { Latest } from '../latest.ts';
import { ask, type Server } from '../server.ts';
import { describe, idOfRecipe, sameVerdict } from './verdicts.ts';

const pauseMs = 150;

/** What a test was last told to be; an old result is shown faded until it is told anew. */
interface Told {
  readonly expectation: WireExpectation;
  old: boolean;
}

/**
 * The `expect` lines of all recipes as tests. They run by themselves whenever figures change; an item keeps its id and is
 * changed in place, so that nothing folds up or flickers.
 */
export class Expectations implements vscode.Disposable {
  readonly controller: vscode.TestController;
  private readonly server: Server;
  private readonly profile: vscode.TestRunProfile;
  private readonly told = new WeakMap<vscode.TestItem, Told>();
  private readonly waiting = new Set<string>();
  private readonly latest = new Latest(() => this.updateWaiting(), pauseMs);
  private readonly subscriptions: vscode.Disposable[];

  constructor(server: Server, changes: FigureChanges) {
    this.server = server;
    this.controller = vscode.tests.createTestController('laybook', vscode.l10n.t('Laybook expectations'));
    this.controller.resolveHandler = async (item) => {
      if (item === undefined) await this.findAll();
    };
    this.controller.refreshHandler = () => this.findAll();
    this.profile = this.controller.createRunProfile(
      vscode.l10n.t('Check'),
      vscode.TestRunProfileKind.Run,
      (request, token) => this.run(request, token),
      true,
      undefined,
      true,
    );
    this.subscriptions = [
      this.controller,
      this.profile,
      this.latest,
      changes.onDidChange((uris) => this.want(uris)),
      vscode.workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
        if (document.languageId === 'layup' && contentChanges.length > 0) this.fade(document.uri.toString());
      }),
      vscode.workspace.onDidDeleteFiles(({ files }) => this.want(files.map(String))),
      vscode.workspace.onDidRenameFiles(({ files }) => this.want(files.map(({ oldUri }) => oldUri.toString()))),
    ];
  }

  dispose(): void {
    for (const each of this.subscriptions) each.dispose();
  }

  private async findAll(): Promise<void> {
    const { uris } = await ask<RecipeFilesResult>(this.server, recipeFilesRequest, {});
    this.want(uris);
    await this.updateWaiting();
  }

  private want(uris: Iterable<string>): void {
    for (const uri of uris) this.waiting.add(uri);
    this.latest.request();
  }

  private async updateWaiting(): Promise<void> {
    const uris = [...this.waiting];
    this.waiting.clear();
    const changed: vscode.TestItem[] = [];
    for (const uri of uris) {
      const answer = await this.answer(uri);
      // cancelled by the next key: figures are told of again after it
      if (answer !== undefined) changed.push(...this.take(vscode.Uri.parse(uri), answer.recipes));
    }
    if (changed.length > 0)
      this.publish(changed, new vscode.TestRunRequest(changed, undefined, this.profile, true, true));
  }

  private async answer(uri: string): Promise<ExpectationsResult | undefined> {
    const params: ExpectationsParams = { uri };
    try {
      return await ask<ExpectationsResult>(this.server, expectationsRequest, params);
    } catch {
      return undefined;
    }
  }

  /** Brings the items of a file to what was told of it; returns those whose result is a new one. */
  private take(uri: vscode.Uri, recipes: readonly ExpectingRecipe[]): vscode.TestItem[] {
    const { items } = this.controller;
    const withTests = recipes.filter(({ expects, broken }) => expects.length > 0 || broken);
    const known = new Set(withTests.map((recipe) => rootId(uri, recipe)));
    // a recipe that cannot be read keeps what it had: its head may be the line that is typed
    const someBroken = recipes.some(({ broken }) => broken);
    for (const [id, item] of items)
      if (item.uri?.toString() === uri.toString() && !known.has(id) && !someBroken) items.delete(id);
    return withTests.flatMap((recipe) => this.takeRecipe(uri, recipe));
  }

  private takeRecipe(uri: vscode.Uri, recipe: ExpectingRecipe): vscode.TestItem[] {
    const id = rootId(uri, recipe);
    let root = this.controller.items.get(id);
    if (root === undefined) {
      if (recipe.expects.length === 0) return [];
      root = this.controller.createTestItem(id, idOfRecipe(recipe), uri);
      this.controller.items.add(root);
    }
    place(root, recipe.range);
    const { children } = root;
    if (!recipe.broken) {
      const ids = new Set(recipe.expects.map((expectation) => expectation.id));
      for (const [child] of children) if (!ids.has(child)) children.delete(child);
    }
    return recipe.expects.flatMap((expectation) =>
      this.takeExpectation(uri, root.children, expectation, recipe.broken),
    );
  }

  private takeExpectation(
    uri: vscode.Uri,
    children: vscode.TestItemCollection,
    expectation: WireExpectation,
    broken: boolean,
  ): vscode.TestItem[] {
    let item = children.get(expectation.id);
    if (item === undefined) {
      item = this.controller.createTestItem(expectation.id, expectation.words, uri);
      children.add(item);
    }
    place(item, expectation.range);
    const before = this.told.get(item);
    // the last result stays, faded, until the recipe can be read again
    if (broken && before !== undefined) return [];
    if (item.label !== expectation.words) item.label = expectation.words;
    const description = describe(expectation, vscode.l10n.t('not computed yet'));
    if (item.description !== description) item.description = description;
    if (before !== undefined && !before.old && sameVerdict(before.expectation, expectation)) return [];
    this.told.set(item, { expectation, old: false });
    return [item];
  }

  /** Results of a file that is being edited are from before. */
  private fade(uri: string): void {
    const faded: vscode.TestItem[] = [];
    for (const [, root] of this.controller.items) {
      if (root.uri?.toString() !== uri) continue;
      for (const item of testsOf(root)) {
        const told = this.told.get(item);
        if (told === undefined || told.old) continue;
        told.old = true;
        faded.push(item);
      }
    }
    if (faded.length > 0) this.controller.invalidateTestResults(faded);
  }

  /** A run that was asked for. One that goes on ends by itself: results come whenever figures change. */
  private async run(request: vscode.TestRunRequest, token: vscode.CancellationToken): Promise<void> {
    const wanted = request.include ?? [...this.controller.items].map(([, item]) => item);
    for (const uri of new Set(wanted.flatMap(({ uri }) => uri?.toString() ?? []))) this.waiting.add(uri);
    await this.updateWaiting();
    if (token.isCancellationRequested) return;
    const left = new Set(request.exclude ?? []);
    this.publish(
      wanted.flatMap(testsOf).filter((item) => !left.has(item)),
      request,
    );
  }

  private publish(items: readonly vscode.TestItem[], request: vscode.TestRunRequest): void {
    const run = this.controller.createTestRun(request, undefined, false);
    for (const item of items) {
      const told = this.told.get(item);
      if (told !== undefined) report(run, item, told.expectation);
    }
    run.end();
  }
}

const rootId = (uri: vscode.Uri, recipe: ExpectingRecipe): string => `${uri.toString()}#${idOfRecipe(recipe)}`;

function testsOf(item: vscode.TestItem): vscode.TestItem[] {
  return item.children.size === 0 ? [item] : [...item.children].map(([, child]) => child);
}

function place(item: vscode.TestItem, range: WireRange): void {
  const next = rangeOf(range);
  if (item.range === undefined || !item.range.isEqual(next)) item.range = next;
}

const rangeOf = ({ start, end }: WireRange): vscode.Range =>
  new vscode.Range(start.line, start.character, end.line, end.character);

function report(
  run: vscode.TestRun,
  item: vscode.TestItem,
  { verdict, expected, actual, beyond, why }: WireExpectation,
): void {
  const reasons = why.map(({ words }) => words);
  const located = (message: vscode.TestMessage): vscode.TestMessage => {
    if (item.uri !== undefined && item.range !== undefined)
      message.location = new vscode.Location(item.uri, item.range);
    return message;
  };
  const told = (lines: readonly string[]): string => lines.filter((line) => line !== '').join('\n');
  switch (verdict) {
    case 'met':
      run.passed(item);
      return;
    case 'not met': {
      const by = beyond === undefined ? '' : vscode.l10n.t('Beyond the limit by {0}.', beyond);
      run.failed(item, located(vscode.TestMessage.diff(told([by, ...reasons]) || expected, expected, actual ?? '')));
      return;
    }
    case 'cannot tell':
      run.errored(item, located(new vscode.TestMessage(told([vscode.l10n.t('This cannot be told:'), ...reasons]))));
      return;
    case 'not yet': {
      const location = item.uri && item.range && new vscode.Location(item.uri, item.range);
      run.appendOutput(`${told([item.label, ...reasons]).replace(/\n/g, '\r\n')}\r\n`, location, item);
      run.skipped(item);
    }
  }
}
