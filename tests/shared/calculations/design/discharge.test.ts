import { describe, expect, test } from 'vitest';
import type { DischargeSource } from '#shared/calculations/discharge/discharge-source';
import { runDischarge } from '#shared/calculations/discharge/run-discharge';
import { workedDischarge } from '#shared/calculations/discharge/worked-discharge';
import { place3 } from '../../../support/plan-builder.ts';
import { known, networkSums, reason, roomOf, wholePlan } from '../../../support/whole-plan.ts';

const source = workedDischarge();

describe('discharge of a network', () => {
  test('is what the transient gives for its input, and the same when asked again', () => {
    const { input, result, isStale } = known(networkSums(wholePlan(), source).discharge);
    expect(result).toEqual(runDischarge(input));
    expect(isStale).toBe(false);
    expect(known(networkSums(wholePlan(), source).discharge).result).toBe(result);
  });

  test.each<[string, DischargeSource, RegExp]>([
    ['there is none yet', () => undefined, /^the discharge is being worked out\.$/],
    ['the worker says why not', () => 'a figure lies outside what the sum is good for (x)', /^a figure lies outside what the sum is good for \(x\)\.$/],
    [
      'a figure is out of range',
      () => {
        throw new RangeError('until_s must be above 0, not 0.');
      },
      /^the formula does not hold here\. until_s must be above 0, not 0\.$/,
    ],
    ['its pressures did not settle', (network, input) => {
      const answer = source(network, input);
      return typeof answer === 'object' ? { ...answer, result: { ...answer.result, isNetworkSolved: false } } : answer;
    }, /^the pressures in the pipe did not settle/],
  ])('is not known when %s', (_, asked, because) => {
    const { discharge, orifices, shares, thrusts } = networkSums(wholePlan(), asked);
    for (const group of [discharge, orifices, shares, thrusts]) expect(reason(group)).toMatch(because);
  });

  test('a fault of the program is not passed off as missing data', () => {
    expect(() =>
      networkSums(wholePlan(), () => {
        throw new TypeError('a mistake');
      }),
    ).toThrow('a mistake');
  });
});

describe('shares of the spaces', () => {
  test('compare what comes into each with its volume', () => {
    const built = wholePlan();
    roomOf(built).underFloor = { depth_m: 0.25, isProtected: true, exclusion: null };
    built.run([place3(2.5, 0.5, 2.3), place3(2.5, 0.5, -0.1)]).nozzle(2.5, 0.5, -0.1, [0, Math.PI], { orificeArea_m2: 2.2e-6 });
    const { shares, discharge } = networkSums(built, source);
    const { result } = known(discharge);
    const total_kg = result.nozzles.reduce((sum, { mass_kg }) => sum + mass_kg, 0);
    expect(known(shares).map(({ space, flowShare, volumeShare }) => [space.name, flowShare, volumeShare])).toEqual([
      ['Room 1', expect.closeTo((result.nozzles[0]?.mass_kg ?? 0) / total_kg, 9), expect.closeTo(2.5 / 2.75, 9)],
      ['Room 1, under floor', expect.closeTo((result.nozzles[1]?.mass_kg ?? 0) / total_kg, 9), expect.closeTo(0.25 / 2.75, 9)],
    ]);
  });
});
