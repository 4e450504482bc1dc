import type { DerivedNetwork, Fitting } from '../derived/derived.ts';
import { FITTING_WORDS } from '../derived/fitting-words.ts';
import { direction3, type Direction3 } from '../geometry/vector3.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import { distance3_m } from '../geometry/point.ts';

/** Steeper than this a branch is said to go up or down: the sine of 45°. */
const STEEP = Math.SQRT1_2;

/** Directions in which the pipes of a fitting leave it; pipes without length are left out. */
export function legsOf({ pipes }: DerivedNetwork, fitting: Fitting): Direction3[] {
  return fitting.pipes.flatMap((id) => {
    const pipe = pipes.find(({ ref }) => ref.id === id);
    if (!pipe) return [];
    const isStart = distance3_m(pipe.from, fitting.at) <= SAME_PLACE_m;
    const way = direction3(fitting.at, isStart ? pipe.to : pipe.from, SAME_PLACE_m);
    return way ? [way] : [];
  });
}

/** The leg of a tee that stands off its run: the one that the two others leave least room to be straight with. */
function branchOf(legs: readonly Direction3[]): Direction3 | undefined {
  const dot = (a: Direction3 | undefined, b: Direction3 | undefined): number => (a && b ? a.x * b.x + a.y * b.y + a.z * b.z : 0);
  const rated = legs.map((leg, i) => {
    const [a, b] = legs.filter((_, k) => k !== i);
    return { leg, straight: dot(a, b) };
  });
  return rated.length === 3 ? rated.reduce((best, each) => (each.straight < best.straight - 1e-9 ? each : best)).leg : undefined;
}

/** A fitting in words, a tee with how it is turned: branch up, down or to the side, or fed through its branch. */
export function fittingAttitude(network: DerivedNetwork, fitting: Fitting): string {
  if (fitting.kind !== 'tee') return FITTING_WORDS[fitting.kind];
  if (fitting.isBull) return 'tee, fed through its branch (bull)';
  const branch = branchOf(legsOf(network, fitting));
  if (!branch) return FITTING_WORDS.tee;
  if (Math.abs(branch.z) < STEEP) return 'tee, branch to the side';
  return branch.z > 0 ? 'tee, branch up' : 'tee, branch down';
}
