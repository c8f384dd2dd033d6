import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

interface EnterRule {
  beforeText: string;
  afterText?: string;
  action: { indent: string; appendText?: string };
}
interface Configuration {
  wordPattern: string;
  folding: { markers: { start: string; end: string } };
  indentationRules: { increaseIndentPattern: string; decreaseIndentPattern: string };
  onEnterRules: EnterRule[];
}

const file = join(import.meta.dirname, '..', '..', 'extension', 'language-configuration.json');
const configuration = JSON.parse(readFileSync(file, 'utf8')) as Configuration;

describe('a word, as a double click or completion takes it', () => {
  it.each([
    ['ply outer e_glass at', ['ply', 'outer', 'e_glass', 'at']],
    ['680', ['680']],
    ['accept bag/too-small "flat"', ['accept', 'bag/too-small', 'flat']],
    ['lay mat.1 to a.m', ['lay', 'mat.1', 'to', 'a.m']],
    ['7.40 EUR/m2', ['7.40', 'EUR/m2']],
    ['290 mPa.s', ['290', 'mPa.s']],
    ['100:31', ['100', '31']],
    ['-45 deg', ['45', 'deg']],
  ])('%s', (text, words) => {
    expect(text.match(new RegExp(configuration.wordPattern, 'g'))).toEqual(words);
  });
});

describe('indentation', () => {
  const opens = (line: string) => new RegExp(configuration.indentationRules.increaseIndentPattern).test(line);
  it.each([
    ['fabric mat_300 "Mat" {', true],
    ['  infuse {', true],
    ['  size short { // the small one', true],
    ['  part { outline circle 200 mm }', false],
    ['// a comment {', false],
    ['  note "a brace { in a note"', false],
  ])('%s', (line, expected) => expect(opens(line)).toBe(expected));

  it('a closing brace goes back', () => {
    const closes = new RegExp(configuration.indentationRules.decreaseIndentPattern);
    expect([closes.test('  }'), closes.test('  trim net }')]).toEqual([true, false]);
  });
});

describe('Enter', () => {
  const onEnter = (before: string, after = '') =>
    configuration.onEnterRules.find(
      (rule) => new RegExp(rule.beforeText).test(before) && (!rule.afterText || new RegExp(rule.afterText).test(after)),
    )?.action;
  it('goes on with a comment, and ends it on an empty one', () => {
    expect(onEnter('  // asked in May')).toEqual({ indent: 'none', appendText: '// ' });
    expect(onEnter('  // ')).toBeUndefined();
    expect(onEnter('  price ?   // asked in May')).toBeUndefined();
  });
  it('keeps the indentation of a line that begins with a comma', () => {
    expect(onEnter('      , note "Chamfer."')).toEqual({ indent: 'none' });
  });
  it('opens a pair of braces', () => {
    expect(onEnter('  cure {', '}')).toEqual({ indent: 'indentOutdent' });
  });
});

it('folds regions', () => {
  const { start, end } = configuration.folding.markers;
  expect(new RegExp(start).test('// region cloth')).toBe(true);
  expect(new RegExp(start).test('// regional prices')).toBe(false);
  expect(new RegExp(end).test('// endregion')).toBe(true);
});
