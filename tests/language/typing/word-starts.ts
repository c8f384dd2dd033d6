/** The words of a text that somebody types from nothing, and what stands in the editor when each begins. */

export interface WordStart {
  /** offset in the whole text */
  readonly offset: number;
  readonly word: string;
  /** what is typed so far, with the brackets that the editor has closed by itself */
  readonly text: string;
  /** where the cursor stands in it */
  readonly cursor: number;
}

/** Words behind these are names that are new: nobody can offer them. */
const newNameBehind =
  /(?:^|\n)[ \t]*(?:recipe|let|zone|ply|strip|core|insert|patch|coat|feed|vent|load|size|fabric|tool|record)[ \t]+$|(?:^|\n)[ \t]*ends(?:[ \t]+\w+[ \t]+to)?[ \t]+$/;

const token =
  /\/\/[^\n]*|\/\*[\s\S]*?\*\/|"[^"\n]*"|\d+(?:\.\d+)?(?:e-?\d+)?|[A-Za-z_]\w*(?:[/-][a-z]\w*)*|\s+|[\s\S]/gy;

/** A name that is used above the line that it is given on, as a layer that one below is wrapped onto: nobody can offer it yet. */
function isAhead(source: string, name: string, offset: number): boolean {
  const given = new RegExp(
    `^[ \\t]*(?:zone|ply|strip|core|insert|patch|coat|feed|vent|load|size)[ \\t]+${name}\\b`,
    'm',
  );
  const at = given.exec(source)?.index;
  return at !== undefined && at > offset;
}

/** Comments, texts, numbers and new names are left out. */
export function wordStarts(source: string): WordStart[] {
  const starts: WordStart[] = [];
  for (const { 0: piece, index } of source.matchAll(token)) {
    const before = source.slice(0, index);
    if (!/^[A-Za-z_]/.test(piece) || newNameBehind.test(before) || isAhead(source, piece, index)) continue;
    starts.push({ offset: index, word: piece, text: `${before}${closers(before)}`, cursor: index });
  }
  return starts;
}

/** The closing brackets behind the cursor: those that the editor put there when the opening ones were typed. */
function closers(typed: string): string {
  const open: string[] = [];
  for (const { 0: piece } of typed.matchAll(token)) {
    if (piece === '{') open.push('}');
    if (piece === '(') open.push(')');
    if (piece === '}' || piece === ')') open.pop();
  }
  const parens = open.filter((each) => each === ')').length;
  const braces = open.length - parens;
  const lines = Array.from({ length: braces }, (_, i) => `\n${'  '.repeat(braces - 1 - i)}}`);
  return `${')'.repeat(parens)}${lines.join('')}\n`;
}
