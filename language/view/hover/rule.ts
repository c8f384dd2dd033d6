import { GrammarUtils, type LangiumDocument } from 'langium';
import { text } from '../../../calc/figure/figure.ts';
import { either } from '../../../calc/figure/listed.ts';
import * as ast from '../../grammar/generated/ast.ts';
import { leafAt } from '../leaves.ts';
import { explained, rulesAlike } from '../rule-page.ts';
import { say } from '../text.ts';
import { translated } from '../translation.ts';
import type { HoverText } from './hover.ts';
import { code, plain } from './markdown.ts';

/** The name of a rule behind `accept`: what it is about, how much it weighs, and what it checks. */
export function ruleHover(document: LangiumDocument, offset: number): HoverText | undefined {
  const node = leafAt(document, offset)?.astNode;
  if (node === undefined || !(ast.isAcceptClause(node) || ast.isAcceptRemark(node)) || node.rule === undefined)
    return undefined;
  const name = GrammarUtils.findNodeForProperty(node.$cstNode, 'rule');
  if (name === undefined || offset < name.offset || offset > name.end) return undefined;
  return { markdown: ruleCard(node.rule), start: name.offset, end: name.end };
}

const weights = {
  error: text('an error'),
  warning: text('a warning'),
  info: text('information'),
} as const;

function ruleCard(name: string): string {
  const found = explained(name);
  if (found === undefined) {
    const alike = rulesAlike(name);
    const figures = { rule: code(name), alike: either(alike.map(code)) };
    return alike.length === 0
      ? say('There is no rule {rule}.', figures)
      : say('There is no rule {rule}; perhaps {alike}.', figures);
  }
  const { rule, opening } = found;
  const head = say('**{rule}** is {weight}: {title}.', {
    rule: plain(rule.name),
    weight: weights[rule.severity],
    title: plain(translated(rule.title)),
  });
  // pages are English: in another language the title has to do
  const same = opening.toLowerCase() === `${rule.title.toLowerCase()}.`;
  return same || translated(rule.title) !== rule.title ? head : `${head}\n\n${opening}`;
}
