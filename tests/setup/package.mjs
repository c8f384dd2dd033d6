// Packs the extension into dist/laybook-VERSION.vsix.
import { spawnSync } from 'node:child_process';
import { readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { buildAll } from './build.mjs';
import { generate } from './generate.mjs';
import { dist, root } from './paths.mjs';
import { task } from './task.mjs';

const vsce = path.join(root, 'node_modules/@vscode/vsce/vsce');
const { version } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8'));

export const vsix = path.join(dist, `laybook-${version}.vsix`);

/** Runs vsce and returns what it prints; throws with its messages when it fails. */
export function runVsce(args) {
  const result = spawnSync(process.execPath, [vsce, ...args], {
    cwd: root,
    encoding: 'utf8',
  });
  if (result.status !== 0) throw new Error(`vsce ${args[0]} failed:\n${result.stdout}${result.stderr}`);
  return result.stdout;
}

/** Packs what the build left in dist/; returns the path of the package. */
export function packageExtension() {
  // The bundles hold every dependency: none is packed. Relative links of the readme stay as they are.
  runVsce(['package', '--no-dependencies', '--no-rewrite-relative-links', '--out', vsix]);
  return vsix;
}

await task(import.meta.filename, async () => {
  generate();
  await buildAll();
  const file = packageExtension();
  console.log(`${path.relative(root, file)}  ${(statSync(file).size / 1024).toFixed(0)} kB`);
});
