import { describe, expect, test } from 'vitest';
import type { MountSums } from '#shared/calculations/design/design';
import { notWorked, worked } from '#shared/calculations/design/worked';
import type { Anchors } from '#shared/model/plan';
import { c03Anchors as rule } from '#shared/rules/cylinder/c03-anchors';
import { checkOne, layout } from '../../../support/layout.ts';
import { checkSumsOnce } from '../../../support/network-sums.ts';

const ANCHORS: Anchors = { kind: 'wedge, 10 mm', count: 4, tension_N: 1000, shear_N: 2000, edge_m: 0.1, leastEdge_m: 0.1 };
const plan = (anchors: Partial<Anchors> | null, railHeight_m: number | null = 1.2) => {
  const made = layout({});
  const cylinder = made.networks.net?.cylinders.cy1;
  if (cylinder) Object.assign(cylinder, { anchors: anchors && { ...ANCHORS, ...anchors }, railHeight_m });
  return made;
};
const mount = (anchor: MountSums['anchor'], given: Partial<MountSums> = {}): MountSums => ({
  ref: { kind: 'cylinder', network: 'net', id: 'cy1' },
  name: 'C1',
  wall: { kind: 'wall', level: 'level-0', enclosure: 'e1', id: 'c3' },
  isLoadBearing: true,
  capacity_N: null,
  load_N: 2000,
  factor: 1.5,
  anchor,
  ...given,
});
const loaded = (shear_N: number, tension_N: number, anchors: Partial<Anchors> = {}) =>
  checkSumsOnce(rule, plan(anchors), { mounts: worked([mount({ shear_N, tension_N })]) });

describe('C3', () => {
  test.each([
    ['at the limit', 1000, 500, 'ok'],
    ['inside', 1000, 499, 'ok'],
    ['outside', 1000, 501, 'stop'],
    ['each by itself inside, together outside', 1900, 900, 'stop'],
    ['shear alone at the limit', 2000, 0, 'ok'],
    ['pull alone outside', 0, 1001, 'stop'],
    ['not a number', Number.NaN, 0, 'stop'],
  ])('shear and pull together %s', (_, shear_N, tension_N, verdict) => {
    expect(loaded(shear_N, tension_N).verdict).toBe(verdict);
  });

  test.each([
    ['at the least', 0.1, 'ok'],
    ['inside', 0.2, 'ok'],
    ['outside', 0.099, 'stop'],
  ])('distance to the edge %s', (_, edge_m, verdict) => {
    expect(loaded(100, 100, { edge_m }).verdict).toBe(verdict);
  });

  test('says what each anchor takes of what it bears', () => {
    const finding = loaded(1000, 501);
    expect(finding).toMatchObject({ name: 'C1', measure: 'ratio', measured: expect.closeTo(1.001, 12), limit: 1 });
    expect(finding.text).toBe('Each anchor takes 1000 N of shear of 2000 N and 501 N of pull of 1000 N: 100.1 % of what it bears. Use more or stronger anchors.');
    expect(loaded(1000, 501, { edge_m: 0.05 }).text).toContain('Use more or stronger anchors. They are 50 mm from the edge of the wall; 100 mm is the least.');
  });

  test('an edge fault is measured as a length', () => {
    expect(loaded(1, 1, { edge_m: 0.05 })).toMatchObject({ measure: 'length', measured: 0.05, limit: 0.1 });
  });

  test('an anchor that bears nothing fails', () => {
    expect(loaded(1, 1, { tension_N: 0 }).text).toContain('more than all of what it bears');
    expect(loaded(1, 0, { tension_N: 0 }).verdict).toBe('stop');
  });

  test('what is missing is not checked, and hides no edge fault', () => {
    const asked = (made: ReturnType<typeof plan>, given: Partial<MountSums> = {}) => checkSumsOnce(rule, made, { mounts: worked([mount(undefined, given)]) });
    expect(asked(plan(null))).toMatchObject({ verdict: 'not-checked', text: 'Not checked: its anchors are not chosen.' });
    expect(asked(plan({}, null)).text).toBe('Not checked: the height of its rail is not known.');
    expect(asked(plan({}), { wall: undefined }).text).toBe('Not checked: no wall is near behind it that could hold anchors.');
    expect(asked(plan({ edge_m: 0.05 }, null)).verdict).toBe('stop');
    expect(checkSumsOnce(rule, plan({}), { mounts: notWorked('“Filled mass” is blank.') }).verdict).toBe('not-checked');
  });

  test('the sums of a plan are asked', () => {
    // Statics: 110 kg · 9.80665 · 1.5 = 1618.1 N on four anchors; 0.2 m off the wall, rail at 1.2 m: pull 67.4 N.
    expect(checkOne(rule, plan({}))).toMatchObject({ verdict: 'ok', measured: expect.closeTo(404.52 / 2000 + 67.42 / 1000, 4) });
  });
});
