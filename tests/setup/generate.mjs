// Writes what the sources are derived from: the parser of the grammar, the list of rules, their pages and the stock
// library as modules of text (one way for bundles and tests alike). Everything lands in git-ignored generated/ folders.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { filesBelow, textOf, writeIfChanged } from './files.mjs';
import { root } from './paths.mjs';
import { translatedSnippets } from './snippets.mjs';
import { task } from './task.mjs';

const heading = '// Written by `npm run generate`.\n';
const grammarFolder = 'language/grammar';
const problems = [];

/** Runs langium-cli when the grammar or its configuration has changed. */
function generateGrammar() {
  const grammars = filesBelow(grammarFolder, '.langium');
  if (grammars.length === 0) return;
  const sources = [...grammars, 'langium-config.json'].map((name) => textOf(`${grammarFolder}/${name}`));
  const wanted = createHash('sha256').update(sources.join('\0')).digest('hex');
  // outside of generated/: langium-cli asks before it deletes what it did not write
  const stamp = '.cache/grammar-stamp';
  const written = existsSync(path.join(root, grammarFolder, 'generated/ast.ts'));
  if (written && existsSync(path.join(root, stamp)) && textOf(stamp) === wanted) return;
  const cli = path.join(root, 'node_modules/langium-cli/bin/langium.js');
  const config = path.join(root, grammarFolder, 'langium-config.json');
  const result = spawnSync(process.execPath, [cli, 'generate', '--file', config], { encoding: 'utf8' });
  if (result.status === 0) writeIfChanged(stamp, wanted);
  else problems.push(`langium generate failed:\n${result.stdout}${result.stderr}`);
}

/** `group/what-is-wrong` -> `groupWhatIsWrong`, the name under which the rule's file exports it. */
const exportName = (rule) => rule.replace(/[/-](\w)/g, (_, letter) => letter.toUpperCase());

/** Names of the rules: language/rules/GROUP/WHAT.ts each; `kit` is what they share. */
const ruleNames = () =>
  filesBelow('language/rules', '.ts')
    .filter((file) => file.split('/').length === 2 && !/^(generated|kit)\//.test(file))
    .map((file) => file.replace(/\.ts$/, ''));

function generateRules() {
  const good = ruleNames().filter((name) => {
    if (new RegExp(`export const ${exportName(name)}\\b`).test(textOf(`language/rules/${name}.ts`))) return true;
    problems.push(`language/rules/${name}.ts must export the rule as ${exportName(name)}`);
    return false;
  });
  const imports = good.map((name) => `import { ${exportName(name)} } from '../${name}.ts';\n`).join('');
  const list = good.map((name) => `  ${exportName(name)},\n`).join('');
  writeIfChanged('language/rules/generated/rules.ts', `${heading}${imports}\nexport const rules = [\n${list}];\n`);
}

/** A module that holds the texts of files by name. */
function textModule(name, texts) {
  const lines = texts.map(([key, text]) => `  ${JSON.stringify(key)}: ${JSON.stringify(text)},\n`).join('');
  return `${heading}export const ${name}: Readonly<Record<string, string>> = {\n${lines}};\n`;
}

/** Texts of the rules' pages, by rule. */
export const rulePages = () =>
  filesBelow('language/rules', '.md')
    .filter((file) => file.split('/').length === 2)
    .map((file) => [file.replace(/\.md$/, ''), textOf(`language/rules/${file}`)]);

/** The first paragraph of a page, as one line. */
function openingOf(page) {
  const paragraphs = page.split(/\n\s*\n/).map((paragraph) => paragraph.trim());
  return (paragraphs.find((paragraph) => paragraph !== '' && !paragraph.startsWith('#')) ?? '').replace(
    /\s*\n\s*/g,
    ' ',
  );
}

/** How the pages begin, by rule. */
export const ruleOpenings = () => rulePages().map(([name, page]) => [name, openingOf(page)]);

/** Whole pages for who shows them; the server carries their openings alone, and asks for a page when one is wanted. */
function generatePages() {
  writeIfChanged('language/rules/generated/pages.ts', textModule('pages', rulePages()));
  writeIfChanged('language/rules/generated/openings.ts', textModule('openings', ruleOpenings()));
}

/** The head of an entry at the beginning of a line: its kind, its name and its title. */
const stockHead =
  /^(fibre|fabric|prepreg|resin|gelcoat|catalyst|paste|core|consumable|tool) +([^\s"{]+)(?: +like +[^\s"{]+)?(?: +"([^"]*)")?[^\n{]*\{/;

/** What stands in a stock file, so that it need not be read until a name of it is asked for. */
function stockEntries(file, text) {
  const entries = [];
  for (const [line, words] of text.split(/\r\n|\n|\r/).entries()) {
    const head = stockHead.exec(words);
    if (head) entries.push({ name: head[2], kind: head[1], file, title: head[3], line, at: entries.length });
    else if (/^[A-Za-z]/.test(words) && !/^notation\b/.test(words)) {
      problems.push(
        `language/book/stock/${file}:${line + 1}: an entry begins with its kind, its name, its title and { on one line`,
      );
    }
  }
  return entries;
}

/** Texts of the stock library, by file. */
export const stockTexts = () =>
  filesBelow('language/book/stock', '.layup').map((file) => [file, textOf(`language/book/stock/${file}`)]);

function generateStock() {
  const texts = stockTexts();
  writeIfChanged('language/book/generated/stock-texts.ts', textModule('stock', texts));
  const entries = texts.flatMap(([file, text]) => stockEntries(file, text));
  const index = entries.map((entry) => `  ${JSON.stringify(entry)},\n`).join('');
  writeIfChanged(
    'language/book/generated/stock.ts',
    `${heading}import type { StockEntry } from '../stock.ts';\n\n` +
      `export const stockIndex: readonly StockEntry[] = [\n${index}];\n`,
  );
}

/** The texts of package.json, which an editor wants beside it: from where translators edit them. */
function copyManifestTexts() {
  for (const file of filesBelow('extension/l10n', '.json').filter((each) => each.startsWith('package.nls.')))
    writeIfChanged(file, textOf(`extension/l10n/${file}`));
}

/** The snippets with the words of a translator: the manifest names the file of its language. */
function generateSnippets() {
  const snippets = JSON.parse(textOf('extension/snippets.json'));
  for (const file of filesBelow('extension/l10n', '.json').filter((each) => each.startsWith('snippets.'))) {
    const translated = translatedSnippets(snippets, JSON.parse(textOf(`extension/l10n/${file}`)));
    writeIfChanged(`extension/generated/${file}`, `${JSON.stringify(translated, null, 2)}\n`);
  }
}

/** Writes all of it; throws with every problem found. */
export function generate() {
  problems.length = 0;
  generateGrammar();
  generateRules();
  generatePages();
  generateStock();
  copyManifestTexts();
  generateSnippets();
  if (problems.length > 0) throw new Error(problems.join('\n'));
}

await task(import.meta.filename, generate);
