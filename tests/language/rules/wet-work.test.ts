import { describe, expect, it } from 'vitest';
import { type AnalysisServices, analysisModule } from '../../../language/analysis/module.ts';
import { sayText } from '../../../language/view/text.ts';
import { openBook } from '../../harness/book.ts';

/*
 * Rules of wet work at their thresholds, just over and just under, in the forms in which a shop writes: by film or by weight, in mil,
 * in stages, with its own habits. A rule is tried on whole recipes here; what it looks like at its simplest stands on its page.
 */
const shop = (more = ''): string => `notation 1
shop "Hollow Tarn Workshop" {
  currency EUR
  ambient 20 degC
  humidity 55 % RH
  elevation 340 m
  pump 15 mbar absolute
  people 2
  scale 0.1 g
${more}}
tool bench_tool {
  flat 2000 mm by 1200 mm
  flange 120 mm
}
`;

const gelcoated = (coat: string): string => `${shop()}recipe lid {
  part {
    outline rounded 1100 mm by 700 mm corner 60 mm
  }
  stack from tool bench_tool {
    coat gel ${coat}
    ply skin csm_300
    coat flow topcoat 250 g/m2, waxed
  }
  process hand with polyester_laminating at 20 degC {
    release wax, 4 coats, 30 min each
    lay gel, catalyst 2 % by weight
    wait until tacky
    lay skin, catalyst 1.5 % by weight
    wait until gel
    lay flow, catalyst 2 % by weight
    cure 24 h
    demould
  }
}
`;

interface Panel {
  readonly more?: string;
  readonly cloth?: string;
  readonly resin?: string;
  readonly first?: string;
  readonly between?: string;
  readonly dose?: string;
}

const panel = ({ more = '', cloth = 'biax_300', resin = 'epoxy_laminating_slow', ...steps }: Panel): string => `${shop(
  more,
)}recipe panel {
  part {
    outline rounded 900 mm by 500 mm corner 60 mm
  }
  stack from tool bench_tool {
    ply a ${cloth} at 0 deg
    ply b biax_300 at 0 deg, turned 90 deg
  }
  process bagged with ${resin} at 20 degC {
    release semi_permanent, 4 coats, 20 min each
    ${steps.first ?? ''}
    tape sealant_12
    lay a${steps.dose ?? ''}
    ${steps.between ?? ''}
    lay b${steps.dose ?? ''}
    peel nylon_85
    perforated film_p3
    breather glass_300
    bag film_50, pleats 8 of 40 mm
    trap
    leak test 5 mbar in 10 min
    vacuum 700 mbar gauge
    cure 48 h
    demould
  }
}
`;

async function told(text: string, rule: string): Promise<string[]> {
  const book = await openBook({ 'a.layup': text }, { modules: [analysisModule as never] });
  const { analysis } = book.services as typeof book.services & AnalysisServices;
  const findings = await analysis.findings(book.document('a.layup'));
  book.dispose();
  return findings.filter((finding) => finding.rule === rule).map(({ message }) => sayText(message));
}

describe('coat/wet-film', () => {
  it.each([
    // 24 mil are 609.6 um and the upper end of the same range, told in the other unit
    ['gelcoat_brush 16 mil wet, brush', []],
    ['gelcoat_brush 24 mil wet, brush', []],
    ['gelcoat_brush 25 mil wet, brush', ['0.635 mm wet is too thick for gelcoat_brush: over 0.6 mm it cracks']],
    ['gelcoat_spray 25 mil wet, spray', []],
    ['gelcoat_spray 26 mil wet, spray', ['0.66 mm wet is too thick for gelcoat_spray: over 0.635 mm it cracks']],
    // 400 g/m2 over 1250 kg/m3 are 0.32 mm, 900 g/m2 are 0.72 mm; each coat counts by itself
    [
      'gelcoat_brush 400 g/m2, brush, 2 coats',
      [
        '400 g/m2 of gelcoat_brush are 0.32 mm wet, which is too thin: under 0.4 mm it stays soft and wrinkles under the laminate',
      ],
    ],
    ['gelcoat_brush 500 g/m2, brush', []],
    ['gelcoat_brush 750 g/m2, brush', []],
    [
      'gelcoat_brush 900 g/m2, brush',
      ['900 g/m2 of gelcoat_brush are 0.72 mm wet, which is too thick: over 0.6 mm it cracks'],
    ],
  ])('%s', async (coat, expected) => {
    expect(await told(gelcoated(coat), 'coat/wet-film')).toEqual(expected);
  });
});

describe('air/humid', () => {
  const damp = (between: string): string => panel({ between }).replace('humidity 55 % RH', 'humidity 80 % RH');

  it('says nothing of what goes wet on wet, before there is a blush', async () => {
    expect(await told(damp(''), 'air/humid')).toEqual([]);
    expect(await told(damp('wait 2 h'), 'air/humid')).toEqual([]);
  });

  it('tells of what goes on epoxy that has stood, until it is washed or sanded', async () => {
    expect(await told(damp('wait 6 h'), 'air/humid')).toHaveLength(1);
    expect(await told(damp('wait until tacky'), 'air/humid')).toHaveLength(1);
    expect(await told(damp('wait 6 h\n    wipe part'), 'air/humid')).toEqual([]);
    expect(await told(damp('wait 6 h\n    sand 80 grit'), 'air/humid')).toEqual([]);
  });
});

describe('resin/bag-after-open-time', () => {
  const rule = 'resin/bag-after-open-time';

  it('counts what stands as well as what is worked: 150 min at 23 degC are 185 min at 20 degC', async () => {
    expect(await told(panel({ between: 'wait 2 h' }), rule)).toEqual([]);
    expect(await told(panel({ between: 'wait 3 h' }), rule)).toHaveLength(1);
  });

  it('begins anew where somebody lets the first skin go tacky, gel or cure', async () => {
    for (const between of ['wait until tacky', 'wait until gel', 'wait until hard', 'wait 20 h'])
      expect(await told(panel({ between }), rule), between).toEqual([]);
    // after the last ply nothing is fresh any more
    const late = panel({}).replace('    peel nylon_85', '    wait 20 h\n    peel nylon_85');
    expect(await told(late, rule)).toHaveLength(1);
  });

  it('goes by the gel of a resin that has no open time, with the dose that is typed', async () => {
    const resin = 'polyester_laminating';
    expect((await told(panel({ resin }), rule))[0]).toContain('polyester_laminating gels in 18 min');
    expect(await told(panel({ resin, dose: ', catalyst 1 % by weight' }), rule)).toEqual([]);
  });
});

describe('fabric/not-dried', () => {
  const drying = (first: string): Promise<string[]> =>
    told(panel({ cloth: 'flax_twill_300', first }), 'fabric/not-dried');

  it('tells of drying that is too short or too cool, and by how much', async () => {
    expect(await drying('dry flax_twill_300, 20 min at 80 degC')).toEqual([
      'flax_twill_300 gets 20 min at 80 degC and wants 120 min at 80 degC: the water that stays in it boils out under the bag',
    ]);
    expect(await drying('dry flax_twill_300, 2 h at 40 degC')).toHaveLength(1);
  });

  it('lets a shop dry overnight at less, shorter at more, or as the cloth says', async () => {
    for (const first of [
      'dry flax_twill_300, 2 h at 80 degC',
      'dry flax_twill_300, 12 h at 60 degC',
      'dry flax_twill_300, 1 h at 100 degC',
      'dry a',
    ])
      expect(await drying(first), first).toEqual([]);
  });
});

it('unit/wrong-dimension offers no letter of another unit: 30 degC are no 30 days', async () => {
  const text = gelcoated('gelcoat_brush 500 um wet, brush').replace('wait until gel', 'wait 60 min at 30 degC');
  const book = await openBook({ 'a.layup': text }, { modules: [analysisModule as never] });
  const { analysis } = book.services as typeof book.services & AnalysisServices;
  const findings = await analysis.findings(book.document('a.layup'));
  book.dispose();
  const found = findings.find(({ rule }) => rule === 'unit/wrong-dimension');
  expect(found?.fixes).toEqual([]);
});

describe('a line that mixes names its resin behind the mass', () => {
  const shot = (mix: string): string => `${shop()}recipe panel {
  part {
    outline rounded 900 mm by 500 mm corner 60 mm
  }
  stack from tool bench_tool {
    ply a biax_600 at 0 deg
    ply b biax_600 at 0 deg, turned 90 deg
  }
  process infusion with epoxy_infusion_slow at 23 degC {
    release wax, 4 coats, 30 min each
    tape sealant_12
    lay a to b
    peel nylon_85
    mesh mesh_130
    feed f1 spiral_10 from (-300 mm, 0 mm) to (300 mm, 0 mm)
    vent v1 spiral_10 perimeter, 50 mm outside
    bag film_50, pleats 8 of 40 mm
    trap
    leak test 5 mbar in 10 min
    ${mix}
    infuse
    cure 30 h
    demould
  }
}
`;

  it.each([
    ['flow/pot-runs-dry', 'mix 0.5 kg epoxy_infusion_slow', 1],
    ['flow/pot-runs-dry', 'mix 1 lb epoxy_infusion_slow', 1],
    ['flow/pot-runs-dry', 'mix 2 kg epoxy_infusion_slow', 0],
    ['flow/pot-runs-dry', 'mix 0.5 kg', 1],
    // another resin is no pot of the shot
    ['flow/pot-runs-dry', 'mix 0.5 kg epoxy_laminating_fast', 0],
    ['resin/batch-too-big', 'mix 2 kg epoxy_laminating_fast', 1],
    ['resin/batch-too-big', 'mix 2 kg epoxy_infusion_slow', 0],
  ])('%s: %s', async (rule, mix, count) => {
    expect(await told(shot(mix), rule)).toHaveLength(count);
  });
});
