import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import type { Opening, Shutdown } from '#shared/model/plan';
import { e13DuctsShut as rule } from '#shared/rules/enclosure/e13-ducts-shut';
import { buildDemo } from '../../../../src-main/demos/build-demo.ts';
import { check } from '../../../support/layout.ts';
import type { PlanBuilder } from '../../../support/plan-builder.ts';
import { builtRoom } from '../../../support/served-room.ts';

const damper: Partial<Opening> = { name: 'D1', kind: 'damper', bottom_m: 2.2, height_m: 0.4, closes: true, swing: 'none' };
const ducted = (): PlanBuilder => builtRoom().obstruction('duct', rectangle(2, 0.5, planPoint(5, 1.75)), 2.2, 2.6);
const withRow = (built: PlanBuilder, kind: Shutdown['kind'], target: string | null) => built.shutdown(kind, target).plan;
const verdicts = (plan: PlanBuilder['plan']) => check(rule, plan).map(({ verdict }) => verdict);

describe('E13', () => {
  test('a room without ducts says so', () => expect(check(rule, builtRoom().plan)).toMatchObject([{ verdict: 'ok', name: 'Room 1' }]));
  test('a duct without a damper stops, at the wall', () => {
    expect(check(rule, ducted().plan)).toMatchObject([{ verdict: 'stop', name: 'duct, Room 1', text: expect.stringContaining('without a damper'), place: { at: [{ x: 6, y: 2 }] } }]);
  });
  test('a damper without a row stops, once', () => {
    expect(check(rule, ducted().opening(1, 2, 0.5, damper).plan)).toMatchObject([{ verdict: 'stop', text: 'Has a damper, but no row of the release matrix of the room shuts it.' }]);
  });
  test('a damper with its row is kept, by damper or by duct', () => {
    const built = ducted().opening(1, 2, 0.5, damper);
    expect(verdicts(withRow(built, 'damper', built.lastOpening.id))).toEqual(['ok']);
    const other = ducted().opening(1, 2, 0.5, damper);
    expect(verdicts(withRow(other, 'damper', other.onLevel('obstruction').id))).toEqual(['ok']);
  });
  test.each([
    ['stays open', false, 'stop'],
    ['is not known to close', null, 'not-checked'],
  ])('a damper that %s', (_, closes, verdict) => {
    const built = ducted().opening(1, 2, 0.5, { ...damper, closes });
    expect(verdicts(withRow(built, 'damper', built.lastOpening.id))).toEqual([verdict]);
  });
  test('a damper elsewhere in the wall does not shut the duct, and lacks a row of its own', () => {
    expect(check(rule, ducted().opening(1, 3.5, 0.5, damper).plan).map(({ verdict, name }) => [verdict, name])).toEqual([
      ['stop', 'duct, Room 1'],
      ['stop', 'Damper D1, Room 1'],
    ]);
  });
  test('a damper without a duct needs its row too', () => {
    const built = builtRoom().opening(1, 2, 0.5, damper);
    expect(verdicts(built.plan)).toEqual(['stop']);
    expect(verdicts(withRow(built, 'damper', built.lastOpening.id))).toEqual(['ok']);
  });
  test('a duct between two rooms is asked at each, and each needs a row of its own', () => {
    const built = ducted().opening(1, 2, 0.5, damper);
    const shut = built.lastOpening.id;
    built.shutdown('damper', shut).room(6, 4, 2.7, planPoint(6.15, 0)).nozzle(9, 2, 2.5);
    expect(check(rule, built.plan).map(({ verdict, name }) => [name, verdict])).toEqual([
      ['duct, Room 1', 'ok'],
      ['duct, Room 2', 'stop'],
    ]);
    expect(verdicts(built.shutdown('damper', shut).plan)).toEqual(['ok', 'ok']);
  });

  const diffused = () => builtRoom().device('diffuser', 2, 2, { name: 'S1' });
  test.each<[string, Shutdown['kind'] | undefined, string | null, string]>([
    ['nothing', undefined, null, 'stop'],
    ['a fan that is not drawn', 'fan', null, 'ok'],
    ['a row of its own for the fan', 'fan', 'own', 'ok'],
    ['a row of its own for a damper', 'damper', 'own', 'ok'],
    ['a row of its own for the power', 'power', 'own', 'stop'],
    ['a damper that is not drawn', 'damper', null, 'stop'],
  ])('a diffuser with %s', (_, kind, target, verdict) => {
    const built = diffused();
    const [device] = Object.keys(built.plan.levels[built.levelId]?.devices ?? {});
    expect(verdicts(kind ? withRow(built, kind, target === 'own' ? (device ?? '') : null) : built.plan)).toEqual([verdict]);
  });
  test('a diffuser outside the room is no matter of it', () => {
    expect(check(rule, builtRoom().device('diffuser', 8, 2).plan)).toMatchObject([{ verdict: 'ok', name: 'Room 1' }]);
  });
  test('a row whose thing has gone stops', () => {
    expect(check(rule, withRow(builtRoom(), 'damper', 'gone'))).toMatchObject([{ verdict: 'stop', text: expect.stringContaining('no longer drawn') }]);
  });

  test('the duct that joins 201 and 202 of the ferry control is found at both', async () => {
    const { plan } = await buildDemo('F3-faults');
    const stops = check(rule, plan).filter(({ verdict, subject }) => verdict === 'stop' && subject.kind === 'obstruction');
    expect(stops.map(({ name }) => name.split(', ').at(-1)).sort()).toEqual(['Room 201', 'Room 202']);
  });
});
