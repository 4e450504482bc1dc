import { describe, expect, test } from 'vitest';
import { planPoint } from '#shared/geometry/point';
import type { Enclosure, Opening } from '#shared/model/plan';
import { rectangle } from '#shared/geometry/outline';
import { e15ConnectedSpace } from '#shared/rules/enclosure/e15-connected-space';
import { e12OpeningsClose as rule } from '#shared/rules/enclosure/e12-openings-close';
import { check } from '../../../support/layout.ts';
import { planBuilder } from '../../../support/plan-builder.ts';
import { builtRoom, eastOf } from '../../../support/served-room.ts';

const door: Partial<Opening> = { name: 'Door', kind: 'door', closes: true, undercut_m: 0.003 };
const asked = (change: Partial<Opening>, room: Partial<Enclosure> = {}) => check(rule, builtRoom(room).opening(1, 2, 1, { ...door, ...change }).plan);
const one = (...given: Parameters<typeof asked>) => {
  const [finding] = asked(...given);
  if (!finding) throw new Error('There is an opening.');
  return finding;
};

describe('E12', () => {
  test.each([
    ['narrower', 0.003, 'ok'],
    ['of 1/8 in', 0.125 * 0.0254, 'ok'],
    ['wider', 0.0032, 'stop'],
    ['not known', null, 'not-checked'],
  ])('a door that closes with a gap %s', (_, undercut_m, verdict) => expect(one({ undercut_m })).toMatchObject({ verdict, name: 'Door, Room 1' }));
  test.each([
    ['closes', true, 'ok'],
    ['stays open', false, 'stop'],
    ['is not known to close', null, 'not-checked'],
  ])('a door, damper, grille and window that %s', (_, closes, verdict) => {
    for (const kind of ['door', 'damper', 'grille', 'window'] as const) expect(one({ kind, closes }).verdict, kind).toBe(verdict);
  });
  test('vents and penetrations are no matter of this check', () => {
    for (const kind of ['relief-vent', 'penetration'] as const) expect(asked({ kind }), kind).toEqual([]);
  });
  test.each<[string, Enclosure['leakage'], string]>([
    ['in a door-fan test', { kind: 'door-fan', readings: [] }, 'ok'],
    // A gap of 10 mm under a leaf of 1 m is 0.01 m².
    ['in the area of the leaks', { kind: 'area', area_m2: 0.01, pressure_Pa: 10 }, 'ok'],
    ['but the leaks are less than it alone', { kind: 'area', area_m2: 0.0099, pressure_Pa: 10 }, 'stop'],
    ['nowhere', { kind: 'unknown' }, 'stop'],
  ])('a wide gap that counts %s', (_, leakage, verdict) => expect(one({ undercut_m: 0.01 }, { leakage }).verdict).toBe(verdict));
  test('an unknown gap is none after a door-fan test', () => expect(one({ undercut_m: null }, { leakage: { kind: 'door-fan', readings: [] } }).verdict).toBe('ok'));

  const joined = (first: string, second: string) =>
    check(rule, builtRoom({ dischargedWith: first }).opening(1, 2, 1, { ...door, kind: 'grille', closes: false }).room(3, 4, 2.7, planPoint(6.15, 0), { dischargedWith: second }).plan)[0];
  test('may stay open to a room that is discharged with it', () => expect(joined('Zone A', 'zone a ')).toMatchObject({ verdict: 'ok', text: 'Stays open to Room 2, which is discharged together with this room.' }));
  test('that it may not stay open to another room is said once, with the connected spaces', () => {
    for (const [first, second] of [['Zone A', 'Zone B'], ['', '']] as const) {
      const { plan } = builtRoom({ dischargedWith: first }).opening(1, 2, 1, { ...door, kind: 'grille', closes: false }).room(3, 4, 2.7, planPoint(6.15, 0), { dischargedWith: second });
      expect(check(rule, plan)).toEqual([]);
      expect(check(e15ConnectedSpace, plan)).toMatchObject([{ verdict: 'stop' }]);
    }
  });
  test('to another room and to a corridor beside it, both are said', () => {
    const { plan } = builtRoom().opening(1, 2, 1, { ...door, closes: false }).room(3, 2, 2.7, planPoint(6.15, 0)).adjoining('corridor', rectangle(2, 2, planPoint(6.15, 2)));
    expect(check(rule, plan)[0]?.verdict).toBe('stop');
    expect(check(e15ConnectedSpace, plan)[0]?.verdict).toBe('stop');
  });
  test('says what it leads to', () => {
    expect(check(rule, builtRoom().opening(1, 2, 1, { ...door, closes: false }).adjoining('corridor', eastOf(), { name: 'Link' }).plan)[0]?.text).toBe('Does not close by itself: the gas would leave through it. It leads to Link.');
  });
  test('a room that no nozzle serves is not asked', () => expect(check(rule, planBuilder().room(6, 4, 2.7).opening(1, 2, 1, door).plan)).toEqual([]));
});
