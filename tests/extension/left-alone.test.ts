/** A text that was at work twice when the server died is not read again until it is changed, and that is told. */
import { afterEach, describe, expect, it } from 'vitest';
import { LeftAlone } from '../../extension/left-alone.ts';
import { keyOfText } from '../../language/protocol/left-alone.ts';
import { type MemoryServer, startMemoryServer } from '../harness/memory-server.ts';

const document = (text: string) => ({ getText: () => text });
const [deadly, harmless] = [document('recipe deadly {\n}\n'), document('recipe harmless {\n}\n')];

describe('texts that are left alone', () => {
  it('are those that were typed last when the server died, twice', () => {
    const memory = new LeftAlone();
    memory.opened(harmless);
    memory.changed(deadly);
    memory.died();
    expect(memory.keys).toEqual([]);
    // The server starts again: what is open is opened in any order, before anybody types.
    memory.opened(deadly);
    memory.opened(harmless);
    memory.died();
    expect(memory.keys).toEqual([keyOfText(deadly.getText())]);
  });

  it('are no texts of which the server died only once, and none once it was started anew', () => {
    const memory = new LeftAlone();
    memory.opened(deadly);
    memory.died();
    memory.changed(harmless);
    memory.died();
    expect(memory.keys).toEqual([]);
    memory.died();
    expect(memory.keys).toEqual([keyOfText(harmless.getText())]);
    memory.forget();
    expect(memory.keys).toEqual([]);
  });

  it('have keys that differ where the texts do', () => {
    // FNV-1a of "a" and of "foobar": the authors' own table of test vectors (draft-eastlake-fnv, appendix C).
    expect(keyOfText('a')).toBe('1:e40c292c');
    expect(keyOfText('foobar')).toBe('6:bf9cf968');
    expect(keyOfText('ab')).not.toBe(keyOfText('ba'));
  });
});

describe('a server that is told of one', () => {
  let server: MemoryServer | undefined;
  afterEach(() => server?.stop());

  it('does not read it, says so, and reads it again once it is changed', async () => {
    const text = 'recipe deadly {\n  no such line\n}\n';
    const initializationOptions = { leftAlone: [keyOfText(text)] };
    server = await startMemoryServer({ 'deadly.layup': text }, { initializationOptions });
    await server.open('deadly.layup', text);
    await server.settled();
    const told = () => (server?.diagnostics.get('deadly.layup') ?? []).map(({ message }) => message);
    expect(told()).toEqual(['this text has brought the checker down twice: it is not read again until it is changed']);
    await server.change('deadly.layup', { text: `${text}\n` });
    await server.settled();
    expect(told().some((message) => /twice/.test(String(message)))).toBe(false);
    expect(told().length).toBeGreaterThan(0);
  });
});
