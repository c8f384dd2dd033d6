import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { URI } from 'langium';
import { afterEach, describe, expect, it } from 'vitest';
import type { CompletionList, Hover, InlayHint } from 'vscode-languageserver-protocol';
import { counters } from '../../calc/figure/index.ts';
import { drawingFile, isDrawingPath, liesIn } from '../../language/book/drawing-files.ts';
import { drawingCounters } from '../../language/book/drawings.ts';
import { entities, header, mm, pairs, sled } from '../calc/read-drawing/dxf-pairs.ts';
import { type MemoryServer, startMemoryServer } from '../harness/memory-server.ts';
import { sampleFiles } from '../harness/sample.ts';
import { folderOf, laybook } from '../harness/terminal.ts';

/*
 * A recipe whose outline lies in a drawing: spoken to over the protocol, and from the terminal. A drawing that changes is read again,
 * and computes again what hangs on it.
 */
const svg = (width: number, content = `<rect id="deck" width="${width}" height="420" rx="140"/>`) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="2000mm" height="500mm" viewBox="0 0 2000 500">
<g id="cut">${content}</g>
<g id="holes"><circle id="hole" cx="300" cy="210" r="30"/></g>
</svg>`;

const recipe = (shape: string, name = 'deck') => `recipe ${name} "Deck" {
  part {
    outline ${shape}
  }
  stack from tool bench {
    ply outer biax_440 at 0 deg, net
  }
}
`;
const book = `notation 1
shop "Hollow Tarn Workshop" {
  currency EUR
}
tool bench {
  flat 3 m by 1 m
}
`;

let server: MemoryServer | undefined;
afterEach(() => {
  server?.stop();
  server = undefined;
});

const typed = recipe('file "drawings/deck.svg" layer cut');
const start = async (files: Readonly<Record<string, string>>): Promise<MemoryServer> => {
  server = await startMemoryServer({ 'shop.layup': book, ...files });
  return server;
};
const documentOf = (on: MemoryServer) => ({ textDocument: { uri: on.uriOf('deck.layup') } });
const told = (on: MemoryServer) =>
  (on.diagnostics.get('deck.layup') ?? [])
    .filter(({ code }) => String(code).startsWith('outline/'))
    .map(({ code, message }) => `${code}: ${message}`);

async function hints(on: MemoryServer): Promise<string[]> {
  const range = { start: { line: 0, character: 0 }, end: { line: 30, character: 0 } };
  const found = await on.client.sendRequest<InlayHint[]>('textDocument/inlayHint', { ...documentOf(on), range });
  return found.map(
    ({ label, position }) =>
      `${position.line} ${typeof label === 'string' ? label : label.map(({ value }) => value).join('')}`,
  );
}

async function write(on: MemoryServer, name: string, text: string): Promise<void> {
  on.write(name, text);
  await on.client.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: on.uriOf(name), type: 2 }] });
  await on.settled();
  await on.settled();
}

describe('an outline in a drawing', () => {
  it('shows its size beside the line and in a hover, and offers its layers', async () => {
    const on = await start({ 'deck.layup': typed, 'drawings/deck.svg': svg(1180) });
    await on.open('deck.layup', typed);
    await on.settled();
    expect(told(on)).toEqual([]);
    expect((await hints(on))[0]).toMatch(/^2 1180 mm by 420 mm/);
    const hover = await on.client.sendRequest<Hover>('textDocument/hover', {
      ...documentOf(on),
      position: { line: 2, character: 22 },
    });
    const { value } = hover.contents as { readonly value: string };
    expect(value).toContain('1180 mm by 420 mm');
    expect(value).toContain('Layers: cut, holes.');
    expect(value).toContain('One unit of the drawing is mm.');
    const offered = await on.client.sendRequest<CompletionList>('textDocument/completion', {
      ...documentOf(on),
      position: { line: 2, character: '    outline file "drawings/deck.svg" layer '.length },
    });
    expect(offered.items.map(({ label }) => label)).toEqual(['cut', 'holes']);
  });

  it('is read again when it changes, and computes again what it reaches and nothing else', async () => {
    const other = recipe('rectangle 900 mm by 300 mm', 'lid');
    const on = await start({ 'deck.layup': typed, 'lid.layup': other, 'drawings/deck.svg': svg(1180) });
    await on.open('deck.layup', typed);
    await on.open('lid.layup', other);
    await on.settled();
    expect((await hints(on))[0]).toMatch(/^2 1180 mm by 420 mm/);
    await on.settled();
    const before = { ...counters, ...drawingCounters };
    // The same content again: nothing is read anew, no figure is computed.
    await write(on, 'drawings/deck.svg', svg(1180));
    expect((await hints(on))[0]).toMatch(/^2 1180 mm by 420 mm/);
    expect(drawingCounters.read).toBe(before.read);
    expect(counters.computed).toBe(before.computed);
    await write(on, 'drawings/deck.svg', svg(980));
    expect((await hints(on))[0]).toMatch(/^2 980 mm by 420 mm/);
    expect(drawingCounters.read).toBe(before.read + 1);
    expect(counters.computed).toBeGreaterThan(before.computed);
    await write(on, 'drawings/deck.svg', svg(980, '<path d="M 0 0 H 980 V 420 H 0 V 4"/>'));
    expect(told(on)[0]).toBe(
      'outline/open: drawings/deck.svg: the curve is open by 4 mm: it begins at (0 mm, 0 mm) and ends at (0 mm, 4 mm) of the drawing',
    );
  });

  it('that is not there is told, and found once it is', async () => {
    const on = await start({ 'deck.layup': typed });
    await on.open('deck.layup', typed);
    await on.settled();
    expect(told(on)).toEqual(['outline/file-missing: drawings/deck.svg: there is no such file beside the recipe']);
    await write(on, 'drawings/deck.svg', svg(1180));
    expect(told(on)).toEqual([]);
    expect((await hints(on))[0]).toMatch(/^2 1180 mm by 420 mm/);
  });

  it('has its cutouts where they are drawn', async () => {
    const text = typed.replace('layer cut', 'layer cut\n    cutout file "drawings/deck.svg" layer holes');
    const on = await start({ 'deck.layup': text, 'drawings/deck.svg': svg(1180) });
    await on.open('deck.layup', text);
    await on.settled();
    expect(told(on)).toEqual([]);
    // Drawn over the edge it is told; it lies where the drawing has it, not in the middle of the part.
    await write(on, 'drawings/deck.svg', svg(1180).replace('cx="300"', 'cx="1170"'));
    expect(told(on)[0]).toMatch(/^outline\/cutout-outside: this cutout stands 20 mm out/);
  });
});

/** All numbers of a report by their way in it, but where in the text something stands. */
function numbersOf(report: unknown, way = '', found = new Map<string, number>()): Map<string, number> {
  if (typeof report === 'number') found.set(way, report);
  else if (typeof report === 'object' && report !== null)
    for (const [key, value] of Object.entries(report)) if (key !== 'range') numbersOf(value, `${way}/${key}`, found);
  return found;
}

describe('a drawn outline', () => {
  const quarter = Math.tan(Math.PI / 8);
  const dxf = [
    [0, 'SECTION', 2, 'HEADER', 9, '$INSUNITS', 70, 4, 0, 'ENDSEC'],
    [0, 'SECTION', 2, 'ENTITIES', 0, 'LWPOLYLINE', 8, 'cut', 90, 8, 70, 1],
    [10, 140, 20, 0, 10, 1040, 20, 0, 42, quarter, 10, 1180, 20, 140, 10, 1180, 20, 280, 42, quarter],
    [10, 1040, 20, 420, 10, 140, 20, 420, 42, quarter, 10, 0, 20, 280, 10, 0, 20, 140, 42, quarter],
    [0, 'ENDSEC', 0, 'EOF'],
  ]
    .flat()
    .join('\n');
  const round = 'H 1040 A 140 140 0 0 1 1180 140 V 280 A 140 140 0 0 1 1040 420 H 140 A 140 140 0 0 1 0 280 V 140';
  const parametric = 'rounded 1180 mm by 420 mm corner 140 mm';
  const outlines: readonly (readonly [string, Readonly<Record<string, string>>])[] = [
    ['file "drawings/deck.svg" id deck', { 'drawings/deck.svg': svg(1180) }],
    ['file "drawings/deck.dxf" layer cut', { 'drawings/deck.dxf': dxf }],
    [`path "M 140 0 ${round} A 140 140 0 0 1 140 0 Z"`, {}],
  ];
  const reported = async (files: Readonly<Record<string, string>>) => {
    const { folder, dispose } = folderOf(files);
    try {
      return numbersOf(JSON.parse((await laybook(folder, 'report', 'sled_deck', '--format', 'json')).out));
    } finally {
      dispose();
    }
  };

  it('has the figures of the parametric one: every number of the report, to a millionth', async () => {
    const text = sampleFiles['sled_deck.layup'] ?? '';
    expect(text).toContain(parametric);
    const typedIn = await reported(sampleFiles);
    expect(typedIn.size).toBeGreaterThan(200);
    for (const [outline, drawings] of outlines) {
      const drawn = await reported({
        ...sampleFiles,
        ...drawings,
        'sled_deck.layup': text.replace(parametric, outline),
      });
      const apart = [...typedIn].filter(
        ([way, value]) => !(Math.abs((drawn.get(way) ?? Number.NaN) - value) <= 1e-6 * Math.abs(value)),
      );
      expect(apart, outline).toEqual([]);
    }
  }, 60_000);
});

describe('a path to a drawing', () => {
  it('is relative, in plain words, and names no device', () => {
    for (const file of [
      'deck.svg',
      'drawings/deck.svg',
      './deck.dxf',
      '../drawings/deck.svg',
      'drawings\\deck.svg',
      'Zeichnung ä.svg',
    ])
      expect(isDrawingPath(file), file).toBe(true);
    for (const file of [
      '',
      '/etc/x.svg',
      '\\\\host\\share\\x.svg',
      '//host/x.svg',
      'C:\\x.svg',
      'c:x.svg',
      'file:///x.svg',
      '%2e%2e/x.svg',
      'x\0.svg',
      'con.svg',
      'a/NUL.svg',
      'com1.dxf',
      '~/x.svg',
      `${'a'.repeat(600)}.svg`,
    ])
      expect(isDrawingPath(file), file).toBe(false);
    const at = (file: string) => drawingFile(URI.parse('file:///book/recipes/deck.layup'), file);
    expect(at('../drawings/x.svg')?.toString()).toBe('file:///book/drawings/x.svg');
    expect(liesIn(URI.parse('file:///book'), URI.parse('file:///book-of-others/x.svg'))).toBe(false);
    expect(liesIn(URI.parse('file:///book'), at('../../secret/x.svg') ?? URI.parse('file:///book/x'))).toBe(false);
    expect(at('notes.txt')).toBeUndefined();
  });

  it('is followed from the terminal, and never out of the folder, wherever links lead', async () => {
    const home = mkdtempSync(path.join(tmpdir(), 'drawings-'));
    try {
      const folder = path.join(home, 'book');
      mkdirSync(path.join(folder, 'recipes'), { recursive: true });
      mkdirSync(path.join(folder, 'drawings'));
      mkdirSync(path.join(home, 'elsewhere'));
      writeFileSync(path.join(folder, 'shop.layup'), book);
      writeFileSync(path.join(folder, 'drawings', 'deck.svg'), svg(1180));
      writeFileSync(path.join(home, 'elsewhere', 'secret.svg'), svg(700));
      symlinkSync(path.join(home, 'elsewhere', 'secret.svg'), path.join(folder, 'drawings', 'link.svg'));
      symlinkSync(path.join(home, 'elsewhere'), path.join(folder, 'linked'));
      const check = async (file: string) => {
        writeFileSync(path.join(folder, 'recipes', 'deck.layup'), recipe(`file "${file}" layer cut`));
        const { out } = await laybook(folder, 'check', '.', '--format', 'json');
        return (JSON.parse(out).findings as { rule: string; message: string }[])
          .filter(({ rule }) => rule.startsWith('outline/'))
          .map(({ message }) => message);
      };
      expect(await check('../drawings/deck.svg')).toEqual([]);
      const outside = (file: string) => [`${file}: the drawing lies outside of the workspace folder`];
      for (const file of ['../drawings/link.svg', '../linked/secret.svg', '../../elsewhere/secret.svg'])
        expect(await check(file), file).toEqual(outside(file));
    } finally {
      rmSync(home, { recursive: true });
    }
  }, 60_000);

  it('that leads to an odd file is told clearly by every command, and crashes none', async () => {
    const utf16 = Buffer.from(`\uFEFF${svg(1180)}`, 'utf16le');
    const notUtf8 = 'the file is no text in UTF-8, but UTF-16 or no text at all: save it as UTF-8';
    const cases: readonly (readonly [string, string | Uint8Array | undefined, string | undefined])[] = [
      ['bom.svg', `\uFEFF${svg(1180)}`, undefined],
      // a byte that is no UTF-8 stands in a name that is not asked for
      ['latin1.svg', Buffer.from(svg(1180).replace('"holes"', '"Löcher"'), 'latin1'), undefined],
      ['little.svg', utf16, notUtf8],
      ['big.svg', Buffer.from(utf16).swap16(), notUtf8],
      ['bare.dxf', Buffer.from('0\nSECTION\n', 'utf16le'), notUtf8],
      ['empty.svg', '', 'the file is empty'],
      ['empty.dxf', '\r\n', 'the file is empty'],
      ['folder.svg', undefined, 'that is no file; is it a folder?'],
      [
        'long.svg',
        `${svg(1180)}<!--${'x'.repeat(20e6)}-->`,
        'the drawing is larger than 10 MB; leave the outline in it only',
      ],
      ['long.dxf', ' '.repeat(20e6 + 9), 'the drawing is larger than 20 MB; leave the outline in it only'],
      // as many characters as are read, but more bytes
      [
        'umlaut.dxf',
        `${pairs(999, 'ü')}${mm}${entities(...sled)}`.padEnd(20e6, '\r\n'),
        'the drawing is larger than 20 MB; leave the outline in it only',
      ],
    ];
    for (const [file, content, message] of cases) {
      const { folder, dispose } = folderOf({
        'shop.layup': book,
        'deck.layup': recipe(`file "${file}" layer cut`),
        ...(content === undefined ? { [`${file}/note.txt`]: '' } : { [file]: content }),
      });
      try {
        const { out, err } = await laybook(folder, 'check', '.', '--format', 'json');
        const messages = (JSON.parse(out).findings as { rule: string; message: string }[])
          .filter(({ rule }) => rule.startsWith('outline/file-m'))
          .map((finding) => finding.message);
        expect(err, file).toBe('');
        expect(messages, file).toEqual(message === undefined ? [] : [`${file}: ${message}`]);
        for (const command of [
          ['report', 'deck'],
          ['cut', 'deck', '--out', 'cut'],
        ])
          expect((await laybook(folder, ...command)).code, `${command[0]} ${file}`).toBeLessThan(3);
      } finally {
        dispose();
      }
    }
  }, 120_000);

  it('is read in the code page that it says, and by the letters that its page has not', async () => {
    const rounded = sled.map((each) => (each === 'Cut' ? 'Außenmaß' : each));
    const said = (page: string) => header(9, '$DWGCODEPAGE', 3, page, 9, '$INSUNITS', 70, 4);
    // ISO 8859-1 and windows-1252 have the German letters at the same places, windows-1250 too; Polish ones only windows-1250
    const polish = Buffer.from(`${said('ANSI_1250')}${entities(...sled)}`.replaceAll('Cut', 'Kraw?d?'), 'latin1');
    for (let at = polish.indexOf('Kraw?d?'); at >= 0; at = polish.indexOf('Kraw?d?', at + 1))
      polish.set([0xea, 0x64, 0x9f], at + 4);
    const svgOf = `<?xml version="1.0" encoding="ISO-8859-1"?>\n${svg(1180).replace('id="cut"', 'id="Außenmaß"')}`;
    const files: Readonly<Record<string, readonly [string | Uint8Array, string]>> = {
      'utf8.dxf': [`${said('ANSI_1252')}${entities(...rounded)}`, 'Außenmaß'],
      'latin1.dxf': [Buffer.from(`${said('ANSI_1252')}${entities(...rounded)}`, 'latin1'), 'Außenmaß'],
      'none.dxf': [Buffer.from(`${mm}${entities(...rounded)}`, 'latin1'), 'Außenmaß'],
      'unknown.dxf': [Buffer.from(`${said('DOS_X')}${entities(...rounded)}`, 'latin1'), 'Außenmaß'],
      'polish.dxf': [polish, 'Krawędź'],
      'escaped.dxf': [`${mm}${entities(...rounded)}`.replaceAll('ß', '\\U+00DF'), 'Außenmaß'],
      'latin1.svg': [Buffer.from(svgOf, 'latin1'), 'Außenmaß'],
    };
    for (const [file, [content, layer]] of Object.entries(files)) {
      const { folder, dispose } = folderOf({
        'shop.layup': book,
        'deck.layup': recipe(`file "${file}" layer "${layer}"`),
        [file]: content,
      });
      try {
        const { out, err } = await laybook(folder, 'check', '.', '--format', 'json');
        expect(err, file).toBe('');
        const messages = (JSON.parse(out).findings as { rule: string; message: string }[]).filter(({ rule }) =>
          rule.startsWith('outline/'),
        );
        expect(messages, file).toEqual([]);
      } finally {
        dispose();
      }
    }
  });
});
