import { type Bench, isKnown, quantity } from '../../../calc/figure/index.ts';
import type { Step } from '../../../calc/model/index.ts';
import { stepAmount } from '../../../calc/plan/amount.figure.ts';
import { stepStandingTime, stepWorkingTime } from '../../../calc/plan/step.figure.ts';
import { formatQuantity, TIME } from '../../../calc/quantity/index.ts';
import type { HintChoice } from '../../protocol/hint-kinds.ts';
import { stepAmounts } from '../step-words.ts';
import { type Style, say } from '../text.ts';
import { type HintPart, partOf } from './part.ts';

/** A hint tells so many things that a step takes; the others are in its hover. */
const mostThings = 2;

/** What a step takes: hands and waiting, and what it uses up. */
export function stepParts(bench: Bench, step: Step, chosen: HintChoice, style: Style): HintPart[] {
  const parts: (HintPart | undefined)[] = [];
  if (chosen.minutes) {
    const [hands, waiting] = [bench.ask(stepWorkingTime, step.path), bench.ask(stepStandingTime, step.path)];
    const figures = [
      { of: 'hands', figure: hands },
      { of: 'waiting', figure: waiting },
    ];
    parts.push(partOf({ kind: 'minutes', what: 'time', figures }, () => timeWords(hands, waiting, style)));
  }
  if (chosen.amount) {
    const amount = bench.ask(stepAmount, step.path);
    parts.push(
      partOf({ kind: 'amount', what: 'amount', figures: [{ of: 'what it takes', figure: amount }] }, () =>
        someOf(stepAmounts({ amount }, style)),
      ),
    );
  }
  return parts.filter((part) => part !== undefined);
}

type Time = ReturnType<typeof stepWorkingTime.compute>;

/** Nobody plans by tenths of a minute: digits before the decimal mark, and two at least. */
const timeDigits = 2;

function timeWords(hands: Time, waiting: Time, style: Style): string {
  const { locale } = style;
  const told = (time: Time): string[] => {
    if (!isKnown(time) || time.value === 0) return [];
    return [
      formatQuantity(quantity(time.value, TIME), { digits: timeDigits, ...(locale === undefined ? {} : { locale }) }),
    ];
  };
  return [...told(hands), ...told(waiting).map((time) => say('{time} waiting', { time }))].join(', ');
}

function someOf(things: readonly string[]): string {
  const shown = things.slice(0, mostThings).join(', ');
  return things.length > mostThings
    ? say('{shown} and {count} more', { shown, count: things.length - mostThings })
    : shown;
}
