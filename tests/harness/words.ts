import type { Words } from '../../calc/figure/figure.ts';
import { sayText } from '../../language/view/text.ts';

/** Words as they are shown in English, SI. */
export const inWords = (words: Words): string => sayText(words);
