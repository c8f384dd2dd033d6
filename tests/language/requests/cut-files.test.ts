/** Request `laybook/cutFiles`: what the editor is handed to write. */
import { describe, expect, it } from 'vitest';
import { madeByLaybook } from '../../../language/export/made-by.ts';
import { type CutFilesParams, type CutFilesResult, cutFilesRequest } from '../../../language/protocol/cut-files.ts';
import { startMemoryServer } from '../../harness/memory-server.ts';
import { startServer } from '../../harness/server.ts';
import { areaOfPath, readSvg } from '../export/read-back.ts';
import { readPdf } from '../export/read-pdf.ts';

const recipe = `recipe tray "Tray" {
  part {
    outline rounded 400 mm by 300 mm corner 50 mm
  }
  stack from tool board {
    ply skin biax_440 at 45 deg, net
  }
  size small {
    outline rounded 200 mm by 100 mm corner 20 mm
  }
}
tool board {
  flat 600 mm by 600 mm
}
fabric biax_440 {
  fibre e_glass
  layers stitched 45 deg 220 g/m2, -45 deg 220 g/m2
  roll 1270 mm by 50 m
}
`;

const order = { recipe: 'tray', format: 'svg', by: 'piece', paper: 'a4', quantity: 2 } as const;

describe('laybook/cutFiles', () => {
  it('hands out a file a piece, for the size that is asked for', async () => {
    const server = await startMemoryServer({ 'tray.layup': recipe });
    const ask = (more: Partial<CutFilesParams> = {}): Promise<CutFilesResult> =>
      server.client.sendRequest(cutFilesRequest, { uri: server.uriOf('tray.layup'), ...order, ...more });
    await server.settled();
    const whole = await ask();
    expect(whole.nothing).toBeUndefined();
    expect(whole.files.map(({ name }) => name)).toEqual(['tray-x2-skin.svg']);
    const [file] = whole.files;
    expect(file?.words).toBe('400 mm by 300 mm, cut 2 of biax_440');
    const areaOf = (result: CutFilesResult): number => {
      const [cut] = readSvg(result.files[0]?.text ?? '').filter(({ within }) => within.includes('cut'));
      return areaOfPath(cut?.attributes.d ?? '');
    };
    expect(areaOf(whole) / (400 * 300 - (4 - Math.PI) * 50 ** 2)).toBeCloseTo(1, 6);
    expect(areaOf(await ask({ size: 'small' })) / (200 * 100 - (4 - Math.PI) * 20 ** 2)).toBeCloseTo(1, 6);
    expect(madeByLaybook(new TextEncoder().encode(file?.text))).toBe(true);
    const dxf = await ask({ format: 'dxf', by: 'material' });
    expect(dxf.files.map(({ name }) => name)).toEqual(['tray-x2-biax_440.dxf']);
    server.stop();
  });

  it('says why there is none', async () => {
    const server = await startMemoryServer({
      'tray.layup': recipe,
      'bare.layup': 'recipe bare "Bare" {\n  part { outline rectangle 1 m by 1 m }\n}\n',
    });
    await server.settled();
    const ask = (name: string, more: object): Promise<CutFilesResult> =>
      server.client.sendRequest(cutFilesRequest, { uri: server.uriOf(name), ...order, ...more });
    expect(await ask('tray.layup', { recipe: 'other' })).toMatchObject({
      files: [],
      nothing: 'The recipe is no longer in this file.',
    });
    expect((await ask('bare.layup', { recipe: 'bare' })).nothing).toMatch(/^nothing of bare can be cut: /);
    // A server that has no machine of its own, as in a browser.
    expect((await ask('tray.layup', { format: 'pdf' })).nothing).toBe(
      'An editor in a browser writes no PDF: choose SVG or DXF.',
    );
    server.stop();
  });

  it('hands out a PDF as bytes where the server has a machine of its own', async () => {
    const server = await startServer();
    const uri = 'file:///book/tray.layup';
    await server.connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri, languageId: 'layup', version: 1, text: recipe },
    });
    const made: CutFilesResult = await server.connection.sendRequest(cutFilesRequest, { uri, ...order, format: 'pdf' });
    expect(made.nothing).toBeUndefined();
    const { pages } = await readPdf(Buffer.from(made.files[0]?.base64 ?? '', 'base64'));
    expect(pages.length).toBeGreaterThan(2);
    expect(await server.stop()).toBe(0);
  });
});
