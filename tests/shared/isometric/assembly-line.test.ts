import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assemblyLine, clearestWays } from '#shared/isometric/assembly-line';
import type { AssemblyPart, Network } from '#shared/model/plan';
import { planBuilder } from '../../support/plan-builder.ts';

const part = (kind: AssemblyPart['kind']): AssemblyPart => ({ id: kind, kind, name: '', length_m: 0.1, setPressure_Pa: null, arrowDownstream: true });
const networkOf = (kinds: readonly AssemblyPart['kind'][], cylinders: number): Network => {
  const builder = planBuilder().room(5, 4, 2.6).network({ assembly: kinds.map(part) });
  for (let i = 0; i < cylinders; i += 1) builder.cylinder(0.2, 1 + i * 0.4, Math.PI);
  const network = builder.plan.networks[builder.networkId];
  if (!network) throw new Error('The plan has a network.');
  return network;
};
const WAYS = { away_rad: Math.PI, row_rad: -Math.PI / 2 };

describe('the discharge assembly as a scheme', () => {
  test('stands in flow order from the cylinder to the pipe, all but the line behind the regulator at high pressure', () => {
    const { spots, lines, cylinders } = assemblyLine(networkOf(['hose', 'check-valve', 'regulator'], 1), WAYS);
    const along = [...spots].sort((a, b) => a.x - b.x);
    expect(along.map(({ part: { kind } }) => kind)).toEqual(['hose', 'check-valve', 'regulator']);
    expect(cylinders[0]?.x).toBeLessThan(along[0]?.x ?? 0);
    // The regulator itself holds the pressure of the cylinder on its way in.
    expect(along.map(({ zone }) => zone)).toEqual(['high', 'high', 'high']);
    expect(lines.filter(({ zone }) => zone === 'low')).toHaveLength(1);
    expect(lines.find(({ zone }) => zone === 'low')?.a).toEqual({ x: 0, y: 0 });
  });

  test('the cylinder next to the outlet of the manifold stands next to the pipe', () => {
    const network = networkOf(['hose', 'manifold', 'regulator'], 3);
    const names = (manifold: Network['manifold']): string[] => assemblyLine({ ...network, manifold }, WAYS).cylinders.map(({ id }) => network.cylinders[id]?.name ?? '');
    const [blind, outlet] = [{ x: 0.2, y: 0.8, z: 2 }, { x: 0.2, y: 2, z: 2 }];
    expect(names({ from: blind, to: outlet })).toEqual(['C3', 'C2', 'C1']);
    expect(names({ from: outlet, to: blind })).toEqual(['C1', 'C2', 'C3']);
  });

  test('what stands before a manifold stands once for each cylinder, the rest once', () => {
    const { spots, cylinders, lines } = assemblyLine(networkOf(['hose', 'check-valve', 'manifold', 'regulator'], 3), WAYS);
    const count = (kind: string): number => spots.filter(({ part: each }) => each.kind === kind).length;
    expect([count('hose'), count('check-valve'), count('regulator'), cylinders.length]).toEqual([3, 3, 1, 3]);
    expect(lines.filter(({ isManifold }) => isManifold)).toHaveLength(1);
    expect(assemblyLine(networkOf(['hose', 'manifold', 'regulator'], 3), WAYS, 1).cylinders).toHaveLength(1);
  });

  test('without a regulator every line is at high pressure', () => {
    for (const kinds of [['hose'], ['hose', 'manifold', 'stop-valve'], []] as const) {
      expect(assemblyLine(networkOf(kinds, 2), WAYS).lines.every(({ zone }) => zone === 'high')).toBe(true);
    }
  });

  test('a relief valve behind the regulator is on its low-pressure side', () => {
    const { spots } = assemblyLine(networkOf(['regulator', 'relief-valve'], 1), WAYS);
    expect(spots.find(({ part: { kind } }) => kind === 'relief-valve')?.zone).toBe('low');
  });

  test('leaves away from the pipe, whichever way it begins', () => {
    const network = networkOf(['hose', 'check-valve', 'regulator'], 2);
    fc.assert(
      fc.property(fc.constantFrom(1, 3, 5, 7, 9, 11), (twelfths) => {
        const pipe_rad = (twelfths * Math.PI) / 6;
        const run = { a: { x: 0, y: 0 }, b: { x: 20 * Math.cos(pipe_rad), y: 20 * Math.sin(pipe_rad) }, isHere: true };
        const { away_rad } = clearestWays(network, [run], () => true);
        expect(Math.cos(away_rad - pipe_rad)).toBeLessThan(0.6);
      }),
    );
  });
});
