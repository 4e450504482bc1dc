import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import OverlayOp from 'jsts/org/locationtech/jts/operation/overlay/OverlayOp.js';
import UnaryUnionOp from 'jsts/org/locationtech/jts/operation/union/UnaryUnionOp.js';
import { bench, describe } from 'vitest';
import { type Coverage, coverageOf } from '#shared/derived/coverage';
import type { Derived } from '#shared/derived/derived';
import { derivePlan } from '#shared/derived/derive-plan';
import { type Region, differenceOf, fillOf } from '#shared/derived/polygon-sums';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import type { Plan } from '#shared/model/plan';
import { planBuilder } from '../support/plan-builder.ts';

const [ACROSS, ALONG] = [26, 18];

/** A hall of 60 × 42 m with four shafts, twelve columns and three beams, and 26 × 18 nozzles that each cover 3 m around. */
function hall(): Plan {
  const built = planBuilder().room(60, 42, 3).network();
  for (const [x, y] of [[12, 10], [40, 10], [12, 28], [40, 28]] as const) built.hole(rectangle(4, 3, planPoint(x, y)));
  for (let i = 0; i < 12; i += 1) built.obstruction('column', rectangle(0.5, 0.5, planPoint(5 + (i % 4) * 16, 6 + Math.floor(i / 4) * 14)), 0, 3);
  for (let i = 0; i < 3; i += 1) built.obstruction('beam', rectangle(0.3, 42, planPoint(15 + i * 15, 0)), 2.5, 3);
  for (let row = 0; row < ALONG; row += 1) for (let i = 0; i < ACROSS; i += 1) built.nozzle(1.05 + i * 2.3, 1.35 + row * 2.3, 2.7);
  for (const profile of Object.values(built.plan.profiles)) profile.footprint = { shape: 'circle', radius_m: 3, source: '' };
  return built.plan;
}

const plan = hall();
const covered = ({ spaces: [space], nozzles }: Derived): Coverage => {
  if (!space) throw new Error('The hall is a space.');
  return coverageOf(space, nozzles);
};

const once = derivePlan(plan);
const [space] = once.spaces;
const floor: Region = space ? differenceOf(fillOf([space.outline]), [fillOf(space.holes)]) : [];
const seen = covered(once).perNozzle.map((each) => each.seen).filter((rings) => rings.length > 0);

const factory = new GeometryFactory();
const polygon = (rings: Region) => {
  const [shell, ...holes] = rings.map((ring) => factory.createLinearRing([...ring, ring[0] ?? planPoint(0, 0)].map(({ x, y }) => new Coordinate(x, y))));
  return factory.createPolygon(shell, holes);
};
/** What the library calls a union of the same regions, taken off the floor. Each region that is seen hangs together. */
const byPeer = (): number => OverlayOp.difference(polygon(floor), UnaryUnionOp.union(factory.createGeometryCollection(seen.map(polygon)))).getArea();

const times = { gaps: [] as number[], ours: [] as number[], bound: [] as number[], peer: [] as number[] };
const timed = (into: number[], run: () => void) => (): void => {
  const from = performance.now();
  run();
  into.push(performance.now() - from);
};
const median_ms = (list: readonly number[]): number => list.toSorted((a, b) => a - b)[Math.floor(list.length / 2)] ?? Number.NaN;
const fresh = Array.from({ length: 14 }, () => derivePlan(structuredClone(plan)));
const next = (): Derived => fresh.pop() ?? derivePlan(structuredClone(plan));
const few = { time: 0, iterations: 5, warmupTime: 0, warmupIterations: 1 };

describe(`coverage of ${seen.length} overlapping discs in sight, in a room with holes`, () => {
  bench('ours: what each sees, and the floor that is left', timed(times.gaps, () => void covered(next())), few);
  bench('ours, and the share of each', timed(times.ours, () => void covered(next()).perNozzle), few);
  bench('bound: one sum of the regions in sight', timed(times.bound, () => void differenceOf(floor, seen)), few);
  bench('peer: jsts, union of the regions in sight taken off the floor', timed(times.peer, () => void byPeer()), {
    ...few,
    teardown: (_, mode) => {
      if (mode === 'warmup') return;
      const [gaps, ours, bound, peer] = [times.gaps, times.ours, times.bound, times.peer].map(median_ms) as [number, number, number, number];
      process.stdout.write(`medians: ours ${gaps.toFixed(0)} ms, with shares ${ours.toFixed(0)} ms, bound ${bound.toFixed(0)} ms, peer ${peer.toFixed(0)} ms, ours to peer ${(gaps / peer).toFixed(2)}, with shares ${(ours / peer).toFixed(2)}\n`);
    },
  });
});
