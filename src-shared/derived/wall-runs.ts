import { turnTo_rad } from '../geometry/angle.ts';
import type { PlanPoint } from '../geometry/point.ts';
import type { Space, WallFace } from './derived.ts';
import { remembered } from './remember.ts';

/** Faces that turn less than this against each other are one straight wall that was drawn in pieces [rad]. */
const STRAIGHT_rad = 1e-6;

interface Neighbours {
  readonly before: ReadonlyMap<PlanPoint, WallFace>;
  readonly after: ReadonlyMap<PlanPoint, WallFace>;
}

/** Faces by the corner they end at and the corner they start at; neighbours share their corner object. */
const neighboursIn = remembered(
  (walls: Space['walls']): Neighbours => ({
    before: new Map(walls.map((face) => [face.segment.b, face])),
    after: new Map(walls.map((face) => [face.segment.a, face])),
  }),
);

/** The faces before and after a face around its ring, the room on the left. */
export const neighboursOf = (space: Space, { segment }: WallFace): { readonly before: WallFace | undefined; readonly after: WallFace | undefined } => {
  const { before, after } = neighboursIn(space.walls);
  return { before: before.get(segment.a), after: after.get(segment.b) };
};

/** All faces that form one straight wall with a face, itself included, whatever corners were drawn along it. */
export function straightRunOf(space: Space, face: WallFace): WallFace[] {
  const run = [face];
  const goesOn = (from: WallFace, to: WallFace | undefined): to is WallFace =>
    to !== undefined && !run.includes(to) && Math.abs(turnTo_rad(from.inward_rad, to.inward_rad)) <= STRAIGHT_rad;
  for (const way of ['before', 'after'] as const) {
    let here = face;
    for (let next = neighboursOf(space, here)[way]; goesOn(here, next); next = neighboursOf(space, here)[way]) {
      run.push(next);
      here = next;
    }
  }
  return run;
}

/** Distance of a place in front of a face's line [m]; negative behind it. */
export const inFrontOf_m = (p: PlanPoint, { segment, inward_rad }: WallFace): number =>
  (p.x - segment.a.x) * Math.cos(inward_rad) + (p.y - segment.a.y) * Math.sin(inward_rad);
