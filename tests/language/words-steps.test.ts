import { describe, expect, it } from 'vitest';
import { DURATIONS } from '../../calc/plan/durations.ts';
import type { Group } from '../../language/words/index.ts';
import { classesOf, GROUPS, LAID, needed, precedes, verb, verbOfClass, verbs } from '../../language/words/index.ts';
import { materialPlaces, wordsIn } from '../harness/words.ts';

describe('the work steps', () => {
  it('have names of their own', () => {
    expect(new Set(verbs.map((step) => step.word)).size).toBe(verbs.length);
  });

  // The working day of a laminator, class by class: common practice.
  it.each<[Group, string]>([
    ['mould', 'clean release mask unmask heat tape'],
    ['core', 'dry score shape chamfer seal_core bed fill bag_down'],
    ['cloth', 'thaw cut wet_out lay roll_out debulk kit tack'],
    [
      'over the stack',
      'peel perforated film bleeder mesh caul intensifier dam breather thermocouple bag feed vent trap',
    ],
    ['pull', 'vacuum leak_test infuse open clamp mix tint'],
    ['cure', 'heat cure ramp hold cool postcure'],
    ['after', 'demould unwrap keep pull_peel trim seal_edge drill sand wipe fair prime paint'],
    ['wait and check', 'wait check weigh do'],
  ])('cover %s: %s', (group, list) => {
    const rows = list.split(' ').map((word) => verb(word.replace('_', ' ')) ?? word);
    for (const row of rows)
      expect(row).toMatchObject({
        meaning: expect.any(String),
        sheet: expect.any(String),
      });
    expect(rows.some((row) => typeof row === 'object' && row.group === group)).toBe(true);
  });

  it('have a default time each, and a reason for it', () => {
    const rows = Object.keys(DURATIONS);
    const row = (word: string) => rows.find((key) => key === word) ?? rows.find((key) => key === word.split(' ')[0]);
    expect(verbs.filter(({ word }) => row(word) === undefined).map(({ word }) => word)).toEqual([]);
    const taken = new Set(verbs.map(({ word }) => row(word)));
    expect(rows.filter((key) => !taken.has(key))).toEqual([]);
    expect(rows.filter((key) => (DURATIONS[key]?.why ?? '') === '')).toEqual([]);
  });

  it('take only clauses that the table explains', () => {
    const known = wordsIn(['clause of step']);
    expect(
      verbs.flatMap((step) =>
        step.clauses.filter((clause) => !known.has(clause)).map((clause) => `${step.word}: ${clause}`),
      ),
    ).toEqual([]);
  });

  it('take materials of kinds that exist', () => {
    const known = new Set([...wordsIn(['value of kind']), ...materialPlaces, 'tool']);
    expect(
      verbs.flatMap((step) =>
        (step.material ?? []).filter((kind) => !known.has(kind)).map((kind) => `${step.word}: ${kind}`),
      ),
    ).toEqual([]);
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
  const classes = [
    ...new Set(precedes.flatMap(({ first, later }) => [first, later])),
    ...Object.values(needed)
      .flat()
      .map((need) => need.step),
  ];

  it('speaks of known verbs', () => {
    expect(classes.filter((step) => verbOfClass(step) === undefined)).toEqual([]);
    const narrowed = classes.filter((step) => step.startsWith('lay ')).map((step) => step.slice(4));
    expect(narrowed.filter((what) => !(LAID as readonly string[]).includes(what))).toEqual([]);
  });

  it('has no pair twice and no circle', () => {
    expect(new Set(precedes.map(({ first, later }) => `${first} < ${later}`)).size).toBe(precedes.length);
    const after = (step: string): string[] => precedes.filter((pair) => pair.first === step).map((pair) => pair.later);
    const reaches = (from: string, to: string, seen = new Set<string>()): boolean =>
      after(from).some((next) => {
        if (next === to) return true;
        if (seen.has(next)) return false;
        seen.add(next);
        return reaches(next, to, seen);
      });
    expect(classes.filter((step) => reaches(step, step))).toEqual([]);
  });

  it('gives a reason and a source for each pair and need', () => {
    for (const row of [...precedes, ...Object.values(needed).flat()])
      expect([row.because.length > 8, row.source.length > 4]).toEqual([true, true]);
  });

  it('puts a class under the wider ones', () => {
    expect(classesOf('postcure free')).toEqual(['postcure free', 'postcure']);
  });
});
