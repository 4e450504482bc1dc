import { defineConfig } from '@playwright/test';

/** One worker: the tests look at timing-sensitive drawing, and small machines have few cores. */
export default defineConfig({
  testDir: './e2e',
  outputDir: '../test-results',
  workers: 1,
  fullyParallel: false,
  retries: 0,
  forbidOnly: true,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  reporter: [['list']],
});
