import { describe, expect, test } from 'vitest';
import { regulatorOf } from '#shared/calculations/design/flow-input';
import { derivePlan } from '#shared/derived/derive-plan';
import { LIMIT_CATALOGUE, type LimitKey } from '#shared/profile/limit-catalogue';
import { type PlanBuilder, place3 } from '../../../support/plan-builder.ts';
import { REGULATOR, known, networkOf, networkSums, profileOf, reason, roomOf, sure, wholePlan } from '../../../support/whole-plan.ts';

const regulator = (built: PlanBuilder) => regulatorOf(sure(derivePlan(built.plan).networks[0]));

describe('input of a discharge', () => {
  test('holds the unit as its manual states it and the room as drawn', () => {
    const { input, nodeIds } = known(networkSums(wholePlan()).discharge);
    // 24.7 kg in 80 L at 15 °C are 300 bar on the gauge within a percent, as the sample states.
    expect(input.fillPressure_Pa / 30_101_325).toBeCloseTo(1, 2);
    // A cylinder of 80 L and 10.5 in: 4·V/D + π·D²/2.
    expect(input.innerArea_m2).toBeCloseTo(0.32 / 0.2667 + (Math.PI / 2) * 0.2667 ** 2, 9);
    expect(input).toMatchObject({
      gas: 'real', process: 'wall-heat', cylinders: 1, cylinderVolume_m3: 0.08, fillTemperature_K: 288.15, regulatorPressure_Pa: 6_101_325, nodeCount: 2,
      steelMass_kg: expect.closeTo(110 - 24.7, 9),
      spaces: [{ volume_m3: expect.closeTo(40, 9), enclosure: 0, designConcentration_pct: 40.3 }],
      enclosures: [{ temperature_K: 293.15, ambient_Pa: 101_325, ventArea_m2: 0.0242, ventCoefficient: 0.61 }],
      nozzles: [{ node: 1, area_m2: 2.2e-5, dischargeCoefficient: 0.85, space: 0 }],
    });
    expect(nodeIds).toHaveLength(2);
  });

  test('the time is run in the coldest room, the pressure in a room as warm as its vent is sized for', () => {
    const roomsAt = (ventTemperature: '20C' | 'hottest'): (readonly [string, number | undefined])[] => {
      const built = wholePlan();
      built.plan.basis.ventTemperature = ventTemperature;
      const seen: (readonly [string, number | undefined])[] = [];
      networkSums(built, (_, input) => void seen.push([input.pipeWarmth, input.enclosures[0]?.temperature_K]));
      return seen.slice(0, 2);
    };
    expect(roomsAt('20C')).toEqual([['as-throttled', 293.15], ['warmed', 291.15]]);
    expect(roomsAt('hottest')).toEqual([['as-throttled', 300.15], ['warmed', 291.15]]);
  });

  test('is the very same object while nothing changed, and another when something did', () => {
    const seen: unknown[] = [];
    const ask = (built: PlanBuilder) => networkSums(built, (_, input) => void seen.push(input));
    const built = wholePlan();
    ask(built);
    ask(built);
    // A plan that could be changed in place is looked through every time.
    expect(seen[0]).not.toBe(seen[3]);
    expect(seen[0]).toEqual(seen[3]);
  });

  const KEYS: readonly LimitKey[] = ['cylinderVolume_m3', 'agentMass_kg', 'filledMass_kg', 'cylinderDiameter_m', 'nozzleCoefficient'];
  test.each(KEYS)('without “%s” of the manual, or with 0 for it, it is not known', (key) => {
    const built = wholePlan();
    const { label } = LIMIT_CATALOGUE[key];
    profileOf(built).limits[key] = { value: 0, source: '' };
    expect(reason(networkSums(built).discharge)).toBe(`“${label}” is 0 in the unit profile “Sample 80 L unit (invented)”.`);
    delete profileOf(built).limits[key];
    const { discharge, orifices, shares, thrusts } = networkSums(built);
    for (const group of [discharge, orifices, shares, thrusts]) expect(reason(group)).toBe(`“${label}” is blank in the unit profile “Sample 80 L unit (invented)”.`);
  });

  test.each<[string, (built: PlanBuilder) => void, RegExp]>([
    ['a nozzle', (built) => { networkOf(built).nozzles = {}; }, /^the network has no nozzle yet\.$/],
    ['sound pipe', (built) => void built.run([place3(2.5, 0.5, 2.3), place3(4, 0.5, 2.3)]), /^the pipe is not one sound tree yet\. A pipe ends without a nozzle\.$/],
    ['a cylinder', (built) => { networkOf(built).cylinders = {}; }, /^the network has no cylinder yet\.$/],
    ['a space for each nozzle', (built) => { sure(Object.values(networkOf(built).nozzles)[0]).serves = { enclosure: 'lost', space: 'room' }; }, /^nozzle N1 serves no space\.$/],
    ['a profile', (built) => { networkOf(built).profile = 'lost'; }, /^the network has no unit profile\.$/],
    ['steel about the gas', (built) => { profileOf(built).limits.filledMass_kg = { value: 20, source: '' }; }, /^“Filled mass” is not more than “Agent mass” in the unit profile\.$/],
    ['a height', (built) => { roomOf(built).height_m = null; }, /^the volume of “Room 1” is not known\.$/],
    ['temperatures', (built) => { roomOf(built).temperature = null; }, /^the temperatures of “Room 1” are not known\.$/],
    ['an altitude', (built) => { roomOf(built).altitude_m = null; }, /^the height of “Room 1” above the sea is not known\.$/],
    ['a concentration', (built) => { roomOf(built).concentration_pct = null; }, /^no design concentration is chosen for “Room 1”\.$/],
    ['the free area of a vent', (built) => { sure(Object.values(roomOf(built).openings)[0]).freeArea_m2 = null; }, /^the free area of “Relief vent” is not known\.$/],
    ['an orifice', (built) => { sure(Object.values(networkOf(built).nozzles)[0]).orificeArea_m2 = null; }, /^the orifice of nozzle N1 is not chosen\.$/],
    ['losses for so small a pipe', (built) => {
      built.plan.basis.lossSet = 'ashrae';
      for (const pipe of Object.values(networkOf(built).pipes)) pipe.size = '1/4';
    }, /^the formula does not hold here\. size 1\/4 has no threaded fittings in the ASHRAE table\.$/],
    ['a coefficient that is one', (built) => { profileOf(built).limits.nozzleCoefficient = { value: 1.2, source: '' }; }, /dischargeCoefficient must be from 0 to 1/],
  ])('without %s it is not known', (_, change, because) => {
    const built = wholePlan();
    change(built);
    expect(reason(networkSums(built).discharge)).toMatch(because);
  });
});

describe('regulator', () => {
  const withParts = (parts: ReturnType<typeof networkOf>['assembly'], isStated = true): PlanBuilder => {
    const built = wholePlan();
    networkOf(built).assembly = parts;
    if (!isStated) delete profileOf(built).limits.regulatorPressure_Pa;
    return built;
  };
  const hose = { ...REGULATOR, id: 'part-h', kind: 'hose' as const, name: 'Hose', setPressure_Pa: null };

  test.each([
    ['as set on the plan', [{ ...REGULATOR, setPressure_Pa: 5e6 }], 5e6],
    ['as the manual sets it, while the plan leaves it blank', [{ ...REGULATOR, setPressure_Pa: null }], 6_101_325],
    ['the unit’s own, while nobody has listed the assembly', [], 6_101_325],
    ['the lower of two', [REGULATOR, { ...REGULATOR, id: 'part-2', setPressure_Pa: 4e6 }], 4e6],
    ['the lower of two, whichever comes first', [{ ...REGULATOR, id: 'part-2', setPressure_Pa: 4e6 }, REGULATOR], 4e6],
  ])('%s', (_, parts, set_Pa) => {
    expect(known(regulator(withParts(parts)))).toBe(set_Pa);
  });

  test('none, where the assembly lists none and the manual knows of none', () => {
    expect(known(regulator(withParts([hose], false)))).toBeNull();
  });

  test.each([
    ['a regulator without a set pressure', [{ ...REGULATOR, setPressure_Pa: null }], false, 'the set pressure of “Regulator” is not known.'],
    ['an assembly that nobody listed and no word of the manual', [], false, 'whether “Network 1” has a regulator is not known: list its discharge assembly.'],
    ['an assembly that leaves out the regulator of the manual', [hose], true, 'the discharge assembly of “Network 1” lists no regulator, but the unit profile gives a set pressure for one.'],
  ])('%s is not guessed at', (_, parts, isStated, because) => {
    const built = withParts(parts, isStated);
    const { discharge, zones } = networkSums(built);
    for (const group of [regulator(built), discharge, zones]) expect(reason(group)).toBe(because);
  });
});
