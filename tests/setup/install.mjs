// Installs the locked packages, once for each state of the lock file. Runs on Node 20.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { root } from './paths.mjs';

const stampFile = path.join(root, 'node_modules/.laybook-lock');

/** Runs npm with the Node at hand. Its output goes to stderr: stdout belongs to the task. */
function npm(args) {
  const command = process.env.npm_execpath;
  const options = { cwd: root, stdio: ['ignore', 2, 2] };
  return command
    ? spawnSync(process.execPath, [command, ...args], options)
    : spawnSync('npm', args, {
        ...options,
        shell: process.platform === 'win32',
      });
}

export function installPackages() {
  const lock = readFileSync(path.join(root, 'package-lock.json'));
  const wanted = createHash('sha256').update(lock).digest('hex');
  if (existsSync(stampFile) && readFileSync(stampFile, 'utf8') === wanted) return;
  console.error('Installing the packages of package-lock.json ...');
  const result = npm(['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error']);
  if (result.status !== 0) {
    console.error('npm ci failed: see above');
    process.exit(result.status ?? 1);
  }
  writeFileSync(stampFile, wanted);
}
