import { isInsideRegion } from '../geometry/inside.ts';
import type { PlanPoint3 } from '../geometry/point.ts';
import type { Device, Level } from '../model/plan.ts';
import type { HungNozzle, Space } from './derived.ts';
import { alongCone_m, conesOf } from './jet-cone.ts';
import { rememberedPart } from './remember.ts';

/** An air intake of equipment in a room. */
export type AirIntake = Extract<Device, { kind: 'air-intake' }>;

/** Those of a level; every nozzle on it asks. */
const intakesOf = rememberedPart((devices: Level['devices']): readonly AirIntake[] => Object.values(devices).filter((device): device is AirIntake => device.kind === 'air-intake'));

/** Air intakes over the floor of a space. */
export const intakesIn = ({ level, outline, holes }: Space): AirIntake[] => intakesOf(level.devices).filter(({ at }) => isInsideRegion(at, outline, holes));

/** A jet that an air intake stands in. */
export interface IntakeJet {
  readonly intake: AirIntake;
  readonly azimuth_rad: number;
  readonly along_m: number;
  readonly at: PlanPoint3;
}

/**
 * The air intakes of its space that stand in a jet of a nozzle, nearest first. One whose height is not known is taken at
 * the height of the orifice, where a jet is widest: whether it stands in the jet is then not known.
 */
export function intakesInJets(nozzle: HungNozzle, isHeightKnown: boolean): IntakeJet[] {
  const { at: orifice, space } = nozzle;
  if (!orifice || !space) return [];
  const intakes = intakesIn(space).filter(({ height_m }) => (height_m !== null) === isHeightKnown);
  if (intakes.length === 0) return [];
  return conesOf(nozzle)
    .flatMap((cone) =>
      intakes.flatMap((intake): IntakeJet[] => {
        const at = { x: intake.at.x, y: intake.at.y, z: intake.height_m ?? orifice.z };
        const along_m = alongCone_m(cone, at);
        return along_m === undefined ? [] : [{ intake, azimuth_rad: cone.azimuth_rad, along_m, at }];
      }),
    )
    .sort((a, b) => a.along_m - b.along_m);
}
