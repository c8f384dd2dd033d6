import { describe, expect, it } from 'vitest';
import { type AnalysisServices, analysisModule } from '../../language/analysis/module.ts';
import { openBook } from '../harness/book.ts';

/** What reading says of one step in the process of an infusion, by rule and by the words that it points at. */
async function readingOf(step: string): Promise<string[]> {
  const before = 'recipe deck {\n  process infusion with epoxy_infusion_slow at 23 degC {\n    ';
  const text = `${before}${step}\n  }\n}\n`;
  const book = await openBook({ 'deck.layup': text }, { modules: [analysisModule as never] });
  const { analysis } = book.services as typeof book.services & AnalysisServices;
  const findings = await analysis.findings(book.document('deck.layup'));
  const end = before.length + step.length;
  const told = findings
    .filter(({ rule, span }) => /^(unit|line)\//.test(rule) && span.offset >= before.length && span.end <= end)
    .map(({ rule, span }) => `${rule} ${text.slice(span.offset, span.end)}`);
  book.dispose();
  return told;
}

describe('numbers of a step are of the kind that its words take', () => {
  it.each([
    ['peel nylon_85, 60 past edge', ['unit/missing 60']],
    ['mesh mesh_130, 40 short of edge', ['unit/missing 40']],
    ['vent v1 spiral_10 perimeter, 50 outside', ['unit/missing 50']],
    ['bag film_50, pleats 4 of 40', ['unit/missing 40']],
    ['leak test 5 mm in 10 min', ['unit/wrong-dimension 5 mm']],
    ['leak test 5 mbar in 10 g', ['unit/wrong-dimension 10 g']],
    ['cure 24 h at 20', ['unit/missing 20']],
    ['cure { ramp 10 K to 50 degC }', ['unit/wrong-dimension 10 K']],
    ['cure { hold 8 kg at 50 degC }', ['unit/wrong-dimension 8 kg']],
    ['vacuum 650 mbar', ['unit/no-reference 650 mbar']],
    ['cure { cool 2 K/min to 50 degC, vacuum 650 mbar }', ['unit/no-reference 650 mbar']],
    ['tint grey_paste 2 %', ['unit/no-basis 2 %']],
    ['lay stack, catalyst 1.5 %', ['unit/no-basis 1.5 %']],
  ])('%s', async (step, expected) => expect(await readingOf(step)).toEqual(expected));
});

describe('words that no table knows', () => {
  it.each([
    ['relaese wax, 4 coats', ['line/not-understood relaese']],
    ['demold', ['line/not-understood demold']],
    ['bag film_50, plaets 4 of 40 mm', ['line/not-understood plaets']],
    ['bag film_50, floofs 3', ['line/not-understood floofs']],
    ['sand skin, P80x', ['line/not-understood P80x']],
  ])('%s', async (step, expected) => expect(await readingOf(step)).toEqual(expected));
});

describe('what is right is read in silence', () => {
  it.each([
    'release semi_permanent, 5 coats new, 1 coat every 4 pulls, 20 min each',
    'release semi_permanent, 4 coats, bake 30 min at 120 degC',
    'lay stack, debulk 15 min every 3 plies, people 3',
    'keep in tool 12 h',
    'wait until tacky, at most 12 h',
    'vacuum 650 mbar gauge, within 75 min of mix',
    'drill 8 holes 8 mm in bolts, grid 4 by 2, 20 mm by 30 mm apart, sealed',
    'sand skin 120 grit, spikes only',
    // as the paper bears it, ISO 6344
    'sand P80',
    'sand skin, P120, wet',
    'trim green, knife, 10 min after gel',
    'mix epoxy_infusion_slow 3 kg',
    'caul alu_2, 3 mm short of dam, release semi_permanent 3 coats',
    'do "Warm the resin.", 10 min',
  ])('%s', async (step) => expect(await readingOf(step)).toEqual([]));
});
