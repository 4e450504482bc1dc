import { type PipeSize, pipeSizeRank } from '../profile/pipe-table.ts';
import type { FittingKind } from './derived.ts';

/** Sizes between the run of a tee and its smallest branch, and between the two legs of a reducing run or elbow. */
const MOST_BRANCH_STEPS = 4;
const MOST_RUN_STEPS = 2;

/**
 * Whether the trade keeps a reducing fitting of these sizes, as ASME B16.3 and B16.11 list them (common practice):
 * a 90° elbow that steps down by two sizes at most; a tee whose run is straight or steps down by two sizes, with a branch up to
 * four sizes below it, or one size above a straight run; a cross with two sizes, the smaller on both branches.
 * @param sizes  as the trade names them: of a tee or cross the run first, its larger end before the smaller
 */
export function isOrdinaryFitting(kind: FittingKind, sizes: readonly PipeSize[]): boolean {
  const [a = 0, b = 0, c = 0, d = c] = sizes.map(pipeSizeRank);
  if (kind === 'elbow-90') return a - b <= MOST_RUN_STEPS;
  if (kind === 'tee') return a === b ? c <= a + 1 && a - c <= MOST_BRANCH_STEPS : a - b <= MOST_RUN_STEPS && c <= a && a - c <= MOST_BRANCH_STEPS;
  return kind === 'cross' && a === b && c === d && c <= a && a - c <= MOST_BRANCH_STEPS;
}
