import { AstUtils, isReference, type LangiumDocument, type LeafCstNode } from 'langium';
import { type Text, text } from '../../../calc/figure/figure.ts';
import { both } from '../../../calc/figure/listed.ts';
import type { Recipe } from '../../../calc/model/index.ts';
import { reportOf } from '../../../calc/report.ts';
import * as ast from '../../grammar/generated/ast.ts';
import { figureOf, missingOf, showFigure } from '../figures.ts';
import { featureOf, leafAt, targetOf } from '../leaves.ts';
import { markdownTable } from '../markdown-table.ts';
import { type OpenFindings, openFindings } from '../open-findings.ts';
import { say } from '../text.ts';
import { translated } from '../translation.ts';
import type { HoverBook } from './book.ts';
import { missingText } from './chain.ts';
import { copyLink } from './copy-link.ts';
import type { HoverText } from './hover.ts';
import { plain } from './markdown.ts';
import { planLink } from './plan-link.ts';
import { recipeAround } from './recipe-of.ts';

/** A recipe at a glance, in all its sizes: mass, thickness, resin to mix, cost, and what stands open. On its name, wherever it stands. */
export function recipeHover(document: LangiumDocument, offset: number, book: HoverBook): HoverText | undefined {
  const leaf = leafAt(document, offset);
  const node = leaf && recipeNamed(leaf);
  const found = node && recipeAround(node, book);
  if (leaf === undefined || node === undefined || found === undefined) return undefined;
  const { model } = found.lowered;
  if (model.kind !== 'recipe') return undefined;
  const open = node.$cstNode && openFindings(AstUtils.getDocument(node), node.$cstNode);
  const uri = AstUtils.getDocument(node).uri.toString();
  return { markdown: recipeCard(model.recipes, open, uri, book), start: leaf.offset, end: leaf.end };
}

function recipeNamed(leaf: LeafCstNode): ast.Recipe | undefined {
  const { astNode } = leaf;
  const feature = featureOf(leaf);
  if (feature === undefined) return undefined;
  if (ast.isRecipe(astNode) && feature === 'name') return astNode;
  const reference = (astNode as unknown as Record<string, unknown>)[feature];
  const target = isReference(reference) ? targetOf(astNode, reference) : undefined;
  return ast.isRecipe(target) ? target : undefined;
}

const columns = ['mass', 'thickness', 'resin_to_mix', 'cost'];

function recipeCard(recipes: readonly Recipe[], open: OpenFindings | undefined, uri: string, book: HoverBook): string {
  const style = book.style();
  const reports = recipes.map((recipe) => reportOf(recipe, book.analysis.shelf()));
  const [whole] = reports;
  if (whole === undefined) return '';
  const facts = [
    ...(whole.revision === undefined ? [] : [say('revision {revision}', { revision: String(whole.revision) })]),
    whole.quantity === 1 ? say('1 part') : say('{count} parts', { count: whole.quantity }),
  ];
  const rows = reports.map((report) => [
    report.size ?? say('as written'),
    ...columns.map((name) => showFigure(figureOf(report.figures, name), style) ?? say('cannot tell')),
  ]);
  const missing = [
    ...new Set(columns.flatMap((name) => missingOf(figureOf(whole.figures, name)?.figure ?? { pending: true }))),
  ];
  const head = ['size', 'mass', 'thickness in the middle', 'resin to mix', 'cost'].map(translated);
  const parts = [
    `**${plain(whole.recipe)}**${whole.title === undefined ? '' : `, ${plain(whole.title)}`}: ${facts.join(', ')}. ${findingWords(open)}`,
    say('What one part comes to, size by size:'),
    markdownTable({ head, right: [1, 2, 3, 4], rows }),
    [copyLink([head, ...rows], book), ...recipes.slice(0, 1).map((recipe) => planLink(uri, recipe, book))]
      .filter((link) => link !== '')
      .join(' | '),
    missingText(missing, book),
  ];
  return parts.filter((part) => part !== '').join('\n\n');
}

function findingWords(found: OpenFindings | undefined): string {
  if (found === undefined) return '';
  const { errors, others } = found;
  if (errors + others === 0) return say('Nothing stands open.');
  const counted = (count: number, one: Text, many: Text): Text[] => (count === 0 ? [] : [count === 1 ? one : many]);
  const open = both([
    ...counted(errors, text('1 error'), text('{count} errors', { count: errors })),
    ...counted(others, text('1 other finding'), text('{count} other findings', { count: others })),
  ]);
  return say('Open: {open}.', { open });
}
