/** Style sheets in drawings. The order in which rules hold: Cascading Style Sheets 2.1, sections 4.1, 5.8 and 6.4. */
import { describe, expect, it } from 'vitest';
import { limits } from '../../../calc/read-drawing/limits.ts';
import { readSvg } from '../../../calc/read-drawing/svg/read-svg.ts';
import { problemsOf } from './said.ts';

const drawn = (sheet: string, content: string, more = '') =>
  readSvg(
    `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="50mm" viewBox="0 0 100 50"><style${more}>${sheet}</style>${content}</svg>`,
  );
const shown = (sheet: string, content: string, more = '') =>
  drawn(sheet, content, more).curves.map(({ id, hidden }) => (hidden ? `(${id})` : id));

const circle = (id: string, more: string) => `<circle id="${id}" r="5" ${more}/>`;

describe('a style sheet in a drawing', () => {
  it('hides what has its class, alone or in a group, and what is copied from there', () => {
    const content = `${circle('a', 'class="st0"')}${circle('b', 'class="st1 st2"')}${circle('c', 'class="st3"')}
      <g class="st0">${circle('d', '')}</g><use id="e" href="#a"/>${circle('f', '')}`;
    expect(shown('.st0{fill:none;display:none;} .st2 { VISIBILITY : hidden !important }', content)).toEqual(['c', 'f']);
    expect(shown('<![CDATA[.st0,\n .st3{display:none}]]>', content)).toEqual(['b', 'f']);
    expect(shown('.st0 { fill: red }', content)).toEqual(
      ['a', 'b', 'c', 'd', 'a', 'f'].map((id, i) => (i === 4 ? 'e' : id)),
    );
  });

  it('yields to the style of the element, to later rules and to those that name the element too; attributes yield to it', () => {
    const one = (sheet: string, more: string) => shown(sheet, circle('a', more)).length === 1;
    expect(one('.a{display:none}', 'class="a" style="display:inline"')).toBe(true);
    expect(one('.a{display:inline}', 'class="a" display="none"')).toBe(true);
    expect(one('.a{display:inline}', 'class="a" style="display:none"')).toBe(false);
    expect(one('.a{display:none} .a{display:inline}', 'class="a"')).toBe(true);
    expect(one('.b{display:inline} .a{display:none}', 'class="a b"')).toBe(false);
    expect(one('circle.a{display:inline} .a{display:none}', 'class="a"')).toBe(true);
    expect(one('rect.a{display:none}', 'class="a"')).toBe(true);
  });

  it('passes by comments, what holds for print alone, and selectors of more than a class', () => {
    const one = (sheet: string, more = '') => shown(sheet, circle('a', 'class="a"'), more).length === 1;
    expect(one('/* .a{display:none} */')).toBe(true);
    expect(one('@media print { .a{display:none} }')).toBe(true);
    expect(one('@media print { .b{fill:red} .c{} } .a{display:none}')).toBe(false);
    expect(one('@import "x.css"; .a{display:none}')).toBe(false);
    expect(one('.a{display:none}', ' media="print"')).toBe(true);
    expect(one('.a{display:none}', ' type="text/css" media="screen"')).toBe(false);
    expect(one('g .a, .a.b, .a:hover, .a > circle {display:none}')).toBe(true);
  });

  it('takes a hidden layer only where it is named', () => {
    expect(shown('.off{display:none}', `<g id="Old" class="off">${circle('a', '')}</g>${circle('b', '')}`)).toEqual([
      '(a)',
      'b',
    ]);
  });

  it('is read in bounded time, however it is broken', () => {
    const long = Math.floor(limits.svgText / 20);
    for (const sheet of ['/*', '{', '}', '.a{', '@media{', '.a,', 'display:none;', '.a{display:none}', ';;;'])
      expect(problemsOf(drawn(sheet.repeat(long / sheet.length), circle('a', '')))).toEqual([]);
    const many = Array.from({ length: 20_000 }, (_, i) => `.c${i}{display:none}`).join('');
    const classes = Array.from({ length: 20_000 }, (_, i) => `c${i}`).join(' ');
    expect(shown(many, circle('a', `class="${classes}"`))).toEqual([]);
  }, 60_000);
});
