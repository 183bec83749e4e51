import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/**/*.test.ts'],
    benchmark: { include: ['tests/bench/**/*.bench.ts'] },
    // What takes minutes, or depends on how busy the machine is, runs in `npm run verify`; sizes do neither.
    exclude: ['tests/verify/!(size).test.ts'],
    reporters: ['default', './tests/support/closing-line.ts'],
    setupFiles: ['./tests/support/setup.ts'],
    testTimeout: 120_000,
    // One forgotten `.only` would leave out the others of its file.
    allowOnly: false,
    // A file that is not there is not written in passing: `-u` writes it.
    update: 'none',
    isolate: false,
  },
});
