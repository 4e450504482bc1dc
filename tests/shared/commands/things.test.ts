import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addLevel } from '#shared/commands/add-level';
import { alignToWall } from '#shared/commands/align-to-wall';
import { copyThings } from '#shared/commands/copy-things';
import { deleteThings } from '#shared/commands/delete-things';
import { editNozzle } from '#shared/commands/edit-nozzle';
import { entryOf } from '#shared/model/find-thing';
import { cornerAfter, cornerOf, levelOf, nodeIn } from '#shared/commands/lookup';
import { mappedRing, nodesOfRefs, wholeRefs } from '#shared/commands/map-things';
import { mirrorThings } from '#shared/commands/mirror-things';
import { moveThings } from '#shared/commands/move-things';
import { rotateThings } from '#shared/commands/rotate-things';
import { wallLines } from '#shared/commands/rings';
import { JOIN_m, soundAngle_rad, soundCoordinate_m, soundName, soundPoint, soundPoint3, soundSize_m } from '#shared/commands/sound-value';
import { editUnderlay } from '#shared/commands/edit-underlay';
import { isCounterClockwise, rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { type Enclosure, type Plan, type Ref, ringOf } from '#shared/model/plan';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { done, doneAll, levelIn, networkIn, nozzlePlace, only, pipesAsText, refusal } from '../../support/try-command.ts';

/** One of everything; the room has a door near the west end of its south wall, hinged there. */
const everything = () =>
  planBuilder()
    .room(6, 4, 2.7, undefined, { slope: { at: { x: 0, y: 0 }, direction_rad: 0, rise: 0.1 } })
    .hole(rectangle(1, 1, planPoint(4, 2)))
    .opening(0, 1, 0.8)
    .ceilingZone(rectangle(2, 2), 2.4)
    .obstruction('beam', rectangle(0.3, 4, planPoint(3, 0)), 2.4, 2.7)
    .underlay()
    .dimension(planPoint(0, 0), planPoint(6, 0), 0.5)
    .note(1, 1, 'Check on site')
    .network()
    .cylinder(0.2, 2, Math.PI)
    .run([place3(0.2, 2, 2), place3(0.2, 2, 2.5), place3(2, 2, 2.5), place3(2, 2, 2.3)])
    .nozzle(2, 2, 2.3, [0, Math.PI / 2]);
const built = everything();
const { plan } = built;
const room = (of: Plan): Enclosure => only(levelIn(of).enclosures);
const beam: Ref = built.onLevel('obstruction');
const dimension: Ref = built.onLevel('dimension');
const note: Ref = built.onLevel('note');
const floor = built.onLevel('underlay');
const cylinder: Ref = built.inNetwork('cylinder');
const nozzle: Ref = built.lastNozzle;
const round = (value: number): number => Math.round(value * 1e6) / 1e6 + 0;
const ring = (places: readonly { x: number; y: number }[]): number[][] => places.map(({ x, y }) => [round(x), round(y)]);
const N = (of: Plan) => only(networkIn(of).nozzles);

/** Hinge and middle of the only door, on the plan. */
function doorOf(of: Plan): { middle: number[]; hinge: number[] } {
  const door = only(room(of).openings);
  const line = wallLines(room(of)).get(door.wall);
  if (!line) throw new Error('The door has lost its wall.');
  const length_m = Math.hypot(line.b.x - line.a.x, line.b.y - line.a.y);
  const at = (along_m: number): number[] => [line.a.x + ((line.b.x - line.a.x) * along_m) / length_m, line.a.y + ((line.b.y - line.a.y) * along_m) / length_m].map(round);
  return { middle: at(door.along_m), hinge: at(door.along_m + (door.hinge === 'start' ? -1 : 1) * (door.width_m / 2)) };
}

describe('moveThings', () => {
  test('shifts whatever is named', () => {
    const { next } = done(plan, moveThings([built.enclosure, beam, dimension, note, cylinder, floor], 1, -2));
    expect(ring(room(next).outline)).toEqual([[1, -2], [7, -2], [7, 2], [1, 2]]);
    expect(ring(room(next).holes[0] ?? [])).toContainEqual([5, 0]);
    expect(ring(only(room(next).ceilingZones).outline)).toContainEqual([1, -2]);
    expect(room(next).slope?.at).toEqual({ x: 1, y: -2 });
    expect(only(room(next).openings)).toEqual(only(room(plan).openings));
    expect(ring(only(levelIn(next).obstructions).footprint)).toContainEqual([4, -2]);
    expect(only(levelIn(next).dimensions)).toMatchObject({ a: { x: 1, y: -2 }, b: { x: 7, y: -2 }, offset_m: 0.5 });
    expect(only(levelIn(next).notes).at).toEqual({ x: 2, y: -1 });
    expect(only(levelIn(next).underlays).at).toEqual({ x: 1, y: -2 });
    expect(only(networkIn(next).cylinders).at).toEqual({ x: 1.2, y: 0 });
    expect(networkIn(next).nodes).toEqual(networkIn(plan).nodes);
  });
  test('does not move twice what is named twice, or with its whole', () => {
    const corner = built.corner(0);
    const { next } = done(plan, moveThings([built.enclosure, corner, built.wall(1), built.lastOpening, built.lastZone, built.enclosure], 1, 0));
    expect(next).toEqual(done(plan, moveThings([built.enclosure], 1, 0)).next);
    const network = done(plan, moveThings([built.networkRef, nozzle, cylinder], 0, 1)).next;
    expect(nozzlePlace(networkIn(network), nozzle.id)).toEqual([2, 3, 2.3]);
    expect(only(networkIn(network).cylinders).at).toEqual({ x: 0.2, y: 3 });
  });
  test('a nozzle takes its drop, runs stretch; several parts move once', () => {
    const pipes = Object.keys(networkIn(plan).pipes).map((id): Ref => ({ kind: 'pipe', network: built.networkId, id }));
    const drop = pipes.slice(-1);
    expect(pipesAsText(networkIn(done(plan, moveThings([nozzle, ...drop], 1, 0)).next))).toEqual(['0.2,2,2 → 0.2,2,2.5', '0.2,2,2.5 → 3,2,2.5', '3,2,2.5 → 3,2,2.3']);
    expect(pipesAsText(networkIn(done(plan, moveThings(pipes, 1, 1)).next))).toEqual(['1.2,3,2 → 1.2,3,2.5', '1.2,3,2.5 → 3,3,2.5', '3,3,2.5 → 3,3,2.3']);
  });
  test('up and down: obstructions with both faces, a nozzle by its drop, pipe as it is', () => {
    expect(only(levelIn(done(plan, moveThings([beam], 0, 0, -0.1)).next).obstructions)).toMatchObject({ bottom_m: 2.3, top_m: 2.6 });
    expect(nozzlePlace(networkIn(done(plan, moveThings([nozzle], 0, 0, -0.1)).next), nozzle.id)).toEqual([2, 2, 2.2]);
    expect(pipesAsText(networkIn(done(plan, moveThings([built.networkRef], 0, 0, 0.5)).next))).toEqual(['0.2,2,2.5 → 0.2,2,3', '0.2,2,3 → 2,2,3', '2,2,3 → 2,2,2.8']);
  });
  test('an opening slides along its wall, no further', () => {
    expect(only(room(done(plan, moveThings([built.lastOpening], 2, 5)).next).openings).along_m).toBeCloseTo(3, 9);
    expect(only(room(done(plan, moveThings([built.lastOpening], -9, 0)).next).openings).along_m).toBeCloseTo(0.4, 9);
  });
  test('corners and walls take their ends along', () => {
    expect(ring(room(done(plan, moveThings([built.corner(0), built.wall(0)], 0, -1)).next).outline)).toEqual([[0, -1], [6, -1], [6, 4], [0, 4]]);
  });
  test('is refused for what has gone, is locked, would cross, or would lie too far off', () => {
    expect(refusal(plan, moveThings([{ ...beam, id: 'gone' }], 1, 1))).toContain('obstacle is no longer');
    expect(refusal(plan, moveThings([built.corner(0)], 7, 5))).toMatch(/cross|past the walls|fit/);
    expect(refusal(plan, moveThings([beam], 1e6, 0))).toContain('too far off');
    expect(refusal(plan, moveThings([beam], Number.NaN, 0))).toContain('not a number');
    expect(refusal(done(plan, editUnderlay(floor, { locked: true })).next, moveThings([floor], 1, 0))).toContain('locked');
  });
});

describe('rotateThings', () => {
  test('a quarter turn is exact and turns every direction', () => {
    const { next } = done(plan, rotateThings([built.enclosure, beam, dimension, note, floor, built.networkRef], planPoint(0, 0), Math.PI / 2));
    expect(room(next).outline.map(({ x, y }) => [x + 0, y])).toEqual([[0, 0], [0, 6], [-4, 6], [-4, 0]]);
    expect(room(next).slope?.direction_rad).toBeCloseTo(Math.PI / 2, 12);
    expect(only(room(next).openings)).toEqual(only(room(plan).openings));
    expect(doorOf(next)).toEqual({ middle: [0, 1], hinge: [0, 0.6] });
    expect(ring(only(levelIn(next).obstructions).footprint)).toContainEqual([-4, 3]);
    expect(only(levelIn(next).underlays).rotation_rad).toBeCloseTo(Math.PI / 2, 12);
    expect(only(networkIn(next).cylinders)).toMatchObject({ at: { x: -2, y: 0.2 } });
    expect(only(networkIn(next).cylinders).back_rad).toBeCloseTo(1.5 * Math.PI, 12);
    expect(N(next)).toMatchObject({ holes_rad: [0, Math.PI / 2] });
    expect(N(next).rotation_rad).toBeCloseTo(Math.PI / 2, 12);
    expect(pipesAsText(networkIn(next))).toEqual(['-2,0.2,2 → -2,0.2,2.5', '-2,0.2,2.5 → -2,2,2.5', '-2,2,2.5 → -2,2,2.3']);
  });
  test('there and back is where it was', () => {
    const all = [built.enclosure, beam, dimension, note, built.networkRef];
    fc.assert(
      fc.property(fc.double({ min: -7, max: 7, noNaN: true }), fc.double({ min: -50, max: 50, noNaN: true }), (angle_rad, x) => {
        const back = doneAll(plan, rotateThings(all, planPoint(x, 3), angle_rad), rotateThings(all, planPoint(x, 3), -angle_rad));
        for (const [i, { x: cx, y: cy }] of room(back).outline.entries()) expect([cx, cy]).toEqual([expect.closeTo(room(plan).outline[i]?.x ?? 0, 7), expect.closeTo(room(plan).outline[i]?.y ?? 0, 7)]);
        expect(Math.cos(N(back).rotation_rad)).toBeCloseTo(1, 9);
      }),
      { numRuns: 30 },
    );
  });
  test('is refused for a door alone, a locked floor plan, and no direction', () => {
    expect(refusal(plan, rotateThings([built.lastOpening], planPoint(0, 0), 1))).toContain('turns with its wall');
    expect(refusal(plan, rotateThings([beam], planPoint(0, 0), Number.NaN))).toContain('degrees');
    expect(done(plan, rotateThings([beam], planPoint(0, 0), 2 * Math.PI)).patches).toEqual([]);
  });
});

describe('mirrorThings', () => {
  const axis = [planPoint(3, 0), planPoint(3, 1)] as const;
  test('changes sides: doors with their hinges, hole directions, slopes, dimensions', () => {
    const { next } = done(plan, mirrorThings([built.enclosure, beam, dimension, note, built.networkRef], ...axis));
    expect(isCounterClockwise(ringOf(room(next).outline))).toBe(true);
    expect(ring(room(next).outline).sort()).toEqual(ring(room(plan).outline).sort());
    expect(doorOf(plan)).toEqual({ middle: [1, 0], hinge: [0.6, 0] });
    expect(doorOf(next)).toEqual({ middle: [5, 0], hinge: [5.4, 0] });
    expect(room(next).slope?.direction_rad).toBeCloseTo(Math.PI, 9);
    expect(ring(room(next).holes[0] ?? [])).toContainEqual([1, 3]);
    expect(only(levelIn(next).dimensions)).toMatchObject({ a: { x: 6, y: 0 }, b: { x: 0, y: 0 }, offset_m: -0.5 });
    expect(Math.cos(only(networkIn(next).cylinders).back_rad)).toBeCloseTo(1, 9);
    const azimuths = N(next).holes_rad.map((hole_rad) => round(soundAngle_rad(hole_rad + N(next).rotation_rad)));
    expect(azimuths.sort()).toEqual([round(Math.PI / 2), round(Math.PI)].sort());
    expect(pipesAsText(networkIn(next))[0]).toBe('4,2,2.5 → 4,2,2.3');
  });
  test('every wall keeps its name: the west wall is then the east wall', () => {
    const west = built.wall(3).id;
    const line = wallLines(room(done(plan, mirrorThings([built.enclosure], ...axis)).next)).get(west);
    expect([line?.a.x, line?.b.x].map((x) => round(x ?? 0))).toEqual([6, 6]);
  });
  test('twice is where it was', () => {
    const all = [built.enclosure, beam, dimension, note, built.networkRef];
    fc.assert(
      fc.property(fc.double({ min: -9, max: 9, noNaN: true }), fc.double({ min: 0.1, max: 3, noNaN: true }), (x, dx) => {
        const across = mirrorThings(all, planPoint(x, 0), planPoint(x + dx, 2));
        const back = doneAll(plan, across, across);
        const close = (value: unknown): unknown => (typeof value === 'number' ? expect.closeTo(value, 6) : Array.isArray(value) ? value.map(close) : value !== null && typeof value === 'object' ? Object.fromEntries(Object.entries(value).map(([key, part]) => [key, close(part)])) : value);
        const corners = (of: Plan) => new Map(room(of).outline.map(({ id, x: cx, y: cy }) => [id, [cx, cy]]));
        for (const [id, at] of corners(plan)) expect(corners(back).get(id)).toEqual(close(at));
        expect(only(room(back).openings)).toEqual(close(only(room(plan).openings)));
        expect(networkIn(back).nodes).toEqual(close(networkIn(plan).nodes));
        for (const hole of [0, 1]) expect(Math.cos((N(back).holes_rad[hole] ?? 0) + N(back).rotation_rad - (N(plan).holes_rad[hole] ?? 0) - N(plan).rotation_rad)).toBeCloseTo(1, 9);
      }),
      { numRuns: 30 },
    );
  });
  test('is refused across a place, for a floor plan, and for a door alone', () => {
    expect(refusal(plan, mirrorThings([beam], planPoint(1, 1), planPoint(1, 1)))).toContain('two places apart');
    expect(refusal(plan, mirrorThings([floor], ...axis))).toContain('cannot be mirrored');
    expect(refusal(plan, mirrorThings([built.lastOpening], ...axis))).toContain('turns with its wall');
  });
});

describe('copyThings', () => {
  test('gives copies ids and names of their own', () => {
    const { next, created } = done(plan, copyThings([built.enclosure, beam, dimension, note, floor, cylinder], 10, 0));
    expect(created.map(({ kind }) => kind)).toEqual(['enclosure', 'obstruction', 'dimension', 'note', 'underlay', 'cylinder']);
    const [first, second] = Object.values(levelIn(next).enclosures);
    expect(first).toEqual(room(plan));
    expect(second).toMatchObject({ name: 'Room 2', height_m: 2.7, slope: { at: { x: 10, y: 0 } } });
    expect(ring(second?.outline ?? [])).toEqual([[10, 0], [16, 0], [16, 4], [10, 4]]);
    const ids = (of: Enclosure | undefined) => [of?.id, ...[of?.outline ?? [], ...(of?.holes ?? [])].flat().map(({ id }) => id), ...Object.keys(of?.openings ?? {}), ...Object.keys(of?.ceilingZones ?? {})];
    expect(ids(first).filter((id) => ids(second).includes(id))).toEqual([]);
    expect(Object.values(second?.openings ?? {})[0]?.wall).toBe(second?.outline[0]?.id);
    expect(Object.values(levelIn(next).obstructions).map(({ name }) => name)).toEqual(['beam', 'Beam 1']);
    expect(Object.values(networkIn(next).cylinders).map(({ name }) => name)).toEqual(['C1', 'C2']);
    expect(Object.keys(next.assets)).toHaveLength(1);
  });
  test('copies pipe where both its ends are copied, into the same network', () => {
    const pipes = Object.keys(networkIn(plan).pipes).map((id): Ref => ({ kind: 'pipe', network: built.networkId, id }));
    const { next, created } = done(plan, copyThings([nozzle, ...pipes.slice(1)], 0, 5));
    expect(pipesAsText(networkIn(next))).toEqual([...pipesAsText(networkIn(plan)), '0.2,7,2.5 → 2,7,2.5', '2,7,2.5 → 2,7,2.3'].sort());
    expect(Object.values(networkIn(next).nozzles).map(({ name }) => name)).toEqual(['N1', 'N2']);
    expect(created.map(({ kind }) => kind)).toEqual(['pipe', 'pipe', 'nozzle']);
    expect(Object.values(networkIn(done(plan, copyThings([nozzle], 0, 5)).next).pipes)).toHaveLength(3);
  });
  test('copies a whole network into a new one, source and all', () => {
    const { next, created } = done(plan, copyThings([built.networkRef, nozzle], 20, 0));
    expect(created).toHaveLength(1);
    const copy = next.networks[created[0]?.id ?? ''];
    expect(copy).toMatchObject({ name: 'Network 2', level: 'level-0', profile: 'sample-80' });
    expect(copy?.nodes[copy.source ?? '']?.at).toEqual({ x: 20.2, y: 2, z: 2 });
    expect(Object.values(copy?.nozzles ?? {}).map(({ name }) => name)).toEqual(['N2']);
  });
  test('a cylinder with the pipe that begins on it makes a network of its own, part by part', () => {
    const pipes = Object.keys(networkIn(plan).pipes).map((id): Ref => ({ kind: 'pipe', network: built.networkId, id }));
    const { next, created } = done(plan, copyThings([cylinder, nozzle, ...pipes], 20, 0));
    const [first, second] = Object.values(next.networks);
    expect(first).toEqual(networkIn(plan));
    expect(second).toMatchObject({ name: 'Network 2', level: 'level-0', profile: 'sample-80' });
    expect(second?.nodes[second.source ?? '']?.at).toEqual({ x: 20.2, y: 2, z: 2 });
    expect(Object.values(second?.cylinders ?? {}).map(({ name, at }) => [name, at.x])).toEqual([['C2', 20.2]]);
    expect(pipesAsText(second ?? networkIn(plan))).toHaveLength(3);
    expect(created.map((ref) => [ref.kind, 'network' in ref && ref.network === second?.id])).toEqual([['cylinder', true], ['pipe', true], ['pipe', true], ['pipe', true], ['nozzle', true]]);
  });
  test('a copied nozzle serves the copy of its room', () => {
    const serving = done(plan, editNozzle(built.lastNozzle, { serves: { enclosure: room(plan).id, space: 'room' } })).next;
    const { next } = done(serving, copyThings([built.enclosure, built.networkRef], 20, 0));
    const [, copy] = Object.values(levelIn(next).enclosures);
    const served = Object.values(next.networks).map((network) => only(network.nozzles).serves?.enclosure);
    expect(served).toEqual([room(plan).id, copy?.id]);
    expect(N(done(serving, copyThings([built.enclosure], 20, 0)).next).serves?.enclosure).toBe(room(plan).id);
  });
  test('comes onto another level, in its place there, with a network of its own', () => {
    const two = done(plan, addLevel('Upper', 3)).next;
    const upper = Object.keys(two.levels)[1] ?? '';
    const serving = done(two, editNozzle(built.lastNozzle, { serves: { enclosure: room(plan).id, space: 'room' } })).next;
    const { next, created } = done(serving, copyThings([built.enclosure, beam, dimension, note, floor, nozzle], 0, 0, upper));
    const level = next.levels[upper];
    expect(level?.enclosures[created[0]?.id ?? '']?.outline.map(({ x, y }) => [x, y])).toEqual(ring(room(plan).outline));
    for (const kind of ['obstructions', 'dimensions', 'notes', 'underlays'] as const) expect(Object.keys(level?.[kind] ?? {})).toHaveLength(1);
    expect(Object.values(next.networks).map((network) => network.level)).toEqual(['level-0', upper]);
    expect(created.at(-1)).toMatchObject({ kind: 'nozzle', network: Object.keys(next.networks)[1] });
    const alone = done(serving, copyThings([built.networkRef], 0, 0, upper)).next;
    expect(Object.values(alone.networks).map((network) => [network.level, only(network.nozzles).serves?.enclosure])).toEqual([['level-0', room(plan).id], [upper, undefined]]);
    expect(refusal(two, copyThings([built.lastOpening], 1, 0, upper))).toContain('Copy the enclosure');
    expect(refusal(two, copyThings([beam], 0, 0, 'level-0'))).toContain('lie on the first');
  });
  test('copies a door along its wall, and a zone within its room', () => {
    const { next } = done(plan, copyThings([built.lastOpening, built.lastZone], 2, 0));
    expect(Object.values(room(next).openings).map(({ name, along_m }) => [name, round(along_m)])).toEqual([['Door 1', 1], ['Door 2', 3]]);
    expect(Object.values(room(next).ceilingZones).map(({ name }) => name)).toEqual(['Zone 1', 'Zone 2']);
  });
  test('is refused onto itself, for a wall alone, and for what has gone', () => {
    expect(refusal(plan, copyThings([beam], 0, 0))).toContain('lie on the first');
    expect(refusal(plan, copyThings([beam], Number.NaN, 0))).toContain('not a number');
    expect(refusal(plan, copyThings([built.wall(0)], 1, 0))).toContain('cannot be copied on its own');
    expect(refusal(plan, copyThings([{ ...nozzle, id: 'gone' }], 1, 0))).toContain('nozzle is no longer');
    expect(refusal(plan, copyThings([{ kind: 'pipe', network: built.networkId, id: 'gone' }], 1, 0))).toContain('pipe is no longer');
  });
});

describe('deleteThings', () => {
  test('takes away what is named, an imported file with its last floor plan', () => {
    const { next } = done(plan, deleteThings([built.enclosure, built.lastOpening, beam, dimension, note, floor, built.networkRef, nozzle]));
    expect(levelIn(next)).toMatchObject({ enclosures: {}, obstructions: {}, dimensions: {}, notes: {}, underlays: {} });
    expect(next).toMatchObject({ networks: {}, assets: {} });
    const twice = done(plan, copyThings([floor], 1, 0)).next;
    expect(Object.keys(done(twice, deleteThings([floor])).next.assets)).toHaveLength(1);
  });
  test('a nozzle leaves its pipe; a free one takes its place along', () => {
    const { next } = done(plan, deleteThings([nozzle]));
    expect(networkIn(next)).toMatchObject({ nozzles: {}, pipes: networkIn(plan).pipes, nodes: networkIn(plan).nodes });
    const free = planBuilder().network().nozzle(1, 1, 2);
    expect(done(free.plan, deleteThings([free.lastNozzle])).next.networks).toEqual({});
  });
  test('a node takes its pipes along, but not a nozzle', () => {
    const { next } = done(plan, deleteThings([built.nodeAt(2, 2, 2.5)]));
    expect(pipesAsText(networkIn(next))).toEqual(['0.2,2,2 → 0.2,2,2.5']);
    expect(nozzlePlace(networkIn(next), nozzle.id)).toEqual([2, 2, 2.3]);
    const bare = done(plan, deleteThings([built.nodeAt(2, 2, 2.3)])).next;
    expect(pipesAsText(networkIn(bare))).toHaveLength(2);
    expect(Object.keys(networkIn(bare).nozzles)).toHaveLength(1);
  });
  test('pipe takes loose ends along, and the source', () => {
    const all = Object.keys(networkIn(plan).pipes).map((id): Ref => ({ kind: 'pipe', network: built.networkId, id }));
    const { next } = done(plan, deleteThings(all));
    expect(networkIn(next)).toMatchObject({ pipes: {}, source: null });
    expect(Object.keys(networkIn(next).nodes)).toHaveLength(1);
    expect(Object.keys(done(plan, deleteThings([...all, nozzle, cylinder])).next.networks)).toEqual([]);
  });
  test('where a branch has gone, the two pieces of the main are one again', () => {
    const main = planBuilder().network().run([place3(0, 0, 2), place3(4, 0, 2), place3(8, 0, 2)]).run([place3(4, 0, 2), place3(4, 3, 2)]);
    expect(pipesAsText(networkIn(done(main.plan, deleteThings([main.inNetwork('pipe')])).next))).toEqual(['0,0,2 → 8,0,2']);
    const unlike = planBuilder().network().run([place3(0, 0, 2), place3(4, 0, 2)], '1').run([place3(4, 0, 2), place3(8, 0, 2)], '3/4').run([place3(4, 0, 2), place3(4, 3, 2)]);
    expect(pipesAsText(networkIn(done(unlike.plan, deleteThings([unlike.inNetwork('pipe')])).next))).toHaveLength(2);
    const bend = planBuilder().network().run([place3(0, 0, 2), place3(4, 0, 2), place3(4, 5, 2)]).run([place3(4, 0, 2), place3(4, 0, 3)]);
    expect(pipesAsText(networkIn(done(bend.plan, deleteThings([bend.inNetwork('pipe')])).next))).toHaveLength(2);
  });
  test('an enclosure lets go of the nozzles that serve it', () => {
    const served = structuredClone(plan);
    N(served).serves = { enclosure: built.enclosure.id, space: 'under-floor' };
    expect(N(done(served, deleteThings([built.enclosure])).next).serves).toBeNull();
  });
  test('corners go together; a shaft goes by its wall, or with too many of its corners', () => {
    const five = planBuilder().outline([planPoint(0, 0), planPoint(3, 0), planPoint(6, 0), planPoint(6, 4), planPoint(0, 4)], 3).opening(1, 1, 0.8);
    expect(ring(room(done(five.plan, deleteThings([five.corner(1)])).next).outline)).toEqual([[0, 0], [6, 0], [6, 4], [0, 4]]);
    expect(only(room(done(five.plan, deleteThings([five.corner(1)])).next).openings)).toMatchObject({ wall: five.corner(0).id, along_m: 4 });
    const shaft = room(plan).holes[0] ?? [];
    const side: Ref = { ...built.wall(0), id: shaft[1]?.id ?? '' };
    expect(room(done(plan, deleteThings([side])).next).holes).toEqual([]);
    const corners = shaft.slice(0, 2).map(({ id }): Ref => ({ ...built.corner(0), id }));
    expect(room(done(plan, deleteThings(corners)).next).holes).toEqual([]);
    expect(room(done(plan, deleteThings(corners.slice(0, 1))).next).holes[0]).toHaveLength(3);
  });
  test('is refused for what has gone, a wall of an outline, and corners that it cannot do without', () => {
    expect(refusal(plan, deleteThings([{ ...beam, id: 'gone' }]))).toContain('obstacle is no longer');
    expect(refusal(plan, deleteThings([{ ...cylinder, id: 'gone' }]))).toContain('cylinder is no longer');
    expect(refusal(plan, deleteThings([built.wall(0)]))).toContain('cannot go alone');
    expect(refusal(plan, deleteThings([built.corner(0), built.corner(1)]))).toContain('three corners');
  });
});

describe('alignToWall', () => {
  test('brings things to their distance from a wall’s face', () => {
    const { next } = done(plan, alignToWall([nozzle, cylinder, beam, note], built.wall(0), 1.5));
    expect(nozzlePlace(networkIn(next), nozzle.id)).toEqual([2, 1.5, 2.3]);
    expect(only(networkIn(next).cylinders).at).toEqual({ x: 0.2, y: 1.5 });
    expect(ring(only(levelIn(next).obstructions).footprint)).toContainEqual([3, 1.5]);
    expect(only(levelIn(next).notes).at).toEqual({ x: 1, y: 1.5 });
  });
  test('measures into the room, whichever way the wall runs', () => {
    expect(nozzlePlace(networkIn(done(plan, alignToWall([nozzle], built.wall(2), 0.254)).next), nozzle.id)).toEqual([2, 3.746, 2.3]);
    expect(nozzlePlace(networkIn(done(plan, alignToWall([nozzle], built.wall(1), 0.254)).next), nozzle.id)).toEqual([5.746, 2, 2.3]);
  });
  test('lays a pipe along the wall by both its ends', () => {
    const skew = planBuilder().room(6, 4, 3).network().run([place3(1, 1, 2), place3(5, 2, 2)]);
    expect(pipesAsText(networkIn(done(skew.plan, alignToWall([skew.inNetwork('pipe')], skew.wall(0), 0.5)).next))).toEqual(['1,0.5,2 → 5,0.5,2']);
  });
  test('is refused for kinds without a place, a wall that has gone, and no distance', () => {
    expect(refusal(plan, alignToWall([built.enclosure], built.wall(0), 1))).toContain('Only nozzles');
    expect(refusal(plan, alignToWall([nozzle], { ...built.wall(0), id: 'gone' }, 1))).toContain('wall is no longer');
    expect(refusal(plan, alignToWall([nozzle], built.wall(0), Number.NaN))).toContain('not a number');
    expect(refusal(plan, alignToWall([{ ...nozzle, id: 'gone' }], built.wall(0), 1))).toContain('nozzle is no longer');
  });
});

describe('parts that commands are made of', () => {
  test('lookups find what is there and nothing that every object has', () => {
    expect(entryOf(plan.levels, 'toString')).toBeUndefined();
    expect(levelOf(plan, 'level-0').name).toBe('Level 1');
    expect(() => nodeIn(networkIn(plan), 'gone')).toThrow('lost its place');
    const { ring: corners, index, isHole } = cornerOf(plan, built.corner(3));
    expect([index, isHole, cornerAfter(corners, index).id]).toEqual([3, false, built.corner(0).id]);
  });
  test('parts of a whole that is named are left out', () => {
    expect(wholeRefs([built.enclosure, built.corner(0), beam, beam])).toEqual([built.enclosure, beam]);
    expect([...nodesOfRefs(plan, [nozzle]).values()].map(({ size }) => size)).toEqual([1]);
    expect(mappedRing(rectangle(1, 1), { point: ({ x, y }) => ({ x: x + 1, y }), direction: (a) => a, isMirrored: false, isShift: true })[0]).toEqual({ x: 1, y: 0 });
  });
  test('values are sound or refused', () => {
    expect(JOIN_m).toBe(0.001);
    expect(soundPoint({ ...planPoint(1, 2), space: 'plan' })).toEqual({ x: 1, y: 2 });
    expect(soundPoint3(place3(1, 2, 3))).toEqual({ x: 1, y: 2, z: 3 });
    expect(soundCoordinate_m(-3)).toBe(-3);
    expect(soundName('A room', ' Hut ')).toBe('Hut');
    for (const bad of [() => soundSize_m('Width', 0), () => soundCoordinate_m(1e9), () => soundAngle_rad(Number.NaN), () => soundName('A room', ''), () => soundName('A room', 'x'.repeat(201))]) expect(bad).toThrow();
  });
});
