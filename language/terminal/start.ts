/**
 * What `laybook` is called by: small, so that it is read at once. It has Node keep the compiled program in the cache of the
 * user, which halves the time to its first word, and then loads the program.
 */
import { enableCompileCache } from 'node:module';
import { homedir } from 'node:os';
import { cacheFolder } from './cache-folder.ts';

try {
  const folder = cacheFolder(process.platform, process.env, homedir());
  // Node checks by itself that what it kept is of this program, and does without where nothing can be written.
  if (folder !== undefined) enableCompileCache(folder);
} catch {
  // somebody without a home: slower, and else the same
}

// by `require`: `import` would read through the whole program for the names that it hands out
require('./main.ts');
