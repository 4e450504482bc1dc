import { defineConfig } from 'vitest/config';

/** Tests of pure code may share what they import: no file can leave anything behind for the next. */
const PURE = ['tests/shared/**/*.test.ts'];

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
