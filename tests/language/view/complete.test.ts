// biome-ignore-all lint/suspicious/noTemplateCurlyInString: the places to fill of a snippet are written so
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LayupLexer } from '../../../language/grammar/lexer.ts';
import type { Completion } from '../../../language/view/complete/completion.ts';
import { type CompletionBook, completionsAt } from '../../../language/view/complete/index.ts';
import type { NamesPort } from '../../../language/view/complete/names-port.ts';
import { readMarks } from '../../harness/marks.ts';
import { viewServices } from './parsed.ts';

const lexer = viewServices().parser.Lexer as LayupLexer;
const sample = readFileSync(new URL('../notation-sample.layup', import.meta.url), 'utf8');

const names: NamesPort = {
  materials: () => [
    { name: 'biax_440', kind: 'fabric', title: 'Stitched E-glass', detail: '440 g/m2', stock: true },
    { name: 'triax_680', kind: 'fabric', title: 'Stitched triaxial E-glass', detail: '680 g/m2', stock: false },
    { name: 'carbon_pp', kind: 'prepreg', stock: true },
    { name: 'epoxy_slow', kind: 'resin', title: 'Infusion epoxy', stock: false },
    { name: 'gel_grey', kind: 'gelcoat', stock: true },
    { name: 'mekp_50', kind: 'catalyst', stock: true },
    { name: 'bond_paste', kind: 'paste', stock: true },
    { name: 'foam_80', kind: 'core', title: 'Closed-cell foam', stock: false },
    { name: 'e_glass', kind: 'fibre', stock: true },
    { name: 'nylon_85', kind: 'consumable', consumableKind: 'peel', stock: true },
    { name: 'mesh_130', kind: 'consumable', consumableKind: 'mesh', stock: true },
    { name: 'spiral_10', kind: 'consumable', consumableKind: 'feed_line', stock: false },
    { name: 'film_50', kind: 'consumable', consumableKind: 'bag', stock: true },
    { name: 'sealant_12', kind: 'consumable', consumableKind: 'tape', stock: true },
    { name: 'grey_paste', kind: 'consumable', consumableKind: 'pigment', stock: true },
  ],
  tools: () => [{ name: 'sled_tool' }, { name: 'glass_table', title: 'Float glass, 10 mm' }],
  recipes: () => [{ name: 'sled_deck', title: 'Rescue sled deck' }],
  inside: (recipe) =>
    recipe === 'sled_deck'
      ? [
          { name: 'lower', kind: 'layer', detail: 'ply triax_680' },
          { name: 'short', kind: 'size' },
        ]
      : [],
  usedIn: (recipe) => (recipe === 'sled_deck' ? ['foam_80', 'epoxy_slow'] : []),
  currency: () => 'EUR',
};
const rules = [{ name: 'bag/few-pleats', title: 'Too few pleats' }, { name: 'wrap/short' }];
const book: CompletionBook = { lexer, names, ruleNames: () => rules };

function at(text: string): readonly Completion[] {
  const {
    text: whole,
    cursors: [offset = 0],
  } = readMarks(text);
  return completionsAt(whole, offset, book);
}
const labels = (text: string): string[] => at(text).map((offer) => offer.label);

const inStack = (line: string): string => `recipe a {
  let rim = 40 mm
  part {
    outline rectangle 900 mm by 500 mm
    ends heel to nose
    zone mount circle 80 mm
  }
  stack from tool sled_tool {
    coat gel gel_grey 500 um wet
    ply outer triax_680 at 0 deg, net
    strip keel triax_680 at 0 deg, 60 mm by 620 mm
    core body foam_80 20 mm
    repeat 2 {
      ply mat biax_440
    }
    ${line}
  }
  load rider {
  }
}
`;
const inProcess = (line: string, kind = 'infusion'): string => `recipe a {
  stack {
    ply outer triax_680 at 0 deg
    core body foam_80 20 mm
    ply inner triax_680 at 0 deg
  }
  process ${kind} with epoxy_slow at 23 degC {
    feed f1 spiral_10
    vent v1 spiral_10 perimeter
    ${line}
  }
  load rider {
  }
}
`;
const inResin = (line: string): string => `resin r {\n  family epoxy\n  ${line}\n}\n`;

/** Where the cursor stands, what must be offered, what must not. */
type Position = readonly [typed: string, offered: readonly string[], never?: readonly string[]];

const positions: Record<string, readonly Position[]> = {
  'outside of entries': [
    ['<|>', ['fabric', 'resin', 'recipe', 'shop', 'record'], ['ply', 'note', 'viscosity', 'at']],
    ['fabric a {\n}\n\nre<|>', ['resin', 'recipe', 'record'], ['roll']],
    ['fabric bi <|>', ['like'], ['ply', 'triax_680']],
    ['fabric biax_440 like <|>', ['stock', 'triax_680'], ['epoxy_slow', 'foam_80']],
    ['recipe b like <|>', ['sled_deck'], ['triax_680']],
    ['record <|>', ['sled_deck'], ['triax_680']],
    ['record sled_deck <|>', ['short'], ['lower']],
  ],
  'in materials, tools and the shop': [
    [inResin('<|>'), ['viscosity', 'mix', 'density', 'note'], ['family', 'roll', 'ply', 'ramp']],
    [inResin('vis<|>'), ['viscosity']],
    ['resin r {\n  family <|>\n}\n', ['epoxy', 'polyester', 'vinyl_ester'], ['triax_680', 'note']],
    [inResin('viscosity 290 <|>'), ['mPa.s', 'cP'], ['mm', 'at']],
    [inResin('viscosity 290 mPa.s <|>'), ['at'], ['by', 'mm']],
    [inResin('viscosity 290 mPa.s at 23 <|>'), ['degC', 'degF'], ['mPa.s', 'K']],
    [inResin('mix 100:31 <|>'), [], ['mm']],
    [inResin('catalyst <|>'), ['mekp_50'], ['epoxy_slow', 'triax_680']],
    [inResin('catalyst mekp_50 1.5 <|>'), ['% by weight', '% by volume'], ['mm']],
    [inResin('pot_life 110 min at 23 degC <|>'), ['for'], ['at']],
    [inResin('price 15 <|>'), ['EUR/kg', 'EUR/L'], ['EUR/m2', 'kg']],
    ['fabric f {\n  price 7 <|>\n}\n', ['EUR/m2', 'EUR/m'], ['EUR/kg']],
    ['fabric f {\n  fibre <|>\n}\n', ['e_glass'], ['triax_680', 'epoxy_slow']],
    ['fabric f {\n  layers <|>\n}\n', ['random', 'woven', 'stitched'], ['mm']],
    ['fabric f {\n  binder <|>\n}\n', ['styrene_soluble', 'powder']],
    ['consumable c {\n  kind <|>\n}\n', ['peel', 'mesh', 'bag', 'feed_line'], ['nylon_85']],
    ['shop "a" {\n  pump 15 <|>\n}\n', ['mbar', 'kPa'], ['mm']],
    ['shop "a" {\n  pump 15 mbar <|>\n}\n', ['absolute', 'gauge']],
    ['shop "a" {\n  habit <|>\n}\n', ['leak', 'pot_residue', 'sun', 'clearance'], ['triax_680']],
    ['record sled_deck 2026-05-14 {\n  out <|>\n}\n', ['carbon_pp'], ['epoxy_slow', 'triax_680']],
    ['gelcoat g {\n  <|>\n}\n', ['dark', 'family'], ['roll']],
    ['tool t {\n  flat 900 mm <|>\n}\n', ['by'], ['at']],
  ],
  'in the part': [
    ['recipe a {\n  part {\n    <|>\n  }\n}\n', ['outline', 'edge', 'zone', 'ends'], ['ply', 'corner', 'supports']],
    [
      'recipe a {\n  part {\n    outline <|>\n  }\n}\n',
      ['rectangle', 'rounded', 'circle', 'file'],
      ['corner', 'layer'],
    ],
    ['recipe a {\n  part {\n    outline rounded 900 <|>\n  }\n}\n', ['mm', 'in'], ['deg']],
    ['recipe a {\n  part {\n    outline rounded 900 mm by 500 mm <|>\n  }\n}\n', ['corner'], ['by']],
    ['recipe a {\n  part {\n    edge <|>\n  }\n}\n', ['square', 'round', 'chamfer']],
    [
      'recipe a {\n  part {\n    zone m circle 80 mm, <|>\n  }\n}\n',
      ['centred', 'clamped', 'note'],
      ['circle', 'wrap'],
    ],
  ],
  'in the stack': [
    [inStack('<|>'), ['ply', 'core', 'repeat', 'mirror', 'coat', 'note'], ['about', 'caul', 'clean', 'family']],
    [inStack('pl<|>'), ['ply']],
    [inStack('ply <|>'), [], ['triax_680', 'at', 'outer']],
    [inStack('ply x <|>'), ['triax_680', 'biax_440', 'carbon_pp'], ['foam_80', 'epoxy_slow', 'e_glass']],
    [inStack('ply x tri<|>'), ['triax_680']],
    [inStack('core x <|>'), ['foam_80'], ['triax_680', 'bond_paste']],
    [inStack('insert x <|>'), ['foam_80'], ['triax_680']],
    [inStack('coat x <|>'), ['gel_grey', 'epoxy_slow'], ['foam_80', 'mekp_50']],
    [inStack('ply x triax_680 <|>'), ['at', 'with'], ['by', 'triax_680']],
    [inStack('ply x triax_680 at <|>'), ['0 deg', '45 deg', '-45 deg', '90 deg'], ['mm']],
    [inStack('ply x triax_680 at 45 <|>'), ['deg'], ['mm']],
    [inStack('core x foam_80 20 <|>'), ['mm', 'in'], ['deg', 'kg']],
    [
      inStack('ply x triax_680 at 0 deg, <|>'),
      ['net', 'wrap', 'to', 'over', 'darts', 'turned', 'note', 'accept'],
      ['perforate', 'brush', 'groove', 'past'],
    ],
    [inStack('ply x triax_680 at 0 deg, net, <|>'), ['turned', 'note'], ['net', 'wrap', 'to']],
    [inStack('ply x triax_680 at 0 deg, <|>, turned over'), ['net'], ['turned']],
    [inStack('ply x triax_680 at 0 deg\n      , <|>'), ['net', 'wrap'], ['ply']],
    [inStack('core x foam_80 20 mm, <|>'), ['perforate', 'groove', 'depth', 'inset', 'chamfer'], ['net', 'wrap']],
    [inStack('coat x gel_grey 500 um wet, <|>'), ['brush', 'dark', 'waxed'], ['perforate']],
    [inStack('ply x triax_680, wrap <|>'), ['onto'], ['mm']],
    [inStack('ply x triax_680, wrap onto <|>'), ['body', 'outer', 'mat.2'], ['x', 'triax_680', 'mount']],
    [inStack('ply x triax_680, wrap onto body by <|>'), ['rim'], ['body']],
    [inStack('ply x triax_680, wrap onto body by 25 <|>'), ['mm'], ['deg']],
    [inStack('ply x triax_680, over <|>'), ['mount'], ['body']],
    [inStack('core x foam_80 20 mm, groove for <|>'), ['keel'], ['body', 'outer']],
    [inStack('ply x triax_680, tab 60 mm at <|>'), ['heel', 'nose'], ['mount']],
    [inStack('ply x triax_680, turned <|>'), ['over']],
    [inStack('patch x triax_680, circle 80 mm, centred at (20 <|>'), ['mm'], ['deg']],
    [inStack('patch x triax_680, circle 80 mm, centred at (20 mm from <|>'), ['heel', 'nose'], ['body']],
    [inStack('mirror about <|>'), ['outer', 'keel'], ['mount']],
    [inStack('ply x triax_680, accept <|>'), ['bag/few-pleats', 'wrap/short'], ['net']],
    [inStack('repeat 3, <|>'), ['stagger', 'turn'], ['net']],
  ],
  'in the process': [
    [
      inProcess('<|>'),
      ['clean', 'release', 'lay', 'mesh', 'infuse', 'infuse { }', 'cure { }', 'leak test', 'change'],
      ['ramp', 'breather', 'ply'],
    ],
    [inProcess('<|>', 'prepreg'), ['thaw', 'debulk', 'breather'], ['mesh', 'infuse']],
    [inProcess('peel <|>'), ['nylon_85'], ['mesh_130', 'film_50', 'triax_680']],
    [inProcess('mesh mesh_130, 40 <|>'), ['mm'], ['deg']],
    [inProcess('mesh mesh_130, 40 mm <|>'), ['short'], ['past', 'note']],
    [inProcess('mesh mesh_130, 40 mm short <|>'), ['of']],
    [inProcess('mesh mesh_130, 40 mm short of <|>'), ['edge']],
    [inProcess('bag film_50, <|>'), ['pleats', 'envelope', 'note', 'accept'], ['net', 'grid']],
    [inProcess('bag film_50, accept bag/fe<|>'), ['bag/few-pleats']],
    [inProcess('feed f2 <|>'), ['spiral_10'], ['nylon_85', 'film_50']],
    [inProcess('tint grey_paste 2 % by weight, <|>'), ['dark', 'note'], ['pleats']],
    [inProcess('lay <|>'), ['outer', 'body', 'inner', 'stack', 'rest', 'kit'], ['f1', 'triax_680']],
    [inProcess('lay body to <|>'), ['inner'], ['outer', 'body', 'stack']],
    [inProcess('lay outer with <|>'), ['epoxy_slow'], ['outer']],
    [inProcess('leak <|>'), ['test'], ['mm']],
    [inProcess('leak test 5 <|>'), ['mbar'], ['mm']],
    [inProcess('leak test 5 mbar <|>'), ['in']],
    [inProcess('leak test 5 mbar in 10 <|>'), ['min'], ['mm']],
    [inProcess('infuse {\n      <|>\n    }'), ['open', 'clamp', 'vacuum', 'hold'], ['clean', 'lay']],
    [inProcess('infuse {\n      open <|>\n    }'), ['f1', 'v1'], ['outer']],
    [inProcess('infuse {\n      clamp f1 when <|>\n    }'), ['full'], ['outer']],
    [inProcess('cure {\n      <|>\n    }'), ['ramp', 'hold', 'cool'], ['lay']],
    [inProcess('cure {\n      ramp 10 <|>\n    }'), ['K/h', 'K/min'], ['degC']],
    [inProcess('cure {\n      ramp 10 K/h <|>\n    }'), ['to']],
    [inProcess('wait until <|>'), ['tacky', 'gel', 'cool', 'hard']],
    [inProcess('drill 8 <|>'), ['holes'], ['mm']],
    [inProcess('drill 8 holes 8 mm <|>'), ['in'], ['holes']],
    [inProcess('drill 8 holes 8 mm in <|>'), ['body'], ['f1']],
    [inProcess('bond latch with epoxy_fillet, <|>'), ['at', 'fillet', 'along', 'perimeter'], ['pleats', 'grit']],
    [inProcess('bond latch with epoxy_fillet, 410 mm <|>'), ['long'], ['past', 'short']],
    [inProcess('tint grey_paste 2 % by <|>'), ['weight', 'volume'], ['mm']],
    [inProcess('tint <|>'), ['grey_paste'], ['nylon_85']],
    [inProcess('check <|>'), ['barcol', 'wet_film'], ['outer']],
    ['recipe a {\n  process <|>\n}\n', ['infusion', 'hand', 'bagged', 'prepreg'], ['epoxy_slow']],
    ['recipe a {\n  process infusion <|>\n}\n', ['with', 'at', 'like']],
    ['recipe a {\n  process infusion with <|>\n}\n', ['epoxy_slow'], ['triax_680', 'gel_grey']],
    ['recipe a {\n  process infusion like <|>\n}\n', ['sled_deck'], ['epoxy_slow']],
  ],
  'in the recipe': [
    ['recipe a {\n  <|>\n}\n', ['part', 'stack', 'process', 'expect', 'load', 'let', 'quantity'], ['ply', 'clean']],
    ['recipe a {\n  part { }\n  <|>\n}\n', ['stack', 'expect'], ['part']],
    ['recipe a {\n  stack <|>\n}\n', ['from']],
    ['recipe a {\n  stack from <|>\n}\n', ['tool', 'caul'], ['sled_tool']],
    ['recipe a {\n  stack from tool <|>\n}\n', ['sled_tool', 'glass_table'], ['triax_680']],
    ['recipe a {\n  expect <|>\n}\n', ['mass', 'sag', 'thickness', 'cost'], ['ply', '<=']],
    ['recipe a {\n  expect mass <|>\n}\n', ['<=', '>='], ['under', 'kg']],
    ['recipe a {\n  expect mass <= 2 <|>\n}\n', ['kg', 'lb'], ['mm', 'EUR']],
    ['recipe a {\n  load rider {\n  }\n  expect sag <|>\n}\n', ['under', '<=']],
    ['recipe a {\n  load rider {\n  }\n  expect sag under <|>\n}\n', ['rider']],
    ['recipe a {\n  expect fill <= 60 % <|>\n}\n', ['of'], ['by weight']],
    ['recipe a {\n  let rim = 40 mm\n  let toe = <|>\n}\n', ['rim'], ['toe']],
    ['recipe a {\n  load r {\n    <|>\n  }\n}\n', ['supports', 'weight', 'force', 'factor'], ['ply']],
    ['recipe a {\n  load r {\n    weight 95 <|>\n  }\n}\n', ['kg', 'lb'], ['N', 'mm']],
    ['recipe a {\n  load r {\n    weight 95 kg over 120 mm at <|>\n  }\n}\n', ['middle']],
    ['recipe a like sled_deck {\n  size short {\n    without <|>\n  }\n}\n', ['lower'], ['short']],
    [
      'recipe a like sled_deck {\n  size short {\n    change lower, <|>\n  }\n}\n',
      ['darts', 'net'],
      ['past', 'perforate'],
    ],
  ],
  'nowhere in comments and in words in quotes': [
    [inStack('// ply <|>'), []],
    [inStack('ply x triax_680 // <|>'), []],
    [inStack('/* ply\n  <|>\n */'), []],
    [inStack('ply x triax_680, note "up <|>"'), []],
    [inStack('ply x triax_680, note "up <|>'), []],
  ],
};

for (const [where, cases] of Object.entries(positions)) {
  describe(`completion ${where}`, () => {
    it.each(cases.map(([typed, offered, never = []]) => ({ line: lineOf(typed), typed, offered, never })))(
      '$line',
      ({ typed, offered, never }) => {
        const found = labels(typed);
        expect(found).toEqual(expect.arrayContaining([...offered]));
        for (const label of never) expect(found).not.toContain(label);
        if (offered.length === 0 && never.length === 0) expect(found).toEqual([]);
      },
    );
  });
}

function lineOf(text: string): string {
  return (
    text
      .split('\n')
      .find((line) => line.includes('<|>'))
      ?.trim() ?? ''
  );
}

describe('what a completion puts in', () => {
  it('replaces the whole word under the cursor, both sides of it', () => {
    const { text } = readMarks(inStack('ply x triax<|>_680 at 0 deg'));
    const offer = at(inStack('ply x triax<|>_680 at 0 deg')).find((one) => one.label === 'biax_440');
    expect(text.slice(offer?.start, offer?.end)).toBe('triax_680');
  });

  it('replaces a rule name with its stroke and hyphens', () => {
    const typed = inProcess('bag film_50, accept bag/few-pl<|> "flat"');
    const offer = at(typed).find((one) => one.label === 'bag/few-pleats');
    expect(readMarks(typed).text.slice(offer?.start, offer?.end)).toBe('bag/few-pl');
  });

  it('puts a space between a number and its unit', () => {
    const glued = at(inStack('core x foam_80 20<|>')).find((one) => one.label === 'mm');
    expect(glued).toMatchObject({ insert: '20 mm', filter: '20 mm' });
    const begun = at(inStack('core x foam_80 20m<|>')).find((one) => one.label === 'mm');
    expect(begun).toMatchObject({ insert: ' mm', filter: 'mm' });
    const apart = at(inStack('core x foam_80 20 m<|>')).find((one) => one.label === 'mm');
    expect(apart?.insert).toBe('mm');
  });

  it('puts in whole blocks with places to fill', () => {
    const infuse = at(inProcess('inf<|>')).find((one) => one.label === 'infuse { }');
    expect(infuse).toMatchObject({ snippet: true, filter: 'infuse' });
    expect(infuse?.insert).toContain('clamp ${1:f1} when full');
    expect(at('<|>').find((one) => one.label === 'recipe')?.insert).toMatch(/^recipe \$\{1:name\}/);
  });

  it('offers the materials of the shop before those of stock, with their weight', () => {
    const offers = at(inStack('ply x <|>'));
    expect(offers.map((offer) => [offer.label, offer.detail])).toEqual([
      ['triax_680', '680 g/m2'],
      ['biax_440', '440 g/m2 · stock'],
      ['carbon_pp', 'prepreg · stock'],
    ]);
  });

  it('finds its block where a brace is missing above', () => {
    const text = 'recipe a {\n  stack {\n    ply outer triax_680\n\n  process hand {\n    <|>\n  }\n}\n';
    expect(labels(text)).toContain('lay');
    const stack = 'recipe a {\n  stack {\n    ply outer triax_680\n    <|>\n\n  process hand {\n  }\n}\n';
    expect(labels(stack)).toContain('ply');
  });

  it('answers at every place of every broken text, with ranges around the cursor and each label once', () => {
    const edit = fc.record({
      at: fc.nat(sample.length),
      cut: fc.nat(30),
      put: fc.constantFrom('', ' ', ', ', '{', '}', '"', '(', '12', '\n', '/'),
    });
    fc.assert(
      fc.property(edit, ({ at: offset, cut, put }) => {
        const text = sample.slice(0, offset) + put + sample.slice(offset + cut);
        const cursor = offset + put.length;
        const offers = completionsAt(text, cursor, book);
        expect(new Set(offers.map((offer) => offer.label)).size).toBe(offers.length);
        for (const offer of offers) {
          expect(offer.start).toBeLessThanOrEqual(cursor);
          expect(offer.end).toBeGreaterThanOrEqual(cursor);
          expect(text.slice(offer.start, offer.end)).not.toMatch(/[\r\n]/);
        }
      }),
      { numRuns: 300 },
    );
  });
});
