import { expect, it } from 'vitest';
import { type AnalysisServices, analysisModule } from '../../../language/analysis/module.ts';
import { openBook } from '../../harness/book.ts';

/* Common practice: polyester on epoxy is an error where the part hangs on it, and a warning where it is only a finish. */

const panel = (layer: string): string => `notation 1
tool bench_tool {
  flat 2000 mm by 1200 mm
  flange 120 mm
}
recipe panel {
  part {
    outline rectangle 600 mm by 400 mm
  }
  stack from tool bench_tool {
    ply a biax_440 at 0 deg, net
    ${layer}
  }
  process hand with epoxy_laminating_medium at 21 degC {
    release wax, 4 coats, 30 min each
    lay a
    wait 24 h
    sand 120 grit
    lay b${layer.startsWith('coat') ? '' : ' with polyester_laminating, catalyst 1.5 % by weight'}
    cure 24 h at 21 degC
    demould
  }
}
`;

it.each([
  ['a finish', 'coat b topcoat 250 g/m2, waxed', 'warning'],
  ['cloth', 'ply b biax_440 at 0 deg, net', 'error'],
])('%s of polyester on cured epoxy', async (_, layer, severity) => {
  const book = await openBook<AnalysisServices>({ 'a.layup': panel(layer) }, { modules: [analysisModule] });
  const findings = await book.services.analysis.findings(book.document('a.layup'));
  expect(findings.flatMap((found) => (found.rule === 'bond/polyester-over-epoxy' ? [found.severity] : []))).toEqual([
    severity,
  ]);
});
