import { editCylinder } from '../commands/edit-cylinder.ts';
import { moveNozzle } from '../commands/move-nozzle.ts';
import { movePipeNode } from '../commands/move-pipe-node.ts';
import { isUpright } from '../commands/pipe-columns.ts';
import { pipesAt } from '../commands/pipe-joins.ts';
import { placeNode } from '../commands/place-node.ts';
import { stretchPipes } from '../commands/stretch-pipes.ts';
import { type PlanPoint3, distance3_m } from '../geometry/point.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import type { Network, PipeNode, RefOf } from '../model/plan.ts';
import type { Building, MeasuredThing } from './building.ts';
import { offFaces_m, placeOff } from './datum-frame.ts';

const NO_DATUM = 'the datum faces that it is measured from are no longer in the plan.';

/** The place of a thing with its measured distances, everything else of it as it stands; undefined: its faces are gone. */
function measuredPlace(building: Building, { about, parts }: MeasuredThing, at: PlanPoint3, isTaken: (part: string, now_m: number, value_m: number) => boolean): PlanPoint3 | undefined {
  const measuredOr = (part: string, now_m: number): number => {
    const value_m = parts.get(part)?.value_m;
    return value_m !== undefined && isTaken(part, now_m, value_m) ? value_m : now_m;
  };
  const z = measuredOr('height', at.z);
  if (!parts.has('first') && !parts.has('second')) return { ...at, z };
  const frame = building.frameOf(about);
  if (!frame) return undefined;
  const [off1_m, off2_m] = offFaces_m(frame, at);
  const [to1_m, to2_m] = [measuredOr('first', off1_m), measuredOr('second', off2_m)];
  if (to1_m === off1_m && to2_m === off2_m) return { ...at, z };
  const place = placeOff(frame, to1_m, to2_m);
  return place && { x: place.x, y: place.y, z };
}

/** Puts a cylinder, and its rail, where they were measured. What hangs on it stays, unless it was measured too. */
export function buildCylinder(building: Building, thing: MeasuredThing): void {
  const { about, parts } = thing;
  const cylinder = about.kind === 'cylinder' ? building.plan.networks[about.network]?.cylinders[about.id] : undefined;
  if (!cylinder || about.kind !== 'cylinder') return;
  const at = measuredPlace(building, thing, { ...cylinder.at, z: 0 }, () => true);
  if (!at) {
    building.notApplied(thing, NO_DATUM);
    return;
  }
  const rail_m = parts.get('rail')?.value_m;
  const refused = building.try(editCylinder(about, { at: { x: at.x, y: at.y }, ...(rail_m === undefined ? {} : { railHeight_m: rail_m }) }));
  if (refused) building.notApplied(thing, refused);
}

/** Places of pipe that a measured mark has moved already, by network: a second reading of the same straight pipe that says the same within the tolerance leaves it straight. */
export type Settled = Map<string, Set<string>>;

const movedSince = (before: Network, after: Network | undefined): string[] =>
  Object.values(after?.nodes ?? {}).flatMap(({ id, at }: PipeNode) => {
    const was = before.nodes[id]?.at;
    return was && distance3_m(was, at) <= SAME_PLACE_m ? [] : [id];
  });

/** Puts a place where pipe turns or parts where it was measured; its neighbours stay straight as far as they can. */
export function buildMark(building: Building, thing: MeasuredThing, settled: Settled): void {
  const { about } = thing;
  if (about.kind !== 'node') return;
  const network = building.plan.networks[about.network];
  const node = network?.nodes[about.id];
  if (!network || !node) {
    building.notApplied(thing, 'the pipe that it marks has become one with another place.');
    return;
  }
  const known = settled.get(about.network) ?? new Set<string>();
  settled.set(about.network, known);
  const isSettled = known.has(about.id);
  const to = measuredPlace(building, thing, node.at, (_, now_m, value_m) => Math.abs(value_m - now_m) > (isSettled ? building.tolerance_m : SAME_PLACE_m));
  if (!to) {
    building.notApplied(thing, NO_DATUM);
    return;
  }
  known.add(about.id);
  if (distance3_m(to, node.at) <= SAME_PLACE_m) return;
  const refused = building.try(stretchPipes(about, to, 'stretch'), movePipeNode(about, to), placeNode(about, to));
  if (refused) {
    building.notApplied(thing, refused);
    return;
  }
  for (const id of movedSince(network, building.plan.networks[about.network])) known.add(id);
}

/** The height of an orifice as measured: above the floor, or below the ceiling as built. */
function orificeHeight_m(building: Building, { about, parts }: MeasuredThing, at: PlanPoint3): number {
  const [height, drop] = [parts.get('height'), parts.get('drop')];
  if (!drop) return height?.value_m ?? at.z;
  const frame = building.frameOf(about);
  const space = building.derived.spaces.find(({ key }) => key === frame?.space);
  const ceiling_m = space?.ceilingAt_m(at);
  if (ceiling_m === undefined) {
    if (!height) building.remark('not-applied', drop.dimension, `${drop.dimension.name} could not be taken into the plan: the ceiling over it is not known.`);
    return height?.value_m ?? at.z;
  }
  if (!height) return ceiling_m - drop.value_m;
  const off_m = Math.abs(ceiling_m - height.value_m - drop.value_m);
  if (off_m > building.tolerance_m) {
    building.remark('disagrees', drop.dimension, `${height.dimension.name} and ${drop.dimension.name} do not agree: together they miss the ceiling by ${building.length(off_m)}. The height above the floor is taken. Measure both again.`);
  }
  return height.value_m;
}

/** Hangs a nozzle where it was measured, as the program moves a nozzle: its drop goes along and the run before it stretches. */
export function buildNozzle(building: Building, thing: MeasuredThing): void {
  const { about } = thing;
  if (about.kind !== 'nozzle') return;
  const network = building.plan.networks[about.network];
  const node = network?.nodes[network.nozzles[about.id]?.node ?? ''];
  if (!network || !node) {
    building.notApplied(thing, 'the nozzle has lost its pipe end.');
    return;
  }
  const flat = measuredPlace(building, thing, node.at, () => true);
  if (!flat) {
    building.notApplied(thing, NO_DATUM);
    return;
  }
  const to = { x: flat.x, y: flat.y, z: orificeHeight_m(building, thing, flat) };
  if (distance3_m(to, node.at) <= SAME_PLACE_m) return;
  const end: RefOf<'node'> = { kind: 'node', network: about.network, id: node.id };
  const isOnRun = pipesAt(network, node.id).some((pipe) => !isUpright(network, pipe));
  const moves = isOnRun ? [stretchPipes(end, to, 'stretch'), placeNode(end, to)] : [moveNozzle(about, to), stretchPipes(end, to, 'stretch')];
  const refused = building.try(...moves);
  if (refused) building.notApplied(thing, refused);
}
