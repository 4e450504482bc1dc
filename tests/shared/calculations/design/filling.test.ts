import { describe, expect, test } from 'vitest';
import type { DischargeSource } from '#shared/calculations/discharge/discharge-source';
import { workedDischarge } from '#shared/calculations/discharge/worked-discharge';
import { enclosureSums, known, networkSums, profileOf, reason, roomOf, wholePlan } from '../../../support/whole-plan.ts';

const worked = workedDischarge();
/** Answers as worked out, but changed. */
const changed =
  (change: (answer: Extract<ReturnType<DischargeSource>, object>) => ReturnType<DischargeSource>): DischargeSource =>
  (network, input) => {
    const answer = worked(network, input);
    return typeof answer === 'object' ? change(answer) : answer;
  };

describe('filling of an enclosure', () => {
  test('is as fast as the discharge of its network says', () => {
    const built = wholePlan();
    const sums = known(enclosureSums(built).filling);
    const { result, slow } = known(networkSums(built).discharge);
    expect(sums).toMatchObject({ timeTo95_s: slow.timeTo95_s, peakOverpressure_Pa: result.enclosures[0]?.peakOverpressure_Pa, limit_s: 120, isStale: false });
    expect(sums.spaces.map(({ space, mass_kg }) => [space.name, mass_kg])).toEqual([['Room 1', slow.spaces[0]?.mass_kg]]);
    expect(sums.timeTo95_s).toBeGreaterThan(60);
  });

  test('an older discharge is marked as such', () => {
    expect(known(enclosureSums(wholePlan(), changed((answer) => ({ ...answer, isStale: true }))).filling).isStale).toBe(true);
  });

  test('what never gets there has no time; what the equation of the gas cut off is not worked out', () => {
    const late = (ended: 'time' | 'gas-limit') =>
      enclosureSums(
        wholePlan(),
        changed((answer) => ({ ...answer, result: { ...answer.result, ended, spaces: answer.result.spaces.map((space) => ({ ...space, timeTo95_s: undefined })) } })),
      ).filling;
    expect(known(late('time')).timeTo95_s).toBeUndefined();
    expect(reason(late('gas-limit'))).toMatch(/^the gas becomes colder than its equation goes before “Room 1” is filled\./);
  });

  test.each([
    ['what can burn', { hazardClass: 'unknown' as const }, 'what can burn in the enclosure is not known, so neither is its time limit.'],
    ['a nozzle in the void', { underFloor: { depth_m: 0.3, isProtected: true, exclusion: null } }, 'no nozzle blows into “Room 1, under floor”.'],
  ])('without %s it is not known', (_, change, because) => {
    const built = wholePlan();
    Object.assign(roomOf(built), change);
    expect(reason(enclosureSums(built).filling)).toBe(because);
  });

  test('an edition without a limit for the hazard gives none', () => {
    const built = wholePlan();
    roomOf(built).hazardClass = 'A-higher';
    built.plan.basis.designSet = 'nfpa-2001-2012';
    expect(reason(enclosureSums(built).filling)).toBe('the chosen edition gives no time limit for this hazard.');
  });

  test('without nozzle, and without a figure of the manual', () => {
    const built = wholePlan();
    delete profileOf(built).limits.nozzleCoefficient;
    expect(reason(enclosureSums(built).filling)).toBe('“Discharge coefficient” is blank in the unit profile “Sample 80 L unit (invented)”.');
    built.plan.networks = {};
    expect(reason(enclosureSums(built).filling)).toBe('no nozzle serves the enclosure.');
  });
});
