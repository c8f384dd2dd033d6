import type { Text } from '../../calc/figure/figure.ts';
import { sayText } from '../view/text.ts';

/** How a run ends. */
export const exitCodes = {
  clean: 0,
  /** findings at or above `--fail-on`, expectations not met, files that are not in their form */
  findings: 1,
  /** a wrong call, or input that cannot be read */
  usage: 2,
  /** a fault of the tool */
  internal: 3,
} as const;

export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];

/** A wrong call or unreadable input, in words for whoever typed it; no stack is shown. */
export class UsageError extends Error {
  readonly words: Text;

  constructor(words: Text) {
    super(sayText(words));
    this.words = words;
  }
}
