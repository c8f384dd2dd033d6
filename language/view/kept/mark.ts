/** As wide as a digit, and empty: holds the place of the mark, so that nothing moves when it comes and goes. */
export const emptyDigit = '\u2007';

/** Behind figures from before the text was broken: they may no longer hold. */
export const markOf = (old: boolean): string => (old ? '?' : emptyDigit);
