import type { DerivedNetwork } from '../derived/derived.ts';
import type { PlanPoint, PlanPoint3 } from '../geometry/point.ts';
import { distance_m } from '../geometry/point.ts';
import type { Pipe } from '../model/plan.ts';
import { type FollowKind, followKindOf, minusFollow, opposite } from './follow-kind.ts';
import { type Follow, type NozzleMotion, followOf } from './nozzle-motion.ts';

/** A pipe of which at least one end follows the nozzle. */
export interface MovedPipe {
  readonly pipe: Pipe;
  readonly from: PlanPoint3;
  readonly to: PlanPoint3;
  readonly fromFollow: Follow;
  readonly toFollow: Follow;
  /** How its `to` end moves as it is seen from its `from` end. */
  readonly stretch: FollowKind | { readonly kind: 'backs' } | { readonly kind: 'shrinks'; readonly along: PlanPoint };
  /** Unit direction on the plan from `from` to `to`; undefined for one that stands upright. */
  readonly way: PlanPoint | undefined;
}

const UPRIGHT_m = 1e-6;

function stretchOf(from: Follow, to: Follow): MovedPipe['stretch'] {
  const out = followKindOf(minusFollow(to, from));
  if (out.kind !== 'other') return out;
  const back = followKindOf(opposite(minusFollow(to, from)));
  if (back.kind === 'goes') return { kind: 'backs' };
  return back.kind === 'slides' ? { kind: 'shrinks', along: back.along } : out;
}

/** The pipes of a network that a move of the nozzle shifts or stretches. */
export const movedPipesOf = ({ network: { pipes, nodes } }: DerivedNetwork, motion: NozzleMotion): MovedPipe[] =>
  Object.values(pipes).flatMap((pipe): MovedPipe[] => {
    const [from, to] = [nodes[pipe.from]?.at, nodes[pipe.to]?.at];
    if (!from || !to || (!motion.follows.has(pipe.from) && !motion.follows.has(pipe.to))) return [];
    const [fromFollow, toFollow] = [followOf(motion, pipe.from), followOf(motion, pipe.to)];
    const length_m = distance_m(from, to);
    const way = length_m > UPRIGHT_m ? { x: (to.x - from.x) / length_m, y: (to.y - from.y) / length_m } : undefined;
    return [{ pipe, from, to, fromFollow, toFollow, stretch: stretchOf(fromFollow, toFollow), way }];
  });

const PARALLEL = 1e-9;
/** Whether two unit directions lie on one line. */
export const isParallel = (one: PlanPoint, other: PlanPoint): boolean => Math.abs(one.x * other.y - one.y * other.x) <= PARALLEL * 1e3;
