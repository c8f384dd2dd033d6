/** A task that runs `laybook check` marks the lines that it tells of. */
import path from 'node:path';
import { expect, it } from 'vitest';
import { manifestIn } from '../harness/manifest.ts';
import { laybook } from '../harness/terminal.ts';

const root = path.resolve(import.meta.dirname, '../..');

it('the matcher reads every finding that the terminal tells', async () => {
  const [{ pattern, fileLocation }] = manifestIn('en').contributes.problemMatchers;
  const { out } = await laybook(path.join(root, 'extension/sample'), 'check', 'first_try.layup');
  const heads = out.split('\n').filter((line) => /^first_try\.layup:\d+/.test(line));
  expect(heads.length).toBeGreaterThan(20);
  const found = heads.map((line) => new RegExp(pattern.regexp).exec(line));
  expect(found.filter((match) => match === null)).toEqual([]);
  const wrap = found.find((match) => match?.[pattern.code] === 'wrap/short');
  expect(wrap?.[pattern.file]).toBe('first_try.layup');
  expect(Number(wrap?.[pattern.line])).toBe(29);
  expect(wrap?.[pattern.severity]).toBe('error');
  expect(fileLocation[0]).toBe('autoDetect');
});
