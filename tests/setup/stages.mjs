// The stages of `npm test`. Each runs to its end and says how many checks passed and failed.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { buildAll } from './build.mjs';
import { generate } from './generate.mjs';
import { packageExtension } from './package.mjs';
import { root } from './paths.mjs';
import { whyNoBrowser } from './workbench/install.mjs';
import { runWorkbench } from './workbench/run.mjs';

const tool = (file) => path.join(root, 'node_modules', file);

/** Runs a JavaScript program with its output on the terminal; returns whether it ended well. */
function program(file, args) {
  const result = spawnSync(process.execPath, [tool(file), ...args], {
    cwd: root,
    stdio: 'inherit',
  });
  return result.status === 0;
}

const once = (good) => ({ passed: good ? 1 : 0, failed: good ? 0 : 1 });

/** Runs tests and counts them; `name` is that of the stage. */
function vitest(name, ...args) {
  const report = path.join(root, `tests/out/${name}.json`);
  const good = program('vitest/vitest.mjs', [
    'run',
    ...args,
    // a busy machine is no failure; what may hang has a limit of its own
    '--testTimeout=60000',
    '--hookTimeout=60000',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
  ]);
  if (!existsSync(report)) return once(false);
  const { numPassedTests, numFailedTests, testResults } = JSON.parse(readFileSync(report, 'utf8'));
  // A file that cannot even be loaded counts as one failure, and so does an error outside every test.
  const broken = testResults.filter(
    (file) => file.status === 'failed' && !file.assertionResults.some((test) => test.status === 'failed'),
  ).length;
  const failed = numFailedTests + broken;
  return {
    passed: numPassedTests,
    failed: good ? failed : Math.max(failed, 1),
  };
}

/** What needs a browser but no editor: tests/browser/*.check.ts. */
function browser() {
  const reason = whyNoBrowser();
  if (reason === undefined) return vitest('browser', '--config=tests/setup/browser.config.mjs');
  console.log(`The browser tests did not run: ${reason}`);
  return { passed: 0, failed: process.env.CI ? 1 : 0, didNotRun: reason };
}

export const stages = [
  { name: 'generate', run: () => once(generate() === undefined) },
  { name: 'build', run: async () => once(Boolean(await buildAll())) },
  { name: 'package', run: async () => once(Boolean(await packageExtension())) },
  {
    name: 'types',
    run: () => once(program('typescript/bin/tsc', ['--noEmit', '-p', '.'])),
  },
  {
    name: 'lint',
    run: () => once(program('@biomejs/biome/bin/biome', ['check', '--max-diagnostics=20'])),
  },
  // Unit, language, published, tidy, fuzz, grammar and packaging tests: all tests/**\/*.test.ts.
  { name: 'tests', run: () => vitest('vitest', '--config=tests/setup/tests.config.mjs') },
  // Before the browser tests: where it can, it installs the browser.
  { name: 'workbench', run: runWorkbench },
  { name: 'browser', run: browser },
];
