import { describe, expect, it } from 'vitest';
import { type AnalysisServices, analysisModule } from '../../../language/analysis/module.ts';
import { addressOf, openBook } from '../../harness/book.ts';

const recipe = `recipe panel {
  revision 1
  part {
    outline rectangle 800 mm by 500 mm
  }
  stack from tool plate {
    ply p1 carbon_prepreg_200 at 0 deg
  }
  process prepreg {
    lay p1
    cure {
      ramp 1.5 K/min to 120 degC
      hold 30 h
    }
    demould
  }
}

tool plate {
  flat 1600 mm by 800 mm
  limit 180 degC
  count 1
}
`;
const record = (day: string, number: number, lot: string, out: string): string =>
  `record panel ${day} "no. ${number}" {\n  revision 1\n  lot carbon_prepreg_200 "${lot}"\n  out carbon_prepreg_200 ${out}\n}\n`;

async function opened(files: Readonly<Record<string, string>>) {
  const book = await openBook({ 'panel.layup': recipe, ...files }, { modules: [analysisModule as never] });
  const { analysis } = book.services as typeof book.services & AnalysisServices;
  const told = async (file: string) =>
    (await analysis.findings(book.document(file))).filter(({ rule }) => /out-life-used|tool\/occupied/.test(rule));
  return { book, analysis, told };
}

describe('records of the same lot', () => {
  it('add up over files, and an edit of one is heard by the other', async () => {
    const { book, analysis, told } = await opened({
      '2025.layup': record('2025-11-03', 1, 'P-31', '12 days'),
      '2026.layup': record('2026-01-12', 2, 'P-31', '10 days'),
    });
    const [finding] = await told('2026.layup');
    expect(finding?.rule).toBe('record/out-life-used');
    const earlier = finding?.related.find(({ at }) => at?.entry.startsWith('record/') === true)?.at;
    expect(earlier && analysis.locate(earlier, book.document('2026.layup'))?.uri).toBe(
      addressOf('2025.layup').toString(),
    );
    expect(await told('2025.layup')).toEqual([]);
    book.takeWork();
    await book.edit('2025.layup', record('2025-11-03', 1, 'P-31', '2 days'));
    expect(await told('2026.layup')).toEqual([]);
    expect(book.takeWork().validated).toContain('2026.layup');
    await book.edit('2025.layup', record('2025-11-03', 1, 'P-30', '20 days'));
    expect(await told('2026.layup')).toEqual([]);
    book.dispose();
  });
});

describe('records on the same tool', () => {
  it('are told apart by their days, over files', async () => {
    const { book, told } = await opened({
      'one.layup': record('2026-01-12', 1, 'P-1', '1 days'),
      'two.layup': record('2026-01-12', 2, 'P-2', '1 days'),
    });
    const both = [...(await told('one.layup')), ...(await told('two.layup'))];
    expect(both.map(({ rule }) => rule)).toEqual(['tool/occupied']);
    await book.edit('two.layup', record('2026-01-13', 2, 'P-2', '1 days'));
    expect([...(await told('one.layup')), ...(await told('two.layup'))]).toEqual([]);
    book.dispose();
  });
});
