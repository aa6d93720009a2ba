import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 300_000,
    hookTimeout: 300_000,
    // A page answers a click a moment later; on a loaded machine the moment is long.
    expect: { poll: { timeout: 60_000 } },
    // Two at a time: the browser and crash tests start processes of their own.
    maxWorkers: 2,
    reporters: ['default'],
  },
});
