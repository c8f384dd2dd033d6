import { GrammarUtils, type LangiumDocument } from 'langium';
import * as ast from '../../grammar/generated/ast.ts';
import { leafAt } from '../leaves.ts';
import { explained, rulesAlike } from '../rule-page.ts';
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

const weights = { error: 'an error', warning: 'a warning', info: 'information' } as const;

function ruleCard(name: string): string {
  const found = explained(name);
  if (found === undefined) {
    const alike = rulesAlike(name);
    return `There is no rule ${code(name)}${alike.length === 0 ? '' : `; perhaps ${alike.map(code).join(' or ')}`}.`;
  }
  const { rule, opening } = found;
  const head = `**${plain(rule.name)}** is ${weights[rule.severity]}: ${plain(rule.title)}.`;
  return opening.toLowerCase() === `${rule.title.toLowerCase()}.` ? head : `${head}\n\n${opening}`;
}
