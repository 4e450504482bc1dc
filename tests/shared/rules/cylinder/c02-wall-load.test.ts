import { describe, expect, test } from 'vitest';
import type { MountSums } from '#shared/calculations/design/design';
import { notWorked, worked } from '#shared/calculations/design/worked';
import { c02WallLoad as rule } from '#shared/rules/cylinder/c02-wall-load';
import { check, checkOne, layout } from '../../../support/layout.ts';
import { checkSums, checkSumsOnce } from '../../../support/network-sums.ts';

// Statics: 150 kg · 9.80665 m/s² · 1.5.
const LOAD_N = 2206.496_25;
const mount = (given: Partial<MountSums> = {}): MountSums => ({
  ref: { kind: 'cylinder', network: 'net', id: 'cy1' },
  name: 'C1',
  wall: { kind: 'wall', level: 'level-0', enclosure: 'e1', id: 'c3' },
  isLoadBearing: true,
  capacity_N: 3000,
  load_N: LOAD_N,
  factor: 1.5,
  anchor: undefined,
  ...given,
});
const mounted = (given: Partial<MountSums>) => checkSumsOnce(rule, layout({}), { mounts: worked([mount(given)]) });

describe('C2', () => {
  test.each([
    ['at the limit', LOAD_N, 'ok'],
    ['inside', 2300, 'ok'],
    ['outside', 2206, 'stop'],
    ['nothing at all', 0, 'stop'],
  ])('a wall that bears %s', (_, capacity_N, verdict) => {
    expect(mounted({ capacity_N })).toMatchObject({ verdict, name: 'C1', measured: LOAD_N, limit: capacity_N });
  });

  test('says load, factor and what the wall bears, and defers to the engineer', () => {
    const { text, basis, place } = mounted({ capacity_N: 2000 });
    expect(text).toBe('Puts 2206 N on the wall (its filled weight × 1.5); the wall bears only 2000 N. Stand it on a floor frame.');
    expect(basis.caution).toContain('A structural engineer declares what the wall bears.');
    expect(place?.at).toEqual([{ x: 0.2, y: 0.2 }]);
  });

  test('no wall near, or one that bears no load, is a fault whatever its capacity', () => {
    expect(mounted({ wall: undefined, isLoadBearing: null, capacity_N: null }).verdict).toBe('stop');
    expect(mounted({ isLoadBearing: false, capacity_N: 1e6 })).toMatchObject({ verdict: 'stop', text: 'The wall behind it is not load-bearing. Stand it on a floor frame.' });
  });

  test.each([
    ['whether it bears', { isLoadBearing: null }],
    ['what it bears', { capacity_N: null }],
  ])('nobody declared %s: not checked, but the load is said', (_, given) => {
    const finding = mounted(given);
    expect(finding.verdict).toBe('not-checked');
    expect(finding.text).toContain('It puts 2206 N on the wall');
  });

  test('a cylinder on the floor loads no wall', () => {
    const plan = layout({ cylinders: 2 });
    const [, second] = Object.values(plan.networks.net?.cylinders ?? {});
    if (second) second.mounting = 'floor';
    const both = { mounts: worked([mount(), mount({ ref: { kind: 'cylinder', network: 'net', id: 'cy2' }, name: 'C2', isLoadBearing: false })]) };
    expect(checkSums(rule, plan, both).map(({ name }) => name)).toEqual(['C1']);
    for (const cylinder of Object.values(plan.networks.net?.cylinders ?? {})) cylinder.mounting = 'floor';
    expect(checkSums(rule, plan, { mounts: notWorked('“Filled mass” is blank.') })).toEqual([]);
  });

  test('a load that is not known is not checked, once', () => {
    expect(checkSumsOnce(rule, layout({ cylinders: 3 }), { mounts: notWorked('“Filled mass” is blank.') })).toMatchObject({ verdict: 'not-checked', name: 'Network' });
  });

  test('the sums of a plan are asked', () => {
    expect(check(rule, layout({ cylinders: 2 })).map(({ name, verdict }) => [name, verdict])).toEqual([
      ['C1', 'not-checked'],
      ['C2', 'not-checked'],
    ]);
    expect(checkOne(rule, layout({ limits: { filledMass_kg: null } })).text).toContain('Filled mass');
  });
});
