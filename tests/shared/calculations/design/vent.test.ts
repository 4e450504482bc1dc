import { describe, expect, test } from 'vitest';
import { enclosureSums, known, networkSums, profileOf, reason, roomOf, sure, wholePlan } from '../../../support/whole-plan.ts';

type Built = ReturnType<typeof wholePlan>;
const ventWith = (change: (built: Built) => void = () => undefined) => {
  const built = wholePlan();
  change(built);
  return enclosureSums(built).vent;
};
const ventOpening = (built: Built) => sure(Object.values(roomOf(built).openings)[0]);

describe('weakest wall', () => {
  test('is the one that bears least, columns and shafts included', () => {
    const built = wholePlan();
    built.hole([
      { x: 3, y: 2 },
      { x: 3, y: 3 },
      { x: 4, y: 3 },
    ]);
    expect(reason(enclosureSums(built).weakest)).toMatch(/^the pressure that .+ bears is not known\.$/);
    for (const corner of sure(roomOf(built).holes[0])) corner.wall.allowablePressure_Pa = 180;
    expect(known(enclosureSums(built).weakest)).toMatchObject({ pressure_Pa: 180 });
  });

  test('is not known while one wall is not', () => {
    const built = wholePlan();
    sure(roomOf(built).outline[2]).wall.allowablePressure_Pa = null;
    const { weakest, vent } = enclosureSums(built);
    expect(reason(weakest)).toBe('the pressure that Wall 3 of Room 1 bears is not known.');
    expect(reason(vent)).toBe(reason(weakest));
  });
});

describe('relief vent', () => {
  test('by hand: 0.35 kg/s, air out at 250 Pa', () => {
    const sums = known(ventWith());
    // A = m·s/(0.61·√(2·250/1.205)) with s = 0.79968 + 0.00293·20.
    expect(sums.needed_m2).toBeCloseTo((0.35 * 0.85828) / (0.61 * Math.sqrt(500 / 1.205)), 9);
    expect(sums).toMatchObject({ flow_kg_s: 0.35, flowSource: 'unit profile: sample, invented', allowable_Pa: 250, provided_m2: 0.0242, countedLeakage_m2: 0 });
    expect(sums.pressureWithVents_Pa).toBeCloseTo(250 * (sums.needed_m2 / 0.0242) ** 2, 6);
    expect(sums.vents.map(({ name, leadsTo }) => [name, leadsTo])).toEqual([['Relief vent', 'outdoors']]);
  });

  test('at the hottest, at altitude and with what the discharge works out', () => {
    const base = known(ventWith()).needed_m2;
    expect(known(ventWith(({ plan }) => { plan.basis.ventTemperature = 'hottest'; })).needed_m2).toBeCloseTo((base * 0.87879) / 0.85828, 9);
    const high = known(ventWith((built) => { roomOf(built).altitude_m = 1500; }));
    // Twice the volume of gas of half the density: the area goes with one over the root of the pressure.
    expect(high.needed_m2).toBeCloseTo(base / Math.sqrt(0.83), 4);
    const built = wholePlan();
    built.plan.basis.ventFlow = 'calculated';
    const { peakFlow_kg_s } = known(networkSums(built).discharge).result;
    expect(known(enclosureSums(built).vent)).toMatchObject({ flow_kg_s: peakFlow_kg_s, flowSource: 'peak of the calculated discharge' });
  });

  test('counts leaks only where the basis says so', () => {
    const sums = known(ventWith(({ plan }) => Object.assign(plan.basis, { ventCountsLeakage: true, ventCoefficient: 0.5 })));
    expect(sums.countedLeakage_m2).toBeCloseTo((0.006 * 0.61) / 0.5, 9);
    expect(sums.provided_m2).toBeCloseTo(0.0242 + sums.countedLeakage_m2, 12);
    const unknown = ventWith((built) => {
      built.plan.basis.ventCountsLeakage = true;
      roomOf(built).leakage = { kind: 'unknown' };
    });
    expect(reason(unknown)).toMatch(/leakage of the enclosure is not known/);
  });

  test('without any vent nothing says what the pressure comes to', () => {
    const sums = known(ventWith((built) => { roomOf(built).openings = {}; }));
    expect([sums.provided_m2, sums.pressureWithVents_Pa]).toEqual([0, undefined]);
  });

  test.each<[string, (built: Built) => void, RegExp]>([
    ['the free area of a vent', (built) => { ventOpening(built).freeArea_m2 = null; }, /^the free area of “Relief vent” is not known\.$/],
    ['the flow of the manual', (built) => void delete profileOf(built).limits.peakFlow_kg_s, /^“Peak flow of one cylinder” is blank in the unit profile of “Network 1”\.$/],
    ['any flow', (built) => { profileOf(built).limits.peakFlow_kg_s = { value: 0, source: '' }; }, /^“Peak flow of one cylinder” is 0 /],
    ['strength', (built) => { sure(roomOf(built).outline[0]).wall.allowablePressure_Pa = 0; }, /^no vent is large enough: Wall 1 of Room 1 bears no pressure at all\.$/],
    ['nozzles', (built) => { built.plan.networks = {}; }, /^no nozzle serves the enclosure\.$/],
  ])('without %s it is not known', (_, change, because) => {
    expect(reason(ventWith(change))).toMatch(because);
  });

  test('a calculated flow that is not there yet is not replaced by another', () => {
    const built = wholePlan();
    built.plan.basis.ventFlow = 'calculated';
    expect(reason(enclosureSums(built, () => undefined).vent)).toBe('the discharge is not worked out: the discharge is being worked out.');
  });
});
