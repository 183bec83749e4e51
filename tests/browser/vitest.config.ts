import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// Apart from the other tests: these need a browser, and `npm test` needs Node and npm alone.
export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  test: {
    include: ['tests/browser/**/*.browser.ts'],
    reporters: ['default', './tests/support/closing-line.ts'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    fileParallelism: false,
  },
});
