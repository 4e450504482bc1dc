import type { Derived } from '../derived/derived.ts';
import { type FieldDimension, fieldDimensionsOf } from '../derived/field-dimensions.ts';
import { distance3_m } from '../geometry/point.ts';
import { type Measurement, type Plan, refKey } from '../model/plan.ts';
import { formatLength } from '../units/length-text.ts';
import { buildCylinder, buildMark, buildNozzle, type Settled } from './build-pipework.ts';
import { buildCeiling, buildRooms } from './build-rooms.ts';
import { type AsBuiltRemark, Building, measuredThings } from './building.ts';
import { type RoomClosure, roomClosures } from './room-closure.ts';

/** A plan as it was measured. What nobody measured is as drawn. */
export interface AsBuiltPlan {
  /** Never the plan that is drawn: that stays as it was. */
  readonly plan: Plan;
  readonly closures: readonly RoomClosure[];
  readonly remarks: readonly AsBuiltRemark[];
}

/** Says what the last dimension of a thing left otherwise than it was measured. */
function sayWhatDiffers(building: Building, measured: readonly FieldDimension[], measurements: Readonly<Record<string, Measurement>>): void {
  const told = new Set(building.remarks.map(({ id }) => id));
  const now = new Map<string, number>();
  for (const { id, planned_m } of fieldDimensionsOf(building.derived)) if (Object.hasOwn(measurements, id)) now.set(id, planned_m);
  for (const dimension of measured) {
    const value_m = measurements[dimension.id]?.value_m;
    const now_m = now.get(dimension.id);
    if (value_m === undefined || told.has(dimension.id) || dimension.kind === 'ceiling') continue;
    if (now_m === undefined) building.remark('not-applied', dimension, `${dimension.name} can no longer be told on the plan as built. Look at it on site.`);
    else if (Math.abs(now_m - value_m) > building.tolerance_m) {
      building.remark('disagrees', dimension, `${dimension.name} does not agree with other measured dimensions: they make it ${building.length(now_m)}, and ${building.length(value_m)} was measured. Measure again.`);
    }
  }
}

/** Names nozzles that went along with others though nobody measured them. */
function sayWhatFollows(building: Building, drawn: Derived, dimensions: readonly FieldDimension[], measuredOnes: readonly FieldDimension[]): void {
  const measured = new Set(measuredOnes.filter(({ kind }) => kind === 'nozzle').map(({ about }) => refKey(about)));
  for (const { ref, at, nozzle, network: before } of drawn.nozzles) {
    const network = building.plan.networks[ref.network];
    if (network === before.network || measured.has(refKey(ref))) continue;
    const now = network?.nodes[network.nozzles[ref.id]?.node ?? '']?.at;
    if (!at || !now || distance3_m(at, now) <= building.tolerance_m) continue;
    const first = dimensions.find(({ kind, about }) => kind === 'nozzle' && refKey(about) === refKey(ref));
    if (!first) continue;
    building.remark('follows', first, `Nozzle ${nozzle.name} was not measured. The pipe before it was, and takes it ${building.length(distance3_m(at, now))} along: measure it too.`);
  }
}

/**
 * The plan as it was built: rooms first, then ceilings, cylinders, pipe and nozzles, each off the datum faces of the room as
 * built and moved by the program's own commands, so that pipe follows as it does on the board. What was not measured stays as
 * drawn; what could not be done is told.
 * @param drawn         the plan as approved
 * @param measurements  those of its site record unless others are given
 */
export function asBuiltPlan(drawn: Derived, measurements: Readonly<Record<string, Measurement>> = drawn.plan.siteRecord.measurements, dimensions: readonly FieldDimension[] = fieldDimensionsOf(drawn)): AsBuiltPlan {
  const { lengths } = drawn.plan.settings;
  const building = new Building(drawn);
  const known = new Set(dimensions.map(({ id }) => id));
  for (const id of Object.keys(measurements)) {
    if (!known.has(id)) building.remark('unknown', { id }, `“${id}” was measured, but the plan has no such dimension any more. It is kept in the record and not applied.`);
  }
  const closures = roomClosures(drawn, measurements, (length_m) => formatLength(length_m, lengths), dimensions);
  buildRooms(building, closures);
  const measured = dimensions.filter(({ id }) => Object.hasOwn(measurements, id));
  for (const thing of measuredThings(measured, measurements, 'ceiling')) buildCeiling(building, thing);
  for (const thing of measuredThings(measured, measurements, 'cylinder')) buildCylinder(building, thing);
  const settled: Settled = new Map();
  for (const thing of measuredThings(measured, measurements, 'pipe')) buildMark(building, thing, settled);
  for (const thing of measuredThings(measured, measurements, 'nozzle')) buildNozzle(building, thing);
  if (building.plan !== drawn.plan) {
    sayWhatDiffers(building, measured, measurements);
    sayWhatFollows(building, drawn, dimensions, measured);
  }
  return { plan: building.plan, closures, remarks: building.remarks };
}
