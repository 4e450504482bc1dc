import type { DerivedNetwork, Space, WallFace } from '../../derived/derived.ts';
import { bearing_rad, distance_m } from '../../geometry/point.ts';
import { nearestOnSegment } from '../../geometry/segment.ts';
import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import type { Cylinder, Enclosure, Wall } from '../../model/plan.ts';
import { anchorPull_N, anchorShear_N, wallLoad_N } from '../formulas/wall-load.ts';
import type { MountSums } from './design.ts';
import { type Worked, notWorked, workOut, worked } from './worked.ts';

/** A wall farther behind a cylinder than this does not carry it [m]. */
const BEHIND_m = 1;
/** Its rail lies across this much of the direction to the wall. */
const ASIDE = Math.cos(Math.PI / 4);
/** Faces that are equally near, but for float noise [m]. */
const AS_NEAR_m = 1e-6;

/** A wall face with the room that it belongs to, and how far the axis of the cylinder stands off it. */
interface Behind {
  readonly face: WallFace;
  readonly room: Space;
  readonly off_m: number;
  /** The cylinder stands in that room, not on the other side of its wall. */
  readonly isInside: boolean;
}

const isNearer = (one: Behind, other: Behind): boolean => one.off_m < other.off_m - AS_NEAR_m || (one.off_m <= other.off_m + AS_NEAR_m && one.isInside && !other.isInside);

/** The nearest wall face behind a cylinder; of two rooms that meet there, the one that it stands in. */
function wallBehind({ at, back_rad }: Cylinder, rooms: readonly Space[]): Behind | undefined {
  let best: Behind | undefined;
  for (const room of rooms) {
    const { minX, minY, maxX, maxY } = room.bounds;
    if (at.x < minX - BEHIND_m || at.x > maxX + BEHIND_m || at.y < minY - BEHIND_m || at.y > maxY + BEHIND_m) continue;
    for (const face of room.walls) {
      const on = nearestOnSegment(at, face.segment);
      const off_m = distance_m(at, on);
      const away_rad = bearing_rad(at, on);
      if (off_m > BEHIND_m || (off_m > AS_NEAR_m && Math.cos(away_rad - back_rad) < ASIDE - 1e-9)) continue;
      const found = { face, room, off_m, isInside: off_m <= AS_NEAR_m || Math.cos(away_rad - face.inward_rad) < 0 };
      if (!best || isNearer(found, best)) best = found;
    }
  }
  return best;
}

const wallOf = ({ outline, holes }: Enclosure, id: string): Wall | undefined => [outline, ...holes].flat().find((corner) => corner.id === id)?.wall;

/** Load of each wall-hung cylinder on its wall and on its anchors. */
export function mountsOf({ network, profile, level }: DerivedNetwork, spaces: readonly Space[], basis: BasisOfDesign): Worked<readonly MountSums[]> {
  const hung = Object.values(network.cylinders).filter(({ mounting }) => mounting === 'wall');
  if (hung.length === 0) return worked([]);
  if (!profile) return notWorked('the network has no unit profile.');
  const filled_kg = profile.limits.filledMass_kg?.value;
  if (!filled_kg) return notWorked(`“Filled mass” is ${filled_kg === 0 ? '0' : 'blank'} in the unit profile “${profile.name}”.`);
  const rooms = spaces.filter((space) => space.level.id === level.id && space.kind === 'room');
  return workOut(() => {
    const load_N = wallLoad_N(filled_kg, basis.wallLoadFactor);
    return worked(
      hung.map((cylinder): MountSums => {
        const behind = wallBehind(cylinder, rooms);
        const wall = behind && wallOf(behind.room.enclosure, behind.face.ref.id);
        const { anchors, railHeight_m } = cylinder;
        const canTip = anchors !== null && behind !== undefined && railHeight_m !== null && railHeight_m > 0;
        return {
          ref: { kind: 'cylinder', network: network.id, id: cylinder.id },
          name: cylinder.name,
          wall: behind?.face.ref,
          isLoadBearing: wall?.loadBearing ?? null,
          capacity_N: wall?.capacity_N ?? null,
          load_N,
          factor: basis.wallLoadFactor,
          // The foot of the cylinder bears on the wall, the rail pulls at its own height.
          anchor: canTip ? { shear_N: anchorShear_N(load_N, anchors.count), tension_N: anchorPull_N(load_N, behind.off_m, railHeight_m, anchors.count) } : undefined,
        };
      }),
    );
  });
}
