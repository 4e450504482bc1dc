import { describe, expect, test } from 'vitest';
import { copyThings } from '#shared/commands/copy-things';
import { editCylinder } from '#shared/commands/edit-cylinder';
import { editNetwork } from '#shared/commands/edit-network';
import { editNode } from '#shared/commands/edit-node';
import { editPipe } from '#shared/commands/edit-pipe';
import { insertNode } from '#shared/commands/insert-node';
import { mirrorThings } from '#shared/commands/mirror-things';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { movePipeNode } from '#shared/commands/move-pipe-node';
import { moveThings } from '#shared/commands/move-things';
import { derivePlan } from '#shared/derived/derive-plan';
import type { Network, Plan } from '#shared/model/plan';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { done, refusal } from '../../support/try-command.ts';

const drawn = () =>
  planBuilder()
    .room(6, 4, 2.7)
    .network()
    .cylinder(0.2, 2, Math.PI)
    .run([place3(0.2, 2, 2.5), place3(4, 2, 2.5), place3(4, 3, 2.5)])
    .run([place3(4, 3, 2.5), place3(4, 3, 2.2)])
    .run([place3(4, 3, 2.5), place3(4, 3.1, 2.5)])
    .nozzle(4, 3, 2.2);
const networkIn = (plan: Plan, id: string): Network => {
  const network = plan.networks[id];
  if (!network) throw new Error('The plan lost its network.');
  return network;
};

describe('what is built in', () => {
  test('closes an end of pipe on purpose, and makes the tee before it a dirt trap', () => {
    const built = drawn();
    const open = derivePlan(built.plan).networks[0];
    expect(open?.faults.map(({ kind }) => kind)).toEqual(['open-end']);
    expect(open?.paths[0]).toMatchObject({ elbows: 1, tees: 1 });
    const { next } = done(built.plan, editNode(built.nodeAt(4, 3.1, 2.5), { part: 'dirt-trap' }));
    const trapped = derivePlan(next).networks[0];
    expect(trapped?.faults).toEqual([]);
    // It turns the agent like the elbow that it stands for.
    expect(trapped?.paths[0]).toMatchObject({ elbows: 2, tees: 0 });
    expect(trapped?.fittings.map(({ kind, isTrap }) => [kind, isTrap])).toEqual([['elbow-90', false], ['tee', true], ['cap', false]]);
  });

  test('is a union only where the pipe runs straight on, and a street elbow only where it turns', () => {
    const built = drawn();
    const cut = done(built.plan, insertNode({ kind: 'pipe', network: built.networkId, id: Object.keys(networkIn(built.plan, built.networkId).pipes)[0] ?? '' }, place3(2, 2, 2.5)));
    const node = Object.values(networkIn(cut.next, built.networkId).nodes).find(({ at }) => at.x === 2);
    const union = done(cut.next, editNode({ kind: 'node', network: built.networkId, id: node?.id ?? '' }, { part: 'union' })).next;
    expect(derivePlan(union).networks[0]?.fittings.map(({ kind }) => kind)).toContain('union');
    const elbow = done(built.plan, editNode(built.nodeAt(4, 2, 2.5), { part: 'union' })).next;
    expect(derivePlan(elbow).networks[0]?.fittings[0]).toMatchObject({ kind: 'elbow-90', isStreet: false });
    const street = done(built.plan, editNode(built.nodeAt(4, 2, 2.5), { part: 'street-elbow' })).next;
    expect(derivePlan(street).networks[0]?.fittings[0]).toMatchObject({ kind: 'elbow-90', isStreet: true });
  });

  test('is refused where the trade has no such part, and on a place that has gone', () => {
    const built = drawn();
    expect(refusal(built.plan, editNode(built.nodeAt(4, 2, 2.5), { part: 'valve' as 'union' }))).toContain('Part ');
    expect(refusal(built.plan, editNode({ kind: 'node', network: built.networkId, id: 'gone' }, { part: null }))).toContain('no longer in the plan');
  });
});

test('the nipple of a dirt trap goes with its nozzle, and its cap alone does not take the tee along', () => {
  const built = drawn();
  const cap = built.nodeAt(4, 3.1, 2.5);
  const trapped = done(built.plan, editNode(cap, { part: 'dirt-trap' })).next;
  const moved = networkIn(done(trapped, moveNozzle(built.inNetwork('nozzle'), place3(4.5, 3.6, 2.2))).next, built.networkId);
  expect(moved.nodes[cap.id]?.at).toMatchObject({ x: expect.closeTo(4.5, 9), y: expect.closeTo(3.7, 9), z: 2.5 });
  const longer = networkIn(done(trapped, movePipeNode(cap, place3(4, 3.2, 2.5))).next, built.networkId);
  expect(longer.nodes[cap.id]?.at.y).toBeCloseTo(3.2, 9);
  expect(Object.values(longer.nodes).filter(({ at }) => at.x === 4 && at.y === 3)).toHaveLength(2);
});

test('hose end, outlet, gauge and manifold go with their network, mirrored as it is', () => {
  const built = drawn();
  const cylinder = built.inNetwork('cylinder');
  const set = done(
    done(built.plan, editCylinder({ ...cylinder, kind: 'cylinder' }, { hoseEnd: { x: 0.4, y: 2.2, z: 2 }, outlet_rad: Math.PI / 2, gauge: { height_m: 1.5, facing_rad: 0 } })).next,
    editNetwork(built.networkRef, { manifold: { from: { x: 0, y: 1, z: 2.1 }, to: { x: 0, y: 3, z: 2.1 } } }),
  ).next;
  const moved = networkIn(done(set, moveThings([built.networkRef], 1, 2)).next, built.networkId);
  expect(Object.values(moved.cylinders)[0]).toMatchObject({ hoseEnd: { x: 1.4, y: 4.2, z: 2 }, outlet_rad: Math.PI / 2, gauge: { facing_rad: 0 } });
  expect(moved.manifold).toEqual({ from: { x: 1, y: 3, z: 2.1 }, to: { x: 1, y: 5, z: 2.1 } });
  const mirrored = networkIn(done(set, mirrorThings([built.networkRef], { x: 0, y: 0 }, { x: 0, y: 1 })).next, built.networkId);
  const [standing] = Object.values(mirrored.cylinders);
  expect(standing?.hoseEnd).toMatchObject({ x: expect.closeTo(-0.4, 9), y: expect.closeTo(2.2, 9), z: 2 });
  expect(Math.cos(standing?.gauge?.facing_rad ?? 0)).toBeCloseTo(-1, 9);
  expect(Math.sin(standing?.outlet_rad ?? 0)).toBeCloseTo(1, 9);
});

test('a measured pipe that is cut or copied is measured no more', () => {
  const built = drawn();
  const pipe = { kind: 'pipe', network: built.networkId, id: Object.keys(networkIn(built.plan, built.networkId).pipes)[0] ?? '' } as const;
  const measured = done(built.plan, editPipe(pipe, { measured_m: 3.81, insulation_m: 0.02 })).next;
  const cut = networkIn(done(measured, insertNode(pipe, place3(2, 2, 2.5))).next, built.networkId);
  expect(Object.values(cut.pipes).every(({ measured_m }) => measured_m === null)).toBe(true);
  expect(Object.values(cut.pipes).filter(({ insulation_m }) => insulation_m === 0.02)).toHaveLength(2);
  const { next, created } = done(measured, copyThings([built.networkRef], 0, 10));
  const copy = networkIn(next, created[0]?.id ?? '');
  expect(Object.values(copy.pipes).every(({ measured_m }) => measured_m === null)).toBe(true);
});
