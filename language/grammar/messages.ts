import type { IRecognitionException, IToken } from 'chevrotain';
import type { ParseResult } from 'langium';
import { type Text, text as words } from '../../calc/figure/figure.ts';
import type { Book } from './generated/ast.ts';
import { problemsOf } from './lexer.ts';
import { endOf, isNewline, type TokenProblem } from './tokens.ts';

/** An example of a whole line that begins with a word, as the table of words holds it. */
export type ExampleOf = (headWord: string) => string | undefined;

/**
 * What lexer and parser could not read, one problem a line and in words of the bench: up to which word the line is understood,
 * and what such a line looks like when it is whole.
 */
export function readingProblems(text: string, result: ParseResult, exampleOf: ExampleOf): TokenProblem[] {
  const problems: TokenProblem[] = [...problemsOf(result.lexerReport)];
  const lines = new Set(problems.map((problem) => lineOf(text, problem.offset)));
  const add = (problem: TokenProblem): void => {
    const line = lineOf(text, problem.offset);
    if (lines.has(line)) return;
    lines.add(line);
    problems.push(problem);
  };
  for (const error of result.lexerErrors) {
    add({
      rule: 'line/not-understood',
      message: error.message,
      offset: error.offset,
      length: Math.max(1, error.length),
    });
  }
  for (const error of result.parserErrors) add(parserProblem(text, error, exampleOf));
  const version = versionProblem(text, result);
  if (version !== undefined) add(version);
  return problems;
}

/** A version of the notation that is not ours: what follows may mean something else. A file that names none is of ours. */
function versionProblem(text: string, { value }: ParseResult): TokenProblem | undefined {
  const { version } = value as Book;
  const offset = version?.$cstNode?.offset;
  if (version === undefined || offset === undefined || Number(version.number) === 1) return undefined;
  const { number } = version;
  return {
    rule: 'line/not-understood',
    message:
      number !== undefined && Number(number) > 1
        ? words('notation {number} is newer than this tool, which knows notation 1', { number })
        : words('which version of the notation? notation 1'),
    offset,
    length: /^notation(?:[ \t]+[^\s/]+)?/.exec(text.slice(offset, offset + 100))?.[0].length ?? 1,
  };
}

function parserProblem(text: string, error: IRecognitionException, exampleOf: ExampleOf): TokenProblem {
  const { token } = error;
  const previous = (error as IRecognitionException & { readonly previousToken?: IToken }).previousToken;
  const ended =
    isNewline(token) || token.image === '}' || token.tokenType.name === 'EOF' || Number.isNaN(token.startOffset);
  if (ended && previous !== undefined && !Number.isNaN(previous.startOffset)) {
    const example = exampleOf(headWordOf(text, previous.startOffset));
    return {
      rule: 'line/not-understood',
      message: unfinished(previous.image, example),
      offset: previous.startOffset,
      length: Math.max(1, endOf(previous) - previous.startOffset),
    };
  }
  const offset = Number.isNaN(token.startOffset) ? Math.max(0, text.length - 1) : token.startOffset;
  const fraction = fractionAt(text, offset);
  if (fraction !== undefined) return fraction;
  const example = exampleOf(headWordOf(text, offset));
  return {
    rule: 'line/not-understood',
    message: unclear(token.image.trim(), example),
    offset,
    length: Math.max(1, endOf(token) - offset),
  };
}

/** `3/8 in`, `1 3/8 in`: what a tape measure says; the notation writes decimals. `offset` is that of the stroke. */
function fractionAt(text: string, offset: number): TokenProblem | undefined {
  const before = /(?:(\d{1,4})[ \t]+)?(\d{1,4})$/.exec(text.slice(Math.max(0, offset - 20), offset));
  const below = /^\/(\d{1,4})(?!\d)/.exec(text.slice(offset, offset + 8))?.[1];
  if (before === null || below === undefined || Number(below) === 0) return undefined;
  const [said, whole = '0', above] = before;
  return {
    rule: 'line/not-understood',
    message: words('a fraction is written as a decimal: {decimal} for {fraction}', {
      decimal: String(Number((Number(whole) + Number(above) / Number(below)).toFixed(4))),
      fraction: `${said}/${below}`,
    }),
    offset: offset - said.length,
    length: said.length + 1 + below.length,
  };
}

const unfinished = (word: string, example: string | undefined): Text =>
  example === undefined
    ? words('the line is not finished behind `{word}`', { word })
    : words('the line is not finished behind `{word}`: {example}', { word, example });

const unclear = (word: string, example: string | undefined): Text =>
  example === undefined
    ? words('the line is not understood from `{word}` on', { word })
    : words('the line is not understood from `{word}` on; such a line reads {example}', { word, example });

function headWordOf(text: string, offset: number): string {
  let start = offset;
  while (start > 0 && text[start - 1] !== '\n' && text[start - 1] !== '\r') start--;
  return /^[ \t]*([A-Za-z_]\w*)/.exec(text.slice(start, start + 200))?.[1] ?? '';
}

/** Offset of the first character of the line. */
function lineOf(text: string, offset: number): number {
  const before = text.lastIndexOf('\n', offset - 1);
  return before + 1;
}
