// Starts the VS Code server of the headless workbench and opens its workbench in Chromium.
import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium as playwright } from 'playwright-core';
import { chromium, node24, serverFolder } from './install.mjs';

const serverMain = path.join(serverFolder, 'out/server-main.js');
const startLimitMs = 60_000;

/** No network, no assistant, no first-run pages. */
export const quietSettings = {
  'telemetry.telemetryLevel': 'off',
  'workbench.startupEditor': 'none',
  'workbench.enableExperiments': false,
  'workbench.settings.enableNaturalLanguageSearch': false,
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'security.workspace.trust.enabled': false,
  'extensions.autoCheckUpdates': false,
  'extensions.autoUpdate': false,
  'extensions.ignoreRecommendations': true,
  'chat.disableAIFeatures': true,
  'git.enabled': false,
  'npm.autoDetect': 'off',
  'typescript.disableAutomaticTypeAcquisition': true,
};

const quietArguments = ['--accept-server-license-terms', '--telemetry-level', 'off'];

/** Waits for the line in which the server names its port. */
function portOf(child, onOutput) {
  let output = '';
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error(`the VS Code server did not start:\n${output}`)), startLimitMs);
    const read = (chunk) => {
      output += chunk;
      onOutput?.(String(chunk));
      const port = /Extension host agent listening on (\d+)/.exec(output)?.[1];
      if (port) {
        clearTimeout(timer);
        resolve(Number(port));
      }
    };
    child.stdout.on('data', read);
    child.stderr.on('data', read);
    child.on('exit', (code) => {
      clearTimeout(timer);
      reject(new Error(`the VS Code server exited (${code}):\n${output}`));
    });
  });
}

/** Ends the server and all that it forked: they share a process group. */
async function stopGroup(child) {
  const signal = (name) => {
    try {
      return process.kill(-child.pid, name);
    } catch {
      return false;
    }
  };
  for (const name of ['SIGTERM', 'SIGKILL']) {
    signal(name);
    for (let waited = 0; waited < 3000; waited += 25) {
      if (!signal(0)) return;
      await new Promise((resolve) => setTimeout(resolve, 25));
    }
  }
}

/** A running server with a fresh profile; `settings` go on top of the quiet ones. Where it `asksTrust`, a folder is not trusted. */
export async function startServer({ extensionsDir, settings = {}, asksTrust = false, onOutput } = {}) {
  const dataDir = mkdtempSync(path.join(tmpdir(), 'laybook-workbench-'));
  mkdirSync(path.join(dataDir, 'data/User'), { recursive: true });
  writeFileSync(path.join(dataDir, 'data/User/settings.json'), JSON.stringify({ ...quietSettings, ...settings }));
  const args = [
    serverMain,
    ...['--host', '127.0.0.1', '--port', '0', '--without-connection-token'],
    ...quietArguments,
    ...(asksTrust ? [] : ['--disable-workspace-trust']),
    ...['--disable-update-check', '--disable-getting-started-override'],
    // Without this a released VS Code does not take an extension test from the page's address.
    '--enable-smoke-test-driver',
    ...['--server-data-dir', dataDir, '--extensions-dir', extensionsDir ?? path.join(dataDir, 'extensions')],
  ];
  const child = spawn(node24, args, {
    // No gallery; sockets in the folder that is removed at the end.
    env: { ...process.env, EXTENSIONS_GALLERY: '{}', XDG_RUNTIME_DIR: dataDir },
    detached: true,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const stop = async () => {
    await stopGroup(child);
    rmSync(dataDir, { recursive: true, force: true, maxRetries: 5 });
  };
  try {
    const port = await portOf(child, onOutput);
    return { authority: `127.0.0.1:${port}`, child, stop };
  } catch (error) {
    await stop();
    throw error;
  }
}

/** Installs a .vsix into an extensions folder, without a workbench. */
export function installVsix(vsix, extensionsDir) {
  mkdirSync(extensionsDir, { recursive: true });
  const dataDir = mkdtempSync(path.join(tmpdir(), 'laybook-install-'));
  const args = [
    '--server-data-dir',
    dataDir,
    '--extensions-dir',
    extensionsDir,
    '--install-extension',
    vsix,
    '--force',
  ];
  const result = spawnSync(node24, [serverMain, ...quietArguments, ...args], { encoding: 'utf8' });
  rmSync(dataDir, { recursive: true, force: true });
  if (result.status !== 0) throw new Error(`install of ${vsix} failed:\n${result.stdout}${result.stderr}`);
}

export function launchBrowser() {
  return playwright.launch({
    executablePath: chromium(),
    headless: true,
    args: [
      ...['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-dev-shm-usage'],
      ...['--disable-background-networking', '--disable-component-update', '--disable-sync'],
    ],
  });
}

/** Address of the workbench page, for a folder or a file that names several; `payload` is a list of [key, value] that it reads. */
export function workbenchUrl(server, folder, payload) {
  const url = new URL(`http://${server.authority}/`);
  url.searchParams.set(folder.endsWith('.code-workspace') ? 'workspace' : 'folder', folder);
  url.searchParams.set('payload', JSON.stringify(payload));
  return url.href;
}

/** vscode-remote: address of a file, as the workbench sees it. */
export const remoteUri = (server, file) =>
  `vscode-remote://${server.authority}${path.resolve(file).split('/').map(encodeURIComponent).join('/')}`;

/** Refuses every request of the page that is not to the server's own address. */
export async function blockOutside(context, server) {
  // The page asks for this file; the bare VS Code server does not have it.
  await context.route('**/_static/out/browser/serviceWorker.js', (route) =>
    route.fulfill({ contentType: 'text/javascript', headers: { 'service-worker-allowed': '/' }, body: '' }),
  );
  await context.route(
    (url) => url.host !== server.authority && /^(http|ws)s?:$/.test(url.protocol),
    (route) => route.abort(),
  );
}
