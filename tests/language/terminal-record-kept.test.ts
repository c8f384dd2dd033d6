/** `laybook record` on a record that is there already, and where it cannot be written: nothing of it is lost. */
import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { root } from '../harness/sources.ts';
import { answering, folderOf } from '../harness/terminal.ts';

function workshop(): string {
  const { folder, dispose } = folderOf({});
  onTestFinished(dispose);
  cpSync(path.join(root, 'extension/sample'), folder, { recursive: true });
  return folder;
}

const call = ['record', 'sled_deck', '--number', '31', '--date', '2026-05-14'];
const own = 'records/sled_deck/2026-05-14-31.layup';
const before = `notation 1

// Built on the wet day; kept for the customer.
record sled_deck short 2026-05-14 "no. 31" {
  revision 3
  // resin of the new drum
  lot epoxy_slow "A-1182" expires 2026-11-30
    // dented { on the way
    , note "the drum } was dented"
  ambient 19 degC, 60 % RH
  mass 1.74 kg // on the old balance
}

// Sold in June.
`;

function withRecord(text: string): { readonly folder: string; readonly read: () => string } {
  const folder = workshop();
  mkdirSync(path.join(folder, path.dirname(own)), { recursive: true });
  writeFileSync(path.join(folder, own), text);
  return { folder, read: () => readFileSync(path.join(folder, own), 'utf8') };
}

it('who looks into an old record and goes away has changed nothing of it', async () => {
  const { folder, read } = withRecord(before);
  const { code, out } = await answering(folder, [], ...call);
  expect(code).toBe(0);
  expect(read()).toBe(before);
  expect(out).toContain('`laybook record sled_deck --size short --number 31 --date 2026-05-14` goes on there');
});

it('an answer is one line more: revision, size, comments and clauses stay where they are', async () => {
  const { folder, read } = withRecord(before);
  const { asked } = await answering(folder, ['RT', 'G-0377'], ...call);
  expect(asked[0]).toContain('Built by');
  expect(asked.some((question) => question.includes('epoxy_slow'))).toBe(false);
  expect(read()).toBe(before.replace('  revision 3\n', '  revision 3\n  by "RT"\n  lot triax_680 "G-0377"\n'));
  // lines end as they did
  const windows = withRecord(before.replaceAll('\n', '\r\n'));
  await answering(windows.folder, ['RT'], ...call);
  expect(windows.read()).toBe(before.replace('  revision 3\n', '  revision 3\n  by "RT"\n').replaceAll('\n', '\r\n'));
});

it('what another hand writes while it is asked is kept', async () => {
  const { folder, read } = withRecord(before);
  let first = true;
  await answering(
    folder,
    () => {
      if (!first) return undefined;
      first = false;
      writeFileSync(path.join(folder, own), before.replace('  mass', '  photo "heel.jpg"\n  mass'));
      return 'RT';
    },
    ...call,
  );
  expect(read()).toContain('  photo "heel.jpg"\n  mass 1.74 kg // on the old balance\n');
  expect(read()).toContain('  by "RT"\n');
});

it('refuses what it could only spoil: another size, another recipe, a text that is no whole record', async () => {
  const { folder, read } = withRecord(before.replace('record sled_deck short', 'record drip_tray'));
  const other = await answering(folder, ['RT'], ...call);
  expect([other.code, other.err]).toEqual([2, expect.stringContaining('drip_tray')]);
  for (const odd of [
    before.replace(/\}\n\n[^}]*$/, ''),
    'keep me\n',
    before.replace('mass 1.74 kg', '{ mass 1.74 kg }'),
  ]) {
    writeFileSync(path.join(folder, own), odd);
    const { code, err } = await answering(folder, ['RT'], ...call);
    expect([code, err]).toEqual([2, expect.stringContaining(own)]);
    expect(read()).toBe(odd);
  }
  writeFileSync(path.join(folder, own), before.replace(' short', ''));
  const size = await answering(folder, ['RT'], ...call, '--size', 'short');
  expect([size.code, size.err]).toEqual([2, expect.stringContaining('size')]);
});

it('says where it cannot write, with the answer that was not kept', async () => {
  const folder = workshop();
  rmSync(path.join(folder, 'records'), { recursive: true });
  writeFileSync(path.join(folder, 'records'), 'a file');
  const none = await answering(folder, ['RT'], ...call);
  expect([none.code, none.err]).toEqual([2, expect.stringContaining('a part of the path is a file')]);
  const { folder: gone } = withRecord(before);
  const left = ['RT'];
  const lost = await answering(
    gone,
    () => {
      rmSync(path.join(gone, 'records'), { recursive: true });
      writeFileSync(path.join(gone, 'records'), 'a file');
      return left.shift();
    },
    ...call,
  );
  expect([lost.code, lost.err]).toEqual([2, expect.stringContaining('not kept: by "RT"')]);
});

it('asks for nothing on a day that the calendar does not have', async () => {
  const folder = workshop();
  const { code, err, asked } = await answering(folder, ['RT'], 'record', 'sled_deck', '--date', '2026-02-30');
  expect([code, err, asked]).toEqual([2, expect.stringContaining('2026-02-30 is no day of the calendar'), []]);
  const { err: many } = await answering(folder, ['RT', ...Array(6).fill(''), '19, 60', '1, 2'], ...call);
  expect(many).toContain('1 number at most');
});
