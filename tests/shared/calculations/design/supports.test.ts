import { describe, expect, test } from 'vitest';
import { type PlanBuilder, place3, planBuilder } from '../../../support/plan-builder.ts';
import { known, networkOf, networkSums, reason } from '../../../support/whole-plan.ts';

const supportsOf = (built: PlanBuilder) => known(networkSums(built).supports);
/** East 3 m, north 2 m. */
const bent = () => planBuilder().room(9, 9, 3).run([place3(0, 0, 2), place3(3, 0, 2), place3(3, 2, 2)]).nozzle(3, 2, 2);
const lengths = (built: PlanBuilder) => supportsOf(built).spans.map(({ length_m }) => Math.round(length_m * 1000) / 1000);

describe('supports of a network', () => {
  test('free stretches run from the assembly over the supports to the nozzle, round corners', () => {
    const built = bent().support(1, 0, 2).support(2.8, 0, 2).support(3, 1.9, 2);
    const { spans, nozzles, turns, held } = supportsOf(built);
    expect(lengths(built)).toEqual([1, 1.8, 0.2 + 1.9, 0.1]);
    // ISO 14520-1 (memory): DN 20 every 1.8 m, the last within 0.1 m.
    expect(spans.map(({ allowed_m }) => allowed_m)).toEqual([1.8, 1.8, 1.8, 1.8]);
    expect(spans[2]?.at).toEqual([place3(2.8, 0, 2), { x: 3, y: expect.closeTo(1.9, 9), z: 2 }]);
    expect(nozzles).toMatchObject([{ name: 'N1', distance_m: expect.closeTo(0.1, 9), allowed_m: 0.1 }]);
    expect(turns).toMatchObject([{ fitting: { kind: 'elbow-90' }, distance_m: expect.closeTo(0.2, 9), allowed_m: expect.closeTo(0.3048, 4) }]);
    expect(held.every(({ pipe }) => pipe !== undefined)).toBe(true);
  });

  test('the shortest span of mixed sizes counts; one that the table leaves out is not known', () => {
    const built = planBuilder().room(9, 9, 3).run([place3(0, 0, 2), place3(1, 0, 2)], '1-1/4').run([place3(1, 0, 2), place3(2, 0, 2)], '1/2').nozzle(2, 0, 2).support(0.5, 0, 2);
    expect(supportsOf(built).spans.map(({ allowed_m }) => allowed_m)).toEqual([2.4, 1.5]);
    for (const pipe of Object.values(networkOf(built).pipes)) pipe.size = '1/4';
    built.plan.basis.supportTable = 'mss-sp-69';
    expect(supportsOf(built).spans.map(({ allowed_m }) => allowed_m)).toEqual([undefined, undefined]);
  });

  test('a stretch that two paths share is told once', () => {
    const built = planBuilder()
      .room(9, 9, 3)
      .run([place3(0, 4, 2), place3(2, 4, 2), place3(4, 4, 2)])
      .run([place3(2, 4, 2), place3(2, 6, 2)])
      .nozzle(4, 4, 2)
      .nozzle(2, 6, 2)
      .support(1, 4, 2);
    expect(lengths(built)).toEqual([1, 3, 3]);
    expect(supportsOf(built).turns).toMatchObject([{ fitting: { kind: 'tee' }, distance_m: expect.closeTo(1, 9) }]);
  });

  test('a support at a tee holds every way through it, whichever leg was drawn first', () => {
    const built = planBuilder()
      .room(9, 9, 3)
      .run([place3(2, 4, 2), place3(2, 6, 2)])
      .run([place3(0, 4, 2), place3(2, 4, 2), place3(4, 4, 2)])
      .nozzle(2, 6, 2)
      .nozzle(4, 4, 2)
      .support(2, 4, 2);
    networkOf(built).source = built.nodeAt(0, 4, 2).id;
    expect(lengths(built)).toEqual([2, 2, 2]);
    expect(supportsOf(built).nozzles.map(({ distance_m }) => distance_m)).toEqual([expect.closeTo(2, 9), expect.closeTo(2, 9)]);
  });

  test('one that holds no pipe holds nothing', () => {
    const { held, spans, nozzles } = supportsOf(bent().support(1, 1, 2));
    expect(held.map(({ pipe }) => pipe)).toEqual([undefined]);
    expect(spans.map(({ length_m }) => length_m)).toEqual([5]);
    expect(nozzles).toMatchObject([{ distance_m: undefined, support: undefined }]);
  });

  test('are not known without pipe to a nozzle, or without one drawn', () => {
    expect(reason(networkSums(planBuilder().room(9, 9, 3).run([place3(0, 0, 2), place3(3, 0, 2)])).supports)).toBe('no pipe leads to a nozzle yet.');
    expect(reason(networkSums(bent()).supports)).toBe('no support is drawn: place them by the table.');
  });
});
