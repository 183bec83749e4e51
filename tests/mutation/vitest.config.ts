import { defineConfig, mergeConfig } from 'vitest/config';
import base from '../vitest.config.js';

// The tests of behaviour only, and fewer random inputs: those of the package as built see none of the mutants, and
// every mutant that lives runs all of them.
export default mergeConfig(
  base,
  defineConfig({
    test: { exclude: ['tests/project/**', 'tests/answer/host.test.ts'], isolate: true, env: { FUZZ_RUNS: '25' } },
  }),
);
