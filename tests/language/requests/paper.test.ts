/** Build sheet, records and lots as the editor asks for them. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  type NewRecordResult,
  newRecordRequest,
  type PaperParams,
  type PaperResult,
  paperRequest,
} from '../../../language/protocol/paper.ts';
import { type MemoryServer, startMemoryServer } from '../../harness/memory-server.ts';
import { sampleFiles } from '../../harness/sample.ts';
import { root } from '../../harness/sources.ts';

const sample = (name: string): string => readFileSync(path.join(root, 'extension/sample', name), 'utf8');
const names = [
  'shop.layup',
  'tools.layup',
  'materials.layup',
  'sled_deck.layup',
  'records/sled_deck-2025.layup',
  'records/sled_deck-2026.layup',
];

let server: MemoryServer;
beforeAll(async () => {
  server = await startMemoryServer(Object.fromEntries(names.map((name) => [name, sample(name)])));
  await server.settled();
});
afterAll(() => server.stop());

const none = { line: 0, character: 0 };

const recordsIn = ({ client, uriOf }: MemoryServer): Promise<PaperResult> => {
  const params: PaperParams = {
    uri: uriOf('plate.layup'),
    kind: 'records',
    recipe: 'plate',
    paper: 'a4',
    form: 'body',
  };
  return client.sendRequest(paperRequest, params);
};

const ask = (more: Partial<PaperParams>): Promise<PaperResult> =>
  server.client.sendRequest(paperRequest, {
    uri: server.uriOf('sled_deck.layup'),
    kind: 'sheet',
    recipe: 'sled_deck',
    paper: 'a4',
    form: 'body',
    ...more,
  });

describe('the build sheet in the editor', () => {
  it('is a page of its own, with the commit that the editor knows of', async () => {
    const { title, body = '', style } = await ask({ size: 'short', git: { commit: 'abc1234', differs: true } });
    expect(title).toBe('Rescue sled deck');
    expect(body).toContain('abc1234, but the text differs from it');
    expect(body).toContain('980 mm by 400 mm');
    expect(style).toContain('size: A4 portrait');
    expect((await ask({ form: 'html', paper: 'letter' })).html).toContain('size: letter portrait');
  });

  it('says what it cannot do', async () => {
    expect((await ask({ recipe: 'gone' })).nothing).toBe('The recipe is no longer in this file.');
    // a server that has no machine of its own, as in a browser
    expect((await ask({ form: 'pdf' })).nothing).toMatch(/writes no PDF/);
  });
});

describe('the records in the editor', () => {
  it('want the books of earlier revisions, and compare with them once they are there', async () => {
    const first = await ask({ kind: 'records' });
    expect(first.wantsPast).toEqual([2, 3]);
    const files = ['shop.layup', 'tools.layup', 'materials.layup'].map((name) => ({
      uri: server.uriOf(name),
      text: sample(name),
    }));
    const then = sample('sled_deck.layup').replace('revision 4', 'revision 3');
    const past = [{ revision: 3, files: [...files, { uri: server.uriOf('sled_deck.layup'), text: then }] }];
    const second = await ask({ kind: 'records', past });
    expect(second.wantsPast).toEqual([2]);
    // no. 18 of revision 3 came out heavy
    expect(second.body).toMatch(/no\. 18: \d+(\.\d)? % over plan: a fibre fraction of/);
    expect(first.body).not.toMatch(/no\. 18: /);
  });

  it('are written with blanks, in a file of their own, with the next number', async () => {
    const { file, text = '' }: NewRecordResult = await server.client.sendRequest(newRecordRequest, {
      uri: server.uriOf('sled_deck.layup'),
      recipe: 'sled_deck',
      date: '2026-11-25',
    });
    expect(file).toBe('records/sled_deck/2026-11-25-41.layup');
    expect(text).toContain('record sled_deck 2026-11-25 "no. 41" {\n  revision 4\n  by "?"\n');
    const order = ['by', 'lot triax_680', 'ambient', 'step lay', 'vacuum', 'leak', 'batch', 'fill', 'mass', 'note'];
    const at = order.map((word) => text.indexOf(`\n  ${word} `));
    expect(at).toEqual([...at].sort((a, b) => a - b));
    expect(Math.min(...at)).toBeGreaterThan(0);
    for (const blank of ['ambient ? degC, ?', 'leak ? mbar in ? min', 'mass ? kg', 'lot epoxy_slow "?" expires ?'])
      expect(text).toContain(`  ${blank}\n`);
  });

  it('are found no fault with while they are blank or half filled, and a blank is no lot', async () => {
    const shop = await startMemoryServer(sampleFiles);
    for (const recipe of ['sled_deck', 'drip_tray', 'hatch_lid', 'side_panel', 'instrument_panel', 'hatch_board']) {
      const { file = '', text = '' }: NewRecordResult = await shop.client.sendRequest(newRecordRequest, {
        uri: shop.uriOf(`${recipe}.layup`),
        recipe,
        date: '2026-11-25',
      });
      expect(file).toBe(`records/${recipe}/2026-11-25-1.layup`);
      await shop.open(file, text);
      await shop.settled();
      expect([recipe, shop.diagnostics.get(file) ?? []]).toEqual([recipe, []]);
      await shop.change(file, { text: text.replace('by "?"', 'by "RT"').replace('ambient ? degC', 'ambient 19 degC') });
      await shop.settled();
      expect([recipe, shop.diagnostics.get(file) ?? []]).toEqual([recipe, []]);
      const [record] = shop.services.analysis.shelf().records.ofRecipe(recipe);
      expect(record?.lots).toEqual([]);
      expect(record?.readings.map(({ key }) => key)).not.toContain('differs');
    }
    shop.stop();
  });

  it('offer a value as an edit of the material, wherever it stands, and the edit is what the book then says', async () => {
    // by hand: 2 x 450 g/m2 on 0.5 m2 are 0.45 kg of glass; 1.65 kg in all are 27.3 % by weight, about 14 % by volume
    const recipe = (cloth: string): string => `tool flat_tool {
  flat 1600 mm by 700 mm
}
recipe plate {
  revision 1
  part { outline rectangle 1000 mm by 500 mm }
  stack from tool flat_tool {
    ply a ${cloth}
    ply b ${cloth}
  }
  process hand with polyester_laminating at 20 degC { lay stack }
}
`;
    const own = 'fabric my_mat "Own mat" {\n  fibre e_glass\n  layers random 450 g/m2\n}\n';
    const built = Object.fromEntries(
      Array.from({ length: 6 }, (_, i) => [
        `records/plate/${i}.layup`,
        `record plate 2026-0${i + 1}-10 "no. ${i + 1}" {\n  revision 1\n  mass 1.65 kg\n}\n`,
      ]),
    );
    const cases = [
      ['csm_450', '', 'plate.layup'],
      ['my_mat', own, 'cloth.layup'],
      ['my_mat', own.replace('}\n', '  fraction 30 % by volume hand, note "of the roll"\n}\n'), 'cloth.layup'],
    ] as const;
    for (const [cloth, text, edited] of cases) {
      const files: Record<string, string> = { ...built, 'plate.layup': recipe(cloth), 'cloth.layup': text };
      const shop = await startMemoryServer(files);
      const [offer] = (await recordsIn(shop)).offers ?? [];
      expect([cloth, offer?.uri]).toEqual([cloth, shop.uriOf(edited)]);
      const lines = (files[edited] ?? '').split('\n');
      const at = ({ line, character }: { readonly line: number; readonly character: number }): number =>
        lines.slice(0, line).join('\n').length + (line > 0 ? 1 : 0) + character;
      const before = files[edited] ?? '';
      const after = before.slice(0, at(offer?.from ?? none)) + offer?.text + before.slice(at(offer?.to ?? none));
      await shop.open(edited, after);
      await shop.settled();
      const told = (shop.diagnostics.get(edited) ?? []).map(({ code, message }) => `${code} ${message}`);
      expect(told.filter((rule) => /^(line|name|unit)\//.test(rule))).toEqual([]);
      const fraction = shop.services.analysis.shelf().material(cloth)?.fractions?.at(-1)?.value;
      expect(fraction).toMatchObject({ process: 'hand', amount: { basis: 'by volume', si: expect.closeTo(0.14, 2) } });
      expect(after).toContain(`${offer?.line}`);
      if (text.includes('note')) expect(after).toContain('by volume hand, note "of the roll"');
      // what was taken over is offered no more
      expect((await recordsIn(shop)).offers).toEqual([]);
      shop.stop();
    }
  });

  it('lead from the number of a lot to all parts that contain it', async () => {
    const uri = server.uriOf('records/sled_deck-2026.layup');
    const text = sample('records/sled_deck-2026.layup');
    const line = text.split('\n').findIndex((each) => each.includes('"A-1182"'));
    const character = (text.split('\n')[line] ?? '').indexOf('A-1182');
    const found: readonly { readonly uri: string }[] = await server.client.sendRequest('textDocument/references', {
      textDocument: { uri },
      position: { line, character },
      context: { includeDeclaration: true },
    });
    expect(found).toHaveLength(text.match(/"A-1182"/g)?.length ?? 0);
  });
});
