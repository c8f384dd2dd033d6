// `npm run bench [-- PART]`: the measures of every tests/bench/*.bench.ts, as a table and as tests/out/bench.json.
import { buildAll } from './build.mjs';
import { filesBelow, writeIfChanged } from './files.mjs';
import { generate } from './generate.mjs';
import { packageExtension } from './package.mjs';
import { task } from './task.mjs';

await task(import.meta.filename, async () => {
  generate();
  await buildAll();
  packageExtension();

  const wanted = process.argv[2] ?? '';
  const measures = [];
  for (const file of filesBelow('tests/bench', '.bench.ts').filter((name) => name.includes(wanted))) {
    const { measure } = await import(`../bench/${file}`);
    for (const one of await measure()) {
      measures.push(one);
      const value = `${one.value.toFixed(one.unit === 'kB' ? 0 : 2)} ${one.unit}`;
      const budget = one.budget === undefined ? '' : `budget ${one.budget}${one.value > one.budget ? '   OVER' : ''}`;
      console.log(`${one.name.padEnd(64)} ${value.padStart(12)}   ${budget}`.trimEnd());
    }
  }
  writeIfChanged('tests/out/bench.json', `${JSON.stringify(measures, null, 2)}\n`);
});
