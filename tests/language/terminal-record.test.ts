/** `laybook record`, `records`, `lots` and `cautions`: what happened, and what it comes to. */
import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { root } from '../harness/sources.ts';
import { answering, folderOf, laybook } from '../harness/terminal.ts';

function workshop(): string {
  const { folder, dispose } = folderOf({});
  onTestFinished(dispose);
  cpSync(path.join(root, 'extension/sample'), folder, { recursive: true });
  return folder;
}

vi.setConfig({ testTimeout: 120_000 });

const day = ['--date', '2026-11-25'];
const answers = [
  'RT',
  'G-0377',
  'C-0083',
  'F-2517',
  'B-12',
  'X-9',
  'A-1182, 2026-11-30',
  '19, 60',
  '35',
  '22',
  '3, 10',
  '1.7, 19.5',
  '5',
  '2.15',
  '',
  'Dry spot by the heel, closed after 2 min.',
];
const whole = `notation 1

record sled_deck 2026-11-25 "no. 41" {
  revision 4
  by "RT"
  lot triax_680 "G-0377"
  lot uni_c300 "C-0083"
  lot foam_80 "F-2517"
  lot birch_ply "B-12"
  lot biax_440 "X-9"
  lot epoxy_slow "A-1182" expires 2026-11-30
  ambient 19 degC, 60 % RH
  step lay 35 min
  vacuum 22 mbar absolute, dry
  leak 3 mbar in 10 min
  batch 1.7 kg at 19.5 degC
  fill 5 min
  mass 2.15 kg
  note "Dry spot by the heel, closed after 2 min."
}
`;
const fileOf = (folder: string): string => path.join(folder, 'records/sled_deck/2026-11-25-41.layup');

describe('laybook record', () => {
  it('asks in the order in which the bench comes to know, and writes a file of its own', async () => {
    const folder = workshop();
    const { code, asked } = await answering(folder, answers, 'record', 'sled_deck', ...day);
    expect(code).toBe(0);
    expect(asked).toHaveLength(answers.length);
    expect(readFileSync(fileOf(folder), 'utf8')).toBe(whole);
    const { out } = await laybook(folder, 'check', 'records/sled_deck', '--book', '.');
    expect(out).toContain('1 file');
    expect(out).not.toMatch(/error: /);
  });

  it('interrupted at any question loses nothing, and goes on there', async () => {
    for (let stop = 0; stop < answers.length; stop++) {
      const folder = workshop();
      const first = await answering(folder, answers.slice(0, stop), 'record', 'sled_deck', ...day);
      expect(first.code).toBe(0);
      expect(first.out).toContain('`laybook record sled_deck --number 41 --date 2026-11-25` goes on there');
      const kept = readFileSync(fileOf(folder), 'utf8');
      for (const line of kept.split('\n')) expect(whole.split('\n')).toContain(line);
      // questions that were left out are asked again, the others are not
      const again = answers.slice(0, stop).filter((answer) => answer === '').length;
      const rest = [...Array(again).fill(''), ...answers.slice(stop)];
      const second = await answering(folder, rest, 'record', 'sled_deck', ...day, '--number', '41');
      expect(second.asked).toHaveLength(rest.length);
      expect(readFileSync(fileOf(folder), 'utf8')).toBe(whole);
    }
  });

  it('asks again where an answer cannot be read, and says why', async () => {
    const folder = workshop();
    const odd = [
      'RT',
      '',
      '',
      '',
      '',
      '',
      'A-1182, 2026-02-30',
      'A-1182, 2026-11-30',
      '19, 60',
      '35',
      'abc',
      '1, 2, 3',
      '22',
    ];
    const { err } = await answering(folder, odd, 'record', 'sled_deck', ...day);
    expect(err).toContain('2026-02-30 is no day of the calendar');
    expect(err).toContain('abc is no number; as in 22');
    expect(err).toContain('1 number at most: 22');
    expect(readFileSync(fileOf(folder), 'utf8')).toContain('vacuum 22 mbar absolute, dry');
  });

  it('asks for each batch of a part that is laid with two, also when it goes on', async () => {
    const folder = workshop();
    const own = path.join(folder, 'records/instrument_panel/2026-11-25-1.layup');
    const call = ['record', 'instrument_panel', ...day, '--number', '1'];
    const first = await answering(folder, ['RT', 'L-1', 'L-2', '21', '0.4, 21'], ...call);
    expect(first.asked.filter((each) => each.startsWith('Batch of'))).toHaveLength(2);
    await answering(folder, ['0.3, 22'], ...call);
    expect(readFileSync(own, 'utf8')).toContain('  batch 0.4 kg at 21 degC\n  batch 0.3 kg at 22 degC\n');
  });

  it('goes on where the editor left blanks, and keeps what another hand has written', async () => {
    const folder = workshop();
    mkdirSync(path.dirname(fileOf(folder)), { recursive: true });
    writeFileSync(
      fileOf(folder),
      'notation 1\n\nrecord sled_deck 2026-11-25 "no. 41" {\n  revision 4\n  by "?"\n  ambient 18 degC, ?\n  mass ? kg\n  photo "heel.jpg"\n}\n',
    );
    await answering(folder, ['RT'], 'record', 'sled_deck', ...day, '--number', '41');
    expect(readFileSync(fileOf(folder), 'utf8')).toBe(
      'notation 1\n\nrecord sled_deck 2026-11-25 "no. 41" {\n  revision 4\n  by "RT"\n  ambient 18 degC, ?\n  photo "heel.jpg"\n}\n',
    );
    const two = `${readFileSync(fileOf(folder), 'utf8')}\nrecord sled_deck 2026-11-26 "no. 42" {\n}\n`;
    writeFileSync(fileOf(folder), two);
    const refused = await answering(folder, ['RT'], 'record', 'sled_deck', ...day, '--number', '41');
    expect([refused.code, refused.err]).toEqual([2, expect.stringContaining('more than one record')]);
    expect(readFileSync(fileOf(folder), 'utf8')).toBe(two);
  });

  it('needs somebody to ask', async () => {
    const { code, err } = await laybook(workshop(), 'record', 'sled_deck');
    expect([code, err]).toEqual([2, expect.stringContaining('this needs a terminal')]);
  });

  it('two builds on two branches meet in git without a conflict', async () => {
    const folder = workshop();
    const git = (...args: string[]): string =>
      execFileSync('git', ['-c', 'user.name=t', '-c', 'user.email=t@example.invalid', ...args], {
        cwd: folder,
        encoding: 'utf8',
        stdio: ['ignore', 'pipe', 'pipe'],
      });
    git('init', '-q', '-b', 'main');
    git('add', '.');
    git('commit', '-qm', 'book');
    git('checkout', '-qb', 'other');
    await answering(folder, ['RT'], 'record', 'sled_deck', ...day, '--number', '41');
    git('add', '.');
    git('commit', '-qm', 'one');
    git('checkout', '-q', 'main');
    await answering(folder, ['MK'], 'record', 'sled_deck', ...day, '--number', '42');
    git('add', '.');
    git('commit', '-qm', 'two');
    git('merge', '-q', '-m', 'both', 'other');
    expect(readdirSync(path.join(folder, 'records/sled_deck')).sort()).toEqual([
      '2026-11-25-41.layup',
      '2026-11-25-42.layup',
    ]);
  });
});

describe('laybook records', () => {
  it('compares a build with the plan of its revision, from git where that is not the present one', async () => {
    const { folder, dispose } = folderOf({});
    onTestFinished(dispose);
    const recipe = (revision: number, plies: number): string => `recipe plate {
  revision ${revision}
  part { outline rectangle 1000 mm by 500 mm }
  stack {
${Array.from({ length: plies }, (_, i) => `    ply p${i} csm_450`).join('\n')}
  }
  process hand with polyester_laminating at 20 degC { lay stack }
}
`;
    const git = (...args: string[]): string =>
      execFileSync('git', ['-c', 'user.name=t', '-c', 'user.email=t@example.invalid', ...args], {
        cwd: folder,
        encoding: 'utf8',
      });
    git('init', '-q', '-b', 'main');
    writeFileSync(path.join(folder, 'plate.layup'), recipe(1, 2));
    git('add', '.');
    git('commit', '-qm', 'two plies');
    writeFileSync(path.join(folder, 'plate.layup'), recipe(2, 4));
    git('add', '.');
    git('commit', '-qm', 'four plies');
    mkdirSync(path.join(folder, 'records'));
    writeFileSync(
      path.join(folder, 'records/r.layup'),
      'record plate 2026-01-10 "no. 1" {\n  revision 1\n  mass 1.5 kg\n}\nrecord plate 2026-02-10 "no. 2" {\n  revision 2\n  mass 3 kg\n}\nrecord plate 2025-02-10 "no. 0" {\n  revision 7\n  mass 3 kg\n}\n',
    );
    const { out } = await laybook(folder, 'records', 'plate', '.', '--format', 'json');
    const [size] = JSON.parse(out).sizes;
    const mass = size.quantities.find(({ quantity }: { quantity: string }) => quantity === 'mass');
    const [zero, one, two] = mass.points;
    expect(zero.plan).toBeUndefined();
    // the same cloth twice over
    expect(two.plan / one.plan).toBeCloseTo(2, 9);
  });

  it('tells of the workshop: spread, what drifts, differences in numbers, and charts', async () => {
    const folder = workshop();
    const { code, out } = await laybook(folder, 'records', 'sled_deck', '.');
    expect(code).toBe(0);
    expect(out).toMatch(/no\. 34: 10\.7 % over plan: a fibre fraction of \d+(\.\d)? % instead of 52 % by volume/);
    expect(out).toMatch(/filled 10 % more slowly than is usual: at 20\.5 degC instead of 23 degC/);
    expect((await laybook(folder, 'records', 'sled_deck', '.', '--out', 'records.html')).code).toBe(0);
    const html = readFileSync(path.join(folder, 'records.html'), 'utf8');
    expect(html.match(/<figure>/g)?.length).toBeGreaterThan(6);
    expect(html).not.toMatch(/<script|NaN|undefined/);
  });

  it('offers a value that the builds come to, with how many there are', async () => {
    const { folder, dispose } = folderOf({});
    onTestFinished(dispose);
    // by hand: 2 x 450 g/m2 on 0.5 m2 is 0.45 kg of glass; at 30 % by weight 1.5 kg in all. Six builds of 1.65 kg.
    const built = Array.from(
      { length: 6 },
      (_, i) => `record plate 2026-0${i + 1}-10 "no. ${i + 1}" {\n  revision 1\n  mass 1.65 kg\n}`,
    ).join('\n');
    writeFileSync(
      path.join(folder, 'book.layup'),
      `recipe plate {
  revision 1
  part { outline rectangle 1000 mm by 500 mm }
  stack { ply a csm_450 ply b csm_450 }
  process hand with polyester_laminating at 20 degC { lay stack, fibre 30 % by weight }
}
${built}
`.replace('{ ply a csm_450 ply b csm_450 }', '{\n    ply a csm_450\n    ply b csm_450\n  }'),
    );
    const { out } = await laybook(folder, 'records', 'plate', '.', '--format', 'json');
    const [offer] = JSON.parse(out).calibrations;
    expect(offer.builds).toBe(6);
    expect(offer.entry).toBe('csm_450');
    // glass 2.54 to 2.6, polyester 1.1 to 1.2 g/cm3: 0.45 / 1.65 = 27.3 % by weight is about 14.2 % by volume
    const percent = Number(/fraction (\d+\.\d) % by volume/.exec(offer.line)?.[1]);
    expect(percent).toBeGreaterThan(13.3);
    expect(percent).toBeLessThan(15.2);
  });
});

describe('laybook lots', () => {
  it('knows which parts contain a lot, which lots went into a part, and what is expired', async () => {
    const folder = workshop();
    const parts = await laybook(folder, 'lots', '--lot', 'A-0951', '--format', 'json');
    expect(JSON.parse(parts.out).lots[0].parts).toHaveLength(7);
    const lots = await laybook(folder, 'lots', '--part', 'sled_deck', '--number', '31', '--format', 'json');
    expect(JSON.parse(lots.out).lots.map(({ lot }: { lot: string }) => lot)).toEqual(['A-1182', 'G-0377']);
    const all = await laybook(folder, 'lots', '--today', '2026-11-25', '--format', 'json');
    const state = (code: string): string =>
      JSON.parse(all.out).lots.find(({ lot }: { lot: string }) => lot === code)?.state;
    expect([state('A-1120'), state('A-1182'), state('G-0377')]).toEqual(['expired', 'soon', 'no date']);
    expect((await laybook(folder, 'lots', '--lot', 'nothing')).code).toBe(2);
  });
});

describe('laybook cautions', () => {
  it('speaks of lifting where the part is heavy, and only there', async () => {
    const folder = workshop();
    expect((await laybook(folder, 'cautions', 'sled_deck')).out).not.toContain('Lifting');
    // worked out: 2 m2 of 12 plies of 450 g/m2 mat at 30 % fibre by weight is 36 kg
    const plies = Array.from({ length: 12 }, (_, i) => `    ply p${i} csm_450`).join('\n');
    writeFileSync(
      path.join(folder, 'slab.layup'),
      `recipe slab {
  part { outline rectangle 2000 mm by 1000 mm }
  stack from tool sled_tool {
${plies}
  }
  process hand with polyester_laminating at 20 degC {
    lay stack, fibre 30 % by weight
    demould
  }
}
`,
    );
    expect((await laybook(folder, 'cautions', 'slab')).out).toContain('Lifting');
  });

  it('tells step by step what can hurt, with limits by agency and date, and claims nothing', async () => {
    const { code, out } = await laybook(workshop(), 'cautions', 'drip_tray');
    expect(code).toBe(0);
    expect(out).toMatch(/HSE \(UK\), EH40.*: 100 ppm \(about 430 mg\/m3\) over 8 h/);
    expect(out.replaceAll('\n', ' ')).toContain('nothing here says that a shop complies');
    expect(out).toContain('licensed');
  });
});
