import { describe, expect, test } from 'vitest';
import type { DerivedNetwork, NetworkFault } from '#shared/derived/derived';
import { derivePlan } from '#shared/derived/derive-plan';
import { pipeBore_m, pipeOutside_m } from '#shared/profile/pipe-table';
import { type PlanBuilder, planBuilder, place3 as p } from '../../support/plan-builder.ts';
import { archive, ft, hut } from './demo-layouts.ts';

function networkOf(built: PlanBuilder): DerivedNetwork {
  const [network] = derivePlan(built.plan).networks;
  if (!network) throw new Error('The plan has no network.');
  return network;
}
const start = () => planBuilder().room(30, 30, 5).network();
const kinds = (faults: readonly NetworkFault[]) => faults.map(({ kind }) => kind);
const faultsOf = (built: PlanBuilder) => networkOf(built).faults;

describe('paths of the invented plans', () => {
  test('F2: lengths as its description states them, in feet', () => {
    const network = networkOf(archive());
    const feet = network.paths.map(({ length_m }) => length_m / ft(1));
    expect(feet.slice(0, 5).map((length) => length.toFixed(2))).toEqual(['31.83', '37.33', '21.33', '26.83', '9.33']);
    expect(network.faults).toEqual([]);
  });

  test('F2: elbows and tees on the way', () => {
    expect(networkOf(archive()).paths.map(({ elbows, tees }) => [elbows, tees])).toEqual([
      [3, 4],
      [3, 4],
      [2, 4],
      [2, 4],
      [3, 2],
      [3, 2],
      [3, 3],
      [4, 3],
    ]);
  });

  test('F1: 12 ft 9 in, three elbows, no tee', () => {
    const network = networkOf(hut());
    expect(network.paths).toMatchObject([{ elbows: 3, tees: 0 }]);
    expect(network.paths[0]?.length_m).toBeCloseTo(ft(12, 9), 9);
    expect(network.totalLength_m).toBeCloseTo(3.886, 3);
    expect(network.faults).toEqual([]);
  });
});

describe('a network', () => {
  const tree = () =>
    start()
      .run([p(2, 5, 3), p(5, 5, 3)], '1')
      .run([p(8, 5, 3), p(5, 5, 3)], '3/4')
      .run([p(5, 5, 3), p(5, 5, 2)], '1/2')
      .nozzle(8, 5, 3)
      .nozzle(5, 5, 2);

  test('has its pipes in flow order, whichever way they were drawn', () => {
    expect(networkOf(tree()).pipes.map(({ from, to }) => [from, to])).toEqual([
      [p(2, 5, 3), p(5, 5, 3)],
      [p(5, 5, 3), p(8, 5, 3)],
      [p(5, 5, 3), p(5, 5, 2)],
    ]);
  });

  test('adds up lengths and the volume inside', () => {
    const network = networkOf(tree());
    expect(network.totalLength_m).toBeCloseTo(7, 12);
    const volume_m3 = 3 * pipeBore_m('1', '40') ** 2 + 3 * pipeBore_m('3/4', '40') ** 2 + pipeBore_m('1/2', '40') ** 2;
    expect(network.pipeVolume_m3).toBeCloseTo((volume_m3 * Math.PI) / 4, 12);
    expect(network.pipes[0]).toMatchObject({ length_m: 3, outside_m: pipeOutside_m('1'), bore_m: pipeBore_m('1', '40') });
  });

  test('tells risers from drops by the flow', () => {
    const built = start().run([p(2, 5, 1), p(2, 5, 3), p(6, 5, 3.5), p(6, 5, 2), p(6, 9, 2)]).nozzle(6, 9, 2);
    expect(networkOf(built).pipes.map(({ upright }) => upright)).toEqual(['riser', null, 'drop', null]);
    expect(networkOf(tree()).pipes.map(({ upright }) => upright)).toEqual([null, null, 'drop']);
  });

  test('names nodes and pipes of each path from the source on', () => {
    const network = networkOf(tree());
    expect(network.paths[0]?.nodes[0]).toBe(network.network.source);
    expect(network.paths[0]?.nodes).toHaveLength(3);
    expect(network.paths[0]?.pipes).toEqual([network.pipes[0]?.pipe.id, network.pipes[1]?.pipe.id]);
    expect(network.paths.map(({ tees, elbows }) => [tees, elbows])).toEqual([
      [1, 0],
      [1, 0],
    ]);
  });

  test('knows its level, profile and nozzles; a lost profile stays undefined', () => {
    const built = tree();
    expect(networkOf(built)).toMatchObject({ level: { id: 'level-0' }, profile: { id: 'sample-80' } });
    expect(networkOf(built).nozzles.map(({ network }) => network.network.id)).toEqual([built.networkId, built.networkId]);
    built.plan.profiles = {};
    expect(networkOf(built).profile).toBeUndefined();
  });

  test('on a level that is lost still shows its pipe', () => {
    const built = tree();
    const network = built.plan.networks[built.networkId];
    if (network) network.level = 'gone';
    expect(networkOf(built)).toMatchObject({ level: { id: 'gone' }, totalLength_m: 7 });
    expect(networkOf(built).nozzles[0]?.space).toBeUndefined();
  });

  test('counts the odd leg of a tee only on the path that takes it', () => {
    const built = start().run([p(2, 5, 3), p(5, 5, 3), p(9, 5, 3)]).run([p(5, 5, 3), p(8, 8, 3)]).nozzle(9, 5, 3).nozzle(8, 8, 3);
    expect(networkOf(built).paths.map(({ elbows, tees }) => [elbows, tees])).toEqual([
      [0, 1],
      [1, 1],
    ]);
  });
});

describe('faults', () => {
  test('a sound tree has none', () => {
    expect(faultsOf(start().run([p(2, 5, 3), p(5, 5, 3), p(5, 5, 2.5)]).nozzle(5, 5, 2.5))).toEqual([]);
  });

  test('nothing drawn yet, and a source that is lost', () => {
    expect(faultsOf(start())).toMatchObject([{ kind: 'no-source', text: 'No pipe begins at the cylinders yet.' }]);
    const built = start().run([p(2, 5, 3), p(5, 5, 3)]).nozzle(5, 5, 3);
    const network = built.plan.networks[built.networkId];
    if (network) network.source = 'gone';
    const lost = networkOf(built);
    expect(lost.faults[0]).toMatchObject({ kind: 'no-source', text: 'No pipe end is joined to the cylinders.' });
    expect(lost.paths).toEqual([]);
  });

  test('a source without pipe', () => {
    const built = start().nozzle(5, 5, 3);
    const network = built.plan.networks[built.networkId];
    if (network) network.source = built.inNetwork('node').id;
    expect(kinds(faultsOf(built))).toEqual(['open-end', 'nozzle-not-at-end']);
  });

  test('a loop names all its pipes once', () => {
    const built = start()
      .run([p(1, 5, 3), p(2, 5, 3), p(6, 5, 3), p(6, 9, 3), p(2, 9, 3), p(2, 5, 3)])
      .run([p(6, 9, 3), p(9, 9, 3)])
      .nozzle(9, 9, 3);
    const [loop, ...others] = faultsOf(built);
    expect(others).toEqual([]);
    expect(loop?.kind).toBe('loop');
    expect(loop?.pipes).toHaveLength(4);
    expect(new Set(loop?.pipes).size).toBe(4);
    expect(loop?.at).toHaveLength(4);
  });

  test('two pipes between the same nodes are a loop', () => {
    const built = start().run([p(1, 5, 3), p(5, 5, 3)]).run([p(1, 5, 3), p(5, 5, 3)]).nozzle(5, 5, 3);
    expect(kinds(faultsOf(built))).toContain('loop');
  });

  test('parts that no agent reaches are named one by one', () => {
    const built = start()
      .run([p(1, 5, 3), p(5, 5, 3)])
      .nozzle(5, 5, 3)
      .run([p(1, 9, 3), p(5, 9, 3), p(5, 12, 3)])
      .run([p(1, 20, 3), p(5, 20, 3)]);
    const found = faultsOf(built).filter(({ kind }) => kind === 'unreachable');
    expect(found.map(({ pipes }) => pipes.length)).toEqual([2, 1]);
    expect(networkOf(built).paths).toHaveLength(1);
  });

  test('two ends side by side but not joined are one gap, not two open ends', () => {
    const built = start().run([p(1, 5, 3), p(5, 5, 3)]).run([p(5.01, 5, 3), p(9, 5, 3)]).nozzle(9, 5, 3);
    expect(kinds(faultsOf(built))).toEqual(['unreachable', 'gap']);
    expect(faultsOf(built)[1]?.pipes).toHaveLength(2);
  });

  test('two ends farther apart than the pipe is thick are open ends', () => {
    const built = start().run([p(1, 5, 3), p(5, 5, 3)]).run([p(5.05, 5, 3), p(9, 5, 3)]).nozzle(9, 5, 3);
    expect(kinds(faultsOf(built))).toEqual(['unreachable', 'open-end', 'open-end']);
  });

  test.each([
    ['on it', 0, true],
    ['within its radius', 0.013, true],
    ['beside it', 0.02, false],
  ])('a joint %s that a pipe passes', (_, off_m, isGap) => {
    const built = start()
      .run([p(1, 5, 3), p(9, 5, 3)])
      .nozzle(9, 5, 3)
      .run([p(5, 5 + off_m, 3), p(5, 9, 3)])
      .nozzle(5, 9, 3);
    expect(kinds(faultsOf(built)).includes('gap')).toBe(isGap);
  });

  test('crossing in the middle without a joint is no gap', () => {
    const built = start().run([p(1, 5, 3), p(9, 5, 3)]).nozzle(9, 5, 3).run([p(5, 1, 3), p(5, 9, 3)]);
    expect(kinds(faultsOf(built))).not.toContain('gap');
  });

  test('a nipple shorter than the pipe is thick is no gap', () => {
    const built = start().run([p(1, 5, 3), p(5, 5, 3), p(9, 5, 3)]).nozzle(9, 5, 3).run([p(5, 5, 3), p(5, 5, 2.99)]).nozzle(5, 5, 2.99);
    expect(faultsOf(built)).toEqual([]);
  });

  test('an end without a nozzle', () => {
    const built = start().run([p(1, 5, 3), p(5, 5, 3), p(9, 5, 3)]).nozzle(9, 5, 3).run([p(5, 5, 3), p(5, 9, 3)]);
    expect(faultsOf(built)).toMatchObject([{ kind: 'open-end', at: [p(5, 9, 3)] }]);
  });

  test('nozzles in the middle of a run, on no pipe, on a lost node, two on one end, at the source', () => {
    const built = start().run([p(1, 5, 3), p(5, 5, 3), p(9, 5, 3)]).nozzle(9, 5, 3).nozzle(9, 5, 3).nozzle(5, 5, 3).nozzle(20, 20, 3).nozzle(1, 5, 3).nozzle(8, 8, 3);
    const network = built.plan.networks[built.networkId];
    const last = Object.values(network?.nozzles ?? {}).at(-1);
    if (last) last.node = 'gone';
    const found = faultsOf(built);
    expect(kinds(found)).toEqual(Array(5).fill('nozzle-not-at-end'));
    expect(found.map(({ text }) => text)).toEqual([
      'Nozzle N2 shares its pipe end with another nozzle.',
      'Nozzle N3 is not at the end of a pipe: pipe goes on from it.',
      'Nozzle N4 is not joined to a pipe.',
      'Nozzle N5 is where the agent enters the pipe.',
      'Nozzle N6 has lost its place.',
    ]);
  });

  test('a pipe that lost an end is left out and reported', () => {
    const built = start().run([p(1, 5, 3), p(5, 5, 3)]).nozzle(5, 5, 3);
    const network = built.plan.networks[built.networkId];
    const pipe = Object.values(network?.pipes ?? {})[0];
    if (network && pipe) {
      network.pipes.stray = { ...pipe, id: 'stray', to: 'gone' };
      network.pipes.dot = { ...pipe, id: 'dot', to: pipe.from };
    }
    expect(networkOf(built).pipes).toHaveLength(2);
    expect(faultsOf(built)).toMatchObject([
      { kind: 'gap', text: 'A pipe has lost one of its ends.', pipes: ['stray'] },
      { kind: 'gap', text: 'A pipe begins and ends at the same place.', pipes: ['dot'] },
    ]);
  });
});
