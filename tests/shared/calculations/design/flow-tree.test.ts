import { describe, expect, test } from 'vitest';
import { flowTreeOf } from '#shared/calculations/design/flow-tree';
import { LOSS_SETS } from '#shared/model/basis-of-design';
import { contractionLoss, enlargementLoss, fittingLoss, type LossKind } from '#shared/calculations/formulas/fitting-losses';
import { derivePlan } from '#shared/derived/derive-plan';
import { type PipeSize, pipeBore_m } from '#shared/profile/pipe-table';
import { type PlanBuilder, place3, planBuilder } from '../../../support/plan-builder.ts';
import { networkOf, sure } from '../../../support/whole-plan.ts';

const treeOf = ({ plan }: PlanBuilder) => flowTreeOf(sure(derivePlan(plan).networks[0]), plan.basis);
const bore = (size: PipeSize): number => pipeBore_m(size, '40');
const loss = (kind: LossKind, size: PipeSize = '3/4'): number => fittingLoss('tp-410', kind, size, bore(size)).lossCoefficient;
const room = () => planBuilder().room(9, 9, 3);

describe('flow tree', () => {
  test('pipes of one bore in a row are one stretch; elbows count, a straight joint does not', () => {
    const { nodeIds, stretches } = treeOf(
      room()
        .run([place3(0, 0, 2), place3(0, 0, 2.5), place3(2, 0, 2.5), place3(3, 0, 2.5), place3(3, 4, 2.5), place3(3, 4, 2.3)])
        .nozzle(3, 4, 2.3),
    );
    expect(nodeIds).toHaveLength(2);
    expect(stretches).toEqual([{ from: 0, to: 1, length_m: expect.closeTo(0.5 + 3 + 4 + 0.2, 9), bore_m: bore('3/4'), roughness_m: 0.000_045_7, lossFactor: expect.closeTo(3 * loss('elbow-90'), 9) }]);
  });

  test.each<[string, number, readonly LossKind[]]>([
    ['half a degree is straight', 0.5, []],
    ['30°', 30, ['elbow-45']],
    ['45°', 45, ['elbow-45']],
    ['60° is more than a half elbow', 60, ['elbow-90']],
    ['90°', 90, ['elbow-90']],
    ['120°', 120, ['elbow-90', 'elbow-45']],
    ['170°', 170, ['elbow-90', 'elbow-90']],
  ])('a bend counts as the next larger elbow: %s', (_, turn_deg, kinds) => {
    const turn_rad = (turn_deg * Math.PI) / 180;
    const end = place3(4 + 2 * Math.cos(turn_rad), 4 + 2 * Math.sin(turn_rad), 2);
    const { stretches } = treeOf(room().run([place3(2, 4, 2), place3(4, 4, 2), end]).nozzle(end.x, end.y, end.z));
    expect(stretches[0]?.lossFactor).toBeCloseTo(kinds.reduce((sum, kind) => sum + loss(kind), 0), 9);
  });

  test('a tee parts flow: straight on is its run, aside its branch', () => {
    const built = room()
      .run([place3(0, 4, 2), place3(3, 4, 2), place3(6, 4, 2)])
      .run([place3(3, 4, 2), place3(3, 6, 2)])
      .nozzle(6, 4, 2)
      .nozzle(3, 6, 2);
    const { nodeIds, stretches } = treeOf(built);
    expect(nodeIds).toEqual([built.nodeAt(0, 4, 2).id, built.nodeAt(3, 4, 2).id, built.nodeAt(6, 4, 2).id, built.nodeAt(3, 6, 2).id]);
    expect(stretches.map(({ from, to, lossFactor }) => [from, to, lossFactor])).toEqual([
      [0, 1, 0],
      [1, 2, expect.closeTo(loss('tee-run'), 9)],
      [1, 3, expect.closeTo(loss('tee-branch'), 9)],
    ]);
  });

  test('a tee fed through its branch turns both ways; a cross has one run and two branches', () => {
    const bull = room().run([place3(4, 0, 2), place3(4, 4, 2), place3(6, 4, 2)]).run([place3(4, 4, 2), place3(2, 4, 2)]).nozzle(6, 4, 2).nozzle(2, 4, 2);
    expect(treeOf(bull).stretches.map(({ lossFactor }) => lossFactor)).toEqual([0, expect.closeTo(loss('tee-branch'), 9), expect.closeTo(loss('tee-branch'), 9)]);
    const cross = bull.run([place3(4, 4, 2), place3(4, 8, 2)]).nozzle(4, 8, 2);
    expect(treeOf(cross).stretches.map(({ lossFactor }) => lossFactor)).toEqual([0, expect.closeTo(loss('tee-branch'), 9), expect.closeTo(loss('tee-branch'), 9), expect.closeTo(loss('tee-run'), 9)]);
  });

  test('where the pipe begins with two, nobody knows which way the flow comes: both count as branches', () => {
    const built = room().run([place3(4, 4, 2), place3(6, 4, 2)]).run([place3(4, 4, 2), place3(2, 4, 2)]).nozzle(6, 4, 2).nozzle(2, 4, 2);
    expect(treeOf(built).stretches.map(({ from, to, lossFactor }) => [from, to, lossFactor])).toEqual([
      [0, 1, expect.closeTo(loss('tee-branch'), 9)],
      [0, 2, expect.closeTo(loss('tee-branch'), 9)],
    ]);
  });

  test('a change of bore ends a stretch; both ways it loses, on the head in the second pipe', () => {
    const built = room()
      .run([place3(0, 0, 2), place3(2, 0, 2)], '1')
      .run([place3(2, 0, 2), place3(4, 0, 2)], '1/2')
      .run([place3(4, 0, 2), place3(4, 3, 2)], '3/4')
      .nozzle(4, 3, 2);
    expect(treeOf(built).stretches.map(({ bore_m, lossFactor }) => [bore_m, lossFactor])).toEqual([
      [bore('1'), 0],
      [bore('1/2'), expect.closeTo(contractionLoss(bore('1'), bore('1/2')), 9)],
      [bore('3/4'), expect.closeTo(loss('elbow-90') + enlargementLoss(bore('1/2'), bore('3/4')), 9)],
    ]);
  });

  test('a schedule that narrows the bore is a change of bore as well', () => {
    const built = room().run([place3(0, 0, 2), place3(2, 0, 2)]).run([place3(2, 0, 2), place3(4, 0, 2)], '3/4', { schedule: '80' }).nozzle(4, 0, 2);
    expect(treeOf(built).stretches).toHaveLength(2);
  });

  test('pipes drawn backwards, and ends that share one place object, make the same tree', () => {
    const built = room()
      .run([place3(0, 4, 2), place3(3, 4, 2), place3(6, 4, 2), place3(6, 6, 2)])
      .run([place3(3, 4, 2), place3(3, 6, 2)], '1/2')
      .nozzle(6, 6, 2)
      .nozzle(3, 6, 2);
    const forwards = treeOf(built);
    for (const pipe of Object.values(networkOf(built).pipes)) [pipe.from, pipe.to] = [pipe.to, pipe.from];
    expect(treeOf(built)).toEqual(forwards);
    expect(forwards.stretches).toHaveLength(3);
    // Two nodes of one place, and one object for it, as a hand-made plan may have them.
    const { nodes } = networkOf(built);
    const [source, tee] = [sure(nodes[built.nodeAt(0, 4, 2).id]), sure(nodes[built.nodeAt(3, 4, 2).id])];
    source.at = tee.at;
    expect(treeOf(built).stretches.map(({ from, to }) => [from, to])).toEqual(forwards.stretches.map(({ from, to }) => [from, to]));
  });

  test('a pipe without length turns nothing, and the bend about it still counts', () => {
    const built = room().run([place3(0, 0, 2), place3(2, 0, 2)]).run([place3(2, 2e-6, 2), place3(2, 3, 2)]).nozzle(2, 3, 2);
    const network = networkOf(built);
    const [first, second] = [built.nodeAt(2, 0, 2).id, sure(Object.values(network.pipes)[1]).from];
    network.nodes.twin = { part: null, id: 'twin', at: { x: 2, y: 0, z: 2 } };
    sure(Object.values(network.pipes)[1]).from = 'twin';
    delete network.nodes[second];
    network.pipes.short = { ...sure(Object.values(network.pipes)[0]), id: 'short', from: first, to: 'twin' };
    expect(treeOf(built).stretches).toEqual([expect.objectContaining({ length_m: expect.closeTo(5, 5), lossFactor: expect.closeTo(loss('elbow-90'), 9) })]);
  });

  test.each(LOSS_SETS)('the losses are those of the chosen set: %s', (lossSet) => {
    const built = room().run([place3(0, 0, 2), place3(2, 0, 2), place3(2, 2, 2)]).nozzle(2, 2, 2);
    built.plan.basis.lossSet = lossSet;
    expect(treeOf(built).stretches[0]?.lossFactor).toBeCloseTo(fittingLoss(lossSet, 'elbow-90', '3/4', bore('3/4')).lossCoefficient, 9);
  });
});
