import path from 'node:path';

type Environment = Readonly<Record<string, string | undefined>>;

/** Where programs of this user keep what can be made again; undefined where no such place is known. */
export function cacheFolder(platform: string, environment: Environment, home: string): string | undefined {
  const place = {
    win32: environment.LOCALAPPDATA ?? '',
    darwin: path.join(home, 'Library/Caches'),
  }[platform];
  const folder = place ?? environment.XDG_CACHE_HOME ?? path.join(home, '.cache');
  // a relative place would lie in the folder of the recipes (XDG Base Directory Specification: it is to be ignored)
  return path.isAbsolute(folder) ? path.join(folder, 'laybook') : undefined;
}
