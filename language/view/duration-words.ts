import { DURATION_SOURCE, durationOf, type PerUnit, type Rate } from '../../calc/plan/durations.ts';
import { say } from './text.ts';
import { translated } from './translation.ts';

/** Minutes, by what they are counted by. */
const BY: Readonly<Record<PerUnit, (minutes: number) => string>> = {
  step: (minutes) => say('{minutes} min', { minutes }),
  m2: (minutes) => say('{minutes} min a m2', { minutes }),
  m: (minutes) => say('{minutes} min a metre', { minutes }),
  piece: (minutes) => say('{minutes} min a piece', { minutes }),
  coat: (minutes) => say('{minutes} min a coat', { minutes }),
  'coat m2': (minutes) => say('{minutes} min a m2 of each coat', { minutes }),
  hole: (minutes) => say('{minutes} min a hole', { minutes }),
  pleat: (minutes) => say('{minutes} min a pleat', { minutes }),
};

const rate = ({ per, minutes }: Rate): string => BY[per](minutes);

/** How long a step takes where its line says no time, and why: `5 min + 5 min a m2 of hands`, and what they do in it. */
export function durationWords(verb: string): string {
  const { working, standing, typed, why } = durationOf(verb);
  const hands = working
    .filter(({ minutes }) => minutes > 0)
    .map(rate)
    .join(' + ');
  const waiting = standing === undefined ? '' : rate(standing);
  const told =
    hands === '' && waiting === ''
      ? typed === 'standing'
        ? say('It takes the time that is typed, or that its material says.')
        : say('It takes the time of what is in it.')
      : waiting === ''
        ? say('Where no time is typed: {hands} of hands.', { hands })
        : hands === ''
          ? say('Where no time is typed: {waiting} of waiting.', { waiting })
          : say('Where no time is typed: {hands} of hands, {waiting} of waiting.', { hands, waiting });
  return say('{time} It is reckoned so: {why}.', { time: told, why: translated(why) });
}

export const durationSource = (): string => translated(DURATION_SOURCE);
