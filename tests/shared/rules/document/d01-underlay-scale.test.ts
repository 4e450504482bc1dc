import { describe, expect, test } from 'vitest';
import type { Underlay } from '#shared/model/plan';
import { d01UnderlayScale as rule } from '#shared/rules/document/d01-underlay-scale';
import { checkOne, layout } from '../../../support/layout.ts';

/** A drawing at 0.01 m a unit; the second length is 500 units, 5 m on site, typed as given. */
const scaled = (typed_m: number | null, change: Partial<Underlay> = {}) => {
  const plan = layout({});
  const level = plan.levels['level-0'];
  const first = { a: { x: 0, y: 0 }, b: { x: 300, y: 0 }, distance_m: 3 };
  const second = { a: { x: 0, y: 0 }, b: { x: 0, y: 500 }, distance_m: typed_m ?? 1 };
  if (level) {
    level.underlays.u1 = {
      id: 'u1',
      name: 'floor.png',
      asset: 'a1',
      kind: 'png',
      page: 1,
      at: { x: 0, y: 0 },
      rotation_rad: 0,
      metresPerUnit: 0.01,
      calibration: 'two-points',
      knownLengths: typed_m === null ? [first] : [first, second],
      opacity: 1,
      hiddenLayers: [],
      visible: true,
      locked: false,
      ...change,
    };
  }
  return plan;
};

describe('D1', () => {
  test.each([
    ['agrees exactly', 5, 'ok'],
    ['on the limit of 0.5 %', 5 / 1.005, 'ok'],
    ['just outside', 5 / 1.00501, 'stop'],
    ['a foot-for-metre trap', 5 / 3.28, 'stop'],
  ])('%s', (_, typed_m, verdict) => {
    expect(checkOne(rule, scaled(typed_m)).verdict).toBe(verdict);
  });
  test('shows the length that proves the scale wrong where the floor plan lies, and no print hides it', () => {
    const { place, text } = checkOne(rule, scaled(5 / 1.00501, { at: { x: 10, y: 20 }, rotation_rad: Math.PI / 2 }));
    expect(place?.dimension?.a).toMatchObject({ x: 10, y: 20 });
    expect(place?.dimension?.b.x).toBeCloseTo(5, 9);
    expect(place?.dimension?.b.y).toBeCloseTo(20, 9);
    expect(text).toContain('(0.501000 % off; 0.5 % is allowed)');
  });
  test('one length alone, or none, proves nothing', () => {
    expect(checkOne(rule, scaled(null)).verdict).toBe('not-checked');
    expect(checkOne(rule, scaled(5, { metresPerUnit: null, calibration: 'none' })).verdict).toBe('not-checked');
    expect(checkOne(rule, scaled(null, { calibration: 'file-units', knownLengths: [] })).verdict).toBe('not-checked');
  });
  test('a length does not prove itself, taken twice or the other way round', () => {
    const first = { a: { x: 0, y: 0 }, b: { x: 300, y: 0 }, distance_m: 3 };
    for (const again of [first, { a: first.b, b: first.a, distance_m: 3 }]) expect(checkOne(rule, scaled(null, { knownLengths: [first, again] })).verdict).toBe('not-checked');
  });
  test('where the file gives its units, the first known length already proves them', () => {
    expect(checkOne(rule, scaled(null, { calibration: 'file-units' })).verdict).toBe('ok');
  });
});
