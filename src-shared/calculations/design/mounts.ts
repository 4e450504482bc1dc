import type { DerivedNetwork, Space, WallFace } from '../../derived/derived.ts';
import { nearestOnSegment } from '../../geometry/segment.ts';
import { type PlanPoint, bearing_rad, distance_m } from '../../geometry/point.ts';
import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import { type Cylinder, type Enclosure, ringOf } from '../../model/plan.ts';
import { anchorPull_N, anchorShear_N, wallLoad_N } from '../formulas/wall-load.ts';
import type { MountSums } from './design.ts';
import { type Worked, notWorked, workOut, worked } from './worked.ts';

/** A wall farther behind a cylinder than this does not carry it [m]. */
const BEHIND_m = 1;
/** Its rail lies across this much of the direction to the wall [rad]. */
const ASIDE_rad = Math.PI / 4;

/** The nearest wall face behind a cylinder, with how far its axis stands off. */
function wallBehind({ at, back_rad }: Cylinder, spaces: readonly Space[]): { readonly face: WallFace; readonly off_m: number } | undefined {
  let best: { face: WallFace; off_m: number } | undefined;
  for (const face of spaces.flatMap(({ walls }) => walls)) {
    const on: PlanPoint = nearestOnSegment(at, face.segment);
    const off_m = distance_m(at, on);
    const aside_rad = Math.abs(((bearing_rad(at, on) - back_rad + 3 * Math.PI) % (2 * Math.PI)) - Math.PI);
    if (off_m <= BEHIND_m && (off_m === 0 || aside_rad <= ASIDE_rad) && (!best || off_m < best.off_m)) best = { face, off_m };
  }
  return best;
}

const wallOf = ({ outline, holes }: Enclosure, id: string) => [outline, ...holes].flat().find((corner) => corner.id === id)?.wall;

/** Load of each wall-hung cylinder on its wall and on its anchors. */
export function mountsOf(derived: DerivedNetwork, spaces: readonly Space[], basis: BasisOfDesign): Worked<readonly MountSums[]> {
  const { network, profile, level } = derived;
  const hung = Object.values(network.cylinders).filter(({ mounting }) => mounting === 'wall');
  if (hung.length === 0) return worked([]);
  const filled = profile?.limits.filledMass_kg;
  if (!profile || !filled) return notWorked(profile ? `“Filled mass” is blank in the unit profile “${profile.name}”.` : 'the network has no unit profile.');
  const rooms = spaces.filter((space) => space.level.id === level.id && space.kind === 'room');
  return workOut(() => {
    const load_N = wallLoad_N(filled.value, basis.wallLoadFactor);
    return worked(
      hung.map((cylinder): MountSums => {
        const behind = wallBehind(cylinder, rooms);
        const room = behind && rooms.find(({ walls }) => walls.includes(behind.face));
        const wall = room && wallOf(room.enclosure, behind.face.ref.id);
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
          // The cylinder leans on its foot: the rail pulls at the height of the rail.
          anchor: canTip ? { shear_N: anchorShear_N(load_N, anchors.count), tension_N: anchorPull_N(load_N, behind.off_m, railHeight_m, anchors.count) } : undefined,
        };
      }),
    );
  });
}
