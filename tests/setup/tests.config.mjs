// The tests of `npm test`: property tests draw the same cases on every machine, so that a red run is the fault of a change. Run by
// hand (`vitest run tests/calc`), or with SEED=random, they draw new ones.
import { defineConfig } from 'vitest/config';
import { root } from './paths.mjs';

export default defineConfig({
  root,
  test: { dir: 'tests', setupFiles: process.env.SEED === 'random' ? [] : ['tests/setup/same-cases.ts'] },
});
