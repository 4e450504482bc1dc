import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addCylinder } from '#shared/commands/add-cylinder';
import { addPipeRun } from '#shared/commands/add-pipe-run';
import { editCylinder } from '#shared/commands/edit-cylinder';
import { editNetwork } from '#shared/commands/edit-network';
import { editPipe } from '#shared/commands/edit-pipe';
import { insertNode } from '#shared/commands/insert-node';
import { movePipeNode } from '#shared/commands/move-pipe-node';
import { clearNetwork, networkOnLevel, networksOn, newNetwork } from '#shared/commands/new-network';
import { columnOf, isUpright } from '#shared/commands/pipe-columns';
import { findNode, otherEnd, pipesAt, shareOnPipe } from '#shared/commands/pipe-joins';
import { refuseTakenName } from '#shared/commands/refuse-taken-name';
import { removeNode } from '#shared/commands/remove-node';
import { setPipeHeight } from '#shared/commands/set-pipe-height';
import { type Plan, newPlan } from '#shared/model/plan';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { done, doneAll, levelIn, networkIn, only, pipesAsText, refusal } from '../../support/try-command.ts';

const pipes = (plan: Plan): string[] => pipesAsText(networkIn(plan));
const nodeCount = (plan: Plan): number => Object.keys(networkIn(plan).nodes).length;
const onlyKey = (record: object): string => Object.keys(record)[0] ?? '';

/** Up from (0,0,2) to 2.5, east to (4,0), drop to 2.3 with N1. */
const simple = () => planBuilder().network().run([place3(0, 0, 2), place3(0, 0, 2.5), place3(4, 0, 2.5), place3(4, 0, 2.3)]).nozzle(4, 0, 2.3);

describe('addCylinder and editCylinder', () => {
  test('makes a network with the plan’s first profile, and joins the one that has none yet', () => {
    const { next, created } = done(newPlan(), addCylinder('level-0', null, { x: 1, y: 2 }, -Math.PI / 2));
    expect(networkIn(next)).toMatchObject({ name: 'Network 1', level: 'level-0', profile: 'sample-80', source: null });
    expect(only(networkIn(next).cylinders)).toMatchObject({ name: 'C1', at: { x: 1, y: 2 }, mounting: 'wall', railHeight_m: null });
    expect(networkIn(next).assembly.map(({ kind, setPressure_Pa }) => [kind, setPressure_Pa])).toEqual([['hose', null], ['check-valve', null], ['regulator', null]]);
    expect(created[0]).toMatchObject({ kind: 'cylinder', network: networkIn(next).id });
    const two = done(next, addCylinder('level-0', null, { x: 5, y: 2 }, 0)).next;
    expect(Object.values(two.networks).map(({ name }) => name)).toEqual(['Network 1', 'Network 2']);
    const beside = done(next, addCylinder('level-0', networkIn(next).id, { x: 1.4, y: 2 }, 0)).next;
    expect(Object.values(networkIn(beside).cylinders).map(({ name }) => name)).toEqual(['C1', 'C2']);
    const bare = planBuilder().network().nozzle(1, 1, 2);
    expect(Object.keys(networkIn(done(bare.plan, addCylinder('level-0', null, { x: 0, y: 0 }, 0)).next).cylinders)).toHaveLength(1);
  });
  test('are refused without network, profile or direction', () => {
    expect(refusal(newPlan(), addCylinder('level-0', 'gone', { x: 0, y: 0 }, 0))).toContain('network is no longer');
    expect(refusal({ ...newPlan(), profiles: {} }, addCylinder('level-0', null, { x: 0, y: 0 }, 0))).toContain('no unit profile');
    expect(refusal(newPlan(), addCylinder('level-0', null, { x: 0, y: 0 }, Number.NaN))).toContain('degrees');
    expect(refusal(newPlan(), addCylinder('gone', null, { x: 0, y: 0 }, 0))).toContain('level is no longer');
    const upper = planBuilder().network().level('Upper', 3);
    expect(refusal(upper.plan, addCylinder(upper.levelId, upper.networkId, { x: 0, y: 0 }, 0))).toContain('another level');
  });
  test('a cylinder is changed, its name its own', () => {
    const built = planBuilder().network().cylinder(0, 0, 0).cylinder(1, 0, 0);
    const ref = built.inNetwork('cylinder');
    const { next } = done(built.plan, editCylinder(ref, { railHeight_m: 1.2, mounting: 'floor', name: 'C9', at: { x: 3, y: 3 }, back_rad: 1 }));
    expect(networkIn(next).cylinders[ref.id]).toMatchObject({ name: 'C9', railHeight_m: 1.2, mounting: 'floor', at: { x: 3, y: 3 }, back_rad: 1 });
    expect(refusal(built.plan, editCylinder(ref, { name: 'C1' }))).toContain('Another cylinder is called “C1”');
    expect(refusal(built.plan, editCylinder(ref, { railHeight_m: -1 }))).toContain('Rail height cannot be less than 0');
    expect(refusal(built.plan, editCylinder({ ...ref, id: 'gone' }, {}))).toContain('cylinder is no longer');
    expect(() => refuseTakenName(built.plan, 'cylinder', 'C2', 'C1')).toThrow('called');
  });
});

describe('networks', () => {
  test('are made, found by level, and cleared when empty', () => {
    const plan = structuredClone(newPlan());
    const network = newNetwork(plan, 'level-0');
    expect(networksOn(plan, 'level-0')).toEqual([network]);
    expect(networkOnLevel(plan, network.id, 'level-0')).toBe(network);
    clearNetwork(plan, network);
    expect(plan.networks).toEqual({});
  });
  test('are changed', () => {
    const built = simple();
    const part = { id: 'part-1', kind: 'regulator', name: 'Regulator', length_m: 0.1, setPressure_Pa: 6e6, arrowDownstream: true } as const;
    const node = built.nodeAt(4, 0, 2.5).id;
    expect(networkIn(done(built.plan, editNetwork(built.networkRef, { name: 'East', assembly: [part], source: node })).next)).toMatchObject({ name: 'East', assembly: [part], source: node });
    expect(refusal(built.plan, editNetwork(built.networkRef, { assembly: [part, part] }))).toContain('same id');
    expect(refusal(built.plan, editNetwork(built.networkRef, { source: 'gone' }))).toContain('not in the network');
    expect(refusal(built.plan, editNetwork(built.networkRef, { name: '' }))).toContain('needs a name');
  });
});

describe('addPipeRun', () => {
  const run = (...places: [number, number, number][]) => places.map(([x, y, z]) => place3(x, y, z));
  test('draws straight pipes; the first place becomes the source', () => {
    const { next, created } = done(newPlan(), addPipeRun(null, 'level-0', run([0, 0, 2], [0, 0, 2.5], [4, 0, 2.5]), '3/4'));
    expect(pipes(next)).toEqual(['0,0,2 → 0,0,2.5', '0,0,2.5 → 4,0,2.5']);
    expect(created).toHaveLength(2);
    const network = networkIn(next);
    expect(network.nodes[network.source ?? '']?.at).toEqual({ x: 0, y: 0, z: 2 });
    expect(Object.values(network.pipes)[0]).toMatchObject({ size: '3/4', schedule: '40', material: 'black-steel', joint: 'threaded' });
  });
  test('goes on from an open end, within a millimetre of it', () => {
    const built = planBuilder().network().run(run([0, 0, 2], [4, 0, 2]));
    const { next } = done(built.plan, addPipeRun(null, 'level-0', run([4.0004, 0, 2], [4, 3, 2]), '1/2'));
    expect(pipes(next)).toEqual(['0,0,2 → 4,0,2', '4,0,2 → 4,3,2']);
    expect(networkIn(next).source).toBe(networkIn(built.plan).source);
  });
  test('cuts the pipe that it starts from, ends on, or touches with a corner', () => {
    const built = planBuilder().network().run(run([0, 0, 2], [10, 0, 2]));
    expect(pipes(done(built.plan, addPipeRun(null, 'level-0', run([3, 0, 2], [3, 5, 2]), '1/2')).next)).toEqual(['0,0,2 → 3,0,2', '3,0,2 → 10,0,2', '3,0,2 → 3,5,2']);
    expect(pipes(done(built.plan, addPipeRun(null, 'level-0', run([3, 5, 2], [3, 0, 2]), '1/2')).next)).toEqual(['0,0,2 → 3,0,2', '3,0,2 → 10,0,2', '3,5,2 → 3,0,2']);
    expect(pipes(done(built.plan, addPipeRun(null, 'level-0', run([3, 5, 2], [3, 0, 2], [3, -5, 2]), '1/2')).next)).toHaveLength(4);
  });
  test('joins ends and nozzles that lie on its way', () => {
    const built = planBuilder().network().run(run([3, 3, 2], [3, 0, 2])).nozzle(6, 0, 2).run(run([8, 0, 2], [8, 3, 2]));
    const { next, created } = done(built.plan, addPipeRun(built.networkId, 'level-0', run([0, 0, 2], [10, 0, 2]), '1'));
    expect(pipes(next)).toEqual(['0,0,2 → 3,0,2', '3,0,2 → 6,0,2', '3,3,2 → 3,0,2', '6,0,2 → 8,0,2', '8,0,2 → 10,0,2', '8,0,2 → 8,3,2']);
    expect(created).toHaveLength(4);
  });
  test('crosses over pipe at another height, or between its places, without joining', () => {
    const built = planBuilder().network().run(run([0, 0, 2], [10, 0, 2]));
    expect(nodeCount(done(built.plan, addPipeRun(built.networkId, 'level-0', run([5, -1, 2.2], [5, 1, 2.2]), '1')).next)).toBe(4);
    expect(nodeCount(done(built.plan, addPipeRun(built.networkId, 'level-0', run([5, -1, 2], [5, 1, 2]), '1')).next)).toBe(4);
  });
  test('lays no pipe twice, and goes round in a ring when drawn so', () => {
    const built = planBuilder().network().run(run([0, 0, 2], [4, 0, 2]));
    expect(pipes(done(built.plan, addPipeRun(null, 'level-0', run([0, 0, 2], [6, 0, 2]), '1')).next)).toEqual(['0,0,2 → 4,0,2', '4,0,2 → 6,0,2']);
    expect(pipes(done(built.plan, addPipeRun(null, 'level-0', run([4, 0, 2], [4, 4, 2], [0, 4, 2], [0, 0, 2]), '1')).next)).toHaveLength(4);
    const own = done(newPlan(), addPipeRun(null, 'level-0', run([0, 0, 2], [4, 0, 2], [4, 4, 2], [2, 4, 2], [2, 0, 2]), '1'));
    expect(pipes(own.next)).toHaveLength(5);
    expect(own.created).toHaveLength(5);
  });
  test('belongs to the network it touches, else to the one that waits for pipe, else to a new one', () => {
    const waiting = planBuilder().network().cylinder(0, 0, 0);
    expect(Object.keys(done(waiting.plan, addPipeRun(null, 'level-0', run([0, 0, 2], [4, 0, 2]), '1')).next.networks)).toEqual([waiting.networkId]);
    const piped = planBuilder().network().run(run([0, 0, 2], [4, 0, 2]));
    expect(Object.keys(done(piped.plan, addPipeRun(null, 'level-0', run([0, 5, 2], [4, 5, 2]), '1')).next.networks)).toHaveLength(2);
    expect(Object.keys(done(piped.plan, addPipeRun(null, 'level-0', run([2, 5, 2], [2, 0, 2]), '1')).next.networks)).toEqual([piped.networkId]);
  });
  test('is refused without two places apart, over laid pipe, and on another level', () => {
    const built = planBuilder().network().run(run([0, 0, 2], [4, 0, 2]));
    expect(refusal(newPlan(), addPipeRun(null, 'level-0', run([0, 0, 2], [0, 0, 2.0005]), '1'))).toContain('two places apart');
    expect(refusal(newPlan(), addPipeRun(null, 'level-0', [], '1'))).toContain('two places apart');
    expect(refusal(built.plan, addPipeRun(null, 'level-0', run([0, 0, 2], [4, 0, 2]), '1'))).toContain('pipe here already');
    expect(refusal(built.plan, addPipeRun('gone', 'level-0', run([0, 0, 2], [4, 0, 2]), '1'))).toContain('network is no longer');
    expect(refusal(newPlan(), addPipeRun(null, 'level-0', run([0, 0, 2], [Number.NaN, 0, 2]), '1'))).toContain('too far off');
    const upper = planBuilder().network().run(run([0, 0, 2], [4, 0, 2])).level('Upper', 3);
    expect(refusal(upper.plan, addPipeRun(upper.networkId, upper.levelId, run([0, 0, 2], [4, 0, 3]), '1'))).toContain('another level');
  });
});

describe('movePipeNode', () => {
  test('takes along what stands over and under it; its height changes alone', () => {
    const built = simple();
    const { next } = done(built.plan, movePipeNode(built.nodeAt(4, 0, 2.5), place3(5, 0, 2.5)));
    expect(pipes(next)).toEqual(['0,0,2 → 0,0,2.5', '0,0,2.5 → 5,0,2.5', '5,0,2.5 → 5,0,2.3']);
    expect(pipes(done(built.plan, movePipeNode(built.nodeAt(4, 0, 2.3), place3(4, 0, 2.1))).next)).toContain('4,0,2.5 → 4,0,2.1');
  });
  test('lets the elbow before it slide along, so that both runs keep their direction', () => {
    const built = planBuilder().network().run([place3(0, 0, 2), place3(4, 0, 2), place3(4, 5, 2)]);
    expect(pipes(done(built.plan, movePipeNode(built.nodeAt(4, 5, 2), place3(6, 7, 2))).next)).toEqual(['0,0,2 → 6,0,2', '6,0,2 → 6,7,2']);
  });
  test('joins the node, or cuts the pipe, that it is moved onto', () => {
    const built = planBuilder().network().run([place3(0, 0, 2), place3(10, 0, 2)]).run([place3(5, 5, 2), place3(5, 1, 2)]);
    expect(pipes(done(built.plan, movePipeNode(built.nodeAt(5, 1, 2), place3(5, 0, 2))).next)).toEqual(['0,0,2 → 5,0,2', '5,0,2 → 10,0,2', '5,5,2 → 5,0,2']);
    const { next } = done(built.plan, movePipeNode(built.nodeAt(5, 1, 2), place3(10, 0, 2)));
    expect(pipes(next)).toEqual(['0,0,2 → 10,0,2', '5,5,2 → 10,0,2']);
    expect(nodeCount(next)).toBe(3);
  });
  test('onto its neighbour, it takes the pipe between them away', () => {
    const built = simple();
    expect(pipes(done(built.plan, movePipeNode(built.nodeAt(4, 0, 2.3), place3(4, 0, 2.5))).next)).toEqual(['0,0,2 → 0,0,2.5', '0,0,2.5 → 4,0,2.5']);
  });
  test('is refused where two nozzles would meet, and too far off', () => {
    const built = simple().nozzle(8, 0, 2.3);
    expect(refusal(built.plan, movePipeNode(built.nodeAt(4, 0, 2.3), place3(8, 0, 2.3)))).toContain('already there');
    expect(refusal(built.plan, movePipeNode(built.nodeAt(4, 0, 2.3), place3(1e7, 0, 2.3)))).toContain('too far off');
    expect(refusal(built.plan, movePipeNode({ ...built.nodeAt(4, 0, 2.3), id: 'gone' }, place3(0, 0, 0)))).toContain('pipe end is no longer');
  });
  test('the source stays the source when it joins another node', () => {
    const built = planBuilder().network().run([place3(0, 0, 2), place3(4, 0, 2)]).run([place3(0, 3, 2), place3(4, 3, 2)]);
    const { next } = done(built.plan, movePipeNode(built.nodeAt(0, 0, 2), place3(0, 3, 2)));
    expect(networkIn(next).nodes[networkIn(next).source ?? '']?.at).toEqual({ x: 0, y: 3, z: 2 });
  });
});

describe('editPipe and setPipeHeight', () => {
  test('change what a pipe is made of', () => {
    const built = simple();
    const ref = built.inNetwork('pipe');
    expect(networkIn(done(built.plan, editPipe(ref, { size: '2', schedule: '80', joint: 'welded', material: 'stainless-steel' })).next).pipes[ref.id]).toMatchObject({ size: '2', schedule: '80', joint: 'welded', material: 'stainless-steel' });
    expect(refusal(built.plan, editPipe({ ...ref, id: 'gone' }, {}))).toContain('pipe is no longer');
    expect(refusal(built.plan, editPipe(ref, { size: '7/8' as '2' }))).toContain('Size must be one of');
  });
  const runOf = (plan: Plan) => Object.values(networkIn(plan).pipes).map(({ id }) => ({ kind: 'pipe' as const, network: networkIn(plan).id, id }));
  test('bring a run to a height; riser and drop follow', () => {
    const built = simple();
    const { next } = done(built.plan, setPipeHeight(runOf(built.plan), 2.8));
    expect(pipes(next)).toEqual(['0,0,2 → 0,0,2.8', '0,0,2.8 → 4,0,2.8', '4,0,2.8 → 4,0,2.3']);
  });
  test('are refused for upright pipes alone, and where a drop would vanish', () => {
    const built = simple();
    const drop = built.inNetwork('pipe');
    expect(refusal(built.plan, setPipeHeight([drop], 3))).toContain('upright');
    expect(refusal(built.plan, setPipeHeight([], 3))).toContain('upright');
    expect(refusal(built.plan, setPipeHeight(runOf(built.plan), 2.3))).toContain('no length');
  });
});

describe('insertNode and removeNode', () => {
  test('split a pipe, and make it one again', () => {
    const built = planBuilder().network().run([place3(0, 0, 2), place3(4, 0, 2)], '1', { schedule: '80' });
    const { next, created } = done(built.plan, insertNode(built.inNetwork('pipe'), place3(1, 0.3, 2.5)));
    expect(pipes(next)).toEqual(['0,0,2 → 1,0,2', '1,0,2 → 4,0,2']);
    expect(Object.values(networkIn(next).pipes).map(({ size, schedule }) => [size, schedule])).toEqual([['1', '80'], ['1', '80']]);
    const [node] = created;
    if (node?.kind !== 'node') throw new Error('No node was made.');
    expect(pipes(done(next, removeNode(node)).next)).toEqual(['0,0,2 → 4,0,2']);
    expect(pipes(doneAll(next, movePipeNode(node, place3(1, 2, 2)), removeNode(node)))).toEqual(['0,0,2 → 4,0,2']);
  });
  test('an open end goes with its pipe, and a network with its last', () => {
    const built = simple();
    const { plan } = planBuilder().network().run([place3(0, 0, 2), place3(4, 0, 2), place3(4, 4, 2)]);
    const end = { kind: 'node', network: networkIn(plan).id, id: onlyKey(Object.fromEntries(Object.entries(networkIn(plan).nodes).filter(([, { at }]) => at.y === 4))) } as const;
    expect(pipes(done(plan, removeNode(end)).next)).toEqual(['0,0,2 → 4,0,2']);
    const free = planBuilder().network().nozzle(1, 1, 2);
    expect(refusal(free.plan, removeNode(free.nodeAt(1, 1, 2)))).toContain('“N1” is here');
    expect(refusal(built.plan, removeNode(built.nodeAt(0, 0, 2)))).toContain('begins here');
    const lone = planBuilder().network();
    lone.run([place3(1, 1, 1)]);
    expect(done(lone.plan, removeNode(lone.nodeAt(1, 1, 1))).next.networks).toEqual({});
  });
  test('are refused at an end, at a branch, between unlike pipes, and in a triangle', () => {
    const built = planBuilder().network().run([place3(0, 0, 2), place3(4, 0, 2)]).run([place3(4, 0, 2), place3(8, 0, 2)], '1/2').run([place3(8, 0, 2), place3(9, 0, 2)]).run([place3(8, 0, 2), place3(8, 2, 2)]);
    expect(refusal(built.plan, insertNode(built.inNetwork('pipe'), place3(8, 9, 2)))).toContain('pipe end here already');
    expect(refusal(built.plan, removeNode(built.nodeAt(8, 0, 2)))).toContain('branch');
    expect(refusal(built.plan, removeNode(built.nodeAt(4, 0, 2)))).toContain('not alike');
    const triangle = planBuilder().network().run([place3(0, 0, 2), place3(4, 0, 2), place3(4, 4, 2), place3(0, 0, 2)]);
    expect(refusal(triangle.plan, removeNode(triangle.nodeAt(4, 4, 2)))).toContain('joined already');
  });
});

describe('joins and columns', () => {
  test('a place lies on a pipe between its ends only', () => {
    expect(shareOnPipe(place3(0, 0, 0), place3(4, 0, 0), place3(1, 0, 0))).toBe(0.25);
    expect(shareOnPipe(place3(0, 0, 0), place3(4, 0, 0), place3(1, 0.002, 0))).toBeUndefined();
    expect(shareOnPipe(place3(0, 0, 0), place3(4, 0, 0), place3(0.0005, 0, 0))).toBeUndefined();
    expect(shareOnPipe(place3(0, 0, 0), place3(0, 0, 0), place3(0, 0, 0))).toBeUndefined();
  });
  test('a column is all that upright pipe joins', () => {
    const { plan } = simple();
    const network = networkIn(plan);
    const top = findNode(network, place3(4, 0, 2.5))?.id ?? '';
    expect(columnOf(network, top).size).toBe(2);
    expect(pipesAt(network, top).map((pipe) => isUpright(network, pipe))).toEqual([false, true]);
    expect(pipesAt(network, top).map((pipe) => otherEnd(pipe, top))).not.toContain(top);
  });
  test('whatever is drawn, no two nodes of a network lie in one place', () => {
    const place = fc.tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 0, max: 3 }), fc.constantFrom(2, 2.5)).map(([x, y, z]) => place3(x, y, z));
    fc.assert(
      fc.property(fc.array(fc.array(place, { minLength: 2, maxLength: 5 }), { minLength: 1, maxLength: 4 }), (runs) => {
        let plan = planBuilder().network().plan;
        for (const places of runs) {
          const outcome = addPipeRun(networkIn(plan).id, 'level-0', places, '1')(plan);
          if (outcome.ok) plan = outcome.next;
        }
        const { nodes, pipes: laid } = networkIn(plan);
        const spots = Object.values(nodes).map(({ at }) => `${at.x},${at.y},${at.z}`);
        expect(new Set(spots).size).toBe(spots.length);
        const pairs = Object.values(laid).map(({ from, to }) => [from, to].sort().join());
        expect(new Set(pairs).size).toBe(pairs.length);
        for (const { from, to } of Object.values(laid)) {
          const [a, b] = [nodes[from]?.at, nodes[to]?.at];
          if (a && b) for (const { id, at } of Object.values(nodes)) if (id !== from && id !== to && runs.length === 1) expect(shareOnPipe(a, b, at)).toBeUndefined();
        }
        expect(levelIn(plan).name).toBe('Level 1');
      }),
    );
  });
});
