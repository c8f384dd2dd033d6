import { describeDimension } from '../../../calc/quantity/index.ts';
import type { DimensionName } from '../../../calc/quantity/types.ts';
import type { Argument, NameKind, Word } from '../../words/index.ts';

const kinds: Readonly<Record<Exclude<Argument['dimension'], DimensionName>, string>> = {
  name: 'a name',
  text: 'words in quotes',
  point: 'a point (x, y)',
  date: 'a date',
  count: 'a count',
  shape: 'an outline',
  word: 'a word',
  test: 'a quantity and its limit',
  expression: 'a value or arithmetic',
};

/** What stands behind a word, in the order of the line: `perforate` + "a length, `every` a length". */
export function takesText(word: Word): string {
  const takes = word.takes ?? [];
  const before = takes.filter((one) => one.before === true).map(spoken);
  const behind = takes.filter((one) => one.before !== true).map(spoken);
  const parts = [...(before.length > 0 ? [`in front of it: ${before.join(', ')}`] : []), ...behind];
  return parts.join(', ');
}

function spoken(argument: Argument): string {
  const what =
    argument.names !== undefined
      ? namesText(argument.names)
      : argument.words !== undefined && argument.dimension === 'word'
        ? ''
        : dimensionText(argument);
  const words = argument.words?.map((one) => `\`${one}\``).join(' | ') ?? '';
  const either = [what, words].filter((text) => text !== '').join(' or ');
  const basis = argument.basis === undefined ? '' : ` ${argument.basis.join(' | ')}`;
  const link = argument.after === undefined ? '' : `\`${argument.after}\` `;
  const said = `${link}${either}${basis}${argument.repeated === true ? ' ...' : ''}`;
  return argument.optional === true ? `[${said}]` : said;
}

function namesText(names: readonly NameKind[]): string {
  if (names.includes('own')) return 'its name';
  return `the name of a ${names.join(' or ')}`;
}

function dimensionText({ dimension }: Argument): string {
  return dimension in kinds ? kinds[dimension as keyof typeof kinds] : describeDimension(dimension as DimensionName);
}
