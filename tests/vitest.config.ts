import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/**/*.test.ts'],
    benchmark: { include: ['tests/bench/**/*.bench.ts'] },
    // What takes minutes, or holds a budget that is not met yet, runs in `npm run verify`.
    exclude: ['tests/verify/**'],
    reporters: ['default', './tests/support/closing-line.ts'],
    testTimeout: 120_000,
    isolate: false,
  },
});
