// Runs tests/workbench in a real VS Code on the packaged extension, with a copy of the sample workshop open.
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { runTests } from '@vscode/test-electron';
import { build as bundle } from 'esbuild';
import { buildAll } from '../build.mjs';
import { filesBelow } from '../files.mjs';
import { generate } from '../generate.mjs';
import { packageExtension, vsix } from '../package.mjs';
import { root, sample } from '../paths.mjs';
import { task } from '../task.mjs';
import { chooseWorkbench } from './choose.mjs';
import { takeScreenshots } from './screenshots.mjs';

const source = path.join(root, 'tests/workbench');
const out = path.join(root, 'tests/out/workbench');

/** Each test file as a module of its own, which mocha loads inside the extension host. */
async function bundleTests() {
  await bundle({
    absWorkingDir: root,
    entryPoints: filesBelow('tests/workbench', '.ts').map((file) => path.join(source, file)),
    outdir: path.join(out, 'suite'),
    outExtension: { '.js': '.cjs' },
    bundle: true,
    platform: 'node',
    format: 'cjs',
    target: 'node22',
    external: ['vscode', 'mocha'],
    sourcemap: 'inline',
    logLevel: 'warning',
  });
}

/** Runs the tests inside the extension host; returns how many passed and failed. */
async function testInHost(executable, extensionsDir, workspace) {
  const report = path.join(out, 'report.json');
  const ended = await runTests({
    vscodeExecutablePath: executable,
    // The extension under test is installed from its package; the one "in development" is an empty one.
    extensionDevelopmentPath: path.join(source, 'host'),
    extensionTestsPath: path.join(out, 'suite/main.cjs'),
    extensionTestsEnv: { LAYBOOK_REPORT: report },
    launchArgs: [workspace, `--extensions-dir=${extensionsDir}`],
  }).then(
    () => true,
    () => false,
  );
  if (!existsSync(report)) return { passed: 0, failed: 1 };
  const { passed, failed } = JSON.parse(readFileSync(report, 'utf8'));
  return { passed, failed: ended ? failed : Math.max(failed, 1) };
}

/** The stage of `npm test`. The package must have been made. */
export async function runWorkbench() {
  const workbench = await chooseWorkbench();
  if (workbench.reason) {
    console.log(`The workbench tests did not run: ${workbench.reason}`);
    return { passed: 0, failed: process.env.CI ? 1 : 0, didNotRun: workbench.reason };
  }
  rmSync(out, { recursive: true, force: true });
  mkdirSync(out, { recursive: true });
  await bundleTests();
  // Outside the checkout, so that no file of it is found by looking upwards.
  const work = mkdtempSync(path.join(tmpdir(), 'laybook-workshop-'));
  try {
    const extensionsDir = path.join(work, 'extensions');
    const workspace = path.join(work, 'sample');
    workbench.install(vsix, extensionsDir);
    cpSync(sample, workspace, { recursive: true });
    const tests = await testInHost(workbench.executable, extensionsDir, workspace);
    if (!workbench.headless) return tests;
    const seen = await takeScreenshots(extensionsDir, workspace);
    return { passed: tests.passed + seen.passed, failed: tests.failed + seen.failed };
  } finally {
    rmSync(work, { recursive: true, force: true, maxRetries: 5 });
  }
}

await task(import.meta.filename, async () => {
  generate();
  await buildAll();
  packageExtension();
  const { passed, failed } = await runWorkbench();
  console.log(`${passed} passed, ${failed} failed`);
  return failed > 0 ? 1 : 0;
});
