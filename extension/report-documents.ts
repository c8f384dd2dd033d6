/** Reports of recipes as documents that the editor shows read-only: `laybook-report:/sled_deck.md?{...}`. */
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { type ReportParams, type ReportResult, reportParts, reportRequest } from '../language/protocol/report.ts';
import { showPage } from './commands/show-page.ts';
import type { FigureChanges } from './figures-changed.ts';
import { Latest } from './latest.ts';
import { partFirst } from './report-part.ts';

const scheme = 'laybook-report';
const pauseMs = 250;

/** Address of a report, with the part that stands on top. */
function addressOf({ uri, recipe, size, part }: ReportParams): vscode.Uri {
  const query = JSON.stringify({ uri, recipe, size, part });
  return vscode.Uri.from({ scheme, path: `/${recipe}${size === undefined ? '' : ` ${size}`}.md`, query });
}

/** What the argument of a command or the address of a report asks for; undefined where it is no such thing. */
export function readReportParams(given: unknown): ReportParams | undefined {
  if (typeof given !== 'object' || given === null) return undefined;
  const { uri, recipe, size, part } = given as Readonly<Record<string, unknown>>;
  if (typeof uri !== 'string' || typeof recipe !== 'string') return undefined;
  const known = reportParts.find((each) => each === part);
  return {
    uri,
    recipe,
    ...(typeof size === 'string' ? { size } : {}),
    ...(known === undefined ? {} : { part: known }),
  };
}

/** The reports that are shown; told anew when figures change, in the recipe or in what it names, and when one is asked for again. */
export class ReportDocuments implements vscode.TextDocumentContentProvider, vscode.Disposable {
  private readonly client: BaseLanguageClient;
  /** many files may change at once, and keys come fast: the reports are told anew when there is a moment's rest */
  private readonly latest = new Latest(() => Promise.resolve(this.refresh()), pauseMs);
  private readonly changed = new vscode.EventEmitter<vscode.Uri>();
  private readonly subscriptions: vscode.Disposable[];
  readonly onDidChange = this.changed.event;

  constructor(client: BaseLanguageClient, changes: FigureChanges) {
    this.client = client;
    this.subscriptions = [
      this.latest,
      changes.onDidChange(() => this.latest.request()),
      vscode.workspace.registerTextDocumentContentProvider(scheme, this),
      this.changed,
    ];
  }

  async provideTextDocumentContent(address: vscode.Uri): Promise<string> {
    const params = readReportParams(JSON.parse(address.query));
    if (params === undefined) return '';
    const { markdown, line } = await this.ask(params);
    return partFirst(markdown, line);
  }

  /** Opens a report beside the recipe, laid out, the part that was asked for on top. */
  async show(params: ReportParams): Promise<void> {
    const address = addressOf(params);
    this.changed.fire(address);
    await showPage(address);
  }

  dispose(): void {
    for (const each of this.subscriptions) each.dispose();
  }

  private refresh(): void {
    for (const { uri } of vscode.workspace.textDocuments) if (uri.scheme === scheme) this.changed.fire(uri);
  }

  private async ask(params: ReportParams): Promise<ReportResult> {
    await this.client.start();
    return this.client.sendRequest<ReportResult>(reportRequest, params);
  }
}
