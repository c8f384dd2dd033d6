import { expect, it } from 'vitest';
import { type AnalysisServices, analysisModule } from '../../language/analysis/module.ts';
import { readSettings } from '../../language/book/settings.ts';
import { rules } from '../../language/rules/generated/rules.ts';
import type { Rule } from '../../language/rules/rule.ts';
import { Runner } from '../../language/rules/runner.ts';
import { openBook } from '../harness/book.ts';
import { standardShop, standardTools } from '../harness/standard-book.ts';

const recipe = `recipe pot {
  process hand with polyester_ortho at 20 degC {
    catalyse mekp_50 1.5 % by weight, accept resin/promoter-and-peroxide "We always do."
    accelerate cobalt_6 0.3 % by weight, accept resin/promoter-and-peroxide "We always do."
  }
}
`;

/** Peroxide and accelerator in one pot explode: neither a setting nor an `accept` makes less of that (every safety sheet, from memory). */
it('what may hurt somebody is told whatever a workspace says', async () => {
  const book = await openBook<AnalysisServices>(
    { 'shop.layup': standardShop, 'tools.layup': standardTools, 'pot.layup': recipe },
    { modules: [analysisModule] },
  );
  const { analysis } = book.services;
  const name = 'resin/promoter-and-peroxide';
  const told = (await analysis.findings(book.document('pot.layup'))).filter((finding) => finding.rule === name);
  expect(told.map(({ severity, accepted }) => [severity, accepted])).toEqual([['error', undefined]]);

  const { severities } = readSettings({ severities: { [name]: 'off', 'release/missing': 'off' } });
  const [lowered] = analysis.entries(book.document('pot.layup'));
  if (lowered === undefined) throw new Error('the recipe is gone');
  const names = { nearest: () => [], stockFacts: () => undefined, hasLikeness: () => false };
  const found = new Runner(rules as readonly Rule[]).findings(
    { lowered, text: recipe, first: undefined },
    analysis.shelf(),
    names,
    severities,
  );
  expect(found.some((finding) => finding.rule === name && finding.severity === 'error')).toBe(true);
  expect(found.some((finding) => finding.rule === 'release/missing')).toBe(false);
  book.dispose();
});
