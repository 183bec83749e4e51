import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  test: {
    include: ['tests/verify/*.test.ts'],
    reporters: ['verbose', './tests/support/closing-line.ts'],
    testTimeout: 3_600_000,
    hookTimeout: 600_000,
    isolate: false,
    // Start-up times are measured: nothing else runs beside them.
    fileParallelism: false,
  },
});
