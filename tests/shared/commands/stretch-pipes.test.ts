import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addPipeRun } from '#shared/commands/add-pipe-run';
import { downstreamOf, stretchOf } from '#shared/commands/pipe-stretch';
import { setPipeHeight } from '#shared/commands/set-pipe-height';
import { stretchPipes } from '#shared/commands/stretch-pipes';
import { derivePlan } from '#shared/derived/derive-plan';
import { direction3 } from '#shared/geometry/vector3';
import type { Network, Plan } from '#shared/model/plan';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { done, networkIn, pipesAsText, refusal } from '../../support/try-command.ts';

const pipes = (plan: Plan): string[] => pipesAsText(networkIn(plan));
/** Riser from the cylinders, main east with a turn north, riser, branches both ways with drops. */
const house = () =>
  planBuilder()
    .network()
    .run([place3(0, 0, 2), place3(0, 0, 2.5), place3(4, 0, 2.5), place3(4, 3, 2.5), place3(8, 3, 2.5), place3(8, 3, 2.8)])
    .run([place3(8, 3, 2.8), place3(8, 6, 2.8), place3(8, 6, 2.6)])
    .nozzle(8, 6, 2.6)
    .run([place3(8, 3, 2.8), place3(8, 1, 2.8), place3(8, 1, 2.6)])
    .nozzle(8, 1, 2.6);

describe('stretch', () => {
  test('runs along the move become longer, what stands across goes with it', () => {
    const built = house();
    expect(pipes(done(built.plan, stretchPipes(built.nodeAt(4, 3, 2.5), place3(5, 3, 2.5), 'stretch')).next)).toEqual(
      ['0,0,2 → 0,0,2.5', '0,0,2.5 → 5,0,2.5', '5,0,2.5 → 5,3,2.5', '5,3,2.5 → 8,3,2.5', '8,1,2.8 → 8,1,2.6', '8,3,2.5 → 8,3,2.8', '8,3,2.8 → 8,1,2.8', '8,3,2.8 → 8,6,2.8', '8,6,2.8 → 8,6,2.6'],
    );
    const north = pipes(done(built.plan, stretchPipes(built.nodeAt(8, 3, 2.5), place3(8, 4, 2.5), 'stretch')).next);
    expect(north).toEqual(expect.arrayContaining(['4,0,2.5 → 4,4,2.5', '4,4,2.5 → 8,4,2.5', '8,4,2.8 → 8,1,2.8', '8,4,2.8 → 8,6,2.8', '8,6,2.8 → 8,6,2.6']));
  });
  test('up and down, risers and drops give way', () => {
    const built = house();
    expect(pipes(done(built.plan, stretchPipes(built.nodeAt(8, 3, 2.8), place3(8, 3, 3), 'stretch')).next)).toEqual(
      expect.arrayContaining(['8,3,2.5 → 8,3,3', '8,3,3 → 8,6,3', '8,6,3 → 8,6,2.6', '8,3,3 → 8,1,3', '8,1,3 → 8,1,2.6']),
    );
  });
  test('move takes all that follows along as it is', () => {
    const built = house();
    const moved = pipes(done(built.plan, stretchPipes(built.nodeAt(8, 3, 2.5), place3(9, 4, 2.5), 'move')).next);
    expect(moved).toEqual(expect.arrayContaining(['4,0,2.5 → 4,4,2.5', '4,4,2.5 → 9,4,2.5', '9,4,2.8 → 9,7,2.8', '9,7,2.8 → 9,7,2.6', '9,4,2.8 → 9,2,2.8', '9,2,2.8 → 9,2,2.6']));
    expect([...downstreamOf(networkIn(built.plan), built.nodeAt(8, 6, 2.8).id)]).toHaveLength(2);
  });
  test('is refused where pipe would leave the cylinders, turn back or have no length', () => {
    const built = house();
    expect(refusal(built.plan, stretchPipes(built.nodeAt(4, 0, 2.5), place3(4, 1, 2.5), 'stretch'))).toContain('leave the cylinders');
    expect(refusal(built.plan, stretchPipes(built.nodeAt(4, 3, 2.5), place3(9, 3, 2.5), 'stretch'))).toContain('turn back');
    expect(refusal(built.plan, stretchPipes(built.nodeAt(4, 3, 2.5), place3(8, 3, 2.5), 'stretch'))).toContain('no length');
    expect(refusal(built.plan, stretchPipes({ ...built.nodeAt(4, 3, 2.5), id: 'gone' }, place3(0, 0, 0), 'move'))).toContain('no longer');
  });
  test('a 45° offset stays one', () => {
    const built = planBuilder().network().run([place3(0, 0, 2), place3(4, 0, 2), place3(5, 1, 2), place3(9, 1, 2), place3(9, 5, 2)]);
    expect(pipes(done(built.plan, stretchPipes(built.nodeAt(5, 1, 2), place3(5.5, 1, 2), 'stretch')).next)).toEqual(['0,0,2 → 4.5,0,2', '4.5,0,2 → 5.5,1,2', '5.5,1,2 → 9,1,2', '9,1,2 → 9,5,2']);
  });
  test('a network that lies askew in the building keeps its own square', () => {
    const turn = (x: number, y: number, z: number) => place3(x * Math.cos(0.5) - y * Math.sin(0.5), x * Math.sin(0.5) + y * Math.cos(0.5), z);
    const built = planBuilder().network().run([turn(0, 0, 2), turn(0, 0, 2.5), turn(4, 0, 2.5), turn(4, 3, 2.5)]);
    const corner = turn(4, 0, 2.5);
    const { next } = done(built.plan, stretchPipes(built.nodeAt(corner.x, corner.y, 2.5), turn(5, 0, 2.5), 'stretch'));
    expect(derivePlan(next).networks[0]?.fittings.filter(({ kind }) => kind === 'odd-bend')).toEqual([]);
  });

  /** A random network of square runs. */
  const step = fc.record({ from: fc.nat(), axis: fc.constantFrom('x', 'y', 'z' as const), by: fc.integer({ min: -3, max: 3 }).filter((by) => by !== 0) });
  const directions = ({ pipes: all, nodes }: Network) => new Map(Object.values(all).map(({ id, from, to }) => [id, direction3(nodes[from]?.at ?? place3(0, 0, 0), nodes[to]?.at ?? place3(0, 0, 0), 1e-9)]));
  test('of any square network every pipe keeps its direction, or the command says why not', () => {
    let taken = 0;
    fc.assert(
      fc.property(fc.array(step, { minLength: 2, maxLength: 9 }), fc.nat(), fc.constantFrom('stretch', 'move' as const), fc.tuple(fc.integer({ min: -8, max: 8 }), fc.integer({ min: -8, max: 8 }), fc.integer({ min: -8, max: 8 })), (steps, chosen, how, [dx, dy, dz]) => {
        let plan = planBuilder().network().run([place3(0, 0, 0), place3(0, 0, 2)]).plan;
        for (const { from, axis, by } of steps) {
          const places = Object.values(networkIn(plan).nodes).map(({ at }) => at);
          const at = places[from % places.length] ?? place3(0, 0, 0);
          const outcome = addPipeRun(networkIn(plan).id, 'level-0', [at, { ...at, [axis]: at[axis] + by }], '1')(plan);
          if (outcome.ok) plan = outcome.next;
        }
        const network = networkIn(plan);
        const nodes = Object.values(network.nodes);
        const node = nodes[chosen % nodes.length];
        if (!node) return;
        const outcome = stretchPipes({ kind: 'node', network: network.id, id: node.id }, { x: node.at.x + dx / 16, y: node.at.y + dy / 16, z: node.at.z + dz / 16 }, how)(plan);
        if (!outcome.ok) {
          expect(outcome.reason).toMatch(/\.$/);
          return;
        }
        taken += 1;
        const after = directions(networkIn(outcome.next));
        for (const [id, before] of directions(network)) {
          const now = after.get(id);
          expect(now && before && Math.hypot(now.x - before.x, now.y - before.y, now.z - before.z)).toBeLessThan(1e-9);
        }
      }),
      { numRuns: 300 },
    );
    expect(taken).toBeGreaterThan(50);
  });
  test('tells how far each place moves', () => {
    const built = house();
    const shifts = stretchOf(networkIn(built.plan), new Set([built.nodeAt(4, 3, 2.5).id]), { x: 1, y: 0, z: 0 }, 0.001);
    expect([...shifts.keys()].sort()).toEqual([built.nodeAt(4, 0, 2.5).id, built.nodeAt(4, 3, 2.5).id].sort());
  });
});

describe('the height of a run', () => {
  test('takes along what joins it at its height', () => {
    const built = house();
    const pipe = Object.values(networkIn(built.plan).pipes).find(({ from }) => from === built.nodeAt(4, 0, 2.5).id);
    const { next } = done(built.plan, setPipeHeight([{ kind: 'pipe', network: built.networkId, id: pipe?.id ?? '' }], 2.6));
    expect(pipes(next)).toEqual(expect.arrayContaining(['0,0,2 → 0,0,2.6', '0,0,2.6 → 4,0,2.6', '4,0,2.6 → 4,3,2.6', '4,3,2.6 → 8,3,2.6', '8,3,2.6 → 8,3,2.8']));
  });
  test('is refused where it is joined to the cylinders at its height', () => {
    const built = planBuilder().network().run([place3(0, 0, 2), place3(4, 0, 2), place3(4, 3, 2)]);
    const pipe = built.inNetwork('pipe');
    expect(refusal(built.plan, setPipeHeight([pipe], 2.6))).toContain('begins at the cylinders');
  });
});
