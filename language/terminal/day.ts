import { text } from '../../calc/figure/figure.ts';
import { wrongDate } from '../../calc/record/date.ts';
import { UsageError } from './exit-codes.ts';

/** Throws a UsageError for a day, as it was typed behind an option, that no calendar has. */
export function needDay(option: string, day: string): void {
  const wrong = wrongDate(day);
  if (wrong !== undefined) throw new UsageError(text('{option}: {problem}', { option, problem: wrong }));
}
