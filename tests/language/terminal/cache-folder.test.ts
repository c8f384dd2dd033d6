import path from 'node:path';
import { expect, it } from 'vitest';
import { cacheFolder } from '../../../language/terminal/cache-folder.ts';

it('lies where the system keeps caches of the user (XDG Base Directory Specification 0.8)', () => {
  expect(cacheFolder('linux', {}, '/at/mia')).toBe(path.join('/at/mia/.cache/laybook'));
  expect(cacheFolder('linux', { XDG_CACHE_HOME: '/var/mia' }, '/at/mia')).toBe(path.join('/var/mia/laybook'));
  expect(cacheFolder('darwin', {}, '/at/mia')).toBe(path.join('/at/mia/Library/Caches/laybook'));
  expect(cacheFolder('win32', { LOCALAPPDATA: '/at/local' }, '/at/mia')).toBe(path.join('/at/local/laybook'));
});

it('is never a folder of the recipes', () => {
  expect(cacheFolder('linux', { XDG_CACHE_HOME: 'cache' }, '/at/mia')).toBeUndefined();
  expect(cacheFolder('linux', {}, '')).toBeUndefined();
  expect(cacheFolder('win32', {}, '/at/mia')).toBeUndefined();
});
