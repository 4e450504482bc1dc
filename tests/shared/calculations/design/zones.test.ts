import { describe, expect, test } from 'vitest';
import { workedDischarge } from '#shared/calculations/discharge/worked-discharge';
import { type PlanBuilder, place3 } from '../../../support/plan-builder.ts';
import { known, networkOf, networkSums, profileOf, reason, sure, wholePlan } from '../../../support/whole-plan.ts';

const PSI_Pa = 6894.757293168;
const zoneWith = (change: (built: PlanBuilder) => void = () => undefined) => {
  const built = wholePlan();
  change(built);
  return sure(known(networkSums(built, () => undefined).zones)[0]);
};
const pipesOf = (built: PlanBuilder) => Object.values(networkOf(built).pipes);

describe('pressure zones', () => {
  test('ASME B31.1 104.1.2 by hand: threaded 3/4 in Schedule 40, S 15 000 psi, 12.5 % mill tolerance, y 0.4', () => {
    const zone = zoneWith();
    const a = 0.875 * 0.113 - 0.8 / 14;
    const rating_Pa = ((2 * 15_000 * a) / (1.05 - 0.8 * a)) * PSI_Pa;
    expect(zone).toMatchObject({ side: 'after the regulator', greatest_Pa: 6e6, greatestSource: 'set pressure of the regulator' });
    for (const { rating_Pa: each } of zone.pipes) expect(each / rating_Pa).toBeCloseTo(1, 6);
    // ASME B16.3 (memory): Class 300 bears 2000 psi up to NPS 1.
    for (const fitting of zone.fittings) expect(fitting).toMatchObject({ size: '3/4', rating_Pa: expect.closeTo(2000 * PSI_Pa, 0), isEverAllowed: true });
    expect(sure(zone.line_Pa) / rating_Pa).toBeCloseTo(1, 6);
  });

  test('welded pipe keeps the wall that a thread would cut away', () => {
    const a = 0.875 * 0.113;
    const zone = zoneWith((built) => {
      for (const pipe of pipesOf(built)) pipe.joint = 'welded';
    });
    expect(sure(zone.pipes[0]).rating_Pa / (((2 * 15_000 * a) / (1.05 - 0.8 * a)) * PSI_Pa)).toBeCloseTo(1, 6);
  });

  test('a fitting bears what its weakest end bears, and a cap counts', () => {
    const zone = zoneWith((built) => void built.run([place3(1, 2.5, 2.3), place3(2, 2.5, 2.3)], '1').run([place3(2, 2.5, 2.3), place3(3, 2.5, 2.3)], '1-1/2'));
    const reducer = sure(zone.fittings.find(({ fitting }) => fitting.kind === 'reducer'));
    expect(reducer).toMatchObject({ size: '1-1/2', rating_Pa: expect.closeTo(1500 * PSI_Pa, 0) });
    expect(zone.fittings.filter(({ fitting }) => fitting.kind === 'cap')).toHaveLength(2);
  });

  test('forged fittings are rated as the pipe that they pair with', () => {
    const zone = zoneWith((built) => { profileOf(built).fittingClass = '2000'; });
    const a = 0.875 * 0.154 - 0.8 / 14;
    expect(sure(zone.fittings[0]).rating_Pa / (((2 * 15_000 * a) / (1.05 - 0.8 * a)) * PSI_Pa)).toBeCloseTo(1, 6);
  });

  test('without a regulator the pipe sees the full cylinder at its hottest', () => {
    const zone = zoneWith((built) => {
      delete profileOf(built).limits.regulatorPressure_Pa;
      networkOf(built).assembly = [{ id: 'h', kind: 'hose', name: 'Hose', length_m: 0.4, setPressure_Pa: null, arrowDownstream: true }];
    });
    expect(zone.side).toBe('no regulator');
    expect(zone.greatestSource).toBe('full cylinder at its hottest place (54 °C); no regulator is listed in the discharge assembly');
    // An ideal gas would come to 300 bar·327.6/288.15 = 341 bar; dense nitrogen rises more.
    expect(zone.greatest_Pa).toBeGreaterThan(3.41e7);
    expect(zone.greatest_Pa).toBeLessThan(3.8e7);
  });

  test('a calculated peak counts only where it is truly above the set pressure', () => {
    const worked = workedDischarge();
    const peaks = (share: number) =>
      known(
        networkSums(wholePlan(), (network, input) => {
          const answer = worked(network, input);
          return typeof answer === 'object' ? { ...answer, result: { ...answer.result, peakPipePressure_Pa: 6_101_325 * share } } : answer;
        }).zones,
      )[0];
    expect(peaks(1 + 1e-13)).toMatchObject({ greatestSource: 'set pressure of the regulator' });
    expect(peaks(1.1)).toMatchObject({ greatest_Pa: expect.closeTo(6_101_325 * 1.1 - 101_325, 3), greatestSource: 'peak of the calculated discharge' });
  });

  test.each<[string, (built: PlanBuilder) => void, RegExp]>([
    ['pipe', (built) => void Object.assign(networkOf(built), { pipes: {} }), /^the network has no pipe yet\.$/],
    ['a profile', (built) => { networkOf(built).profile = 'lost'; }, /^the network has no unit profile\.$/],
    ['a fill pressure', (built) => void delete profileOf(built).limits.fillPressure_Pa, /^“Fill pressure” is blank in the unit profile “Sample/],
    ['a fitting class', (built) => { profileOf(built).fittingClass = null; }, /^the fitting class is blank in the unit profile “Sample/],
    ['a material that the stress sets leave out', (built) => { sure(pipesOf(built)[1]).material = 'stainless-steel'; }, /^the stress sets hold carbon steel only/],
    ['joints of which much is known', (built) => { sure(pipesOf(built)[1]).joint = 'grooved'; }, /^how much the grooves leave of the pipe, and what its couplings bear, is not known\./],
    ['a stress', (built) => void Object.assign(built.plan.basis, { stressSet: 'newer', pipeSpecification: 'A53-F' }), /^the chosen stress set has no value for the chosen pipe specification\.$/],
    ['fittings of that size', (built) => {
      for (const pipe of pipesOf(built)) pipe.size = '4';
    }, /nominalSize 4 has no Class 300 rating/],
  ])('without %s they are not known', (_, change, because) => {
    const built = wholePlan();
    change(built);
    expect(reason(networkSums(built).zones)).toMatch(because);
  });
});
