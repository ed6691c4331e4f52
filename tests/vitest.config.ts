// A slow or busy machine is no failure: no test asserts a time, so the limit only ends what hangs.
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    maxWorkers: '100%',
  },
});
