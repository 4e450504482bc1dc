import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDirtTrap } from '#shared/commands/add-dirt-trap';
import { editNode } from '#shared/commands/edit-node';
import { pipeInto } from '#shared/commands/flow-into';
import { stubHit } from '#shared/commands/stub-hits';
import { derivePlan } from '#shared/derived/derive-plan';
import { distance3_m } from '#shared/geometry/point';
import type { PipeSize } from '#shared/profile/pipe-table';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { done, networkIn, refusal } from '../../support/try-command.ts';

/** A main along y = 2 that turns down to a nozzle at x = 4. */
const drawn = (size: PipeSize = '3/4') =>
  planBuilder().room(6, 4, 2.7).network().run([place3(0.2, 2, 2), place3(0.2, 2, 2.5), place3(4, 2, 2.5), place3(4, 2, 2.2)], size).nozzle(4, 2, 2.2);

describe('a dirt trap', () => {
  test.each([
    ['3/4', 0.1016],
    ['2', 0.1016],
    ['2-1/2', 0.1524],
  ] as const)('of NPS %s goes straight on from the last turn and is capped', (size, length_m) => {
    const built = drawn(size);
    const { next, created } = done(built.plan, addDirtTrap(built.nodeAt(4, 2, 2.5)));
    const network = networkIn(next);
    const pipe = network.pipes[created[0]?.id ?? ''];
    const end = network.nodes[pipe?.to ?? ''];
    expect(end?.part).toBe('dirt-trap');
    expect(end?.at).toMatchObject({ x: expect.closeTo(4 + length_m, 9), y: 2, z: 2.5 });
    expect(pipe).toMatchObject({ size, measured_m: null });
    const derived = derivePlan(next).networks[0];
    expect(derived?.faults).toEqual([]);
    expect(derived?.fittings.find(({ kind }) => kind === 'tee')).toMatchObject({ isTrap: true, isBull: false });
    // The agent turns there as before.
    expect(derived?.paths[0]).toMatchObject({ elbows: 2, tees: 0, length_m: derivePlan(built.plan).networks[0]?.paths[0]?.length_m });
  });

  test('goes on upward where the supply rises, and takes the place of a street elbow', () => {
    const built = drawn();
    const street = done(built.plan, editNode(built.nodeAt(0.2, 2, 2.5), { part: 'street-elbow' })).next;
    const { next } = done(street, addDirtTrap(built.nodeAt(0.2, 2, 2.5)));
    const network = networkIn(next);
    expect(Object.values(network.nodes).filter(({ part }) => part === 'dirt-trap').map(({ at }) => at.z)).toEqual([expect.closeTo(2.6016, 9)]);
    expect(network.nodes[built.nodeAt(0.2, 2, 2.5).id]?.part).toBeNull();
  });

  test('is refused where nothing turns, where it turns askew, and where no agent comes', () => {
    const built = drawn();
    expect(refusal(built.plan, addDirtTrap(built.nodeAt(4, 2, 2.2)))).toContain('Choose an elbow');
    expect(refusal(built.plan, addDirtTrap(built.nodeAt(0.2, 2, 2)))).toContain('No pipe brings agent');
    const straight = planBuilder().room(6, 4, 2.7).network().run([place3(0.2, 2, 2.5), place3(2, 2, 2.5), place3(4, 2, 2.5)]);
    expect(refusal(straight.plan, addDirtTrap(straight.nodeAt(2, 2, 2.5)))).toContain('straight on');
    const askew = planBuilder().room(6, 4, 2.7).network().run([place3(0.2, 2, 2.5), place3(2, 2, 2.5), place3(3, 3, 2.5)]);
    expect(refusal(askew.plan, addDirtTrap(askew.nodeAt(2, 2, 2.5)))).toContain('not square');
    const twice = done(built.plan, addDirtTrap(built.nodeAt(4, 2, 2.5))).next;
    expect(refusal(twice, addDirtTrap(built.nodeAt(4, 2, 2.5)))).toContain('Choose an elbow');
    expect(refusal(built.plan, addDirtTrap({ kind: 'node', network: built.networkId, id: 'gone' }))).toContain('no longer in the plan');
  });

  test.each([
    ['a wall', () => planBuilder().room(4.1, 4, 2.7).network().run([place3(0.2, 2, 2.5), place3(4, 2, 2.5), place3(4, 2, 2.2)]), place3(4, 2, 2.5), 'a wall of Room 1'],
    ['the ceiling', () => planBuilder().room(6, 4, 2.6).network().run([place3(0.2, 2, 2), place3(0.2, 2, 2.5), place3(4, 2, 2.5)]), place3(0.2, 2, 2.5), 'the ceiling of Room 1'],
    ['the floor', () => planBuilder().room(6, 4, 2.6).network().run([place3(0.2, 2, 2), place3(0.2, 2, 0.1), place3(4, 2, 0.1)]), place3(0.2, 2, 0.1), 'the floor of Room 1'],
    ['a beam', () => drawn().obstruction('beam', [{ x: 4.05, y: 0 }, { x: 4.2, y: 0 }, { x: 4.2, y: 4 }, { x: 4.05, y: 4 }], 2.4, 2.7), place3(4, 2, 2.5), '“beam”'],
    ['other pipe', () => drawn().network().run([place3(4.1, 1, 2.5), place3(4.1, 3, 2.5)]), place3(4, 2, 2.5), 'other pipe'],
  ])('is refused where it would run into %s', (_, build, { x, y, z }, what) => {
    const built = build();
    const network = Object.values(built.plan.networks)[0];
    const node = Object.values(network?.nodes ?? {}).find(({ at }) => distance3_m(at, { x, y, z }) < 1e-6);
    expect(refusal(built.plan, addDirtTrap({ kind: 'node', network: network?.id ?? '', id: node?.id ?? '' }))).toContain(`run into ${what}`);
  });

  test('hits nothing in free space, however it lies', () => {
    const built = drawn();
    const network = networkIn(built.plan);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }), (angle) => {
        const axis = { a: place3(2, 1, 1), b: place3(2 + 0.1 * Math.cos(angle), 1 + 0.1 * Math.sin(angle), 1) };
        expect(stubHit(built.plan, network, axis, 0.013, '')).toBeUndefined();
      }),
    );
  });
});

test('the pipe that brings the agent is the one on the way to the source', () => {
  const built = drawn();
  const network = networkIn(built.plan);
  const into = pipeInto(network, built.nodeAt(4, 2, 2.5).id);
  expect(network.nodes[into?.from ?? '']?.at).toEqual(place3(0.2, 2, 2.5));
  expect(pipeInto(network, built.nodeAt(0.2, 2, 2).id)).toBeUndefined();
  expect(pipeInto({ ...network, source: null }, built.nodeAt(4, 2, 2.5).id)).toBeUndefined();
});
