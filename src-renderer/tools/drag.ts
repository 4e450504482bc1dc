import { type Command, sequence } from '#shared/commands/command';
import { editCylinder } from '#shared/commands/edit-cylinder';
import { editDevice } from '#shared/commands/edit-device';
import { editDimension } from '#shared/commands/edit-dimension';
import { editOpening } from '#shared/commands/edit-opening';
import { editSupport } from '#shared/commands/edit-support';
import { moveCorner } from '#shared/commands/move-corner';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { movePipeNode } from '#shared/commands/move-pipe-node';
import { moveThings } from '#shared/commands/move-things';
import { moveWall } from '#shared/commands/move-wall';
import { placeUnderlay } from '#shared/commands/place-underlay';
import { stretchPipes } from '#shared/commands/stretch-pipes';
import { axisAngle_rad } from '#shared/geometry/angle';
import { type PlanPoint, type PlanPoint3, bearing_rad, distance_m, midpoint, polar } from '#shared/geometry/point';
import { alongSegment_m, nearestOnSegment } from '#shared/geometry/segment';
import { SAME_PLACE_m } from '#shared/geometry/tolerance';
import { type FoundThing, findThing } from '#shared/model/find-thing';
import { heldPipe } from '#shared/model/held-pipe';
import type { Network, Plan, Ref, RefOf } from '#shared/model/plan';
import type { PipeMove } from '../store/state.ts';
import { cylinderPlace, cylinderRadius_m } from './cylinder-place.ts';
import { devicePlace } from './device-place.ts';
import { dimensionLine, leftOf_m, openingSegment, wallsOf } from './level-things.ts';
import { pipesAt, stackOf } from './network-hits.ts';
import { placeOnPipe } from './support-place.ts';
import type { ToolView } from './tool.ts';
import { keptWithin_m } from './wall-place.ts';

/** How a thing follows the pointer. */
export interface Drag {
  /** Place of the thing that is brought to where the pointer catches. */
  readonly grab: PlanPoint;
  /** Things that move, with all that hangs on them. */
  readonly without: readonly Ref[];
  /** Direction in which alone it moves, to and fro [rad]; undefined where it moves freely. */
  readonly along_rad?: number;
  /** What bringing the grab place to another place does. */
  readonly commandTo: (to: PlanPoint) => Command;
}

/** Parts of a thing that catch while it stands still: its nodes too. */
function carriedBy(plan: Plan, ref: Ref): Ref[] {
  const found = findThing(plan, ref);
  if (found?.kind === 'nozzle') return [ref, ...stackOf(found.network, found.thing.node)];
  if (found?.kind === 'pipe') return [ref, ...stackOf(found.network, found.thing.from), ...stackOf(found.network, found.thing.to)];
  if (found?.kind === 'node') return stackOf(found.network, found.thing.id);
  if (found?.kind === 'network') {
    const { id, nodes, pipes, cylinders } = found.thing;
    return [
      ...Object.keys(nodes).map((node): Ref => ({ kind: 'node', network: id, id: node })),
      ...Object.keys(pipes).map((pipe): Ref => ({ kind: 'pipe', network: id, id: pipe })),
      ...Object.keys(cylinders).map((cylinder): Ref => ({ kind: 'cylinder', network: id, id: cylinder })),
    ];
  }
  return [ref];
}

/** The pipes of the straight level run that a pipe is part of: they slide together, so that the run stays straight. */
function straightRun(network: Network, pipeId: string): RefOf<'pipe'>[] {
  const run = new Set([pipeId]);
  for (const id of run) {
    const pipe = network.pipes[id];
    const a = pipe && network.nodes[pipe.from]?.at;
    const b = pipe && network.nodes[pipe.to]?.at;
    if (!pipe || !a || !b || distance_m(a, b) <= SAME_PLACE_m) continue;
    for (const next of [...pipesAt(network, pipe.from), ...pipesAt(network, pipe.to)]) {
      const [one, other] = [network.nodes[next.from]?.at, network.nodes[next.to]?.at];
      if (one && other && distance_m(one, other) > SAME_PLACE_m && axisAngle_rad(bearing_rad(one, other), bearing_rad(a, b)) < 1e-6) run.add(next.id);
    }
  }
  return [...run].map((id) => ({ kind: 'pipe', network: network.id, id }));
}

const shift = (refs: readonly Ref[], grab: PlanPoint, without: readonly Ref[]): Drag => ({
  grab,
  without,
  commandTo: (to) => moveThings([...refs], to.x - grab.x, to.y - grab.y),
});

/** Corner of a ring that the press was nearest to, within reach; else the place pressed. */
function nearestCorner(ring: readonly PlanPoint[], pressed: PlanPoint, reach_m: number): PlanPoint {
  const nearest = [...ring].sort((a, b) => distance_m(a, pressed) - distance_m(b, pressed))[0];
  return nearest && distance_m(nearest, pressed) <= reach_m ? nearest : pressed;
}

function dragPipe({ network, thing, ref }: FoundThing<'pipe'>, plan: Plan, pressed: PlanPoint): Drag | undefined {
  const a = network.nodes[thing.from]?.at;
  const b = network.nodes[thing.to]?.at;
  if (!a || !b) return undefined;
  const run = straightRun(network, thing.id);
  const segment = { a: { x: a.x, y: a.y }, b: { x: b.x, y: b.y } };
  const grab = nearestOnSegment(pressed, segment);
  const isUpright = distance_m(a, b) <= SAME_PLACE_m;
  return {
    grab,
    without: run.flatMap((pipe) => carriedBy(plan, pipe)),
    ...(isUpright ? {} : { along_rad: bearing_rad(a, b) + Math.PI / 2 }),
    commandTo(to) {
      if (isUpright) return moveThings([ref], to.x - grab.x, to.y - grab.y);
      // A level run slides sideways, so that what is square to it stays square.
      const aside = polar({ x: 0, y: 0 }, bearing_rad(a, b) + Math.PI / 2, leftOf_m(to, segment));
      return moveThings(run, aside.x, aside.y);
    },
  };
}

function dragCylinder(found: FoundThing<'cylinder'>, view: ToolView): Drag {
  const { network, thing, ref } = found;
  const grab = { x: thing.at.x, y: thing.at.y };
  const source = network.source === null ? undefined : network.nodes[network.source];
  const stands = source && distance_m(source.at, thing.at) <= SAME_PLACE_m ? source : undefined;
  const radius_m = cylinderRadius_m(view.plan.profiles[network.profile]);
  return {
    grab,
    without: [ref, ...(stands ? stackOf(network, stands.id) : [])],
    commandTo(to) {
      const { at, back_rad, wall } = cylinderPlace(view.plan.levels[view.session.level], to, to, radius_m);
      const edit = editCylinder(ref, { at, back_rad: wall ? back_rad : thing.back_rad });
      // Pipe that begins on the cylinder goes with it.
      return stands ? sequence('Move cylinder', [edit, movePipeNode({ kind: 'node', network: network.id, id: stands.id }, { x: at.x, y: at.y, z: stands.at.z })]) : edit;
    },
  };
}

/** A support slides along its pipe, clear of the fittings at its ends; on upright pipe the section strip moves it. */
function dragSupport({ network, thing, ref }: FoundThing<'support'>): Drag | undefined {
  const held = heldPipe(network, thing.at);
  const [a, b] = [network.nodes[held?.from ?? '']?.at, network.nodes[held?.to ?? '']?.at];
  if (!held || !a || !b || distance_m(a, b) <= SAME_PLACE_m) return undefined;
  return {
    grab: { x: thing.at.x, y: thing.at.y },
    without: [ref],
    along_rad: bearing_rad(a, b),
    commandTo: (to) => editSupport(ref, { at: placeOnPipe(a, b, to) }),
  };
}

/** Moves a place where pipes meet, with what is to go along. */
export const movePlace = (ref: RefOf<'node'>, to: PlanPoint3, how: PipeMove): Command => (how === 'alone' ? movePipeNode(ref, to) : stretchPipes(ref, to, how));

/** How far a drag brings its thing toward a place: straight there, or along the one direction it has. */
export function reachedBy({ grab, along_rad }: Drag, to: PlanPoint): PlanPoint {
  return along_rad === undefined ? to : polar(grab, along_rad, (to.x - grab.x) * Math.cos(along_rad) + (to.y - grab.y) * Math.sin(along_rad));
}

/**
 * How a thing, or the selection it is part of, is dragged from where it was pressed.
 * @param how what goes along with a place where pipes meet
 * @returns undefined for what cannot be dragged
 */
export function dragOf(view: ToolView, hit: Ref, group: readonly Ref[], pressed: PlanPoint, reach_m: number, how: PipeMove = view.session.toolOptions.pipeMove): Drag | undefined {
  const { plan } = view;
  if (group.length > 1) {
    const first = findThing(plan, hit);
    const grab = first?.kind === 'nozzle' ? first.network.nodes[first.thing.node]?.at : first?.kind === 'node' || first?.kind === 'cylinder' ? first.thing.at : undefined;
    return shift(group, grab ? { x: grab.x, y: grab.y } : pressed, group.flatMap((ref) => carriedBy(plan, ref)));
  }
  const found = findThing(plan, hit);
  switch (found?.kind) {
    case 'corner': {
      const { ref, thing } = found;
      return { grab: { x: thing.x, y: thing.y }, without: [ref], commandTo: (to) => moveCorner(ref, { x: to.x, y: to.y }) };
    }
    case 'wall': {
      const wall = wallsOf(found.level.id, found.enclosure).find(({ ref }) => ref.id === found.thing.id);
      if (!wall) return undefined;
      const { segment } = wall;
      return {
        grab: nearestOnSegment(pressed, segment),
        without: [wall.ref, { ...wall.ref, id: wall.after }],
        along_rad: bearing_rad(segment.a, segment.b) + Math.PI / 2,
        commandTo: (to) => moveWall(wall.ref, leftOf_m(to, segment)),
      };
    }
    case 'node': {
      const { ref, network, thing } = found;
      const { x, y, z } = thing.at;
      return { grab: { x, y }, without: stackOf(network, thing.id), commandTo: (to) => movePlace(ref, { x: to.x, y: to.y, z }, how) };
    }
    case 'pipe':
      return dragPipe(found, plan, pressed);
    case 'nozzle': {
      const { ref, network, thing } = found;
      const at = network.nodes[thing.node]?.at;
      return at && { grab: { x: at.x, y: at.y }, without: carriedBy(plan, ref), commandTo: (to) => moveNozzle(ref, { x: to.x, y: to.y, z: at.z }) };
    }
    case 'support':
      return dragSupport(found);
    case 'cylinder':
      return dragCylinder(found, view);
    case 'opening': {
      const { ref, level, enclosure, thing } = found;
      const wall = wallsOf(level.id, enclosure).find((each) => each.ref.id === thing.wall);
      const jambs = openingSegment(level.id, enclosure, thing);
      if (!wall || !jambs) return undefined;
      return {
        grab: midpoint(jambs.a, jambs.b),
        without: [ref],
        along_rad: bearing_rad(wall.segment.a, wall.segment.b),
        commandTo: (to) => editOpening(ref, { along_m: keptWithin_m(wall, alongSegment_m(to, wall.segment), thing.width_m / 2) }),
      };
    }
    case 'dimension': {
      const { ref, thing } = found;
      return { grab: nearestOnSegment(pressed, dimensionLine(thing)), without: [ref], along_rad: bearing_rad(thing.a, thing.b) + Math.PI / 2, commandTo: (to) => editDimension(ref, { offset_m: leftOf_m(to, thing) }) };
    }
    case 'underlay': {
      const { ref, thing } = found;
      if (thing.locked) return undefined;
      const grab = view.snap(pressed, reach_m).kind === 'underlay' ? view.snap(pressed, reach_m).at : pressed;
      return { grab, without: [ref], commandTo: (to) => placeUnderlay(ref, { at: { x: thing.at.x + to.x - grab.x, y: thing.at.y + to.y - grab.y } }) };
    }
    case 'obstruction':
      return shift([hit], nearestCorner(found.thing.footprint, pressed, reach_m), [hit]);
    case 'ceiling-zone':
      return shift([hit], nearestCorner(found.thing.outline, pressed, reach_m), [hit]);
    case 'adjoining':
      return shift([hit], nearestCorner(found.thing.outline, pressed, reach_m), [hit]);
    case 'device': {
      const { ref, thing, level } = found;
      return {
        grab: { x: thing.at.x, y: thing.at.y },
        without: [hit],
        commandTo(to) {
          const { at, facing_rad, wall } = devicePlace(level, thing.kind, to, to);
          return editDevice(ref, { at, facing_rad: wall ? facing_rad : thing.facing_rad });
        },
      };
    }
    case 'note':
      return shift([hit], { x: found.thing.at.x, y: found.thing.at.y }, [hit]);
    default:
      return undefined;
  }
}
