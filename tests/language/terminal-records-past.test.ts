/** Builds of earlier revisions: their plan from git, and said so where it is not to be had; Ctrl-C; many builds summed up. */
import { execFileSync, spawn } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { root } from '../harness/sources.ts';
import { answering, folderOf, laybook } from '../harness/terminal.ts';

const materials = ['old', 'new'].map(
  (name) => `
fabric mat_${name} "Mat" {
  fibre e_glass
  layers random 450 g/m2
  roll 1250 mm by 60 m
}
`,
);
const recipe = (revision: number, mat: string): string => `recipe tray {
  revision ${revision}
  part { outline rectangle 1000 mm by 500 mm }
  stack {
    ply skin mat_${mat}, fibre 30 % by weight
  }
  process hand with polyester_laminating at 20 degC {
    lay skin, catalyst 1.5 % by weight
    cure 24 h at 20 degC
    demould
    weigh
  }
}
`;
const recordOf = (number: number, revision: number, mass: number, day = number): string =>
  `record tray 2026-05-${String(day).padStart(2, '0')} "no. ${number}" {\n  revision ${revision}\n  mass ${mass} kg\n}\n`;

function workshop(records: string): string {
  const { folder, dispose } = folderOf({
    'materials.layup': `notation 1\n${materials.join('')}`,
    'tray.layup': `notation 1\n${recipe(1, 'old')}`,
    'records.layup': `notation 1\n${records}`,
  });
  onTestFinished(dispose);
  return folder;
}

const git = (folder: string, ...args: readonly string[]): string =>
  execFileSync('git', ['-c', 'user.name=T', '-c', 'user.email=t@example.invalid', ...args], {
    cwd: folder,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'ignore'],
  });

/** Revision 1 is in the commit before the last. */
function inGit(records: string): string {
  const folder = workshop(records);
  git(folder, 'init', '-q');
  git(folder, 'add', '.');
  git(folder, 'commit', '-qm', 'one');
  writeFileSync(path.join(folder, 'tray.layup'), `notation 1\n${recipe(2, 'new')}`);
  git(folder, 'commit', '-qam', 'two');
  return folder;
}

const builds = recordOf(1, 1, 0.8) + recordOf(2, 2, 0.8);

it('an earlier revision is compared with its text from git', async () => {
  const { out } = await laybook(inGit(builds), 'records', 'tray', '.');
  expect(out).not.toContain('Without a plan');
  // 0.5 m2 of 450 g/m2 at 30 % are 750 g: 800 g is 6.7 % over
  expect(out.match(/800 g \(\+6\.7 %\)|0\.8 kg \(\+6\.7 %\)/g)).toHaveLength(2);
});

it('a shallow clone, a folder outside of git and a history without it say why there is no plan', async () => {
  const folder = inGit(builds);
  const clone = path.join(folder, 'clone');
  git(folder, 'clone', '-q', '--depth', '1', `file://${folder}`, clone);
  const shallow = await laybook(clone, 'records', 'tray', '.');
  expect(shallow.out).toContain('Revision 1: 1 build is not compared with its plan.');
  expect(shallow.out).toMatch(/only the newest commits: `git fetch\s+--unshallow` brings/);

  const outside = workshop(builds);
  writeFileSync(path.join(outside, 'tray.layup'), `notation 1\n${recipe(2, 'new')}`);
  const { out } = await laybook(outside, 'records', 'tray', '.');
  expect(out).toContain('Revision 1: 1 build is not compared with its plan.');
  expect(out).toContain('in no git repository');
  const json = JSON.parse((await laybook(outside, 'records', 'tray', '.', '--format', 'json')).out);
  expect(json.withoutPlan).toEqual([{ revision: 1, builds: 1 }]);
  await laybook(outside, 'records', 'tray', '.', '--out', 'page.html');
  expect(readFileSync(path.join(outside, 'page.html'), 'utf8')).toContain('Without a plan');

  const never = inGit(recordOf(1, 7, 0.8) + recordOf(2, 7, 0.8));
  const told = (await laybook(never, 'records', 'tray', '.')).out;
  expect(told).toContain('Revision 7: 2 builds are not compared with their plan.');
  expect(told).toContain('not among the last 400 commits');
});

it('going on with a record of an earlier revision asks what that revision needs, or says that it cannot', async () => {
  const written = 'notation 1\n\nrecord tray 2026-05-20 "no. 9" {\n  revision 1\n  by "RT"\n}\n';
  const call = ['record', 'tray', '--number', '9', '--date', '2026-05-20'];
  const folder = inGit(builds);
  const place = (where: string): void => {
    mkdirSync(path.join(where, 'records/tray'), { recursive: true });
    writeFileSync(path.join(where, 'records/tray/2026-05-20-9.layup'), written);
  };
  place(folder);
  const { asked, err } = await answering(folder, [''], ...call);
  expect(asked.join('\n')).toContain('mat_old');
  expect(asked.join('\n')).not.toContain('mat_new');
  expect(err).toBe('');

  const outside = workshop(builds);
  writeFileSync(path.join(outside, 'tray.layup'), `notation 1\n${recipe(2, 'new')}`);
  place(outside);
  const now = await answering(outside, [''], ...call);
  expect(now.err).toContain('This record is of revision 1, whose text is not to be had from git');
  expect(now.asked.join('\n')).toContain('mat_new');
});

it('Ctrl-C at a question ends the asking as the end of the lines does, so that it is said where to go on', async () => {
  const child = spawn(
    process.execPath,
    [
      '--input-type=module',
      '-e',
      `import { Prompt } from ${JSON.stringify(path.join(root, 'language/terminal/prompt.ts'))};
       const prompt = new Prompt();
       const answer = await prompt.ask('Built by: ');
       prompt.close();
       console.log(answer === undefined ? 'stopped' : 'answered');`,
    ],
    { stdio: ['pipe', 'pipe', 'inherit'] },
  );
  let out = '';
  child.stdout.on('data', (chunk: Buffer) => {
    out += chunk.toString();
    if (out === 'Built by: ') child.kill('SIGINT');
  });
  const [code, signal] = await new Promise<[number | null, string | null]>((resolve) =>
    child.on('exit', (...how) => resolve(how)),
  );
  child.stdin.destroy();
  expect([out, code, signal]).toEqual(['Built by: stopped\n', 0, null]);
});

it('many builds that are off the same way are summed up, the newest told with its figures', async () => {
  // 750 g are planned: 4 to 11 % over
  const many = Array.from({ length: 12 }, (_, i) => recordOf(i + 1, 1, Number((0.78 + i * 0.005).toFixed(3))));
  const { out } = await laybook(workshop(many.join('')), 'records', 'tray', '.');
  const text = out.replace(/\s+/g, ' ');
  expect(text.match(/over plan: a fibre fraction/g)).toHaveLength(1);
  expect(text).toMatch(/no\. 12: 11\.3 % over plan/);
  expect(text).toMatch(
    /11 earlier builds the same way, by 4 % to 10\.7 %: 5 more, the last tray 2026-05-06 no\. 6, .*-11 no\. 11 Spread/,
  );
});
