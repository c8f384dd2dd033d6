// Collects the English texts that can be translated, from the sources: the server's (calc, language) are keys of
// language/l10n/LOCALE.json, the editor's side (extension) of extension/l10n/bundle.l10n.LOCALE.json.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';
import { verbs, words } from '../../language/words/index.ts';
import { filesBelow } from './files.mjs';
import { root } from './paths.mjs';

/** Functions whose argument of this number is words to be shown, whatever they look like. */
const sayers = { text: 0, words: 0, say: 0, translated: 0, reason: 1, notYet: 0, worked: 1, problem: 2 };

/** Names of dimensions are said as they stand in their table. */
const sayersOf = (file) => (file === 'calc/quantity/names.ts' ? { ...sayers, row: [0, 1] } : sayers);

/** Properties that hold words to be shown, even a single one. */
const labels = new Set([
  'label',
  'title',
  'lead',
  'meaning',
  'head',
  'default',
  'message',
  'mark',
  'agency',
  'says',
  'over',
  'verdict',
]);

/** Properties that hold notation, names or titles of works. */
const unspoken = new Set(['example', 'source', 'pattern', 'word', 'verb', 'words', 'rule', 'symbol', 'insert']);

const comparing = new Set([
  ts.SyntaxKind.EqualsEqualsEqualsToken,
  ts.SyntaxKind.ExclamationEqualsEqualsToken,
  ts.SyntaxKind.InKeyword,
]);

/** A literal, or literals put together by `+`. */
function literalOf(node) {
  if (ts.isStringLiteralLike(node)) return node.text;
  if (ts.isParenthesizedExpression(node)) return literalOf(node.expression);
  if (!ts.isBinaryExpression(node) || node.operatorToken.kind !== ts.SyntaxKind.PlusToken) return undefined;
  const [left, right] = [literalOf(node.left), literalOf(node.right)];
  return left === undefined || right === undefined ? undefined : left + right;
}

const calleeOf = (node) =>
  ts.isIdentifier(node.expression)
    ? node.expression.text
    : ts.isPropertyAccessExpression(node.expression)
      ? node.expression.name.text
      : '';

/** `['layer', 'wet'].map(translated)` */
const isAllTranslated = (node) =>
  ts.isCallExpression(node) &&
  ts.isPropertyAccessExpression(node.expression) &&
  node.expression.name.text === 'map' &&
  node.arguments[0]?.getText() === 'translated';

/** The literals that an expression may come to: both arms of a choice, all of a list. */
function choices(node) {
  if (ts.isParenthesizedExpression(node)) return choices(node.expression);
  if (ts.isConditionalExpression(node)) return [...choices(node.whenTrue), ...choices(node.whenFalse)];
  if (ts.isArrayLiteralExpression(node)) return node.elements.flatMap(choices);
  if (isAllTranslated(node)) return choices(node.expression.expression);
  if (ts.isBinaryExpression(node) && node.operatorToken.kind === ts.SyntaxKind.QuestionQuestionToken)
    return [...choices(node.left), ...choices(node.right)];
  return [node];
}

/** Tables that hold nothing but words to be shown. */
const tablesOfWords = /^language\/view\/(figure-names|drawing\/layer-names)\.ts$/;

/** Files where only what is said by name is shown: tables of units, drawings, protocol, the terminal. */
const onlySaid =
  /^calc\/quantity\/(units|spellings|display|parse|names)\.ts$|^language\/(terminal|export|grammar|lsp|book|analysis)\//;

/** Words that a sentence has and the notation has not. */
const sentence = /\b(the|a|an|is|are|must|be|no|not|it|than|more|limits)\b/;

/** Notation and amounts: `perforate 2 mm every 40 mm`, `clause of ply`. */
const isNotation = (text) =>
  /^(clause|value) of /.test(text) ||
  (/ \?( |,|$)/.test(text) && !sentence.test(text)) ||
  (/\d/.test(text) && /^(-?[\d.,e-]+|[a-z_]+)( [\w./%<>=*+-]+)*$/.test(text) && !sentence.test(text)) ||
  /^[a-z_]+ "/.test(text);

const hasWords = (text) => !/^#|^\s*<|="/.test(text) && /\p{L}{2}/u.test(text.replace(/\{\w+\}/g, ''));
const looksSpoken = (text) => / /.test(text) && hasWords(text) && !text.trim().includes('\n') && !isNotation(text);

/** Whether a literal stands where no words are shown: a type, a comparison, an address, a fault of the program. */
function isUnspoken(node) {
  const { parent } = node;
  if (ts.isLiteralTypeNode(parent) || ts.isImportDeclaration(parent) || ts.isExportDeclaration(parent)) return true;
  if (ts.isPropertyAccessExpression(parent) && parent.name.text === 'split') return true;
  if (ts.isCaseClause(parent) || ts.isElementAccessExpression(parent)) return true;
  if (ts.isBinaryExpression(parent) && comparing.has(parent.operatorToken.kind)) return true;
  if (ts.isPropertyAssignment(parent) && parent.name === node) return true;
  for (let one = node; one.parent !== undefined; one = one.parent) {
    const above = one.parent;
    if (ts.isPropertyAssignment(above) && unspoken.has(above.name.getText())) return !isPlainSource(above, node);
    if (ts.isNewExpression(above))
      return /^(Error|TypeError|RangeError|RegExp|Set|Map)$/.test(above.expression.getText());
    if (
      ts.isCallExpression(above) &&
      /^(split|join|startsWith|endsWith|includes|has|error|log|test)$/.test(calleeOf(above))
    )
      return true;
    if (ts.isThrowStatement(above) || ts.isStatement(above)) return false;
  }
  return false;
}

/** `common practice`: a source in words, not a work with its author. */
const isPlainSource = (property, node) => property.name.getText() === 'source' && isInWords(literalOf(node) ?? '');

const isInWords = (source) => /^([a-z][a-z]|\d)/.test(source) && !/\d{4}/.test(source);

/** Adds what a file says, with the line of each first place. */
function collect(file, add, fault) {
  const text = readFileSync(path.join(root, file), 'utf8');
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const at = (node) => `${file}:${source.getLineAndCharacterOfPosition(node.getStart(source)).line + 1}`;
  const visit = (node) => {
    if (ts.isCallExpression(node)) {
      const places = [sayersOf(file)[calleeOf(node)] ?? []].flat();
      for (const one of places.flatMap((place) => (node.arguments[place] ? choices(node.arguments[place]) : []))) {
        const words = literalOf(one);
        if (words !== undefined && hasWords(words)) add(words, at(one));
        else if (ts.isTemplateExpression(one) || ts.isBinaryExpression(one))
          fault(`${at(one)}: ${one.getText(source)}`);
      }
    }
    if (isAllTranslated(node))
      for (const one of choices(node)) if (hasWords(literalOf(one) ?? '')) add(literalOf(one), at(one));
    const named = ts.isPropertyAssignment(node) ? node.name.getText(source) : '';
    if (ts.isPropertyAssignment(node) && labels.has(named)) {
      for (const one of choices(node.initializer)) {
        const words = literalOf(one);
        if (words !== undefined && hasWords(words) && (named !== 'default' || !isNotation(words))) add(words, at(one));
      }
    }
    if (onlySaid.test(file)) return ts.forEachChild(node, visit);
    const words = literalOf(node);
    if (words !== undefined) {
      const shown = tablesOfWords.test(file)
        ? hasWords(words) && !ts.isImportDeclaration(node.parent)
        : looksSpoken(words) && !isUnspoken(node);
      if (shown) add(words, at(node));
      return;
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
}

/** English texts of the server with the place where each is said first; `faults`: templates that are put together. */
export function serverTexts() {
  const texts = new Map();
  const faults = [];
  const files = ['calc', 'language'].flatMap((folder) => filesBelow(folder, '.ts').map((file) => `${folder}/${file}`));
  for (const file of files.filter((each) => !/\/generated\/|^language\/protocol\//.test(each))) {
    collect(
      file,
      (words, place) => texts.has(words) || texts.set(words, place),
      (fault) => faults.push(fault),
    );
  }
  // sources of words are made of parts: they are taken as they come out
  for (const { source } of words)
    if (source !== undefined && isInWords(source) && !texts.has(source)) texts.set(source, 'language/words');
  // what a verb needs, occupies and uses up stands in its row as single words
  for (const { sheet, needs = [], occupies, consumes = [] } of verbs) {
    for (const text of [sheet, ...needs, ...occupies, ...consumes.flatMap(({ what, by }) => [what, by])])
      if (hasWords(text) && !texts.has(text)) texts.set(text, 'language/words');
  }
  return { texts, faults };
}

/** Titles of works and names of pages that values come from: they stand as they are in every language. */
export function citations() {
  const found = new Set();
  const files = ['calc', 'language'].flatMap((folder) => filesBelow(folder, '.ts').map((file) => `${folder}/${file}`));
  for (const file of files.filter((each) => !each.includes('/generated/'))) {
    const source = ts.createSourceFile(file, readFileSync(path.join(root, file), 'utf8'), ts.ScriptTarget.Latest, true);
    const visit = (node) => {
      if (ts.isPropertyAssignment(node) && node.name.getText(source) === 'source') {
        for (const one of choices(node.initializer)) {
          const words = literalOf(one);
          if (words !== undefined && !isPlainSource(node, one)) found.add(words);
        }
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  return found;
}

/** Calls of the editor that turn a text into the reader's language. */
const editorSayers = new Set(['t']);

/** English texts of the editor's side, in the order of the files; `faults`: those that are put together. */
export function editorTexts() {
  const texts = new Map();
  const faults = [];
  for (const file of filesBelow('extension', '.ts').map((each) => `extension/${each}`)) {
    const source = ts.createSourceFile(file, readFileSync(path.join(root, file), 'utf8'), ts.ScriptTarget.Latest, true);
    const at = (node) => `${file}:${source.getLineAndCharacterOfPosition(node.getStart(source)).line + 1}`;
    const add = (node) => {
      const words = literalOf(node);
      if (words === undefined) faults.push(`${at(node)}: ${node.getText(source)}`);
      else if (!texts.has(words)) texts.set(words, at(node));
    };
    const visit = (node) => {
      if (ts.isCallExpression(node) && editorSayers.has(calleeOf(node)) && node.arguments[0] !== undefined) {
        for (const one of choices(node.arguments[0])) if (!isForwarded(one, file)) add(one);
      }
      // the words of a page: one table a page
      if (file.endsWith('/words.ts') && ts.isPropertyAssignment(node)) add(node.initializer);
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  return { texts, faults };
}

/** The one place that hands over the words of a page, whatever they are. */
const isForwarded = (node, file) => file === 'extension/page/page.ts' && ts.isIdentifier(node);
