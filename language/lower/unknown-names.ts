import { text } from '../../calc/figure/figure.ts';
import { either } from '../../calc/figure/listed.ts';
import type { Part } from '../../calc/model/index.ts';
import {
  type Change,
  isLayer,
  type ProcessLine,
  type Recipe,
  type RecipeItem,
  type SizeItem,
  type StackLine,
  type Without,
} from '../grammar/generated/ast.ts';
import { nearestWords } from '../words/nearest.ts';
import type { Lowering } from './lowering.ts';
import { propertySpan, type Span } from './places.ts';

/** `210 mm from heel`: the ends have their names from the part. */
export function reportUnknownEnds(low: Lowering, part: Part | undefined): void {
  const used = low.endsUsed.splice(0);
  if (part === undefined) return;
  const ends = part.ends === undefined ? [] : [part.ends.from, part.ends.to];
  for (const { name, span } of used) {
    if (ends.includes(name)) continue;
    low.problem(
      'name/unknown',
      span,
      ends.length === 0
        ? text('the ends of this part have no names; `ends {name} to nose` in the part gives them', { name })
        : text('no end of the part is called {name}: its ends are {from} and {to}', {
            name,
            from: ends[0] ?? '',
            to: ends[1] ?? '',
          }),
      renamed(span, nearestWords(name, ends)),
    );
  }
}

/** `change outer, darts 16` and `without keel` speak of lines that there are. */
export function reportUnknownLines(
  low: Lowering,
  all: readonly (RecipeItem | SizeItem)[],
  own: readonly (RecipeItem | SizeItem)[],
): void {
  const steps = all.flatMap((item) => (item.$type === 'Process' ? item.steps.filter(isChange) : []));
  const changes = [...own.filter(isChange), ...steps];
  if (changes.length === 0) return;
  const process = all.findLast((item) => item.$type === 'Process');
  const lender: unknown = process?.$type === 'Process' ? process.base?.ref : undefined;
  if (process?.$type === 'Process' && process.base !== undefined && lender === undefined) return;
  const names = new Set(all.flatMap(namesIn));
  for (const item of (lender as Recipe | undefined)?.items ?? [])
    if (item.$type === 'Process') for (const name of stepNames(item.steps)) names.add(name);
  for (const item of changes) {
    const name = item.line?.$refText;
    const span = propertySpan(item, 'line');
    if (name === undefined || span === undefined || names.has(name)) continue;
    const near = nearestWords(name, names);
    low.problem(
      'name/unknown',
      span,
      near.length > 0
        ? text('no line of this recipe is called {name}: is {near} meant?', { name, near: either(near) })
        : text('no line of this recipe is called {name}', { name }),
      renamed(span, near),
    );
  }
}

const isChange = (item: { readonly $type: string }): item is Change | Without =>
  item.$type === 'Change' || item.$type === 'Without';

const renamed = (span: Span, near: readonly string[]) =>
  near.map((word) => ({
    title: text('Write {what}', { what: word }),
    edits: [{ offset: span.offset, end: span.end, text: word }],
  }));

function namesIn(item: RecipeItem | SizeItem): string[] {
  if (item.$type === 'PartBlock')
    return item.items.flatMap((line) => (line.$type === 'Zone' && line.name !== undefined ? [line.name] : []));
  if (item.$type === 'Stack') return layerNames(item.layers);
  if (item.$type === 'Process') return stepNames(item.steps);
  return item.$type === 'Load' && item.name !== undefined ? [item.name] : [];
}

function layerNames(lines: readonly StackLine[]): string[] {
  return lines.flatMap((line) =>
    line.$type === 'Repeat' ? layerNames(line.layers) : isLayer(line) && line.name !== undefined ? [line.name] : [],
  );
}

/** Feeds and vents by their names, other steps by their verbs. */
function stepNames(lines: readonly ProcessLine[]): string[] {
  return lines.flatMap((line) => {
    if (line.$type === 'Port') return [line.name ?? line.verb];
    if (line.$type === 'Step') return [line.verb, ...stepNames(line.steps)];
    return line.$type === 'Lay' || line.$type === 'Check' ? [line.verb] : [];
  });
}

/** A `let` or a size that is said twice in one block: only the last let and both sizes count, and nobody sees it. */
export function reportSameNames(low: Lowering, items: readonly (RecipeItem | SizeItem)[]): void {
  const seen = new Set<string>();
  for (const item of items) {
    if ((item.$type !== 'Let' && item.$type !== 'Size') || item.name === undefined) continue;
    const key = `${item.$type} ${item.name}`;
    if (seen.has(key)) {
      low.problem(
        'name/duplicate',
        propertySpan(item, 'name'),
        item.$type === 'Let'
          ? text('{name} has a value already; only the last one counts', { name: item.name })
          : text('there is a size {name} already', { name: item.name }),
      );
    }
    seen.add(key);
  }
}
