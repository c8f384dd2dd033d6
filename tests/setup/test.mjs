// `npm test`: every check there is, stage after stage; the last line sums them up.
import { rmSync } from 'node:fs';
import path from 'node:path';
import { root } from './paths.mjs';
import { stages } from './stages.mjs';

rmSync(path.join(root, 'tests/out'), { recursive: true, force: true });

const results = [];
for (const { name, run } of stages) {
  console.log(`\n== ${name}`);
  const started = Date.now();
  let result;
  try {
    result = await run();
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    result = { passed: 0, failed: 1 };
  }
  results.push({ name, seconds: (Date.now() - started) / 1000, ...result });
}

console.log('\n== summary');
for (const { name, passed, failed, seconds, didNotRun } of results) {
  const counts = didNotRun ? `did not run: ${didNotRun}` : `${passed} passed, ${failed} failed`;
  console.log(`${name.padEnd(12)} ${seconds.toFixed(1).padStart(6)} s  ${counts}`);
}
const sum = (key) => results.reduce((total, result) => total + result[key], 0);
process.exitCode = sum('failed') > 0 || sum('passed') === 0 ? 1 : 0;
console.log(`\n${sum('passed')} passed, ${sum('failed')} failed`);
// Whatever a stage left behind must not keep the summary waiting.
setTimeout(() => process.exit(), 10_000).unref();
