/** What users notice of the package before they type: its size, how long it holds the editor up, how fast it answers. */
import { execFileSync, spawnSync } from 'node:child_process';
import { statSync } from 'node:fs';
import path from 'node:path';
import { loadedBy } from '../setup/build.mjs';
import { vsix } from '../setup/package.mjs';
import { dist, root, sample } from '../setup/paths.mjs';
import { type Bench, type Measure, shortest } from './measure.ts';

const child = path.join(import.meta.dirname, 'activation-child.cjs');

/** Milliseconds from loading the extension's code to the end of `activate`, in a fresh process each time. */
function activation(): number {
  const times = Array.from({ length: 7 }, () => {
    const { load, activate } = JSON.parse(execFileSync(process.execPath, [child, root], { encoding: 'utf8' }));
    return load + activate;
  });
  return Math.min(...times);
}

const kilobytes = (...files: readonly string[]): number =>
  files.reduce((sum, file) => sum + statSync(file).size, 0) / 1024;

/** Runs a bundle to its end. Findings in the sample are no failure here. */
function run(args: readonly string[]): void {
  const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' });
  if (status === null || status > 1) throw new Error(`${args.join(' ')} ended with ${status}: ${stderr}`);
}

export const measure: Bench = async (): Promise<Measure[]> => {
  const node = await shortest(() => run(['--eval', '0']));
  const check = await shortest(() => run([path.join(dist, 'laybook.cjs'), 'check', sample]));
  const server = loadedBy('server.cjs').map((name) => path.join(dist, name));
  return [
    { name: 'package', value: kilobytes(vsix), unit: 'kB', budget: 2560 },
    { name: 'server bundle', value: kilobytes(...server), unit: 'kB', budget: 1536 },
    { name: 'extension: load and activate', value: activation(), unit: 'ms', budget: 50 },
    { name: 'Node start', value: node, unit: 'ms' },
    { name: 'check of the sample workshop, cold', value: check, unit: 'ms', budget: 400 },
  ];
};
