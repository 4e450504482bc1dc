import type { PlanPoint3 } from '../geometry/point.ts';
import { distance3_m } from '../geometry/point.ts';
import { ANGLE_SLACK_rad, SAME_PLACE_m } from '../geometry/tolerance.ts';
import { angleBetween3_rad, direction3 } from '../geometry/vector3.ts';
import type { DerivedNetwork, DerivedPipe } from './derived.ts';
import { placedSupportsOf } from './placed-supports.ts';
import { remembered } from './remember.ts';

/** Pipe between two changes of direction, tees on the way left out, with the braces on it. */
export interface BraceRun {
  readonly pipes: readonly DerivedPipe[];
  readonly from: PlanPoint3;
  readonly to: PlanPoint3;
  readonly length_m: number;
  /** From its beginning to each brace that holds it sideways, and along itself, in order [m]. */
  readonly lateral_m: readonly number[];
  readonly longitudinal_m: readonly number[];
}

/** A run bends no more than this [rad]: one degree, as made. */
const STRAIGHT_rad = Math.PI / 180 + ANGLE_SLACK_rad;

const goesOn = (first: DerivedPipe, next: DerivedPipe): boolean => {
  const [a, b] = [direction3(first.from, first.to, SAME_PLACE_m), direction3(next.from, next.to, SAME_PLACE_m)];
  return a !== undefined && b !== undefined && distance3_m(first.to, next.from) <= SAME_PLACE_m && angleBetween3_rad(a, b) <= STRAIGHT_rad;
};

/** The straight runs of a network from bend to bend, in flow order; what leads to a dirt trap or drain belongs to its run. */
export const braceRunsOf = remembered((network: DerivedNetwork): readonly BraceRun[] => {
  const supports = placedSupportsOf(network);
  const taken = new Set<DerivedPipe>();
  const chains = network.pipes.flatMap((first): DerivedPipe[][] => {
    if (taken.has(first) || network.pipes.some((each) => each !== first && goesOn(each, first))) return [];
    const chain = [first];
    taken.add(first);
    for (let next = network.pipes.find((pipe) => !taken.has(pipe) && goesOn(first, pipe)); next; ) {
      const last = next;
      chain.push(last);
      taken.add(last);
      next = network.pipes.find((pipe) => !taken.has(pipe) && goesOn(last, pipe));
    }
    return [chain];
  });
  return chains.flatMap((pipes): BraceRun[] => {
    const [first, last] = [pipes[0], pipes.at(-1)];
    if (!first || !last) return [];
    const on = (kinds: readonly string[]): number[] =>
      supports
        .filter(({ support, pipe }) => pipe && pipes.includes(pipe) && kinds.includes(support.brace))
        .map(({ support }) => distance3_m(first.from, support.at))
        .sort((a, b) => a - b);
    return [
      {
        pipes,
        from: first.from,
        to: last.to,
        length_m: pipes.reduce((sum, { length_m }) => sum + length_m, 0),
        lateral_m: on(['lateral', 'four-way']),
        longitudinal_m: on(['longitudinal', 'four-way']),
      },
    ];
  });
});
