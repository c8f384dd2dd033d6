import { readdirSync, readFileSync } from 'node:fs';
import type { AstNode, Grammar } from 'langium';
import { AstUtils, GrammarAST } from 'langium';
import { describe, expect, it } from 'vitest';
import type { DimensionName } from '../../calc/quantity/index.ts';
import { describeDimension, isProblem, makeQuantity, namedDimension } from '../../calc/quantity/index.ts';
import { connectives } from '../../language/grammar/connectives.ts';
import type { Book } from '../../language/grammar/generated/ast.ts';
import { LayupGrammar } from '../../language/grammar/generated/grammar.ts';
import { lowerEntry } from '../../language/lower/index.ts';
import { materialFacts } from '../../language/lower/material-facts.ts';
import { recordWords } from '../../language/lower/record.ts';
import { shopFacts } from '../../language/lower/shop-facts.ts';
import { toolFacts } from '../../language/lower/tool-facts.ts';
import type { Place, Word } from '../../language/words/index.ts';
import { PLACES, senses, verb, wordAt, words, wordsAt } from '../../language/words/index.ts';
import { inWords, materialPlaces, wordsIn } from '../harness/words.ts';
import { parsed, viewServices } from './view/parsed.ts';

const withNotes = (names: Iterable<string>): string[] =>
  [...names].filter((name) => wordAt(name, 'anywhere') === undefined);

describe('the table of words', () => {
  it('has one sense of a word at a place', () => {
    const seen = new Set<string>();
    const twice = words.flatMap((word) =>
      word.at.flatMap((place) => {
        const key = `${word.word} / ${place}`;
        const again = seen.has(key);
        seen.add(key);
        return again ? [key] : [];
      }),
    );
    expect(twice).toEqual([]);
  });

  it('has words at every place', () => {
    expect(PLACES.filter((place) => wordsAt(place).length === 0)).toEqual([]);
  });

  it('explains every word in whole sentences', () => {
    expect(
      words
        .filter((word) => !/^[A-Z`].*[.)]$/s.test(word.meaning) || word.meaning.length < 15)
        .map((word) => word.word),
    ).toEqual([]);
  });

  it('shows every word in its example', () => {
    const missing = words.filter(
      (word) => !new RegExp(`(^|[^\\w])${word.word.replace(' ', ' +')}([^\\w]|$)`).test(word.example),
    );
    expect(missing.map((word) => `${word.word}: ${word.example}`)).toEqual([]);
  });

  it('says where each default comes from, unless it only says what nothing typed means', () => {
    const nothing = new Set(['0 %', '0 m', '1']);
    const bare = words.filter(
      (word) =>
        word.default !== undefined &&
        /\d/.test(word.default) &&
        !nothing.has(word.default) &&
        word.source === undefined,
    );
    expect(bare.map((word) => `${word.word}: ${word.default}`)).toEqual([]);
  });

  it('finds a word by its place, and one of everywhere from any place', () => {
    expect(wordAt('core', 'book')?.meaning).not.toBe(wordAt('core', 'stack')?.meaning);
    expect(wordAt('note', 'stack')?.word).toBe('note');
    expect(wordAt('peel', 'stack')).toBeUndefined();
    expect(senses('core').length).toBeGreaterThan(1);
  });
});

/** What lowering has to say against a text. */
function problemsOf(services: ReturnType<typeof viewServices>, text: string): string[] {
  const book = parsed(services, `${text}\n`).parseResult.value as Book;
  return book.entries.flatMap((entry, index) =>
    lowerEntry(entry, 'workspace', index).problems.map(
      (problem) => `${problem.rule} ${JSON.stringify(problem.message)}`,
    ),
  );
}

describe('the examples', () => {
  const services = viewServices();
  const inRecipe =
    (block: string) =>
    (line: string): string =>
      `recipe r {\n${block} {\n${line}\n}\n}`;
  /** Where an example may stand, the places in which its first word is looked for. */
  const blocks: readonly (readonly [Place, (line: string) => string])[] = [
    ['book', (line) => line],
    ['recipe', (line) => `recipe r {\n${line}\n}`],
    ['stack', inRecipe('stack from tool t')],
    ['process', inRecipe('process hand')],
    ['cure', inRecipe('process hand {\ncure')],
    ['part', inRecipe('part')],
    ['load', inRecipe('load l')],
    ['size', inRecipe('size s')],
    ['record', (line) => `record r 2026-05-14 {\n${line}\n}`],
    ['shop', (line) => `shop {\n${line}\n}`],
    ['tool', (line) => `tool t {\n${line}\n}`],
    ...materialPlaces.map((kind) => [kind, (line: string) => `${kind} m {\n${line}\n}`] as const),
  ];
  const begins = (line: string, place: Place): boolean =>
    wordsAt(place).some((known) => line === known.word || line.startsWith(`${known.word} `));
  /** The example in a block of the book: in the one that the word stands in, else in the first that knows how the line begins. */
  const wrapped = (word: Word): string => {
    const isEntry =
      / \{|^notation /.test(word.example) && begins(word.example, 'book') && !/^(coat|core \w+ \w)/.test(word.example);
    const fits = blocks.filter(([place]) => (place === 'book') === isEntry && begins(word.example, place));
    const wrap = (fits.find(([place]) => word.at.includes(place)) ?? fits[0])?.[1];
    if (wrap === undefined) throw new Error(`no block takes the example of ${word.word}: ${word.example}`);
    const text = wrap(word.example);
    return `${text}${'\n}'.repeat((text.match(/\{/g)?.length ?? 0) - (text.match(/\}/g)?.length ?? 0))}`;
  };
  // the line of no_deeper is that of a resin's vacuum, which is read under its own word
  const lines = words.filter((word) => !['and', 'as', 'no_deeper'].includes(word.word));
  it.each(lines.map((word) => [word.example, wrapped(word)] as const))('%s', (_, text) => {
    const { lexerErrors, parserErrors } = parsed(services, `${text}\n`).parseResult;
    expect([...lexerErrors, ...parserErrors].map((error) => error.message)).toEqual([]);
  });

  it('say nothing that is not understood', () => {
    // an example is cut from its recipe, so that what it names is not there
    const told = lines.flatMap((word) =>
      problemsOf(services, wrapped(word))
        .filter((problem) => !problem.startsWith('name/unknown'))
        .map((problem) => `${word.example}: ${problem}`),
    );
    expect(told).toEqual([]);
  });
});

describe('the arguments', () => {
  const kinds = new Set(['name', 'text', 'point', 'date', 'count', 'shape', 'word', 'test', 'expression', 'number']);
  // a price is money by something, coverage comes in three ways, a uni cloth may leave its angle out
  const open = new Set(['price', 'coverage', 'stores', 'fill', 'uni']);
  const quantity = '(-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?) ([^\\s,)]+)';
  const asTyped = words.flatMap((word) =>
    (word.takes ?? []).slice(0, 1).flatMap((argument) => {
      const dimension = argument.dimension;
      if (kinds.has(dimension) || open.has(word.word)) return [];
      const lead = argument.after === undefined ? word.word : `${word.word} (?:[^,]* )?${argument.after}`;
      const found = new RegExp(
        argument.before ? `${quantity} ${word.word}` : `(?:^|\\W)${lead} (?:[a-z_]+ |<= )?${quantity}`,
      ).exec(word.example);
      return found === null
        ? []
        : [[word.word, dimension as DimensionName, found[1] ?? '', found[2] ?? '', word.example] as const];
    }),
  );

  it('are found in most examples', () => expect(asTyped.length).toBeGreaterThan(100));

  it.each(asTyped)('%s takes %s: %s %s', (_, dimension, value, unit) => {
    const made = makeQuantity(Number(value), unit);
    if (isProblem(made)) throw new Error(inWords(made.message));
    expect(describeDimension(made.dimension)).toBe(describeDimension(namedDimension(dimension)));
  });
});

describe('what has been written in the notation', () => {
  const folders = ['../recipes/', '../../extension/sample/', '../../language/book/stock/'].map(
    (folder) => new URL(folder, import.meta.url),
  );
  const files = [
    new URL('notation-sample.layup', import.meta.url),
    ...folders.flatMap((folder) =>
      readdirSync(folder)
        .filter((name) => name.endsWith('.layup'))
        .map((name) => new URL(name, folder)),
    ),
  ].filter((file) => !file.pathname.endsWith('first_try.layup'));
  const services = viewServices();
  const placeOfFact = (fact: AstNode): Place | undefined => {
    const owner = fact.$container as AstNode & { kind?: string };
    const named: Record<string, Place> = {
      Shop: 'shop',
      Tool: 'tool',
      Recipe: 'recipe',
      PartBlock: 'part',
      Load: 'load',
      Size: 'size',
      BuildRecord: 'record',
    };
    return owner.$type === 'Material' ? (owner.kind as Place) : named[owner.$type];
  };

  it.each(files.map((file) => [file.pathname.split('/').at(-1), file] as const))(
    '%s uses no word that the table lacks',
    (_, file) => {
      const tree = parsed(services, readFileSync(file, 'utf8')).parseResult.value;
      const unknown: string[] = [];
      for (const node of AstUtils.streamAllContents(tree)) {
        const line = node as AstNode & {
          key?: string;
          verb?: string;
          word?: string;
          values?: (AstNode & { word?: { $refText: string } })[];
          kind?: string;
        };
        const where = `line ${(node.$cstNode?.range.start.line ?? 0) + 1}`;
        if (node.$type === 'Fact' || node.$type === 'MaterialFact') {
          const place = placeOfFact(node);
          if (place === undefined || wordAt(line.key ?? '', place) === undefined)
            unknown.push(`${where}: ${line.key} in ${place}`);
        } else if (node.$type === 'Step') {
          const two = `${line.verb} ${line.values?.[0]?.word?.$refText ?? ''}`;
          if (verb(two) === undefined && verb(line.verb ?? '') === undefined)
            unknown.push(`${where}: ${line.verb}, a step`);
        } else if (node.$type === 'Phrase') {
          const owner = node.$container as (AstNode & { kind?: string }) | undefined;
          const layered =
            owner?.kind !== undefined && ['CoatLayer', 'ClothLayer', 'CoreLayer'].includes(owner.$type)
              ? [`clause of ${owner.kind}`]
              : [];
          const places =
            layered.length > 0
              ? layered
              : owner?.$type === 'Repeat'
                ? ['clause of repeat']
                : [
                    'clause of step',
                    'clause of part',
                    ...(owner?.$type === 'Change' ? ['clause of ply', 'clause of core'] : []),
                  ];
          if (places.every((place) => wordAt(line.word ?? '', place as Place) === undefined))
            unknown.push(`${where}: ${line.word}, a clause of ${owner?.$type}`);
        }
      }
      expect(unknown).toEqual([]);
    },
  );
});

describe('the table and the rest of the language', () => {
  it('knows every word of the grammar', () => {
    const grammar: Grammar = LayupGrammar();
    const keywords = new Set(
      AstUtils.streamAllContents(grammar)
        .filter(GrammarAST.isKeyword)
        .map((keyword) => keyword.value)
        .filter((value) => /^[a-z_]+$/.test(value)),
    );
    expect(keywords.size).toBeGreaterThan(60);
    expect([...keywords].filter((word) => senses(word).length === 0)).toEqual([]);
  });

  it('explains the connectives, and no other word of it is reserved', () => {
    expect([...connectives].filter((word) => wordAt(word, 'anywhere') === undefined)).toEqual([]);
  });

  it.each<[string, readonly string[], readonly Place[]]>([
    ['material', Object.keys(materialFacts), materialPlaces],
    ['tool', Object.keys(toolFacts), ['tool']],
    ['shop', Object.keys(shopFacts), ['shop']],
    ['record', recordWords, ['record']],
  ])('%s: has exactly the facts that are read', (_, read, places) => {
    expect(withNotes(wordsIn(places)).sort()).toEqual(withNotes(read).sort());
  });
});
