import { produce } from 'immer';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { elevationsOf } from '#shared/elevation/elevations-of';
import { elevationLayout } from '#shared/sheets/elevation-frame';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { moveNozzle } from '#shared/commands/move-nozzle';
import type { Cylinder, Plan } from '#shared/model/plan';
import { wallKeeper } from '../../../src-renderer/canvas/cylinder-wall/keep-walls.ts';
import { stripPx, wallCommand, wallHandleAt, wallHandles, wallThingAt } from '../../../src-renderer/canvas/cylinder-wall/wall-pick.ts';
import { WALL_SIZES, fittedWall, paperScale, wallPlace, wallPx, zoomedWall } from '../../../src-renderer/canvas/cylinder-wall/wall-view.ts';

const { plan } = await buildDemo('F2');
const [elevation] = elevationsOf(derivePlan(plan));
if (!elevation) throw new Error('The annex has a cylinder wall.');
const view = fittedWall(elevation, 600, 700, 'feet');
const layoutAt = (at: typeof view) => elevationLayout(elevation, paperScale(at), WALL_SIZES, 'feet');
const layout = layoutAt(view);
const first = elevation.cylinders[0];
if (!first) throw new Error('The wall has its cylinders.');

describe('the view of the wall', () => {
  test('fits into its board and reads places back', () => {
    expect(layout.width_mm * 3.6).toBeLessThanOrEqual(600 + 1e-6);
    expect(layout.height_mm * 3.6).toBeLessThanOrEqual(700 + 1e-6);
    const there = wallPlace(view, layout, wallPx(view, layout, { s: 1.2, z: 0.7 }));
    expect(there.s).toBeCloseTo(1.2, 9);
    expect(there.z).toBeCloseTo(0.7, 9);
  });

  test('zooming holds the place under the pointer', () => {
    const pointer = { x: 210, y: 330 };
    const before = wallPlace(view, layout, pointer);
    const near = zoomedWall(view, layoutAt, pointer, 2.5);
    const after = wallPlace(near, layoutAt(near), pointer);
    expect(after.s).toBeCloseTo(before.s, 9);
    expect(after.z).toBeCloseTo(before.z, 9);
    expect(near.scale_px_m).toBeCloseTo(2.5 * view.scale_px_m, 9);
  });
});

describe('picking on the wall', () => {
  test('a cylinder by its body and by its circle on the floor, pipe by its line', () => {
    expect(wallThingAt(elevation, view, layout, wallPx(view, layout, { s: first.at.s, z: 0.3 }), 8)).toEqual(first.ref);
    expect(wallThingAt(elevation, view, layout, stripPx(view, layout, first.at), 8)).toEqual(first.ref);
    const pipe = elevation.pipes.find(({ from, to }) => Math.abs(from.z - to.z) > 1);
    if (!pipe) throw new Error('Pipe drops along the wall.');
    expect(wallThingAt(elevation, view, layout, wallPx(view, layout, { s: pipe.from.s, z: 1.5 }), 8)).toEqual(pipe.pipe.ref);
    expect(wallThingAt(elevation, view, layout, { x: 1, y: 1 }, 8)).toBeUndefined();
  });

  test('rail, restraint and gauge by their heights', () => {
    expect(wallHandles(elevation).map(({ kind }) => kind)).toEqual(['gauge', 'gauge', 'gauge', 'gauge', 'gauge', 'rail', 'restraint']);
    const between = (elevation.cylinders[0]?.at.s ?? 0) + 0.178;
    expect(wallHandleAt(elevation, view, layout, wallPx(view, layout, { s: between, z: 1.2192 }), 8)).toMatchObject({ kind: 'rail' });
    expect(wallHandleAt(elevation, view, layout, wallPx(view, layout, { s: between, z: 0.6096 }), 8)).toMatchObject({ kind: 'restraint' });
    expect(wallHandleAt(elevation, view, layout, wallPx(view, layout, { s: first.at.s, z: 1.524 }), 8)).toMatchObject({ kind: 'gauge', cylinders: [{ ref: first.ref }] });
  });
});

describe('dragging a height', () => {
  const moved = (kind: string, to_m: number) => {
    const handle = wallHandles(elevation).find((each) => each.kind === kind);
    const outcome = handle && wallCommand(handle, to_m)(plan);
    if (!outcome?.ok) throw new Error('The height can be changed.');
    return { label: outcome.label, cylinders: Object.values(Object.values(outcome.next.networks)[0]?.cylinders ?? {}) };
  };

  test('a rail takes all its cylinders along, in one step', () => {
    const { label, cylinders } = moved('rail', 1.3);
    expect(label).toBe('Move rail');
    expect(cylinders.map(({ railHeight_m }) => railHeight_m)).toEqual([1.3, 1.3, 1.3, 1.3, 1.3]);
  });

  test('a restraint takes along those at its height and leaves the rest', () => {
    expect(moved('restraint', 0.5).cylinders.map(({ restraints_m }) => restraints_m)).toEqual([[0.5], [0.5], [0.5], [0.5], [0.5]]);
  });

  test('a gauge moves alone and keeps its direction', () => {
    const { cylinders } = moved('gauge', 1.4);
    expect(cylinders.filter(({ gauge }) => gauge?.height_m === 1.4)).toHaveLength(1);
    expect(new Set(cylinders.map(({ gauge }) => gauge?.facing_rad)).size).toBe(1);
  });
});

describe('what is kept of the wall', () => {
  const { id, nozzles, nodes } = elevation.network.network;
  const wallOf = (keep: ReturnType<typeof wallKeeper>, of: Plan) => keep(elevationsOf(derivePlan(of)))[0];
  const edited = (change: (draft: Plan) => void): Plan => produce(plan, change);

  test('a nozzle that is dragged elsewhere leaves the very same wall', () => {
    const keep = wallKeeper();
    const before = wallOf(keep, plan);
    const far = Object.values(nozzles).find(({ node }) => !elevation.pipes.some(({ pipe: { pipe } }) => pipe.from === node || pipe.to === node));
    const at = nodes[far?.node ?? '']?.at;
    if (!far || !at) throw new Error('A nozzle hangs away from the wall.');
    const moved = moveNozzle({ kind: 'nozzle', network: id, id: far.id }, { ...at, z: at.z - 0.05 })(plan);
    if (!moved.ok) throw new Error(moved.reason);
    expect(moved.next).not.toBe(plan);
    expect(wallOf(keep, moved.next)).toBe(before);
  });

  const everyCylinder = (change: (one: Cylinder) => void) => (draft: Plan): void => {
    for (const one of Object.values(draft.networks[id]?.cylinders ?? {})) change(one);
  };
  test.each<[string, (draft: Plan) => void]>([
    ['a rail', everyCylinder((one) => { one.railHeight_m = 1.07; })],
    ['a cylinder’s name', everyCylinder((one) => { one.name += 'x'; })],
    ['the place of a cylinder', everyCylinder((one) => { one.at.x += 0.01; })],
    ['the name of the network', (draft) => void Object.assign(draft.networks[id] ?? {}, { name: 'Other' })],
    ['a limit of the profile', (draft) => {
      for (const { limits } of Object.values(draft.profiles)) if (limits.outletHeight_m) limits.outletHeight_m.value += 0.02;
    }],
    ['the height of a support', (draft) => {
      for (const one of Object.values(draft.networks[id]?.supports ?? {})) one.at.z += 0.1;
    }],
    ['where the pipe begins', (draft) => {
      const source = draft.networks[id]?.nodes[draft.networks[id]?.source ?? ''];
      if (source) source.at.z += 0.05;
    }],
    ['the room', (draft) => {
      for (const { enclosures } of Object.values(draft.levels)) for (const room of Object.values(enclosures)) room.height_m = (room.height_m ?? 3) + 0.1;
    }],
  ])('%s that changes is seen', (_, change) => {
    const keep = wallKeeper();
    const before = wallOf(keep, plan);
    const next = edited(change);
    const after = wallOf(keep, next);
    expect(after).not.toBe(before);
    expect(after).toBe(elevationsOf(derivePlan(next))[0]);
  });
});
