import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DocumentSymbol } from 'vscode-languageserver-protocol';
import type { Book } from '../../../language/grammar/generated/ast.ts';
import { type OutlineSymbol, outlineOf } from '../../../language/view/symbols.ts';
import { parsed, viewServices } from './parsed.ts';

const services = viewServices();
const sample = readFileSync(new URL('../notation-sample.layup', import.meta.url), 'utf8');
const outline = (text: string): OutlineSymbol[] => outlineOf(parsed(services, text).parseResult.value as Book);

/** One line a symbol, indented by its depth. */
function drawn(symbols: readonly OutlineSymbol[], depth = 0): string[] {
  return symbols.flatMap((symbol) => [
    `${'  '.repeat(depth)}${symbol.name}${symbol.detail === '' ? '' : ` <${symbol.detail}>`}`,
    ...drawn(symbol.children, depth + 1),
  ]);
}

describe('the outline of a file', () => {
  it('shows entries, and in a recipe what it is built of', () => {
    expect(drawn(outline(sample))).toMatchInlineSnapshot(`
      [
        "Hollow Tarn Workshop <shop>",
        "triax_680 <fabric Stitched triaxial E-glass>",
        "mat_300 <fabric Chopped strand mat>",
        "biax_440 <fabric like stock>",
        "epoxy_slow <resin Infusion epoxy, slow hardener>",
        "polyester_ortho <resin Orthophthalic polyester, accelerated>",
        "foam_80 <core Closed-cell foam, 80 kg/m3>",
        "spiral_10 <consumable Spiral tube, 10 mm>",
        "sled_tool <tool>",
        "sled_deck <recipe Rescue sled deck>",
        "  landing <= 25 mm>",
        "  part",
        "    outline <rounded 1180 mm by 420 mm corner 140 mm>",
        "    mount <zone rounded 260 mm by 180 mm corner 40 mm>",
        "  stack <sled_tool>",
        "    outer <ply triax_680>",
        "    keel <strip uni_c300>",
        "    body <core foam_80>",
        "    bolts <insert birch_ply>",
        "    pad <patch biax_440>",
        "    inner <ply triax_680>",
        "  process <infusion with epoxy_slow>",
        "    clean sled_tool",
        "    release semi_permanent",
        "    tape sealant_12",
        "    kit",
        "      tack spray_tack 8 g/m2",
        "      lay outer to body",
        "    lay kit",
        "    lay rest",
        "    peel nylon_85",
        "    mesh mesh_130",
        "    f1 <feed spiral_10>",
        "    v1 <vent spiral_10>",
        "    trap",
        "    bag film_50",
        "    leak test 5 mbar in 10 min",
        "    check "No bridging at the edge, mesh nowhere over the tape."",
        "    tint grey_paste 2 % by weight",
        "    infuse",
        "      open f1",
        "      clamp f1 when full",
        "      vacuum 50 mbar absolute until gel",
        "    cure",
        "      hold 24 h at 23 degC",
        "      ramp 10 K/h to 50 degC",
        "      hold 8 h at 50 degC",
        "    demould",
        "    trim flash",
        "    drill 8 holes 8 mm in bolts",
        "    weigh",
        "  rider <load>",
        "  expect mass <= 2.3 kg",
        "  expect sag under rider <= 12 mm",
        "  expect margin under rider >= 0",
        "  expect thickness at middle 20.8 mm to 21.5 mm",
        "  expect fill <= 60 % of gel",
        "  expect material <= 75 EUR",
        "  expect cost <= 290 EUR",
        "  short <size>",
        "sled_deck short 2026-05-14 <record no. 31>",
      ]
    `);
  });

  it('ends a symbol with its last word, not on the empty line behind it', () => {
    const [a, b] = outline('fabric a {\n  fibre x\n}   // done\n\n\nfabric b {}\n');
    expect(a?.range).toEqual({ start: { line: 0, character: 0 }, end: { line: 2, character: 1 } });
    expect(a?.selection).toEqual({ start: { line: 0, character: 7 }, end: { line: 0, character: 8 } });
    expect(b?.range.start.line).toBe(5);
  });

  it('names half-typed lines by what is there', () => {
    const text =
      'recipe {\n  part {\n    zone\n    outline\n  }\n  stack {\n    ply\n    core body\n    repeat {\n    }\n  }\n  process {\n    feed\n    lay\n  }\n  expect\n  size {\n  }\n}\nfabric {\n}\n';
    expect(drawn(outline(text))).toMatchInlineSnapshot(`
      [
        "recipe <recipe>",
        "  part",
        "    zone <zone>",
        "    outline",
        "  stack",
        "    ply <ply>",
        "    body <core>",
        "    repeat",
        "  process",
        "    feed <feed>",
        "    lay",
        "  expect",
        "  size <size>",
        "fabric <fabric>",
      ]
    `);
  });

  it('has a name for every line and every range within the one around it, however the text is broken', () => {
    const check = (symbols: readonly DocumentSymbol[]): void => {
      for (const { name, range, selectionRange, children = [] } of symbols) {
        expect(name).not.toBe('');
        for (const inner of [selectionRange, ...children.map((child) => child.range)]) {
          expect([range.start.line, inner.start.line, inner.end.line, range.end.line]).toEqual(
            [range.start.line, inner.start.line, inner.end.line, range.end.line].toSorted((a, b) => a - b),
          );
          if (inner.end.line === range.end.line) expect(inner.end.character).toBeLessThanOrEqual(range.end.character);
          if (inner.start.line === range.start.line)
            expect(inner.start.character).toBeGreaterThanOrEqual(range.start.character);
        }
        check(children);
      }
    };
    const cut = fc.record({
      at: fc.nat(sample.length),
      length: fc.nat(40),
      put: fc.constantFrom('', '\n', '{', '}', ' ply ', '"', ','),
    });
    fc.assert(
      fc.property(cut, ({ at, length, put }) => {
        const document = parsed(services, sample.slice(0, at) + put + sample.slice(at + length));
        const params = { textDocument: { uri: document.uri.toString() } };
        check(services.lsp.DocumentSymbolProvider?.getSymbols(document, params) as DocumentSymbol[]);
      }),
      { numRuns: 60 },
    );
  });
});
