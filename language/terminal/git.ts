import { execFile } from 'node:child_process';
import path from 'node:path';
import type { Revisioned } from '../view/sheet/index.ts';

/**
 * Asks git, and nothing else: no shell, and nothing that the settings of a repository could start (a repository may come
 * from anybody).
 */
const guards = ['-c', 'core.fsmonitor=false', '-c', 'core.hooksPath=/dev/null', '--no-pager'];
const most = 64 * 1024 * 1024;

/** What git says, undefined where there is no git, no repository or no such thing. */
export function git(folder: string, args: readonly string[]): Promise<string | undefined> {
  return new Promise((resolve) => {
    const options = {
      cwd: folder,
      maxBuffer: most,
      encoding: 'utf8',
      env: { ...process.env, GIT_OPTIONAL_LOCKS: '0', GIT_TERMINAL_PROMPT: '0' },
    } as const;
    execFile('git', [...guards, ...args], options, (error, out) => resolve(error === null ? out : undefined));
  });
}

/** The commit that files stand at, and whether their text differs from it; undefined outside of git. */
export async function revisionOf(files: readonly string[]): Promise<Revisioned | undefined> {
  const folder = files[0] === undefined ? undefined : path.dirname(files[0]);
  if (folder === undefined) return undefined;
  const head = await git(folder, ['log', '-1', '--no-ext-diff', '--format=%h %cs']);
  const [commit, date] = head?.trim().split(' ') ?? [];
  if (commit === undefined || commit === '') return undefined;
  const changed = await git(folder, ['status', '--porcelain=v1', '-z', '--untracked-files=all', '--', ...files]);
  return { commit, differs: changed !== '', ...(date === undefined ? {} : { date }) };
}
