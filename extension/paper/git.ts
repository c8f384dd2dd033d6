import * as vscode from 'vscode';
import type { WirePast, WireRevision } from '../../language/protocol/paper.ts';

/** What we use of the editor's own git extension (API version 1). */
interface Commit {
  readonly hash: string;
  readonly commitDate?: Date;
}
interface Change {
  readonly uri: vscode.Uri;
}
interface Repository {
  readonly rootUri: vscode.Uri;
  readonly state: {
    readonly HEAD?: { readonly commit?: string };
    readonly workingTreeChanges: readonly Change[];
    readonly indexChanges: readonly Change[];
    readonly untrackedChanges?: readonly Change[];
  };
  getCommit(ref: string): Promise<Commit>;
  log(options: { readonly maxEntries: number; readonly path: string }): Promise<readonly Commit[]>;
  show(ref: string, path: string): Promise<string>;
}
interface GitApi {
  getRepository(uri: vscode.Uri): Repository | null;
}

async function repositoryOf(uri: vscode.Uri): Promise<Repository | undefined> {
  const extension = vscode.extensions.getExtension<{ getAPI(version: 1): GitApi }>('vscode.git');
  if (extension === undefined) return undefined;
  try {
    return (await extension.activate()).getAPI(1).getRepository(uri) ?? undefined;
  } catch {
    // switched off by a setting, or not there in a browser
    return undefined;
  }
}

/** The commit that a file stands at, and whether its text differs from it; undefined outside of git. */
export async function revisionOf(uri: vscode.Uri): Promise<WireRevision | undefined> {
  const repository = await repositoryOf(uri);
  const head = repository?.state.HEAD?.commit;
  if (repository === undefined || head === undefined) return undefined;
  const { workingTreeChanges, indexChanges, untrackedChanges = [] } = repository.state;
  const dirty = vscode.workspace.textDocuments.some((each) => each.uri.toString() === uri.toString() && each.isDirty);
  const changed = [...workingTreeChanges, ...indexChanges, ...untrackedChanges].some(
    (each) => each.uri.toString() === uri.toString(),
  );
  const day = await repository.getCommit(head).then(
    ({ commitDate }) => commitDate?.toISOString().slice(0, 10),
    () => undefined,
  );
  return { commit: head.slice(0, 7), differs: dirty || changed, ...(day === undefined ? {} : { date: day }) };
}

/** Commits that are looked through for a revision. */
const mostCommits = 200;

/** The book as it stood when the recipe in this file had each of these revisions; those that git does not know are left out. */
export async function pastOf(uri: vscode.Uri, revisions: readonly number[]): Promise<WirePast[]> {
  const repository = await repositoryOf(uri);
  if (repository === undefined) return [];
  const found: WirePast[] = [];
  const wanted = new Set(revisions);
  const files = await vscode.workspace.findFiles(new vscode.RelativePattern(repository.rootUri, '**/*.layup'));
  for (const { hash } of await repository.log({ maxEntries: mostCommits, path: uri.fsPath })) {
    if (wanted.size === 0) break;
    const text = await repository.show(hash, uri.fsPath).catch(() => '');
    const revision = [...wanted].find((each) => new RegExp(`^\\s*revision\\s+${each}\\b`, 'm').test(text));
    if (revision === undefined) continue;
    wanted.delete(revision);
    const texts = await Promise.all(
      files.map(async (file) => ({
        uri: file.toString(),
        text: await repository.show(hash, file.fsPath).catch(() => ''),
      })),
    );
    found.push({ revision, files: texts });
  }
  return found;
}
