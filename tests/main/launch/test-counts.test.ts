import { describe, expect, test } from 'vitest';
import { addUp, countPlaywright, countVitest, lastLines } from '../../../src-main/launch/test-counts.mjs';

const file = (status: string, tests: number) => ({ status, assertionResults: Array.from({ length: tests }, () => ({})) });

describe('counting', () => {
  test('a vitest run', () => {
    const report = { numPassedTests: 7, numFailedTests: 2, numPendingTests: 1, numTodoTests: 1, testResults: [file('passed', 7), file('failed', 4)] };
    expect(countVitest(report, false)).toEqual({ passed: 7, failed: 2, skipped: 2 });
  });

  test('a file that failed before its first test is one failure', () => {
    expect(countVitest({ numPassedTests: 3, numFailedTests: 0, testResults: [file('passed', 3), file('failed', 0)] }, false)).toEqual({ passed: 3, failed: 1, skipped: 0 });
  });

  test('a run that is red without a failed test is one failure', () => {
    expect(countVitest({ numPassedTests: 3, numFailedTests: 0, testResults: [file('passed', 3)] }, false).failed).toBe(1);
    expect(countPlaywright({ stats: { expected: 2, unexpected: 0, flaky: 0, skipped: 0 } }, false).failed).toBe(1);
  });

  test('a run without a report is one failure', () => {
    expect([countVitest(undefined, true).failed, countPlaywright(undefined, true).failed]).toEqual([1, 1]);
  });

  test('a window test that passed only when tried again counts as failed', () => {
    expect(countPlaywright({ stats: { expected: 5, unexpected: 1, flaky: 2, skipped: 1 } }, false)).toEqual({ passed: 5, failed: 3, skipped: 1 });
  });

  test('the last line', () => {
    expect(lastLines(addUp([{ passed: 7, failed: 0, skipped: 0 }, { passed: 2, failed: 0, skipped: 0 }]))).toEqual(['9 passed, 0 failed']);
    expect(lastLines({ passed: 9, failed: 1, skipped: 2 })).toEqual([expect.stringMatching(/^2 skipped;/), '9 passed, 1 failed']);
  });
});
