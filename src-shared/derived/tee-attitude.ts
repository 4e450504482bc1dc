import { distance3_m } from '../geometry/point.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import { type Direction3, direction3 } from '../geometry/vector3.ts';
import type { TEE_ATTITUDES } from '../profile/unit-profile.ts';
import type { DerivedNetwork, DerivedPipe, Fitting } from './derived.ts';
import { remembered } from './remember.ts';

/** How a tee is turned: where its branch points, or that it is fed through it. */
export type TeeAttitude = (typeof TEE_ATTITUDES)[number];

/** Steeper than this a branch is said to go up or down: the sine of 45°. */
const STEEP = Math.SQRT1_2;

const byIdOf = remembered((pipes: DerivedNetwork['pipes']): ReadonlyMap<string, DerivedPipe> => new Map(pipes.map((pipe) => [pipe.ref.id, pipe])));

/** Directions in which the pipes of a fitting leave it; pipes without length are left out. */
export function legsOf({ pipes }: DerivedNetwork, fitting: Fitting): Direction3[] {
  const byId = byIdOf(pipes);
  return fitting.pipes.flatMap((id) => {
    const pipe = byId.get(id);
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

/** How a tee is turned; undefined for any other fitting, and for one of which a leg has no direction, as at the source. */
export function findTeeAttitude(network: DerivedNetwork, fitting: Fitting): TeeAttitude | undefined {
  if (fitting.kind !== 'tee') return undefined;
  if (fitting.isBull) return 'bull';
  const branch = branchOf(legsOf(network, fitting));
  if (!branch) return undefined;
  if (Math.abs(branch.z) < STEEP) return 'side';
  return branch.z > 0 ? 'up' : 'down';
}
