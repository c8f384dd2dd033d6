import { type Shown, text, type Words } from '../../../calc/figure/figure.ts';
import { either } from '../../../calc/figure/listed.ts';
import { describeDimension } from '../../../calc/quantity/index.ts';
import type { DimensionName } from '../../../calc/quantity/types.ts';
import type { Argument, NameKind, Word } from '../../words/index.ts';
import { say, show } from '../text.ts';

const kinds: Readonly<Record<Exclude<Argument['dimension'], DimensionName>, Words>> = {
  name: 'a name',
  text: 'words in quotes',
  point: 'a point (x, y)',
  date: 'a date',
  count: 'a count',
  shape: 'an outline',
  word: text('a word'),
  test: 'a quantity and its limit',
  expression: 'a value or arithmetic',
};

/** What stands behind a word, in the order of the line: `perforate` + "a length, `every` a length". */
export function takesText(word: Word): string {
  const takes = word.takes ?? [];
  const before = takes.filter((one) => one.before === true).map(spoken);
  const behind = takes.filter((one) => one.before !== true).map(spoken);
  const parts = [
    ...(before.length > 0 ? [say('in front of it: {words}', { words: before.join(', ') })] : []),
    ...behind,
  ];
  return parts.join(', ');
}

function spoken(argument: Argument): string {
  const what: Shown =
    argument.names !== undefined
      ? namesText(argument.names)
      : argument.words !== undefined && argument.dimension === 'word'
        ? ''
        : dimensionText(argument);
  const words = argument.words?.map((each) => `\`${each}\``).join(' | ') ?? '';
  const one = show(either([what, words].filter((text) => text !== '')));
  const basis = argument.basis === undefined ? '' : ` ${argument.basis.join(' | ')}`;
  const link = argument.after === undefined ? '' : `\`${argument.after}\` `;
  const said = `${link}${one}${basis}${argument.repeated === true ? ' ...' : ''}`;
  return argument.optional === true ? `[${said}]` : said;
}

function namesText(names: readonly NameKind[]): Shown {
  if (names.includes('own')) return text('its name');
  return text('the name of a {kind}', { kind: either(names.map((name) => (name === 'end' ? text('end') : name))) });
}

function dimensionText({ dimension }: Argument): Shown {
  return dimension in kinds ? kinds[dimension as keyof typeof kinds] : describeDimension(dimension as DimensionName);
}
