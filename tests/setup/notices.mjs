// The licences of the packages whose code is inside the bundles, as one text that goes with them.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { root } from './paths.mjs';

const rule = '-'.repeat(100);

/** Folders of the packages that the bundles hold, from esbuild's account of its inputs. */
export function bundledPackages(metafiles) {
  const folders = new Set();
  for (const { outputs } of Object.values(metafiles)) {
    for (const { inputs } of Object.values(outputs)) {
      for (const [file, { bytesInOutput }] of Object.entries(inputs)) {
        const folder = /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(file)?.[1];
        if (folder && bytesInOutput > 0) folders.add(folder);
      }
    }
  }
  return [...folders].sort();
}

function licenceText(folder) {
  const full = path.join(root, folder);
  const names = readdirSync(full).filter((name) => /^(licen[cs]e|copying|notice|thirdpartynotices)/i.test(name));
  return names
    .sort()
    .map((name) => readFileSync(path.join(full, name), 'utf8').trim())
    .join('\n\n');
}

/** What a package says of its licence: in its manifest, or in the first line of the text that came with it. */
export function licenceName(folder) {
  const { license } = JSON.parse(readFileSync(path.join(root, folder, 'package.json'), 'utf8'));
  return license ?? /^(\w+) License\n/.exec(licenceText(folder))?.[1];
}

/** One part for each package, bundled or copied from: name, version, licence, and the licence text that it came with. */
export function notices(metafiles, copied = []) {
  const parts = [...bundledPackages(metafiles), ...copied].map((folder) => {
    const manifest = path.join(root, folder, 'package.json');
    if (!existsSync(manifest)) throw new Error(`${folder} has no package.json`);
    const { name, version, author } = JSON.parse(readFileSync(manifest, 'utf8'));
    const license = licenceName(folder);
    const holder = typeof author === 'string' ? author : author?.name;
    const text = licenceText(folder) || (holder ? `Copyright ${holder}. Licensed under ${license}.` : '');
    if (!license || !text) throw new Error(`${name} says nothing about its licence`);
    return `${name} ${version} (${license})\n${rule}\n${text}\n`;
  });
  return `Laybook contains the following packages.\n\n${parts.join(`\n${rule}\n`)}`;
}
