import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { FITTING_SIGNS, fittingSign } from '#shared/isometric/fitting-sign';
import type { PipeNode } from '#shared/model/plan';
import { fittingShape } from '#shared/sheets/fitting-shape';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { sheetsOf, wordsOf } from '../../support/sheet-set.ts';

/** A main with an elbow; the straight node, the elbow and the far end may be given a part. */
const built = (parts: { straight?: PipeNode['part']; turn?: PipeNode['part']; end?: PipeNode['part'] } = {}) => {
  const builder = planBuilder()
    .room(6, 4, 2.6)
    .network({ assembly: [{ id: 'r', kind: 'regulator', name: '', length_m: 0.1, setPressure_Pa: 6e6, arrowDownstream: true }] })
    .cylinder(0.2, 2, Math.PI)
    .run([place3(0.2, 2, 2.2), place3(2, 2, 2.2), place3(4, 2, 2.2), place3(4, 3.5, 2.2), place3(4, 3.8, 2.2)])
    .run([place3(4, 3.5, 2.2), place3(4, 3.5, 2)])
    .nozzle(4, 3.5, 2);
  const set = (x: number, y: number, part: PipeNode['part'] | undefined): void => {
    const ref = builder.nodeAt(x, y, 2.2);
    const node = builder.plan.networks[ref.network]?.nodes[ref.id];
    if (node && part) node.part = part;
  };
  set(2, 2, parts.straight);
  set(4, 2, parts.turn);
  set(4, 3.8, parts.end);
  return builder.plan;
};
const signsOf = (parts: Parameters<typeof built>[0]): string[] => {
  const [network] = derivePlan(built(parts)).networks;
  return network ? network.fittings.map((fitting) => fittingSign(network, fitting)) : [];
};

describe('signs of fittings', () => {
  test('what is built in at a node decides its sign', () => {
    expect(signsOf({})).toEqual(expect.arrayContaining(['fitting', 'cap']));
    expect(signsOf({ straight: 'union' })).toContain('union');
    expect(signsOf({ straight: 'coupling' })).toContain('coupling');
    expect(signsOf({ turn: 'street-elbow' })).toContain('street-elbow');
    for (const end of ['dirt-trap', 'plug', 'drain', 'cap'] as const) expect(signsOf({ end })).toContain(end);
  });

  test('no two signs but the ticks of a screwed fitting and the wedge of a reducer look alike', () => {
    const shapes = FITTING_SIGNS.filter((sign) => sign !== 'reducer').map((sign) => JSON.stringify(fittingShape(sign, [Math.PI, 0])));
    expect(new Set(shapes).size).toBe(shapes.length);
  });

  test('a sign turns with its pipe', () => {
    for (const sign of FITTING_SIGNS) {
      const [east, north] = [fittingShape(sign, [0, Math.PI]), fittingShape(sign, [Math.PI / 2, -Math.PI / 2])];
      expect(north).toHaveLength(east.length);
      east.forEach(({ places }, i) => {
        if (sign === 'street-elbow' && i === 0) return;
        const back = places.map((_, k) => (k % 2 === 0 ? north[i]?.places[k + 1] : -(north[i]?.places[k - 1] ?? Number.NaN)));
        for (const [k, value] of places.entries()) expect(back[k]).toBeCloseTo(value, 9);
      });
    }
  });

  test('plan, isometric and legend print those in use and no others', () => {
    const words = sheetsOf(built({ straight: 'union', turn: 'street-elbow', end: 'dirt-trap' }), { paper: 'A3' }).flatMap(wordsOf);
    expect(words).toEqual(expect.arrayContaining(['union', 'street elbow, tick: inside thread', 'dirt trap: capped nipple']));
    expect(words).not.toContain('plug');
  });

  test('pipe without a regulator is printed as high pressure on plan and isometric, and as nothing else', () => {
    const plan = built();
    for (const network of Object.values(plan.networks)) network.assembly = [];
    const words = sheetsOf(plan, { paper: 'A3' }).flatMap(wordsOf);
    expect(words).toEqual(expect.arrayContaining(['pipe at high pressure: size · length ·', 'pipe at high pressure: size · length']));
    expect(words).not.toContain('pipe: size · length · height');
    expect(words).not.toContain('pipe, low-pressure side: size · length');
    expect(words).toContain('no regulator drawn: all pipe at high pressure');
  });
});
