/** What is held back while a line is typed, and when it is told: at a rest, when the line is left, at once where nobody types. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { cursorNotification } from '../../../language/protocol/typing.ts';
import { type MemoryServer, startMemoryServer } from '../../harness/memory-server.ts';

const file = 'deck.layup';
const recipe = (core: string): string => `recipe deck {
  part {
    outline rectangle 600 mm by 400 mm
  }
  stack from tool slab {
    ply outer biax_440 at 0 deg, net
    ${core}
    ply inner biax_440 at 0 deg, net
  }
}
`;
const others = `tool slab "Slab" {
  flat 1700 mm by 800 mm
}

core foam "Foam" {
  density 80 kg/m3
  price 33 EUR/m2 at 20 mm
}
`;

let server: MemoryServer;
beforeEach(async () => {
  server = await startMemoryServer({ 'materials.layup': others });
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
});
afterEach(() => {
  vi.useRealTimers();
  server.stop();
});

const told = (name = file): string[] =>
  (server.diagnostics.get(name) ?? []).map(({ code, range }) => `${range.start.line + 1} ${code}`);
const cursorOn = (name: string, line: number): Promise<void> =>
  server.client.sendNotification(cursorNotification, { uri: server.uriOf(name), position: { line, character: 0 } });

/** Types what is behind the first text on the way to the second, key by key. */
async function type(from: string, to: string): Promise<void> {
  for (let length = from.length + 1; length <= to.length; length++) {
    await server.change(file, { text: recipe(to.slice(0, length)) });
    await server.takenIn();
  }
}

async function rest(ms: number): Promise<void> {
  vi.advanceTimersByTime(ms);
  await server.takenIn();
}

const whole = 'core body foam 20 mm';
const tooThick = '7 core/thicker-than-sheet';

describe('a metre that may become a millimetre', () => {
  beforeEach(async () => {
    await server.open(file, recipe(''));
    await server.takenIn();
    await type('', 'core body foam 20 m');
  });

  it('is no fault while it is typed, nor is what follows from it on other lines', () => {
    expect(told()).toEqual([]);
  });

  it('is told when typing rests, and not before', async () => {
    await rest(700);
    expect(told()).not.toContain(tooThick);
    await rest(200);
    expect(told()).toContain(tooThick);
  });

  it('is told when the cursor leaves the line', async () => {
    await cursorOn(file, 6);
    await server.takenIn();
    expect(told()).not.toContain(tooThick);
    await cursorOn(file, 7);
    await server.takenIn();
    expect(told()).toContain(tooThick);
  });

  it('is told when another line is typed', async () => {
    await server.change(file, { text: recipe('core body foam 20 m').replace('600 mm by', '601 mm by') });
    await server.takenIn();
    expect(told()).toContain(tooThick);
  });

  it('is told when the line is ended', async () => {
    await server.change(file, { text: recipe('core body foam 20 m\n') });
    await server.takenIn();
    expect(told()).toContain(tooThick);
  });

  it('is not told by a bracket that is typed over itself', async () => {
    await server.change(file, { text: recipe('core body foam 20 m') });
    await server.takenIn();
    expect(told()).not.toContain(tooThick);
  });

  it('is forgotten once the millimetre is there', async () => {
    await type('core body foam 20 m', whole);
    await rest(1000);
    expect(told()).not.toContain(tooThick);
  });
});

describe('what stood there before', () => {
  it('stays while it holds, and goes at once when it does not', async () => {
    await server.open(file, recipe('core body foam 30 mm'));
    await server.takenIn();
    expect(told()).toContain(tooThick);
    await server.change(file, { text: recipe('core body foam 31 mm') });
    await server.takenIn();
    expect(told()).toContain(tooThick);
    await server.change(file, { text: recipe('core body foam 11 mm') });
    await server.takenIn();
    expect(told()).not.toContain(tooThick);
  });
});

describe('nobody types', () => {
  it('when a text is opened', async () => {
    await server.open(file, recipe('core body foam 20 m'));
    await server.takenIn();
    expect(told()).toContain(tooThick);
  });

  it('when several lines are pasted', async () => {
    await server.open(file, '');
    await server.takenIn();
    await server.change(file, { text: recipe('core body foam 20 m') });
    await server.takenIn();
    expect(told()).toContain(tooThick);
  });
});

describe('other texts', () => {
  const sheet = (text: string): string => others.replace('at 20 mm', text);

  it('are told of what is typed when the line is left', async () => {
    await server.open('materials.layup', others);
    await server.open(file, recipe(whole));
    await server.takenIn();
    for (const text of ['at 2 mm', 'at 20 mm', 'at 2 mm']) {
      await server.change('materials.layup', { text: sheet(text) });
      await server.takenIn();
      expect(told()).not.toContain(tooThick);
    }
    await cursorOn(file, 0);
    await server.takenIn();
    expect(told()).toContain(tooThick);
  });

  it('are told when typing rests', async () => {
    await server.open('materials.layup', others);
    await server.open(file, recipe(whole));
    await server.takenIn();
    await server.change('materials.layup', { text: sheet('at 2 mm') });
    await server.takenIn();
    expect(told()).not.toContain(tooThick);
    await rest(800);
    expect(told()).toContain(tooThick);
  });
});

describe('a line that cannot be read', () => {
  it('keeps others as they were however long it rests, and lets them go when it is left', async () => {
    await server.open(file, recipe(whole));
    await server.takenIn();
    const before = told();
    await server.change(file, { text: recipe('core body foam') });
    await server.takenIn();
    await rest(5000);
    expect(told()).toEqual([...before, '7 line/not-understood']);
    await server.change(file, { text: recipe('core') });
    await cursorOn(file, 0);
    await server.takenIn();
    expect(told()).toContain('7 line/not-understood');
  });

  it('is told of a word that is none once typing rests', async () => {
    await server.open(file, recipe(whole));
    await server.takenIn();
    await server.change(file, { text: recipe('core body foan 20 mm') });
    await server.takenIn();
    expect(told()).toEqual([]);
    await rest(800);
    expect(told()).toEqual(['7 name/unknown']);
  });
});
