import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: `${import.meta.dirname}/..`,
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    exclude: ['tests/e2e/**', 'node_modules/**'],
    benchmark: { include: ['tests/bench/**/*.bench.ts'] },
    setupFiles: ['tests/support/property-seed.ts'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
  },
});
