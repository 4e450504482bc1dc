import type { DerivedNetwork, Space } from '../../derived/derived.ts';
import { findWallBehind } from '../../derived/wall-behind.ts';
import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import type { Enclosure, Wall } from '../../model/plan.ts';
import { anchorPull_N, anchorShear_N, wallLoad_N } from '../formulas/wall-load.ts';
import type { MountSums } from './design.ts';
import { type Worked, notWorked, workOut, worked } from './worked.ts';

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
        const behind = findWallBehind(cylinder, rooms);
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
