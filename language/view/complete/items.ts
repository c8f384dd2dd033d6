import type { IToken } from 'chevrotain';
import { parseUnit } from '../../../calc/quantity/index.ts';
import { connectives } from '../../grammar/connectives.ts';

/** What a line says, piece by piece: a number with its unit is one piece, a point in brackets is one piece. */
export interface Item {
  readonly kind: 'number' | 'word' | 'connective' | 'text' | 'date' | 'ratio' | 'point' | 'comparison' | 'sign';
  readonly text: string;
  /** of a number: its unit; absent where none is typed */
  readonly unit?: string;
  /** of a point that is not closed: what stands in it so far */
  readonly inside?: readonly IToken[];
}

const comparisons: ReadonlySet<string> = new Set(['<=', '>=', '<', '>', '=']);

/** The pieces of a stretch of a line. */
export function itemsOf(tokens: readonly IToken[]): Item[] {
  const items: Item[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const token = tokens[i] as IToken;
    const { image } = token;
    const type = token.tokenType.name;
    if (type === 'NUMBER' || type === 'DECIMAL_COMMA') {
      if (tokens[i + 1]?.image === ':') {
        while (tokens[i + 1]?.image === ':' && tokens[i + 2] !== undefined) i += 2;
        items.push({ kind: 'ratio', text: image });
        continue;
      }
      const unit = tokens[i + 1];
      if (unit !== undefined && isUnit(unit)) {
        items.push({ kind: 'number', text: image, unit: unit.image });
        i++;
      } else items.push({ kind: 'number', text: image });
    } else if (image === '(') {
      let end = i + 1;
      while (end < tokens.length && tokens[end]?.image !== ')') end++;
      const inside = tokens.slice(i + 1, end);
      items.push(end < tokens.length ? { kind: 'point', text: '(' } : { kind: 'point', text: '(', inside });
      i = end;
    } else if (type === 'STRING' || type === 'OPEN_STRING') items.push({ kind: 'text', text: image });
    else if (type === 'DATE') items.push({ kind: 'date', text: image });
    else if (comparisons.has(image)) items.push({ kind: 'comparison', text: image });
    else if (connectives.has(image)) items.push({ kind: 'connective', text: image });
    else if (/^[\p{L}_°]/u.test(image)) {
      // `mat.1` is one name
      while (tokens[i + 1]?.image === '.' && tokens[i + 2] !== undefined) i += 2;
      items.push({ kind: 'word', text: image });
    } else items.push({ kind: 'sign', text: image });
  }
  return items;
}

/** Behind a number `in` is the inch. */
function isUnit(token: IToken): boolean {
  if (token.image === '%' || token.image.startsWith('/')) return true;
  return !('unknown' in parseUnit(token.image));
}
