import { type Text, text } from '../../calc/figure/figure.ts';
import { either, listed } from '../../calc/figure/listed.ts';
import { nearestWords } from '../words/nearest.ts';

/** What is wrong, and the names that are nearest to the one that was typed. */
export const perhaps = (problem: Text, names: readonly string[]): Text =>
  names.length === 0 ? problem : text('{problem}; perhaps {names}', { problem, names: either(names) });

/** The same; where none is near, all that there are: some, if they are many. */
export function perhapsOf(problem: Text, typed: string, all: readonly string[]): Text {
  const near = nearestWords(typed, all, 3);
  if (near.length > 0) return perhaps(problem, near);
  if (all.length === 0) return text('{problem}: there is none', { problem });
  const names = listed([...all].sort().slice(0, mostListed));
  if (all.length > mostListed) return text('{problem}; there are {names} and others', { problem, names });
  return all.length === 1
    ? text('{problem}; there is {names}', { problem, names })
    : text('{problem}; there are {names}', { problem, names });
}

const mostListed = 10;

interface Refusal {
  /** what commander says */
  readonly pattern: RegExp;
  /** what we say, of the parts of that */
  readonly words: (...parts: string[]) => Text;
}

const didYouMean = String.raw`(?:\n\(Did you mean (?:one of )?(?<near>.+)\?\))?$`;

/**
 * The wrong calls that commander refuses, by the sentences that it has for them: it tells their parts in no other way. A test
 * goes through all of them, so that another wording of it is seen.
 */
const refusals: readonly Refusal[] = [
  {
    pattern: new RegExp(`^unknown command '(.*?)'${didYouMean}`, 's'),
    words: (command = '', near) => perhaps(text('there is no command {command}', { command }), names(near)),
  },
  {
    pattern: new RegExp(`^unknown option '(.*?)'${didYouMean}`, 's'),
    words: (option = '', near) => perhaps(text('there is no option {option}', { option }), names(near)),
  },
  {
    pattern: /^missing required argument '(.*)'$/s,
    words: (argument = '') => text('missing: {argument}', { argument }),
  },
  {
    pattern: /^option '(.*)' argument missing$/s,
    words: (option = '') => text('nothing is said behind {option}', { option }),
  },
  {
    pattern: /^required option '(.*)' not specified$/s,
    words: (option = '') => text('{option} must be given', { option }),
  },
  {
    pattern: /^option '(.*?)' argument '(.*)' is invalid\. Allowed choices are (.*)\.$/s,
    words: (option = '', value = '', choices = '') =>
      text('{option} cannot be {value}: there are {names}', { option, value, names: listed(names(choices)) }),
  },
  {
    pattern: /^command-argument value '(.*)' is invalid for argument '(.*?)'\. Allowed choices are (.*)\.$/s,
    words: (value = '', argument = '', choices = '') =>
      text('{option} cannot be {value}: there are {names}', { option: argument, value, names: listed(names(choices)) }),
  },
  {
    pattern: /^too many arguments for '(.*?)'\. Expected (\d+) arguments? but got \d+: (.*)\.$/s,
    words: (command = '', most = '', given = '') =>
      text('too much for {command}, which takes {most} at most: {given}', { command, most: Number(most), given }),
  },
];

const names = (said = ''): string[] => (said === '' ? [] : said.split(', '));

/** A refusal of commander in our words; as it is where it is none that we know. */
export function refusalOf(said: string): Text {
  const sentence = said.trimEnd().replace(/^error: /, '');
  for (const { pattern, words } of refusals) {
    const found = pattern.exec(sentence);
    if (found !== null) return words(...found.slice(1).map((part) => part ?? ''));
  }
  return text('{said}', { said: sentence });
}
