import { describe, expect, test } from 'vitest';
import type { Design, EnclosureDesign } from '#shared/calculations/design/design';
import { workedDischarge } from '#shared/calculations/discharge/worked-discharge';
import { evaluate } from '#shared/evaluate';
import type { Enclosure, Plan } from '#shared/model/plan';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { known, sure } from '../../support/whole-plan.ts';

const DEMOS = ['F1', 'F2', 'F3'] as const;
type Demo = (typeof DEMOS)[number];

const source = workedDischarge();
const kept = new Map<Demo, Promise<Design>>();
const workedOut = async (name: Demo): Promise<Design> => evaluate((await buildDemo(name)).plan, source).design;

/** Sums of a demo as designed, worked out once. */
function designOf(name: Demo): Promise<Design> {
  const design = kept.get(name) ?? workedOut(name);
  kept.set(name, design);
  return design;
}

/** Sums of a demo with one of its rooms changed. */
async function changed(name: Demo, roomName: string, change: (room: Enclosure, plan: Plan) => void): Promise<EnclosureDesign> {
  const { plan } = structuredClone(await buildDemo(name));
  const room = sure(Object.values(plan.levels).flatMap((level) => Object.values(level.enclosures)).find((each) => each.name === roomName));
  change(room, plan);
  return sure(evaluate(plan, source).design.enclosures.find((each) => each.name === roomName));
}

const room = async (name: Demo, roomName: string): Promise<EnclosureDesign> => sure((await designOf(name)).enclosures.find((each) => each.name === roomName));
const rounded = (value: number, digits: number): number => Number(value.toFixed(digits));

describe('the demos’ sums are those of their design', () => {
  test('F1', async () => {
    const { volume, agent, people, fill, vent, cylindersNeeded } = await room('F1', 'Signal hut');
    expect(rounded(known(volume).net_m3, 2)).toBe(39.87);
    expect(rounded(known(agent).massNeeded_kg, 2)).toBe(24.13);
    expect(rounded(known(people).hot.oxygen_pct, 2)).toBe(12.15);
    expect(known(people).exposure).toBe('5-min');
    expect(rounded(known(vent).needed_m2, 4)).toBe(0.0242);
    expect(known(cylindersNeeded)).toBe(1);
    expect(known(fill).fitting).toEqual([1]);
  });

  test('F2', async () => {
    const { volume, agent, people, supply, vent, cylindersNeeded } = await room('F2', 'Archive annex');
    expect(rounded(known(volume).net_m3, 2)).toBe(199.84);
    const under = sure(known(volume).spaces.find(({ space }) => space.kind === 'under-floor'));
    expect(rounded((100 * under.net_m3) / known(volume).net_m3, 2)).toBe(9.6);
    expect(rounded(known(agent).massNeeded_kg, 2)).toBe(120.93);
    expect(known(supply)).toMatchObject({ cylinders: 5, installed_kg: expect.closeTo(123.5, 9) });
    expect(known(cylindersNeeded)).toBe(5);
    expect(rounded(known(people).hot.oxygen_pct, 2)).toBe(12.17);
    expect(rounded(known(vent).needed_m2, 3)).toBe(0.121);
  });

  test.each([
    ['201', 79.51, 12.14, 2],
    ['202', 39.76, 12.14, 1],
    ['203', 118.25, 12.08, 3],
    ['204', 40.14, 12.2, 1],
    ['205', 78.49, 12.05, 2],
  ])('F3 room %s: %d m³, %d %% oxygen when hottest, %d cylinders', async (name, net_m3, oxygen_pct, cylinders) => {
    const { volume, people, fill, vent } = await room('F3', `Room ${name}`);
    expect(rounded(known(volume).net_m3, 2)).toBe(net_m3);
    expect(rounded(known(people).hot.oxygen_pct, 2)).toBe(oxygen_pct);
    expect(known(people).exposure).toBe('5-min');
    expect(known(fill).fitting).toEqual([cylinders]);
    expect(rounded(known(vent).needed_m2 / cylinders, 4)).toBe(0.0242);
  });

  test('F3 room 206: two cylinders are short, three leave a stay of 3 minutes, and no number gives 5', async () => {
    const { volume, agent, people, fill, cylindersNeeded } = await room('F3', 'Room 206');
    expect(rounded(known(volume).net_m3, 2)).toBe(89.2);
    expect(rounded(known(agent).massNeeded_kg, 2)).toBe(53.98);
    expect(rounded(2 * 24.7, 1)).toBe(49.4);
    expect(known(cylindersNeeded)).toBe(3);
    expect(rounded(known(people).hot.oxygen_pct, 2)).toBe(10.1);
    expect(known(people).exposure).toBe('3-min');
    expect(known(fill).fitting).toEqual([3]);
    const five = await changed('F3', 'Room 206', ({ people: counted }) => { counted.exposure = '5-min'; });
    expect(known(five.fill).fitting).toEqual([]);
  });
});

describe('band of one cylinder of the sample', () => {
  const bandOf = async (change: (room: Enclosure, plan: Plan) => void) => known((await changed('F1', 'Signal hut', change)).fill);
  test.each([
    [40.3, 38.95, 40.82],
    [37.2, 38.95, 45.26],
  ])('at %d %%: from %d to %d m³', async (concentration_pct, least_m3, greatest_m3) => {
    const band = await bandOf((hut) => { hut.concentration_pct = concentration_pct; });
    expect([rounded(band.least_m3, 2), rounded(band.greatest_m3, 2)]).toEqual([least_m3, greatest_m3]);
  });

  test('at 41.9 % it is empty', async () => {
    const { least_m3, greatest_m3, fitting } = await bandOf((hut) => { hut.concentration_pct = 41.9; });
    expect(least_m3).toBeGreaterThan(greatest_m3);
    expect(fitting).toEqual([]);
  });

  test('with 10 % oxygen it begins at 29.35 m³', async () => {
    const band = await bandOf((hut, plan) => {
      hut.people.exposure = '3-min';
      plan.basis.exposureBy = 'oxygen';
    });
    expect(rounded(band.least_m3, 2)).toBe(29.35);
  });
});

test('the variant at 1500 m: mass times 0.83; at the design concentration 12.5 % oxygen count as 10.4 % at sea level', async () => {
  const { agent, people } = await changed('F1', 'Signal hut', (hut) => { hut.altitude_m = 1500; });
  const { altitudeFactor, massNeeded_kg } = known(agent);
  expect(rounded(altitudeFactor, 2)).toBe(0.83);
  expect(rounded(massNeeded_kg / known((await room('F1', 'Signal hut')).agent).massNeeded_kg, 2)).toBe(0.83);
  const { hot } = known(people);
  expect(hot.oxygenSeaLevel_pct / hot.oxygen_pct).toBeCloseTo(altitudeFactor, 9);
  const atDesign_pct = 20.95 * (1 - 0.403);
  expect([rounded(atDesign_pct, 1), rounded(atDesign_pct * altitudeFactor, 1)]).toEqual([12.5, 10.4]);
});

describe.each(DEMOS)('%s as designed', (name) => {
  test('has orifices as they are made, and a peak that the manual allows', async () => {
    for (const { orifices, discharge, profile, network } of (await designOf(name)).networks) {
      for (const { drawn_m2, made, name: nozzle } of known(orifices)) expect(drawn_m2, nozzle).toBe(sure(made).area_m2);
      const { peakFlow_kg_s, peakPipePressure_Pa } = known(discharge).result;
      expect(peakFlow_kg_s).toBeLessThanOrEqual(sure(sure(profile).limits.peakFlow_kg_s).value * Object.keys(network.cylinders).length);
      expect(peakPipePressure_Pa).toBeLessThanOrEqual(6_101_325 * (1 + 1e-9));
    }
  });

  test('fills every space in time, presses no wall too hard and holds long enough', async () => {
    for (const { filling, weakest, hold, vent } of (await designOf(name)).enclosures) {
      const { spaces, timeTo95_s, limit_s, peakOverpressure_Pa } = known(filling);
      for (const space of spaces) expect(sure(space.timeTo95_s)).toBeLessThan(120);
      expect([sure(timeTo95_s) < 120, limit_s]).toEqual([true, 120]);
      expect(known(weakest).pressure_Pa).toBe(250);
      expect(peakOverpressure_Pa).toBeLessThanOrEqual(250);
      expect(known(hold).time_s).toBeGreaterThan(known(hold).required_s);
      expect(known(vent).provided_m2).toBeGreaterThanOrEqual(known(vent).needed_m2);
    }
  });

  test('parts its agent as its volume, and its pipe, supports, wall and circuit bear what comes', async () => {
    for (const { shares, zones, supports, thrusts, mounts, release, conduit } of (await designOf(name)).networks) {
      for (const { flowShare, volumeShare } of known(shares)) expect(Math.abs(flowShare / volumeShare - 1)).toBeLessThan(0.05);
      for (const { greatest_Pa, line_Pa } of known(zones)) expect(sure(line_Pa)).toBeGreaterThan(greatest_Pa);
      const { spans, nozzles, turns } = known(supports);
      for (const { length_m, allowed_m } of spans) expect(length_m).toBeLessThanOrEqual(sure(allowed_m));
      for (const { distance_m, allowed_m } of [...nozzles, ...turns]) expect(sure(distance_m)).toBeLessThanOrEqual(allowed_m);
      for (const { blocked_N, support } of known(thrusts)) expect(blocked_N).toBeLessThanOrEqual(sure(sure(support).support.capacity_N));
      for (const { isLoadBearing, load_N, capacity_N } of known(mounts)) expect([isLoadBearing, load_N <= sure(capacity_N)]).toEqual([true, true]);
      for (const { voltage_V, least_V } of known(release).devices) expect(voltage_V).toBeGreaterThan(sure(least_V));
      expect(known(conduit).area_m2).toBeLessThanOrEqual(known(conduit).allowed_m2);
    }
  });
});
