// `npm start`: builds, shows what the sample workshop's recipes come to, and opens it in VS Code with `-- --code`.
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { buildAll } from './build.mjs';
import { filesBelow } from './files.mjs';
import { generate } from './generate.mjs';
import { laybook } from './laybook.mjs';
import { packageExtension, vsix } from './package.mjs';
import { root, sample } from './paths.mjs';
import { task } from './task.mjs';

const inRoot = { cwd: root };
const relative = (file) => path.relative(root, file);
const firstTry = path.join(sample, 'first_try.layup');

/** Files of the sample workshop but the first try, as paths from the root. */
const workshop = () =>
  filesBelow(relative(sample), '.layup')
    .map((file) => path.join(sample, file))
    .filter((file) => file !== firstTry)
    .map(relative);

async function show(title, args) {
  console.log(`\n== ${title}\n   laybook ${args.join(' ')}\n`);
  const code = await laybook(args, inRoot);
  if (code > 1) throw new Error(`laybook ${args[0]} ended with exit code ${code}`);
}

/** Installs the package in the VS Code of this machine and opens the sample workshop there. */
function openInCode() {
  const code = process.env.LAYBOOK_CODE ?? 'code';
  const run = (args) =>
    spawnSync(code, args, {
      stdio: 'inherit',
      shell: process.platform === 'win32',
    });
  for (const args of [
    ['--install-extension', vsix, '--force'],
    ['--new-window', sample, firstTry],
  ]) {
    const { error, status } = run(args);
    if (error || status !== 0) {
      throw new Error(
        `"${code} ${args[0]}" failed${error ? `: ${error.message}` : ''}. Is VS Code's command on the PATH?`,
      );
    }
  }
}

await task(import.meta.filename, async () => {
  console.log('Building ...');
  generate();
  await buildAll();
  packageExtension();
  await show('The sample workshop, the first try aside', ['check', ...workshop()]);
  await show('The sled deck', ['report', 'sled_deck', relative(sample)]);
  await show('A first try, full of mistakes', ['check', relative(firstTry)]);
  if (process.argv.includes('--code')) openInCode();
  else {
    console.log(`
To see it in VS Code:  npm start -- --code
or by hand:            code --install-extension ${relative(vsix)}
                       code ${relative(sample)}`);
  }
});
