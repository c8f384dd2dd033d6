import { afterAll, beforeAll, expect, it, vi } from 'vitest';
import { type MemoryServer, startMemoryServer } from '../harness/memory-server.ts';
import { chanceOf } from './chance.ts';
import { ColdBook } from './cold.ts';
import { fewestLines } from './minimise.ts';
import { edited, Session } from './session.ts';

/*
 * Random edits to real recipes, sent to the server as an editor sends them, without waiting for what they bring about.
 * LAYBOOK_FUZZ_EDITS says how many, LAYBOOK_FUZZ_SEED which; what fails is told with its seed.
 */
const edits = Number(process.env.LAYBOOK_FUZZ_EDITS ?? 10_000);
const seed = Number(process.env.LAYBOOK_FUZZ_SEED ?? 20_260_501);
const perSession = 60;
/** every so many edits, all answers are compared with those of a book that is read for the first time */
const comparedEvery = 20;

const faults: string[] = [];
const noteFault = (error: unknown): void => {
  faults.push(error instanceof Error ? (error.stack ?? error.message) : String(error));
};

let server: MemoryServer;
beforeAll(async () => {
  process.on('unhandledRejection', noteFault);
  process.on('uncaughtException', noteFault);
  // What the server catches so that it can go on, it writes here.
  vi.spyOn(console, 'error').mockImplementation((...words) => noteFault(words.map(String).join(' ')));
  server = await startMemoryServer();
});
afterAll(() => {
  server.stop();
  process.off('unhandledRejection', noteFault);
  process.off('uncaughtException', noteFault);
  vi.restoreAllMocks();
});

it(
  `answers after ${edits} random edits as a book does that is read for the first time, and never fails`,
  async () => {
    let cold = new ColdBook();
    let checks = 0;
    for (let done = 0; done < edits; ) {
      const first = done;
      const session = new Session(server, chanceOf(seed + first));
      const faultOf = async (compare: boolean): Promise<string | undefined> => {
        try {
          await session.edit();
          if (compare) {
            await session.settled();
            checks++;
            if (checks % 100 === 0) cold = new ColdBook();
            const wrong = differences(await cold.read(session.files)) ?? session.disturbed()[0];
            if (wrong !== undefined) return wrong;
          }
        } catch (error) {
          noteFault(error);
        }
        const told = [...faults, ...server.log];
        return told.length === 0 ? undefined : told.slice(0, 5).join('\n');
      };
      await session.begin();
      for (let n = 0; n < perSession && done < edits; n++) {
        done++;
        const wrong = await faultOf(done % comparedEvery === 0 || done === edits);
        if (wrong === undefined) continue;
        const again = `LAYBOOK_FUZZ_SEED=${seed + first} LAYBOOK_FUZZ_EDITS=${done - first} shows it again (edit ${done} of seed ${seed})`;
        expect.fail(`${wrong}\n${again}\n${await smallest(session.before, session.files)}`);
      }
      await session.settled();
    }
    expect(checks).toBeGreaterThanOrEqual(Math.floor(edits / comparedEvery));
  },
  60_000 + edits * 60,
);

/** The first file of which the server has told something else than a book does that is read for the first time. */
function differences(cold: ReadonlyMap<string, readonly unknown[]>, from: MemoryServer = server): string | undefined {
  for (const [name, wanted] of cold) {
    const told = from.diagnostics.get(name) ?? [];
    if (JSON.stringify(told) !== JSON.stringify(wanted)) return `${name} is told ${difference(told, wanted)}`;
  }
  return undefined;
}

/** The findings that one has and the other has not. */
function difference(ours: readonly unknown[], wanted: readonly unknown[]): string {
  const mine = new Set(ours.map((one) => JSON.stringify(one)));
  const others = new Set(wanted.map((one) => JSON.stringify(one)));
  const only = (here: ReadonlySet<string>, there: ReadonlySet<string>) =>
    [...here].filter((one) => !there.has(one)).slice(0, 3);
  return `\n  too much: ${only(mine, others).join('\n    ')}\n  too little: ${only(others, mine).join('\n    ')}`;
}

/** The text with as few lines as still fail when they are typed into a server that has just started. */
async function smallest(before: string, files: Readonly<Record<string, string>>): Promise<string> {
  const lines = (files[edited] ?? '').split('\n');
  const fails = (some: readonly string[]): Promise<boolean> =>
    failsAfresh(before, { ...files, [edited]: some.join('\n') });
  if (!(await fails(lines))) return `it takes more than one edit; the text is\n${lines.join('\n')}`;
  return `the smallest text that fails is\n${(await fewestLines(lines, fails)).join('\n')}`;
}

async function failsAfresh(before: string, files: Readonly<Record<string, string>>): Promise<boolean> {
  faults.length = 0;
  const fresh = await startMemoryServer({ ...files, [edited]: before });
  try {
    await fresh.open(edited, before);
    await fresh.settled();
    await fresh.change(edited, { text: files[edited] ?? '' });
    await fresh.settled();
    await fresh.change(edited, { text: files[edited] ?? '' });
    await fresh.settled();
    return (
      differences(await new ColdBook().read(files), fresh) !== undefined || faults.length > 0 || fresh.log.length > 0
    );
  } finally {
    fresh.stop();
  }
}
