import type { Grammar } from 'langium';
import { AstUtils, GrammarAST } from 'langium';
import { describe, expect, it } from 'vitest';
import type { Place, Word } from '../../language/words/index.ts';
import { classesOf, GROUPS, LAID, needed, PLACES, precedes, senses, verb, verbOfClass, verbs, wordAt, words, wordsAt } from '../../language/words/index.ts';
import { connectives } from '../../language/grammar/connectives.ts';
import { LayupGrammar } from '../../language/grammar/generated/grammar.ts';
import { materialFacts } from '../../language/lower/material-facts.ts';
import { recordWords } from '../../language/lower/record.ts';
import { shopFacts } from '../../language/lower/shop-facts.ts';
import { toolFacts } from '../../language/lower/tool-facts.ts';
import { parsed, viewServices } from './view/parsed.ts';

const materials: readonly Place[] = ['fibre', 'fabric', 'prepreg', 'resin', 'gelcoat', 'catalyst', 'paste', 'core', 'consumable'];
const at = (places: readonly Place[]): Set<string> => new Set(places.flatMap((place) => wordsAt(place).map((word) => word.word)));
const withNotes = (names: Iterable<string>): string[] => [...names].filter((name) => wordAt(name, 'anywhere') === undefined);

describe('the table of words', () => {
  it('has one sense of a word at a place', () => {
    const seen = new Set<string>();
    const twice = words.flatMap((word) => word.at.flatMap((place) => {
      const key = `${word.word} / ${place}`;
      const again = seen.has(key);
      seen.add(key);
      return again ? [key] : [];
    }));
    expect(twice).toEqual([]);
  });

  it('has words at every place', () => {
    expect(PLACES.filter((place) => wordsAt(place).length === 0)).toEqual([]);
  });

  it('explains every word in whole sentences', () => {
    expect(words.filter((word) => !/^[A-Z`].*[.)]$/s.test(word.meaning) || word.meaning.length < 15).map((word) => word.word)).toEqual([]);
  });

  it('shows every word in its example', () => {
    const missing = words.filter((word) => !new RegExp(`(^|[^\\w])${word.word.replace(' ', ' +')}([^\\w]|$)`).test(word.example));
    expect(missing.map((word) => `${word.word}: ${word.example}`)).toEqual([]);
  });

  it('says where each default comes from, unless it only says what nothing typed means', () => {
    const nothing = new Set(['0 %', '0 m', '1']);
    const bare = words.filter((word) => word.default !== undefined && /\d/.test(word.default) && !nothing.has(word.default) && word.source === undefined);
    expect(bare.map((word) => `${word.word}: ${word.default}`)).toEqual([]);
  });

  it('finds a word by its place, and one of everywhere from any place', () => {
    expect(wordAt('core', 'book')?.meaning).not.toBe(wordAt('core', 'stack')?.meaning);
    expect(wordAt('note', 'stack')?.word).toBe('note');
    expect(wordAt('peel', 'stack')).toBeUndefined();
    expect(senses('core').length).toBeGreaterThan(1);
  });
});

describe('the examples', () => {
  const services = viewServices();
  const inside: Partial<Record<string, (line: string) => string>> = {
    book: (line) => line,
    recipe: (line) => `recipe r {\n${line}\n}`,
    part: (line) => `recipe r {\npart {\n${line}\n}\n}`,
    stack: (line) => (line.startsWith('stack') ? `recipe r {\n${line}\n}` : `recipe r {\nstack from tool t {\n${line}\n}\n}`),
    process: (line) => (line.startsWith('process') ? `recipe r {\n${line}\n}` : `recipe r {\nprocess hand {\n${line}\n}\n}`),
    load: (line) => `recipe r {\nload l {\n${line}\n}\n}`,
    size: (line) => `recipe r {\nsize s {\n${line}\n}\n}`,
  };
  const blockOf = (word: Word): string => {
    const first = word.example.split(' ')[0] ?? '';
    const heads: [string, Place[]][] = [
      ['recipe', ['recipe']], ['part', ['part']], ['stack', ['stack']], ['process', ['process', 'kit', 'infuse', 'cure', 'postcure']], ['load', ['load']], ['size', ['size']],
    ];
    if (/^core \w+ "/.test(word.example)) return 'book';
    if (word.example.includes('{') && wordAt(first, 'book') !== undefined && !at(['stack', 'process', 'recipe']).has(first)) return 'book';
    if (/^(ply|strip|patch|coat|core|insert|repeat|mirror|stack)$/.test(first)) return 'stack';
    for (const [block, places] of heads) if (word.at.some((place) => places.includes(place)) && places.some((place) => wordAt(first, place) !== undefined)) return block;
    for (const [block, places] of heads) if (places.some((place) => wordsAt(place).some((known) => known.word === first))) return block;
    return 'fact';
  };
  const wrapped = (word: Word): string => {
    const wrap = inside[blockOf(word)];
    if (wrap !== undefined) return wrap(word.example);
    const record = word.at.includes('record') || /^(lot|vacuum|barcol)/.test(word.example);
    return record ? `record r 2026-05-14 {\n${word.example}\n}` : `${word.at.includes('tool') ? 'tool' : word.at.includes('shop') || word.example.startsWith('habit') ? 'shop' : 'resin'} ${word.at.includes('shop') || word.example.startsWith('habit') ? '' : 'm '}{\n${word.example}\n}`;
  };
  const lines = words.filter((word) => !['and', 'as'].includes(word.word));
  it.each(lines.map((word) => [word.example, wrapped(word)] as const))('%s', (_, text) => {
    const { lexerErrors, parserErrors } = parsed(services, `${text}\n`).parseResult;
    expect([...lexerErrors, ...parserErrors].map((error) => error.message)).toEqual([]);
  });
});

describe('the table and the rest of the language', () => {
  it('knows every word of the grammar', () => {
    const grammar: Grammar = LayupGrammar();
    const keywords = new Set(AstUtils.streamAllContents(grammar).filter(GrammarAST.isKeyword).map((keyword) => keyword.value).filter((value) => /^[a-z_]+$/.test(value)));
    expect(keywords.size).toBeGreaterThan(60);
    expect([...keywords].filter((word) => senses(word).length === 0)).toEqual([]);
  });

  it('explains the connectives, and no other word of it is reserved', () => {
    expect([...connectives].filter((word) => wordAt(word, 'anywhere') === undefined)).toEqual([]);
  });

  it.each<[string, readonly string[], readonly Place[]]>([
    ['material', Object.keys(materialFacts), materials],
    ['tool', Object.keys(toolFacts), ['tool']],
    ['shop', Object.keys(shopFacts), ['shop']],
    ['record', recordWords, ['record']],
  ])('%s: has exactly the facts that are read', (_, read, places) => {
    expect(withNotes(at(places)).sort()).toEqual(withNotes(read).sort());
  });
});

describe('the work steps', () => {
  it('have names of their own', () => {
    expect(new Set(verbs.map((step) => step.word)).size).toBe(verbs.length);
  });

  it('take only clauses that the table explains', () => {
    const known = at(['clause of step']);
    expect(verbs.flatMap((step) => step.clauses.filter((clause) => !known.has(clause)).map((clause) => `${step.word}: ${clause}`))).toEqual([]);
  });

  it('take materials of kinds that exist', () => {
    const known = new Set([...at(['value of kind']), ...materials, 'tool']);
    expect(verbs.flatMap((step) => (step.material ?? []).filter((kind) => !known.has(kind)).map((kind) => `${step.word}: ${kind}`))).toEqual([]);
  });

  it('fill every group', () => {
    const used = new Set(verbs.map((step) => step.group));
    expect(GROUPS.filter((group) => !used.has(group))).toEqual([]);
  });

  it('are found by their whole name only, so that `bag film_50` is no verb', () => {
    expect(verb('leak test')?.word).toBe('leak test');
    expect(verb('bag film_50')).toBeUndefined();
  });
});

describe('the partial order', () => {
  const classes = [...new Set(precedes.flatMap(({ first, later }) => [first, later])), ...Object.values(needed).flat().map((need) => need.step)];

  it('speaks of known verbs', () => {
    expect(classes.filter((step) => verbOfClass(step) === undefined)).toEqual([]);
    const narrowed = classes.filter((step) => step.startsWith('lay ')).map((step) => step.slice(4));
    expect(narrowed.filter((what) => !(LAID as readonly string[]).includes(what))).toEqual([]);
  });

  it('has no pair twice and no circle', () => {
    expect(new Set(precedes.map(({ first, later }) => `${first} < ${later}`)).size).toBe(precedes.length);
    const after = (step: string): string[] => precedes.filter((pair) => pair.first === step).map((pair) => pair.later);
    const reaches = (from: string, to: string, seen = new Set<string>()): boolean => after(from).some((next) => {
      if (next === to) return true;
      if (seen.has(next)) return false;
      seen.add(next);
      return reaches(next, to, seen);
    });
    expect(classes.filter((step) => reaches(step, step))).toEqual([]);
  });

  it('gives a reason and a source for each pair and need', () => {
    for (const row of [...precedes, ...Object.values(needed).flat()]) expect([row.because.length > 8, row.source.length > 4]).toEqual([true, true]);
  });

  it('puts a class under the wider ones', () => {
    expect(classesOf('postcure free')).toEqual(['postcure free', 'postcure']);
  });
});
