import { type Datum, datumsOf, fromFace_m } from '../derived/datum.ts';
import type { Derived, WallFace } from '../derived/derived.ts';
import { spaceIndexOf } from '../derived/space-index.ts';
import type { PlanPoint } from '../geometry/point.ts';
import { type Ref, refKey } from '../model/plan.ts';

/** The two datum faces that something is measured from, and the space that they belong to. */
export interface DatumFrame {
  readonly space: string;
  readonly faces: Datum['faces'];
}

/** Where a cylinder is taken to stand when its room is looked for [m]: as the list of field dimensions does. */
const CYLINDER_MIDDLE_m = 0.5;

/** The datum frame of everything that is measured on a plan, as drawn. */
export function datumFrames(derived: Derived): (about: Ref) => DatumFrame | undefined {
  const datums = datumsOf(derived);
  const byLevel = new Map(derived.levels.map(({ level, spaces }) => [level.id, spaceIndexOf(spaces)]));
  const nozzleSpaces = new Map(derived.nozzles.map(({ ref, space }) => [refKey(ref), space?.key]));
  const keyOf = (about: Ref): string | undefined => {
    if (about.kind === 'nozzle') return nozzleSpaces.get(refKey(about));
    const network = 'network' in about ? derived.plan.networks[about.network] : undefined;
    const cylinder = about.kind === 'cylinder' ? network?.cylinders[about.id]?.at : undefined;
    const at = cylinder ? { ...cylinder, z: CYLINDER_MIDDLE_m } : about.kind === 'node' ? network?.nodes[about.id]?.at : undefined;
    return at && byLevel.get(network?.level ?? '')?.findAt(at)?.key;
  };
  return (about) => {
    const space = keyOf(about);
    const datum = space === undefined ? undefined : datums.get(space);
    return space !== undefined && datum ? { space, faces: datum.faces } : undefined;
  };
}

/** The same two faces on another state of the plan, e.g. as built; undefined where a wall has gone. */
export function sameFrame(frame: DatumFrame, { spaces }: Derived): DatumFrame | undefined {
  const walls = spaces.find(({ key }) => key === frame.space)?.walls ?? [];
  const [first, second] = frame.faces.map(({ ref }): WallFace | undefined => walls.find((face) => face.ref.id === ref.id));
  return first && second ? { space: frame.space, faces: [first, second] } : undefined;
}

/** Distances of a place off both faces [m]. */
export const offFaces_m = ({ faces }: DatumFrame, at: PlanPoint): readonly [number, number] => [fromFace_m(faces[0], at), fromFace_m(faces[1], at)];

/**
 * The place that lies so far off both faces.
 * @returns undefined where the faces are parallel
 */
export function placeOff({ faces: [first, second] }: DatumFrame, off1_m: number, off2_m: number): PlanPoint | undefined {
  const [x1, y1, x2, y2] = [Math.cos(first.inward_rad), Math.sin(first.inward_rad), Math.cos(second.inward_rad), Math.sin(second.inward_rad)];
  const turn = x1 * y2 - x2 * y1;
  if (Math.abs(turn) < 1e-6) return undefined;
  const right1 = off1_m + first.segment.a.x * x1 + first.segment.a.y * y1;
  const right2 = off2_m + second.segment.a.x * x2 + second.segment.a.y * y2;
  return { x: (right1 * y2 - right2 * y1) / turn, y: (x1 * right2 - x2 * right1) / turn };
}
