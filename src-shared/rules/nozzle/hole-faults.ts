import { cornersNear } from '../../derived/corner-zone.ts';
import type { ConvexCorner, HungNozzle, WallFace } from '../../derived/derived.ts';
import { blankArcLimits, legalArcs } from '../../derived/legal-arc.ts';
import { wallsAlone } from '../../derived/near-wall.ts';
import { remembered } from '../../derived/remember.ts';
import { angleBetween_rad, axisAngle_rad, turnTo_rad } from '../../geometry/angle.ts';
import { ANGLE_SLACK_rad } from '../../geometry/tolerance.ts';
import { LIMIT_CATALOGUE } from '../../profile/limit-catalogue.ts';
import type { Cure } from '../finding.ts';
import { turnBy } from './turn-by.ts';

/** How far one hole is off the direction to one corner. */
export interface CornerShot {
  readonly hole_rad: number;
  readonly corner: ConvexCorner;
  readonly off_rad: number;
}

/** Every hole of a nozzle against every corner whose zone it stands in; the worst first. */
export const cornerShotsOf = (nozzle: HungNozzle, zone_m: number): CornerShot[] =>
  cornersNear(nozzle, zone_m)
    .flatMap(({ corner, bearing_rad }) =>
      nozzle.holes_rad.map((hole_rad) => ({ hole_rad, corner, off_rad: angleBetween_rad(hole_rad, bearing_rad) })),
    )
    .sort((a, b) => a.off_rad - b.off_rad);

/** How far one hole's axis is from parallel to a near wall. */
export interface NearWallShot {
  readonly hole_rad: number;
  readonly face: WallFace;
  readonly distance_m: number;
  readonly off_rad: number;
}

/**
 * Every hole of a nozzle against every near wall that is no side of a corner it stands in; the worst first.
 * In a corner the direction to the corner governs instead.
 */
export const nearWallShotsOf = (nozzle: HungNozzle, nearZone_m: number, cornerZone_m: number): NearWallShot[] =>
  wallsAlone(nozzle, nearZone_m, cornerZone_m)
    .flatMap(({ face, distance_m, axis_rad }) =>
      nozzle.holes_rad.map((hole_rad) => ({ hole_rad, face, distance_m, off_rad: axisAngle_rad(hole_rad, axis_rad) })),
    )
    .sort((a, b) => b.off_rad - a.off_rad);

/** The smallest turn that brings every hole into a legal direction, as a cure; advice where no turn does. */
export function turnCure(nozzle: HungNozzle, say: { turn(angle_rad: number): string }): Cure {
  const [blank] = blankArcLimits(nozzle);
  if (blank) return { kind: 'advice', text: `Which turn clears it is not known while “${LIMIT_CATALOGUE[blank].label}” is blank in the unit profile.` };
  const { rotation_rad } = nozzle.nozzle;
  const arcs = legalArcs(nozzle);
  const turns = arcs.flatMap(({ from_rad, to_rad }) => [turnTo_rad(rotation_rad, from_rad), turnTo_rad(rotation_rad, to_rad)]);
  const least = turns.sort((a, b) => Math.abs(a) - Math.abs(b))[0];
  if (least === undefined) return { kind: 'advice', text: 'No turn of this nozzle clears it: move the nozzle.' };
  return turnBy(nozzle, least, say);
}

/** Holes that the corner or the near-wall check stops already: turning them cures what else they blow at. */
export const stoppedHoles = remembered((nozzle: HungNozzle): ReadonlySet<number> => {
  const { cornerZone_m, cornerAngle_rad, nearWallZone_m, nearWallAngle_rad } = nozzle.profile?.limits ?? {};
  const stopped = new Set<number>();
  if (cornerZone_m && cornerAngle_rad) {
    for (const { hole_rad, off_rad } of cornerShotsOf(nozzle, cornerZone_m.value)) {
      if (off_rad < cornerAngle_rad.value - ANGLE_SLACK_rad) stopped.add(hole_rad);
    }
  }
  if (cornerZone_m && nearWallZone_m && nearWallAngle_rad) {
    for (const { hole_rad, off_rad } of nearWallShotsOf(nozzle, nearWallZone_m.value, cornerZone_m.value)) {
      if (off_rad > nearWallAngle_rad.value + ANGLE_SLACK_rad) stopped.add(hole_rad);
    }
  }
  return stopped;
});
