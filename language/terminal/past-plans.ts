import path from 'node:path';
import { URI } from 'langium';
import { type Bench, benchOf, type Text, text } from '../../calc/figure/index.ts';
import type { BuildRecord, Recipe } from '../../calc/model/index.ts';
import { pastBook } from '../analysis/past-book.ts';
import type { Shelf } from '../analysis/shelf.ts';
import type { OpenBook } from './book.ts';
import { git } from './git.ts';

/** Commits of a recipe that are looked through for a revision. */
const most = 400;

export interface PastPlans {
  /** undefined where there is none: such a build is shown without a plan */
  readonly planOf: (record: BuildRecord) => Bench | undefined;
  /** why one is lacking */
  readonly why?: Text;
}

/**
 * Finds the plan that a record was built by: the present one where the revision is the present one, else the book as it stood
 * in git when the recipe last had that revision.
 */
export async function pastPlans(book: OpenBook, records: readonly BuildRecord[]): Promise<PastPlans> {
  const shelf = book.services.analysis.shelf();
  const found = new Map<string, Bench | undefined>();
  const keyOf = ({ recipe, size, revision }: BuildRecord): string => JSON.stringify([recipe, size, revision]);
  for (const record of records) {
    if (found.has(keyOf(record)) || record.recipe === undefined) continue;
    const now = shelf.recipe(record.recipe, record.size);
    const current = record.revision === undefined || now?.revision === record.revision;
    if (current) found.set(keyOf(record), now === undefined ? undefined : benchOf(now, shelf));
    else found.set(keyOf(record), await benchAt(book, record.recipe, record.size, record.revision as number));
  }
  const lacking = records.find((record) => found.get(keyOf(record)) === undefined);
  const why = lacking?.recipe === undefined ? undefined : await whyNot(book, lacking.recipe);
  return { planOf: (record) => found.get(keyOf(record)), ...(why === undefined ? {} : { why }) };
}

/** Why the text of an earlier revision cannot be had. */
async function whyNot(book: OpenBook, name: string): Promise<Text | undefined> {
  const folder = folderOf(book, name)?.folder;
  if (folder === undefined) return undefined;
  if ((await git(folder, ['--version'])) === undefined)
    return text('git cannot be run here, and the text of earlier revisions is kept there.');
  const shallow = (await git(folder, ['rev-parse', '--is-shallow-repository']))?.trim();
  if (shallow === undefined)
    return text('This folder is in no git repository, so that the text of earlier revisions is not to be had.');
  return shallow === 'true'
    ? text('This clone has only the newest commits: `git fetch --unshallow` brings the text of earlier revisions.')
    : text('The text of these revisions is not among the last {count} commits of the recipe.', { count: most });
}

/** The file of a recipe, where it is one on disk. */
function folderOf(book: OpenBook, name: string): { readonly folder: string; readonly base: string } | undefined {
  const placed = book.services.analysis.shelf().placed('recipe', name);
  const uri = placed === undefined ? undefined : URI.parse(placed.uri);
  if (uri === undefined || uri.scheme !== 'file') return undefined;
  return { folder: path.dirname(uri.fsPath), base: path.basename(uri.fsPath) };
}

/** The plan of a recipe when it last had a revision. */
export async function benchAt(
  book: OpenBook,
  name: string,
  size: string | undefined,
  revision: number,
): Promise<Bench | undefined> {
  const file = folderOf(book, name);
  if (file === undefined) return undefined;
  const { folder, base } = file;
  const log = await git(folder, ['log', `--max-count=${most}`, '--no-ext-diff', '--format=%H', '--', base]);
  for (const commit of (log ?? '').split('\n').filter((line) => line !== '')) {
    const then = await git(folder, ['show', '--no-ext-diff', '--no-textconv', `${commit}:./${base}`]);
    if (then === undefined || !mayHave(then, revision)) continue;
    const past = await bookAt(folder, commit);
    const recipe: Recipe | undefined = past.recipe(name, size);
    if (recipe?.revision === revision) return benchOf(recipe, past);
  }
  return undefined;
}

/** Quick look, so that not every commit is read whole. */
const mayHave = (text: string, revision: number): boolean =>
  new RegExp(`^\\s*revision\\s+${revision}\\b`, 'm').test(text);

/** The book of a folder as it stood at a commit. */
async function bookAt(folder: string, commit: string): Promise<Shelf> {
  const list = await git(folder, ['ls-tree', '-r', '-z', '--name-only', commit, '--', '.']);
  const files: { uri: string; text: string }[] = [];
  for (const name of (list ?? '').split('\0').filter((each) => each.endsWith('.layup'))) {
    const content = await git(folder, ['show', '--no-ext-diff', '--no-textconv', `${commit}:./${name}`]);
    if (content !== undefined) files.push({ uri: URI.file(path.join(folder, name)).toString(), text: content });
  }
  return pastBook(files);
}
