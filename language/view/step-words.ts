import { isKnown } from '../../calc/figure/figure.ts';
import type { Argument, Phrase, Step } from '../../calc/model/index.ts';
import type { StepRow } from '../../calc/report.ts';
import { showAmount } from './figures.ts';
import { type Style, safe, show } from './text.ts';
import { thingWords } from './thing-words.ts';

/** What a step says before its first comma: `release semi_permanent`, `hold 24 h at 23 degC`, `lay outer to body`. */
export function stepWords(step: Step, style: Style): string {
  const { verb, name, material, lay, text, test } = step;
  const rest =
    lay !== undefined
      ? [lay.what === 'layers' ? [lay.first, lay.last].filter((layer) => layer !== undefined).join(' to ') : lay.what]
      : text !== undefined
        ? [`"${text}"`]
        : test !== undefined
          ? [test.what, test.on === undefined ? '' : `on ${test.on}`]
          : [
              name,
              material,
              ...step.arguments.map((argument) => argumentWords(argument, style)),
              ...step.phrases.map((phrase) => phraseWords(phrase, style)),
            ];
  const said = [verb, ...rest].filter((part) => part !== undefined && part !== '').join(' ');
  return safe(said.startsWith('do ') ? said.slice(3) : said);
}

function phraseWords({ word, arguments: list }: Phrase, style: Style): string {
  return [word, ...list.map((argument) => argumentWords(argument, style))].filter((part) => part !== '').join(' ');
}

export function argumentWords(argument: Argument, style: Style): string {
  switch (argument.kind) {
    case 'amount':
      return showAmount(argument.amount, style);
    case 'count':
      return String(argument.count);
    case 'ratio':
      return argument.parts.join(':');
    case 'text':
      return `"${argument.text}"`;
    case 'word':
      return argument.word;
    case 'point':
      return `(${[argument.point.x, argument.point.y].map(({ offset, from }) => `${show(offset, style)}${from === undefined ? '' : ` from ${from}`}`).join(', ')})`;
    case 'unknown':
      return '?';
  }
}

/** What a step takes, thing by thing: `tape 3.91 m`, `outer 0.591 m2`; nothing where nothing can be told. */
export function stepAmounts({ amount }: Pick<StepRow, 'amount'>, style: Style): string[] {
  if (!isKnown(amount)) return [];
  return amount.value.items
    .filter((item) => item.amount.si !== 0)
    .map((item) => `${thingWords(item.what)} ${show(item.amount, style)}`);
}
