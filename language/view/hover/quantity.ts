import type { CstNode, LangiumDocument, LeafCstNode } from 'langium';
import {
  formatQuantity,
  isProblem,
  type MeasureSystem,
  makeQuantity,
  nameOfDimension,
  parseUnit,
  type Quantity,
} from '../../../calc/quantity/index.ts';
import { leafAt, ruleOf } from '../leaves.ts';
import { translated } from '../translation.ts';
import type { HoverText } from './hover.ts';
import { code } from './markdown.ts';

/** A number with its unit in the other unit system: `680 g/m2` as `20.1 oz/yd2`. */
export function quantityHover(document: LangiumDocument, offset: number, locale?: string): HoverText | undefined {
  const leaf = leafAt(document, offset);
  const cst = leaf && quantityAround(leaf);
  const parts = /^(-?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?)\s*(\S.*)$/.exec(cst?.text ?? '');
  if (cst === undefined || parts === null) return undefined;
  const [, number = '', unit = ''] = parts;
  const read = parseUnit(unit);
  const quantity = makeQuantity(Number(number), unit);
  if (!('unit' in read) || isProblem(quantity)) return undefined;
  const markdown = inOtherSystem(quantity, read.unit.system, `${number} ${unit}`, locale);
  return markdown === undefined ? undefined : { markdown, start: cst.offset, end: cst.end };
}

/** Units of both systems (minutes, degrees, per cent) have no other side. */
function inOtherSystem(
  quantity: Quantity,
  system: MeasureSystem | undefined,
  typed: string,
  locale: string | undefined,
): string | undefined {
  if (system === undefined) return undefined;
  const other = formatQuantity(quantity, {
    system: system === 'us' ? 'si' : 'us',
    ...(locale === undefined ? {} : { locale }),
  });
  const name = nameOfDimension(quantity.dimension);
  if (other === typed) return undefined;
  return `${code(typed)} = **${other}**${name === undefined ? '' : ` (${translated(name)})`}`;
}

/** The number and the unit that a word belongs to. */
function quantityAround(leaf: LeafCstNode): CstNode | undefined {
  const rule = ruleOf(leaf);
  if (rule === 'Quantity') return leaf.container;
  return rule === 'Unit' ? leaf.container?.container : undefined;
}
