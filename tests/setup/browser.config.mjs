// The checks that need a browser: a stage of their own, since not every machine has one.
import { defineConfig } from 'vitest/config';
import { root } from './paths.mjs';

export default defineConfig({
  root,
  test: {
    include: ['tests/browser/**/*.check.ts'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    expect: { poll: { timeout: 20_000 } },
  },
});
