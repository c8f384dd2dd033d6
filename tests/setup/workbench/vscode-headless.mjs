#!/usr/bin/env node
// Stands in for the VS Code executable of @vscode/test-electron's runTests: takes the same arguments, runs the tests in
// the real extension host behind a real workbench in headless Chromium, and exits with the run's exit code.
import path from 'node:path';
import { format } from 'node:util';
import { blockOutside, launchBrowser, remoteUri, startServer, workbenchUrl } from './host.mjs';

const limitMs = Number(process.env.LAYBOOK_WORKBENCH_TIMEOUT_MS ?? 600_000);
const debug = process.env.LAYBOOK_WORKBENCH_DEBUG ? (text) => process.stderr.write(`${text.trimEnd()}\n`) : undefined;

/** The workbench's own start-up messages come the same way as the tests' output. */
const noise =
  /^(Resolv(ing|ed) connection token|Creating a socket|\[(reconnection-grace-time|AgentHost|AccountPolicyGate|Service Worker)|(Ignoring fetching|Updating) additional builtin|No search provider registered)|\/static\/out\/vs\/code\/browser\/workbench\//;

/** `--key=value` arguments, and the folder to open. */
function readArguments(args) {
  const options = {};
  for (const arg of args) {
    const [, key, value] = /^--([^=]+)=(.*)$/s.exec(arg) ?? [];
    if (key) options[key] = value;
    else if (!arg.startsWith('-')) options.folder = path.resolve(arg);
  }
  return options;
}

const options = readArguments(process.argv.slice(2));
if (!options.extensionTestsPath || !options.extensionDevelopmentPath || !options.folder) {
  console.error('usage: vscode-headless.mjs --extensionDevelopmentPath=DIR --extensionTestsPath=FILE FOLDER');
  process.exit(2);
}

let server;
let browser;
const finish = async () => {
  await browser?.close().catch(() => {});
  await server?.stop();
};
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => finish().finally(() => process.exit(130)));

/** Opens the page; resolves to the exit code that the workbench reports. */
async function runInPage() {
  server = await startServer({ extensionsDir: options['extensions-dir'], onOutput: debug });
  browser = await launchBrowser();
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  await blockOutside(context, server);
  const page = await context.newPage();
  if (debug) page.on('console', (message) => debug(`[console] ${message.text()}`));
  // The two hooks that the web workbench calls during an extension test run.
  await page.exposeFunction('codeAutomationLog', (type, args) => {
    const line = format(...args);
    if (debug || !noise.test(line)) {
      (type === 'error' || type === 'warn' ? process.stderr : process.stdout).write(`${line}\n`);
    }
  });
  const exit = new Promise((resolve, reject) => {
    page.exposeFunction('codeAutomationExit', resolve).catch(reject);
    page.on('crash', () => reject(new Error('the workbench page crashed')));
    server.child.once('exit', (code) => reject(new Error(`the VS Code server exited (${code})`)));
    setTimeout(() => reject(new Error(`no result after ${limitMs} ms`)), limitMs).unref();
  });
  const payload = ['extensionDevelopmentPath', 'extensionTestsPath'].map((key) => [
    key,
    remoteUri(server, options[key]),
  ]);
  await page.goto(workbenchUrl(server, options.folder, payload));
  return exit;
}

let code = 1;
try {
  code = await runInPage();
} catch (error) {
  console.error(error);
} finally {
  await finish();
}
process.exit(code);
