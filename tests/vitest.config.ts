import { defineConfig } from 'vitest/config';

/** Tests of pure code and of the window may share what they import: pure files can leave nothing behind for the next, and those of the window put back what they stand in for. */
const PURE = ['tests/shared/**/*.test.ts', 'tests/renderer/**/*.test.ts', 'tests/renderer/**/*.test.tsx'];

export default defineConfig({
  root: `${import.meta.dirname}/..`,
  test: {
    setupFiles: ['tests/support/property-seed.ts'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // Every core of a small machine; the default leaves one idle.
    maxWorkers: '100%',
    projects: [
      { extends: true, test: { name: 'pure', include: PURE, isolate: false, benchmark: { include: [] } } },
      { extends: true, test: { name: 'others', include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'], exclude: [...PURE, 'tests/e2e/**', 'node_modules/**'], benchmark: { include: ['tests/bench/**/*.bench.ts'] } } },
    ],
  },
});
