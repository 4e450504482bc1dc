import { describe, expect, test } from 'vitest';
import { addSupport } from '#shared/commands/add-support';
import { carriedSupports } from '#shared/commands/carry-supports';
import { copyThings } from '#shared/commands/copy-things';
import { deleteThings } from '#shared/commands/delete-things';
import { editBasis } from '#shared/commands/edit-basis';
import { editSupport } from '#shared/commands/edit-support';
import { insertNode } from '#shared/commands/insert-node';
import { movePipeNode } from '#shared/commands/move-pipe-node';
import { moveThings } from '#shared/commands/move-things';
import { replaceSupports } from '#shared/commands/replace-supports';
import type { Plan } from '#shared/model/plan';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { done, refusal } from '../../support/try-command.ts';

const drawn = () => planBuilder().room(6, 4, 2.7).network().cylinder(0.2, 2, Math.PI).run([place3(0, 2, 2.5), place3(4, 2, 2.5), place3(4, 3, 2.5)]).support(1, 2, 2.5);
const places = (plan: Plan) => Object.values(plan.networks).map(({ supports }) => Object.values(supports).map(({ at }) => at));

describe('pipe supports', () => {
  test('sit on a pipe, and nowhere else', () => {
    const built = drawn();
    const { next, created } = done(built.plan, addSupport(built.networkId, place3(4, 2.5, 2.5), 'guide'));
    expect(created).toMatchObject([{ kind: 'support', network: built.networkId }]);
    expect(places(next)[0]).toHaveLength(2);
    expect(refusal(built.plan, addSupport(built.networkId, place3(2, 2.01, 2.5), 'rigid'))).toContain('No pipe of this network runs here');
    expect(refusal(built.plan, editSupport(built.inNetwork('support'), { at: place3(2, 3, 2.5) }))).toContain('No pipe');
    expect(done(built.plan, editSupport(built.inNetwork('support'), { kind: 'sling', capacity_N: 900 })).next.networks[built.networkId]?.supports).toMatchObject({ [built.inNetwork('support').id]: { kind: 'sling', capacity_N: 900 } });
  });

  test('ride along when their pipe is moved, and undo brings them back', () => {
    const built = drawn();
    const { next } = done(built.plan, movePipeNode(built.nodeAt(0, 2, 2.5), place3(0, 3, 2.5)));
    expect(places(next)).toEqual([[{ x: 1, y: 2.75, z: 2.5 }]]);
    const shifted = done(built.plan, moveThings([built.networkRef], 1, 1)).next;
    expect(places(shifted)).toEqual([[{ x: 2, y: 3, z: 2.5 }]]);
  });

  test('stay where they are when the pipe is cut in two, and go with a pipe that goes', () => {
    const built = drawn();
    const pipe = { kind: 'pipe', network: built.networkId, id: Object.keys(built.plan.networks[built.networkId]?.pipes ?? {})[0] ?? '' } as const;
    expect(places(done(built.plan, insertNode(pipe, place3(2, 2, 2.5))).next)).toEqual([[{ x: 1, y: 2, z: 2.5 }]]);
    expect(places(done(built.plan, deleteThings([pipe])).next)).toEqual([[]]);
    expect(places(done(built.plan, deleteThings([built.inNetwork('support')])).next)).toEqual([[]]);
    expect(refusal(done(built.plan, deleteThings([built.inNetwork('support')])).next, deleteThings([built.inNetwork('support')]))).toContain('no longer in the plan');
  });

  test('are copied with a network', () => {
    const built = drawn();
    expect(places(done(built.plan, copyThings([built.networkRef], 0, 10)).next)).toEqual([[{ x: 1, y: 2, z: 2.5 }], [{ x: 1, y: 12, z: 2.5 }]]);
  });

  test('can all be placed anew in one step', () => {
    const built = drawn();
    const { next } = done(built.plan, replaceSupports(built.networkRef, [{ at: place3(0.3, 2, 2.5), kind: 'rigid', capacity_N: 800 }, { at: place3(3.7, 2, 2.5), kind: 'guide', capacity_N: null }]));
    expect(places(next)).toEqual([[place3(0.3, 2, 2.5), place3(3.7, 2, 2.5)]]);
    expect(refusal(built.plan, replaceSupports(built.networkRef, [{ at: place3(0, 0, 0), kind: 'rigid', capacity_N: null }]))).toContain('No pipe');
  });

  test('nothing is carried while no pipe moves', () => {
    const built = drawn();
    expect(carriedSupports(built.plan, built.plan)).toEqual([]);
    expect(carriedSupports(built.plan, done(built.plan, editBasis({ bias_Pa: 1 })).next)).toEqual([]);
  });
});

test('the basis of design is changed field by field, within its ranges', () => {
  const { plan } = planBuilder();
  expect(done(plan, editBasis({ designSet: 'nfpa-2001-2012', holdTime_s: 900 })).next.basis).toMatchObject({ designSet: 'nfpa-2001-2012', holdTime_s: 900, stressSet: 'older' });
  expect(refusal(plan, editBasis({ millFactor: 2 }))).toContain('Mill factor');
});
