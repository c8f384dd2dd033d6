// `npm run bench [-- PART]`: the measures of every tests/bench/*.bench.ts, as a table and as tests/out/bench.json. Each file is
// measured in a process of its own: what builds the programs leaves a heap behind that slows what is measured in it.
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { buildAll } from './build.mjs';
import { filesBelow, writeIfChanged } from './files.mjs';
import { generate } from './generate.mjs';
import { packageExtension } from './package.mjs';
import { root } from './paths.mjs';
import { task } from './task.mjs';

await task(import.meta.filename, async () => {
  generate();
  await buildAll();
  packageExtension();

  const wanted = process.argv[2] ?? '';
  const measures = [];
  for (const file of filesBelow('tests/bench', '.bench.ts').filter((name) => name.includes(wanted))) {
    const { status, stdout } = spawnSync(process.execPath, [path.join(root, 'tests/bench/one-file.ts'), file], {
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    if (status !== 0) throw new Error(`${file} ended with ${status}`);
    for (const one of JSON.parse(stdout)) {
      measures.push(one);
      const value = `${one.value.toFixed(one.unit === 'kB' ? 0 : 2)} ${one.unit}`;
      const budget = one.budget === undefined ? '' : `budget ${one.budget}${one.value > one.budget ? '   OVER' : ''}`;
      console.log(`${one.name.padEnd(64)} ${value.padStart(12)}   ${budget}`.trimEnd());
    }
  }
  writeIfChanged('tests/out/bench.json', `${JSON.stringify(measures, null, 2)}\n`);
});
