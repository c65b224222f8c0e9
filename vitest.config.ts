import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import HEAVY from './tests/heavy.json' with { type: 'json' };

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'rooms',
          include: ['tests/**/*.test.ts'],
          // A project's own list: vitest does not add to it what is excluded on the command line.
          exclude: ['tests/browser/**', ...(process.env.OVERROW_QUICK ? HEAVY : [])],
          // The quick run loads each module once for all its tests: that halves it. What swaps a module is in heavy.json.
          isolate: !process.env.OVERROW_QUICK,
          environment: 'node',
          setupFiles: ['tests/seed.ts'],
          // Left to itself it keeps one core free, and of two that is half.
          maxWorkers: Math.max(2, availableParallelism() - 1),
          sequence: { groupOrder: 0 },
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          environment: 'node',
          setupFiles: ['tests/seed.ts'],
          globalSetup: ['tests/browser/setup.ts'],
          fileParallelism: false,
          sequence: { groupOrder: 1 },
          // What is waited for comes at once, but not on a machine that has much else to do.
          expect: { poll: { timeout: 20_000 } },
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
