import { stock } from '../../book/generated/stock-texts.ts';
import { say } from '../text.ts';

/** One entry of the stock library, as its text says it. */
export interface StockText {
  readonly kind: string;
  readonly name: string;
  readonly title: string;
  /** lines of the entry without indentation */
  readonly facts: readonly string[];
}

/** The entries of a file of the stock library. They are written by one hand, head and closing brace in the first column. */
export function stockTextsOf(file: string): readonly StockText[] {
  return [...file.matchAll(/^(\w+) (\w+) "([^"]*)" \{\n([\s\S]*?)^\}/gm)].map(([, kind, name, title, body]) => ({
    kind: kind ?? '',
    name: name ?? '',
    title: title ?? '',
    facts: (body ?? '')
      .split('\n')
      .map((line) => line.replace(/\s*\/\/.*$/, '').trim())
      .filter((line) => line !== ''),
  }));
}

export const stockTexts = (): readonly StockText[] => Object.values(stock).flatMap(stockTextsOf);

/** Every entry of the stock library with its values and their sources. */
export function materialsChapter(): string {
  const lead = say(
    'Values of the class, not of a product: starting values, to be replaced by the data sheet of what is on your shelf. Prices are placeholders. `like stock` takes an entry over and changes single values of it.',
  );
  const files = Object.entries(stock).map(([file, text]) => {
    const entries = stockTextsOf(text).map(
      ({ kind, name, title, facts }) =>
        `### ${name}\n\n${kind}: ${title}\n\n${facts.map((fact) => `- \`${fact.replace(/, source "([^"]*)"$/, '')}\`${sourceOf(fact)}`).join('\n')}`,
    );
    return `## ${file.replace(/\.layup$/, '').replaceAll('-', ' ')}\n\n${entries.join('\n\n')}`;
  });
  return [lead, ...files].join('\n\n');
}

const sourceOf = (fact: string): string => {
  const source = /, source "([^"]*)"$/.exec(fact)?.[1];
  return source === undefined ? '' : ` (${source})`;
};
