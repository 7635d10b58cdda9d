import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['src/**/*.test.ts', 'tests/**/*.test.ts', 'examples/**/*.test.ts'],
    testTimeout: 120_000,
    maxWorkers: 2,
    // A page on a busy machine answers late; one that never answers still fails.
    expect: { poll: { timeout: 15_000 } },
  },
});
