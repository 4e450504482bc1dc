import type { DerivedNetwork, Space } from '../../derived/derived.ts';
import { isInsideRegion } from '../../geometry/inside.ts';
import type { PlanPoint } from '../../geometry/point.ts';
import type { Cylinder } from '../../model/plan.ts';
import type { UnitProfile } from '../../profile/unit-profile.ts';
import type { Place } from '../finding.ts';
import type { Asked } from '../rule.ts';
import { perNetwork } from '../subjects.ts';

/** A cylinder with the unit that it belongs to. */
export interface NetworkCylinder {
  readonly cylinder: Cylinder;
  readonly level: string;
  readonly profile: UnitProfile | undefined;
}

/** Every cylinder of a network under its own name, with what a check adds. */
export const cylindersOf = <T extends object>(network: DerivedNetwork, more: (cylinder: Cylinder) => T): Asked<NetworkCylinder & T>[] =>
  Object.values(network.network.cylinders).map((cylinder) => ({
    subject: { cylinder, level: network.level.id, profile: network.profile, ...more(cylinder) },
    ref: { kind: 'cylinder' as const, network: network.network.id, id: cylinder.id },
    name: cylinder.name,
  }));

/** Every cylinder of the plan under its own name, with what a check adds of its network. */
export const cylinderSubjects = <T extends object>(more: (network: DerivedNetwork, cylinder: Cylinder) => T) => perNetwork((network) => cylindersOf(network, (cylinder) => more(network, cylinder)));

/** Where a cylinder's finding shows. */
export const placeOfCylinder = ({ cylinder: { at }, level }: NetworkCylinder, more: Omit<Place, 'level' | 'at'> = {}): Place => ({ level, at: [{ x: at.x, y: at.y }], ...more });

/** The drawn room around a place on a level. */
export const roomAround = (spaces: readonly Space[], level: string, at: PlanPoint): Space | undefined =>
  spaces.find(
    ({ kind, level: { id }, bounds: { minX, minY, maxX, maxY }, outline, holes }) =>
      kind === 'room' && id === level && at.x >= minX && at.x <= maxX && at.y >= minY && at.y <= maxY && isInsideRegion(at, outline, holes),
  );
