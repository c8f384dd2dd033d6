import type { Statement } from '../statements.ts';
import { headWord } from '../statements.ts';
import type { LocalName, NamesPort } from './names-port.ts';

const layers: ReadonlySet<string> = new Set(['coat', 'ply', 'strip', 'patch', 'core', 'insert']);
const named: ReadonlySet<string> = new Set(['zone', 'feed', 'vent', 'let', 'load', 'size']);
/** more copies than these are not listed one by one */
const mostCopies = 12;

/** The names inside the entry that is being typed, in the order of the lines, then those of the recipe that it is like. */
export function localNames(statements: readonly Statement[], port: NamesPort): LocalName[] {
  const names: LocalName[] = [];
  for (const statement of statements) {
    const head = headWord(statement);
    const name = nameAfterHead(statement);
    if (head === 'ends' && headWord(statement.blocks.at(-1)) === 'part') {
      for (const token of statement.tokens.slice(1))
        if (isName(token.image) && token.image !== 'to') names.push({ name: token.image, kind: 'end' });
    } else if (name === undefined || statement.blocks.length === 0) continue;
    else if (layers.has(head) && inStack(statement)) {
      const material = statement.tokens[2]?.image ?? '';
      const detail = isName(material) ? `${head} ${material}` : head;
      names.push({ name, kind: 'layer', detail });
      for (let copy = 1; copy <= copiesOf(statement); copy++)
        names.push({ name: `${name}.${copy}`, kind: 'layer', detail });
    } else if (named.has(head)) names.push({ name, kind: head as LocalName['kind'], detail: head });
  }
  const recipe = statements.find((statement) => statement.blocks.length === 0 && headWord(statement) === 'recipe');
  const like = recipe?.tokens.findIndex((token) => token.image === 'like') ?? -1;
  const base = like < 0 ? undefined : recipe?.tokens[like + 1]?.image;
  return base === undefined
    ? names
    : [...names, ...port.inside(base).filter((one) => !names.some((own) => own.name === one.name))];
}

function nameAfterHead(statement: Statement): string | undefined {
  const name = statement.tokens[1]?.image;
  return name !== undefined && isName(name) ? name : undefined;
}

const isName = (text: string): boolean => /^[\p{L}_°]/u.test(text);

const inStack = (statement: Statement): boolean => statement.blocks.some((block) => headWord(block) === 'stack');

/** How often the innermost group around a layer is laid. */
function copiesOf(statement: Statement): number {
  const group = statement.blocks.at(-1);
  const times = headWord(group) === 'repeat' ? Number(group?.tokens[1]?.image) : 0;
  return Number.isInteger(times) ? Math.min(times, mostCopies) : 0;
}
