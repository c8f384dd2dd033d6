import { AstUtils, type LangiumDocument } from 'langium';
import { isKnown } from '../../../calc/figure/figure.ts';
import { reportOf, type StepRow } from '../../../calc/report.ts';
import * as ast from '../../grammar/generated/ast.ts';
import { cautionLine, cautionsOfStep } from '../cautions.ts';
import { figureOf, missingOf, reasonsOf, showFigure } from '../figures.ts';
import { leafAt } from '../leaves.ts';
import { stepAmounts, stepWords } from '../step-words.ts';
import { say } from '../text.ts';
import { translated } from '../translation.ts';
import type { HoverBook } from './book.ts';
import { chainText, missingText } from './chain.ts';
import type { HoverText } from './hover.ts';
import { plain } from './markdown.ts';
import { recipeAround } from './recipe-of.ts';
import { wordHover } from './word.ts';

/** A step: what it is, how much it takes, how long it lasts and why. On the word (or two) that it begins with. */
export function stepHover(document: LangiumDocument, offset: number, book: HoverBook): HoverText | undefined {
  const leaf = leafAt(document, offset);
  const line = leaf && AstUtils.getContainerOfType(leaf.astNode, isStep);
  if (leaf === undefined || line?.$cstNode === undefined) return undefined;
  const at = line.$cstNode.offset;
  const found = recipeAround(line, book);
  if (found === undefined) return undefined;
  const { steps } = reportOf(found.recipe, book.analysis.shelf());
  const row = steps.find(({ step }) => found.lowered.places.get(step.path)?.offset === at);
  const end = at + (row === undefined ? 0 : lengthOf(row.step.verb, line.$cstNode.text));
  if (row === undefined || leaf.end > end) return undefined;
  const word = wordHover(document, offset, 'none');
  const caution = cautionLine(cautionsOfStep(found.recipe, row.step, book.analysis.shelf()));
  const markdown = [
    stepCard(row, book),
    ...(caution === '' ? [] : [say('**Caution.** {caution}', { caution })]),
    ...(word === undefined ? [] : ['---', word.markdown]),
  ].join('\n\n');
  return { markdown, start: at, end };
}

/** How far a verb reaches in its line: it may be of two words, and these need not be one space apart. */
function lengthOf(verb: string, line: string): number {
  return new RegExp(`^${verb.split(' ').join('\\s+')}`).exec(line)?.[0].length ?? 0;
}

type StepNode = ast.Step | ast.Lay | ast.Port | ast.Check;

const isStep = (node: { readonly $type: string }): node is StepNode =>
  ast.isStep(node) || ast.isLay(node) || ast.isPort(node) || ast.isCheck(node);

function stepCard(row: StepRow, book: HoverBook): string {
  const style = book.style();
  const takes = stepAmounts(row, style);
  const missing = [...new Set([...missingOf(row.amount), ...row.figures.flatMap(({ figure }) => missingOf(figure))])];
  const parts = [
    `**${plain(stepWords(row.step, style))}**: ${plain(timeWords(row, book))}.`,
    takes.length === 0 ? '' : say('It takes {things}.', { things: plain(takes.join(', ')) }),
    missingText(missing, book),
    because('The working time comes from:', row, 'step_working_time', book),
    because('The waiting comes from:', row, 'step_standing_time', book),
    amountWords(row, book),
    because('What is bought for it comes from:', row, 'step_cost', book),
  ];
  return parts.filter((part) => part !== '').join('\n\n');
}

function timeWords({ figures }: StepRow, book: HoverBook): string {
  const style = book.style();
  const told = (name: string): string | undefined => {
    const row = figureOf(figures, name);
    return row !== undefined && isKnown(row.figure) && row.figure.value === 0 ? '' : showFigure(row, style);
  };
  const [hands, waiting, cost] = ['step_working_time', 'step_standing_time', 'step_cost'].map(told);
  const parts = [
    hands === undefined
      ? say('how long it takes cannot be told')
      : hands === ''
        ? ''
        : say('{time} of hands', { time: hands }),
    waiting === undefined
      ? say('how long to wait cannot be told')
      : waiting === ''
        ? ''
        : say('{time} of waiting', { time: waiting }),
    cost === undefined
      ? say('what it costs cannot be told')
      : cost === ''
        ? ''
        : say('consumables for {cost}', { cost }),
  ].filter((part) => part !== '');
  return parts.length === 0 ? say('it takes no time of its own') : parts.join(', ');
}

function because(what: string, { figures }: StepRow, name: string, book: HoverBook): string {
  const row = figureOf(figures, name);
  if (row === undefined || !isKnown(row.figure) || row.figure.value === 0) return '';
  const chain = chainText(reasonsOf(row.figure), book, { deepest: 2, most: 6 });
  return chain === '' ? '' : `${translated(what)}\n\n${chain}`;
}

function amountWords({ amount }: StepRow, book: HoverBook): string {
  const chain = chainText(reasonsOf(amount), book, { deepest: 2, most: 6 });
  return chain === '' ? '' : `${say('The amounts come from:')}\n\n${chain}`;
}
