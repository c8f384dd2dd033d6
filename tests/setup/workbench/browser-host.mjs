// The workbench as it is where there is nothing but a browser: no remote machine, the extension's `browser` entry in a web
// worker, and a folder that lies on no disk. The server of the headless workbench hands out the files of the page alone.
import { existsSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { filesBelow } from '../files.mjs';
import { sample } from '../paths.mjs';
import { blockOutside, quietSettings } from './host.mjs';

/** Where the sample workshop lies in the browser. */
export const workshop = 'workshop:/sample';

/** Address of the page that shows the workshop with one of its files opened; without a file, of one that shows no folder. */
export function browserUrl(server, file) {
  const url = new URL(`http://${server.authority}/`);
  if (file === undefined) {
    url.searchParams.set('ew', 'true');
    return url.href;
  }
  url.searchParams.set('folder', workshop);
  url.searchParams.set('payload', JSON.stringify([['openFile', `${workshop}/${file}`]]));
  return url.href;
}

const types = {
  '.json': 'application/json',
  '.js': 'text/javascript',
  '.cjs': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
};

/** What hands out the files of the folder: an extension of its own, as those of code hosts are. */
const filesExtension = {
  'package.json': JSON.stringify({
    name: 'workshop-files',
    publisher: 'laybook-tests',
    version: '0.0.1',
    engines: { vscode: '^1.100.0' },
    browser: './main.js',
    activationEvents: ['*', 'onFileSystem:workshop'],
  }),
  'package.nls.json': '{}',
  'main.js': readFileSync(path.join(import.meta.dirname, 'virtual-folder.js'), 'utf8').replace('__FILES__', () =>
    JSON.stringify(Object.fromEntries(filesBelow('extension/sample', '').map(textOfSample))),
  ),
};

function textOfSample(name) {
  return [`/sample/${name}`, readFileSync(path.join(sample, name), 'utf8')];
}

/** The file behind an address of one of the two extensions; ours is the one that was installed from its package. */
function fileOf(address, installed) {
  const [, extension, ...parts] = decodeURIComponent(new URL(address).pathname).split('/');
  const name = parts.join('/');
  if (extension === 'workshop-files') return filesExtension[name];
  const file = path.join(installed, name);
  return existsSync(file) && statSync(file).isFile() ? readFileSync(file) : undefined;
}

/** Sets a browser context up: the page is told of no remote machine, and where the two extensions are. */
export async function withoutRemote(context, server, installed, themed = {}) {
  await blockOutside(context, server);
  await context.route(`http://${server.authority}/?*`, async (route) => {
    const answer = await route.fetch();
    const page = await answer.text();
    const changed = page.replace(
      /(id="vscode-workbench-web-configuration" data-settings=")([^"]*)"/,
      (_, start, settings) => `${start}${escaped(configured(JSON.parse(unescaped(settings)), server, themed))}"`,
    );
    // The page's policy names its scripts by their sums, which stay as they are.
    await route.fulfill({ response: answer, body: changed });
  });
  await context.route('**/out/vs/code/browser/workbench/workbench.js', async (route) => {
    const answer = await route.fetch();
    await route.fulfill({ response: answer, body: withoutMachine(await answer.text()) });
  });
  for (const extension of ['laybook', 'workshop-files']) {
    await context.route(`http://${server.authority}/${extension}/**`, (route) => {
      const body = fileOf(route.request().url(), installed);
      return body === undefined
        ? route.fulfill({ status: 404 })
        : route.fulfill({
            body,
            contentType: types[path.extname(new URL(route.request().url()).pathname)] ?? 'text/plain',
          });
    });
  }
}

/** This build of the workbench takes it that there is always a machine behind it; the one of a code host does not. */
const ofMachine = [
  [/(\{\.\.\.JSON\.parse\(\w+\)),remoteAuthority:location\.host\}/, '$1}'],
  [
    /(get userRoamingDataHome\(\)\{return \w+\(\w+\.file\(this\.userDataPath\)\.with\(\{scheme:\w+\.)vscodeRemote\}/,
    '$1vscodeUserData}',
  ],
];

function withoutMachine(script) {
  return ofMachine.reduce((text, [pattern, instead]) => {
    if (!pattern.test(text)) throw new Error(`the workbench has no ${pattern}: it is another build`);
    return text.replace(pattern, instead);
  }, script);
}

function configured({ remoteAuthority: _, ...settings }, server, themed) {
  const location = (name) => ({ scheme: 'http', authority: server.authority, path: `/${name}` });
  return JSON.stringify({
    ...settings,
    configurationDefaults: { ...quietSettings, ...themed },
    folderUri: { scheme: 'workshop', path: '/sample' },
    additionalBuiltinExtensions: [location('workshop-files'), location('laybook')],
  });
}

const unescaped = (text) => text.replaceAll('&quot;', '"').replaceAll('&amp;', '&');
const escaped = (text) => text.replaceAll('&', '&amp;').replaceAll('"', '&quot;');
