import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { pipePathsOf } from '#shared/derived/pipe-paths';
import { pipeTreeOf } from '#shared/derived/pipe-tree';
import type { DerivedNetwork, Fitting } from '#shared/derived/derived';
import { place3, planBuilder } from '../../support/plan-builder.ts';

/** A tree on a grid: each step leaves an earlier place for a free one beside it. */
const anyTree = fc.array(fc.tuple(fc.nat(), fc.constantFrom([1, 0, 0], [0, 1, 0], [0, 0, 1], [-1, 0, 0], [0, -1, 0], [1, 1, 0], [1, 3, 0])), { minLength: 1, maxLength: 40 });

function treeOf(steps: readonly (readonly [number, readonly number[]])[]): DerivedNetwork {
  const built = planBuilder().room(40, 40, 9).network();
  const places = [place3(10, 10, 3)];
  const taken = new Set(['10 10 3']);
  for (const [which, [x = 0, y = 0, z = 0]] of steps) {
    const from = places[which % places.length];
    if (!from) continue;
    const to = place3(from.x + x, from.y + y, from.z + z);
    const key = `${to.x} ${to.y} ${to.z}`;
    if (taken.has(key)) continue;
    taken.add(key);
    places.push(to);
    built.run([from, to]);
  }
  for (const { x, y, z } of places.slice(1)) built.nozzle(x, y, z);
  const [network] = derivePlan(built.plan).networks;
  if (!network) throw new Error('The plan has a network.');
  return network;
}

/** The way to a nozzle, walked back pipe by pipe and counted along. */
function walked({ network, pipes, fittings }: DerivedNetwork, nozzle: string) {
  const nodes = [network.nozzles[nozzle]?.node ?? ''];
  const way: string[] = [];
  let length_m = 0;
  for (;;) {
    const here = network.nodes[nodes[0] ?? '']?.at;
    const fed = pipes.find(({ to }) => to === here);
    if (!fed) break;
    const { from, to } = fed.pipe;
    nodes.unshift(network.nodes[to]?.at === here ? from : to);
    way.unshift(fed.pipe.id);
    length_m += fed.length_m;
  }
  const passed = fittings.filter(({ node }) => nodes.includes(node));
  const turns = ({ kind, pipes: at }: Fitting): boolean => kind === 'elbow-90' || kind === 'elbow-45' || (kind === 'odd-bend' && way.includes(at.at(-1) ?? ''));
  return { nozzle, nodes, pipes: way, length_m, elbows: passed.filter(turns).length, tees: passed.filter(({ kind }) => kind === 'tee' || kind === 'cross').length };
}

describe('the way of the agent to each nozzle', () => {
  test('is the one that is walked back from it, with all that is passed on it', () => {
    fc.assert(
      fc.property(anyTree, (steps) => {
        const network = treeOf(steps);
        expect(network.paths).toHaveLength(network.nozzles.length);
        for (const path of network.paths) {
          const expected = walked(network, path.nozzle);
          expect({ nodes: path.nodes, pipes: path.pipes, elbows: path.elbows, tees: path.tees }).toEqual({ nodes: expected.nodes, pipes: expected.pipes, elbows: expected.elbows, tees: expected.tees });
          expect(path.length_m).toBeCloseTo(expected.length_m, 9);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('leaves out nozzles that no agent reaches', () => {
    const { plan } = planBuilder().room(40, 40, 9).network().run([place3(1, 1, 3), place3(5, 1, 3)]).nozzle(5, 1, 3).nozzle(20, 20, 3);
    const [network] = Object.values(plan.networks);
    if (!network) throw new Error('The plan has a network.');
    expect(pipePathsOf(network, pipeTreeOf(network), [], new Map())).toHaveLength(1);
  });
});
