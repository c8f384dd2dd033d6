import { describe, expect, test } from 'vitest';
import { evaluate, TESTED } from '../../../calc/expect/evaluate.ts';
import type { Test } from '../../../calc/model/index.ts';
import { reportOf } from '../../../calc/report.ts';
import { bookOf, bookWith, euro, kg, materialNamed, mm, percent, price, SLED } from '../../harness/sled-model.ts';
import { bench, filled } from './ask.ts';

const on = bench(SLED);
const verdict = (asked: Test) => evaluate(on, asked, 'expect.0');

describe('tests of the recipe', () => {
  test('those of the sled deck: met, and what is not computed yet', () => {
    expect(reportOf(SLED, bookOf()).expects.map((e) => e.verdict.verdict)).toEqual([
      'met',
      'not yet',
      'met',
      'met',
      'met',
    ]);
  });
  test('a limit that is passed says by how much', () => {
    const asked = verdict({ what: 'mass', comparison: '<=', limit: kg(2) });
    expect(asked.verdict).toBe('not met');
    expect(asked.actual?.si).toBeCloseTo(2.12897, 4);
    expect(asked.beyond?.si).toBeCloseTo(0.12897, 4);
  });
  test('at least, less than, more than', () => {
    const mass = verdict({ what: 'mass', comparison: '<=', limit: kg(9) }).actual ?? kg(0);
    expect(verdict({ what: 'mass', comparison: '>=', limit: { ...kg(0), si: mass.si } }).verdict).toBe('met');
    expect(verdict({ what: 'mass', comparison: '<', limit: { ...kg(0), si: mass.si } }).verdict).toBe('not met');
    expect(verdict({ what: 'mass', comparison: '>', limit: kg(2) }).verdict).toBe('met');
  });
  test('a range, and a value with its tolerance', () => {
    expect(verdict({ what: 'thickness', at: 'middle', low: mm(21), high: mm(21.1) }).verdict).toBe('met');
    expect(verdict({ what: 'thickness', at: 'middle', low: mm(22), high: mm(23) })).toMatchObject({
      verdict: 'not met',
    });
    expect(verdict({ what: 'thickness', at: 'middle', low: { ...mm(21), tolerance: mm(0.1) } }).verdict).toBe('met');
    expect(verdict({ what: 'thickness', at: 'middle', low: mm(21) }).verdict).toBe('cannot tell');
  });
  test('thickness at a point, in the middle of a zone, of one layer', () => {
    // over the insert lie both skins and the pad: 2 x 0.510817 + 20 + 0.34375 mm
    const at = { x: { offset: mm(210), from: 'heel' }, y: { offset: mm(0) } };
    expect(verdict({ what: 'thickness', at, low: mm(21.36), high: mm(21.37) }).verdict).toBe('met');
    expect(verdict({ what: 'thickness', at: 'mount', low: mm(21.36), high: mm(21.37) }).verdict).toBe('met');
    expect(verdict({ what: 'thickness', on: 'outer', low: mm(0.51), high: mm(0.52) }).verdict).toBe('met');
    // where the wrap lands, 10 mm inside the long edge, the outer ply lies double: 3 x 0.510817 + 20
    const edge = { x: { offset: mm(0) }, y: { offset: mm(200) } };
    expect(verdict({ what: 'thickness', at: edge, low: mm(21.53), high: mm(21.54) }).verdict).toBe('met');
    expect(verdict({ what: 'thickness', at: 'nowhere', low: mm(1), high: mm(2) }).verdict).toBe('cannot tell');
  });
  test('fibre by weight and by volume', () => {
    expect(verdict({ what: 'fibre', comparison: '>=', limit: percent(70, 'by weight') }).verdict).toBe('met');
    expect(verdict({ what: 'fibre', comparison: '>=', limit: percent(70), basis: 'by volume' }).verdict).toBe(
      'not met',
    );
    expect(verdict({ what: 'fibre', comparison: '>=', limit: percent(70) }).verdict).toBe('cannot tell');
  });
  test('costs in another currency, a limit of another kind, an unknown limit, none', () => {
    expect(verdict({ what: 'cost', comparison: '<=', limit: { ...euro(1), currency: 'USD' } }).verdict).toBe(
      'cannot tell',
    );
    expect(verdict({ what: 'cost', comparison: '<=', limit: kg(1) }).verdict).toBe('cannot tell');
    expect(verdict({ what: 'mass', comparison: '<=', limit: 'unknown' }).verdict).toBe('cannot tell');
    expect(verdict({ what: 'mass' }).verdict).toBe('cannot tell');
  });
  test('nothing called so; what is measured; what comes later', () => {
    const asked = verdict({ what: 'toString', comparison: '<=', limit: kg(1) });
    expect(asked.verdict).toBe('cannot tell');
    expect(asked.reasons.map((r) => filled(r.text))).toEqual(['nothing is computed that is called toString']);
    expect(verdict({ what: 'barcol', comparison: '>=', limit: kg(1) }).verdict).toBe('cannot tell');
    for (const what of ['sag', 'margin', 'fill', 'stiffness', 'warp'])
      expect(verdict({ what, comparison: '<=', limit: kg(1) }).verdict).toBe('not yet');
  });
  test('what is missing for the figure is missing for the test', () => {
    const poor = bench(
      SLED,
      bookWith({ ...materialNamed('triax_680'), prices: [price('triax_680', 'unknown', 'area')] }),
    );
    expect(
      evaluate(poor, { what: 'cost', comparison: '<=', limit: euro(290) }, 'expect.4').reasons.map((r) =>
        filled(r.text),
      ),
    ).toEqual(['the price of triax_680 is not known (?)']);
  });
  test('every word that a test may begin with has an answer of some kind', () => {
    for (const what of TESTED)
      expect(['met', 'not met', 'cannot tell', 'not yet']).toContain(
        verdict({ what, comparison: '<=', limit: kg(1) }).verdict,
      );
  });
});
