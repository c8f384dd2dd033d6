import { describe, expect, it } from 'vitest';
import { hoverAt } from '../../../language/view/hover/index.ts';
import { code, plain } from '../../../language/view/hover/markdown.ts';
import { words } from '../../../language/words/index.ts';
import { readMarks } from '../../harness/marks.ts';
import { parsed, viewServices } from './parsed.ts';

const services = viewServices();

function hover(text: string): { readonly markdown: string; readonly about: string } | undefined {
  const {
    text: whole,
    cursors: [offset = 0],
  } = readMarks(text);
  const found = hoverAt(parsed(services, whole), offset);
  return found && { markdown: found.markdown, about: whole.slice(found.start, found.end) };
}
const meaning = (word: string, place: string): string => {
  const row = words.find((one) => one.word === word && (one.at as readonly string[]).includes(place));
  if (row === undefined) throw new Error(`${word} is not in the table at ${place}`);
  return row.meaning;
};
const inStack = (line: string): string => `recipe a {\n  stack from tool t {\n    ${line}\n  }\n}\n`;
const inProcess = (line: string): string => `recipe a {\n  process infusion with r {\n    ${line}\n  }\n}\n`;

describe('hover of a word says what it means in its place', () => {
  it.each([
    ['<|>recipe a {\n}\n', 'recipe', 'book'],
    ['resin r {\n  visc<|>osity 290 mPa.s at 23 degC\n}\n', 'viscosity', 'resin'],
    ['resin r {\n  family ep<|>oxy\n}\n', 'epoxy', 'value of family'],
    ['consumable c {\n  kind pe<|>el\n}\n', 'peel', 'value of kind'],
    ['recipe a {\n  st<|>ack {\n  }\n}\n', 'stack', 'recipe'],
    ['recipe a {\n  part {\n    edge ro<|>und 8 mm\n  }\n}\n', 'round', 'value of edge'],
    ['recipe a {\n  part {\n    outline roun<|>ded 8 mm by 4 mm\n  }\n}\n', 'rounded', 'value of outline'],
    [inStack('pl<|>y x y at 0 deg'), 'ply', 'stack'],
    [inStack('ply x y at 0 deg, wr<|>ap onto b by 2 mm'), 'wrap', 'clause of ply'],
    [inStack('core x y 20 mm, perf<|>orate 2 mm every 40 mm'), 'perforate', 'clause of core'],
    [inStack('core x y 20 mm, perforate 2 mm ev<|>ery 40 mm'), 'every', 'clause of core'],
    [inStack('ply x y at 0 deg, no<|>te "z"'), 'note', 'anywhere'],
    [inStack('coat x y 500 um wet, 2 coa<|>ts'), 'coats', 'clause of coat'],
    [inProcess('rel<|>ease wax'), 'release', 'process'],
    [inProcess('le<|>ak test 5 mbar in 10 min'), 'leak test', 'process'],
    [inProcess('leak te<|>st 5 mbar in 10 min'), 'leak test', 'process'],
    [inProcess('mesh m, 40 mm sho<|>rt of edge'), 'short', 'clause of step'],
    [inProcess('wait until ta<|>cky'), 'tacky', 'value of until'],
    [inProcess('infuse {\n      cl<|>amp f1 when full\n    }'), 'clamp', 'infuse'],
    [inProcess('infuse {\n      clamp f1 when fu<|>ll\n    }'), 'full', 'value of when'],
    [`recipe a {\n  let net = 4 mm\n  process hand {\n    trim n<|>et\n  }\n}\n`, 'net', 'value of trim'],
    ['recipe a {\n  expect sa<|>g under r <= 3 mm\n}\n', 'sag', 'value of expect'],
    ['recipe a {\n  load r {\n    fac<|>tor 3\n  }\n}\n', 'factor', 'load'],
    ['record a 2026-05-14 {\n  am<|>bient 19 degC\n}\n', 'ambient', 'record'],
  ])('%s', (text, word, place) => {
    const found = hover(text);
    expect(found?.markdown).toContain(meaning(word, place));
    expect(found?.markdown).toContain(`**${word}**`);
    expect(found?.markdown).toContain('```layup');
  });

  it('tells what a word takes and what stands for nothing typed', () => {
    expect(hover(inStack('core x y 20 mm, perf<|>orate 2 mm'))?.markdown).toMatch(
      /^\*\*perforate\*\* a length, `every` a length\n\n.*\n\nNothing typed: 2 mm every 40 mm\./,
    );
    expect(hover(inProcess('lay<|> a to b'))?.markdown).toMatch(
      /^\*\*lay\*\* the name of a layer or `stack` \| `rest` \| `kit`, \[`to`/,
    );
  });

  it.each([
    [inStack('ply cor<|>e y at 0 deg')],
    [inStack('ply x resi<|>n at 0 deg')],
    [inStack('ply x y at 0 deg, wrap onto cor<|>e')],
    [inProcess('lay st<|>rip to rest')],
    ['fabric co<|>re {\n}\n'],
    ['fabric x {\n  fibre res<|>in\n}\n'],
    ['// pl<|>y\n'],
    [inStack('ply x y, note "co<|>re"')],
    [inStack('ply x y at 0 deg   <|>   ')],
  ])('and says nothing of a name, a comment or words in quotes: %s', (text) => {
    expect(hover(text)).toBeUndefined();
  });
});

describe('hover of a quantity shows the other unit system', () => {
  // 1 oz/yd2 = 33.905 75 g/m2, 1 in = 25.4 mm, 1 lb = 0.453 592 37 kg (NIST SP 811, appendix B.8)
  it.each([
    ['fabric f {\n  layers random 6<|>80 g/m2\n}\n', '680 g/m2', '20.1 oz/yd2'],
    ['fabric f {\n  layers random 20 oz<|>/yd2\n}\n', '20 oz/yd2', '678 g/m2'],
    [inStack('core x y 12.7 m<|>m'), '12.7 mm', '0.5 in'],
    [inStack('core x y 1 i<|>n'), '1 in', '25.4 mm'],
    ['resin r {\n  gel 4 h at 2<|>3 degC\n}\n', '23 degC', '73.4 degF'],
    ['recipe a {\n  let m = 1<|>0 kg\n}\n', '10 kg', '22.05 lb'],
  ])('%s', (text, about, other) => {
    const found = hover(text);
    expect(found?.about).toBe(about);
    expect(found?.markdown).toContain(`**${other}**`);
  });

  it('and nothing where both systems have the same unit', () => {
    expect(hover(inStack('ply x y at 4<|>5 deg'))).toBeUndefined();
    expect(hover(inStack('repeat <|>3 {\n}'))).toBeUndefined();
  });
});

describe('words of a file on a page', () => {
  it('are shown as typed: no mark or control character means anything', () => {
    const typed = '# a *b* [c](http://d) <e> `f`\u202e\n- g';
    expect(plain(typed)).toBe('\\# a \\*b\\* \\[c\\](http://d) &lt;e\\> \\`f\\` - g');
    expect(code('a`b\nc')).toBe("`a'b c`");
  });
});
