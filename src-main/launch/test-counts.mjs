// @ts-check
/**
 * @typedef {object} Counts
 * @property {number} passed
 * @property {number} failed
 * @property {number} skipped
 */

/**
 * @typedef {object} VitestReport
 * @property {number} numPassedTests
 * @property {number} numFailedTests
 * @property {number} [numPendingTests]
 * @property {number} [numTodoTests]
 * @property {{ status: string, assertionResults: unknown[] }[]} testResults
 */

/**
 * @typedef {object} PlaywrightReport
 * @property {{ expected: number, unexpected: number, flaky: number, skipped: number }} stats
 * @property {unknown[]} [errors]
 */

/**
 * What a runner without a report, or one that is red though no test failed, counts for: one failure.
 * @param {Counts} counts
 * @param {boolean} isGreen
 * @returns {Counts}
 */
const atLeastRed = (counts, isGreen) => (isGreen || counts.failed > 0 ? counts : { ...counts, failed: 1 });

/**
 * Counts of a vitest run. A file that failed before its first test counts as one failure.
 * @param {VitestReport | undefined} report
 * @param {boolean} isGreen
 * @returns {Counts}
 */
export function countVitest(report, isGreen) {
  if (!report) return { passed: 0, failed: 1, skipped: 0 };
  const broken = report.testResults.filter(({ status, assertionResults }) => status === 'failed' && assertionResults.length === 0).length;
  const skipped = (report.numPendingTests ?? 0) + (report.numTodoTests ?? 0);
  return atLeastRed({ passed: report.numPassedTests, failed: report.numFailedTests + broken, skipped }, isGreen);
}

/**
 * Counts of a playwright run. A test that passed only when tried again counts as failed.
 * @param {PlaywrightReport | undefined} report
 * @param {boolean} isGreen
 * @returns {Counts}
 */
export function countPlaywright(report, isGreen) {
  if (!report) return { passed: 0, failed: 1, skipped: 0 };
  const { expected, unexpected, flaky, skipped } = report.stats;
  return atLeastRed({ passed: expected, failed: unexpected + flaky, skipped }, isGreen);
}

/**
 * @param {readonly Counts[]} counts
 * @returns {Counts}
 */
export const addUp = (counts) =>
  counts.reduce((sum, each) => ({ passed: sum.passed + each.passed, failed: sum.failed + each.failed, skipped: sum.skipped + each.skipped }), { passed: 0, failed: 0, skipped: 0 });

/**
 * The lines that close a test run, the sums last.
 * @param {Counts} counts
 */
export const lastLines = ({ passed, failed, skipped }) => [
  ...(skipped > 0 ? [`${skipped} skipped; the names of those tests, above, say why.`] : []),
  `${passed} passed, ${failed} failed`,
];
