import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dischargeBases } from '#shared/calculations/discharge/discharge-bases';
import { CYLINDER_PROCESSES, PIPE_WARMTHS, type DischargeInput, type DischargeResult } from '#shared/calculations/discharge/discharge';
import { runDischarge } from '#shared/calculations/discharge/run-discharge';
import { nitrogenAtEntropy } from '#shared/calculations/formulas/nitrogen-isentrope';
import { NITROGEN_R_J_kgK } from '#shared/calculations/formulas/nitrogen-coefficients';
import { nitrogenDensity_kg_m3, nitrogenState } from '#shared/calculations/formulas/nitrogen';
import { realChokedFlux_kg_m2s } from '#shared/calculations/formulas/orifice';
import { SMALL_UNIT, STEEL_ROUGHNESS_m, VESSEL, crossingOf, mainWithDrops, nozzleMass_kg, valueAt } from './units.ts';

const last = (values: readonly number[]): number => values.at(-1) ?? Number.NaN;

describe('vessel of 80 L, 200 bar, 288.15 K through a choked orifice of 5 mm, C_d 0.85, ideal gas (closed form, γ 1.4)', () => {
  const vessel = (process: 'isothermal' | 'adiabatic', until_s: number): DischargeResult => runDischarge({ ...VESSEL, gas: 'ideal', process, until_s });

  test('starts with 18.7082 kg and 0.781547 kg/s', () => {
    const { massAtStart_kg, peakFlow_kg_s, flow_kg_s } = vessel('adiabatic', 5);
    expect(massAtStart_kg).toBeCloseTo(18.7082, 3);
    expect(flow_kg_s[0]).toBeCloseTo(0.781547, 5);
    expect(peakFlow_kg_s).toBe(flow_kg_s[0]);
  });
  test.each([
    [5, 162.299],
    [10, 131.705],
    [20, 86.731],
    [30, 57.114],
    [60, 16.31],
  ])('isothermal after %d s: %d bar', (time_s, bar) => {
    expect(last(vessel('isothermal', time_s).cylinderPressure_Pa) / (bar * 1e5)).toBeCloseTo(1, 3);
  });
  test.each([
    [5, 150.18, 265.5, 0.8149, 0.6114],
    [10, 114.047, 245.43, 0.6695, 0.4829],
    [20, 67.806, 211.54, 0.4618, 0.3092],
    [30, 41.79, 184.22, 0.3268, 0.2042],
    [60, 11.634, 127.84, 0.1311, 0.0683],
  ])('adiabatic after %d s: %d bar, %d K, %d of the mass, %d kg/s', (time_s, bar, kelvin, left, flow) => {
    const result = vessel('adiabatic', time_s);
    expect(last(result.cylinderPressure_Pa) / (bar * 1e5)).toBeCloseTo(1, 3);
    expect(Math.abs(last(result.cylinderTemperature_K) - kelvin)).toBeLessThan(0.05);
    expect(Math.abs(result.massLeft_kg / result.massAtStart_kg - left)).toBeLessThan(1e-4);
    expect(Math.abs(last(result.flow_kg_s) - flow)).toBeLessThan(2e-4);
  });
  test.each([
    ['isothermal', 111.24, 71.71],
    ['adiabatic', 112.78, 98.21],
  ] as const)('%s: no longer choked after %d s, 95 percent of the mass out after %d s', (process, unchokes_s, most_s) => {
    const result = vessel(process, 130);
    expect(Math.abs(crossingOf(result.times_s, result.cylinderPressure_Pa, 101_325 / 0.528282).time_s / unchokes_s - 1)).toBeLessThan(2e-3);
    // Mass by the ideal gas from pressure and temperature.
    const left = result.cylinderPressure_Pa.map((pressure_Pa, index) => (pressure_Pa * 0.08) / (NITROGEN_R_J_kgK * (result.cylinderTemperature_K[index] ?? 1)) / result.massAtStart_kg);
    expect(Math.abs(crossingOf(result.times_s, left, 0.05).time_s / most_s - 1)).toBeLessThan(2e-3);
  });
});

describe('real nitrogen from 200 bar and 15 °C, adiabatic', () => {
  const result = runDischarge({ ...VESSEL, process: 'adiabatic' });

  test.each([
    [100, 235.4, 0.685],
    [60, 202.2, 0.503],
    [30, 164.0, 0.319],
  ])('at %d bar: %d K, %d of the mass left (computed from Span et al. 2000 at constant entropy)', (bar, kelvin, left) => {
    const crossing = crossingOf(result.times_s, result.cylinderPressure_Pa, bar * 1e5);
    const temperature_K = valueAt(result.cylinderTemperature_K, crossing);
    expect(Math.abs(temperature_K - kelvin)).toBeLessThan(0.1);
    expect(Math.abs((nitrogenDensity_kg_m3(bar * 1e5, temperature_K) * 0.08) / result.massAtStart_kg - left)).toBeLessThan(1e-3);
  });
  test('takes as long to 60 bar as the choked flux along the isentrope says (integrated over the mass)', () => {
    const start = nitrogenState(nitrogenDensity_kg_m3(200e5, 288.15), 288.15);
    const end_K = valueAt(result.cylinderTemperature_K, crossingOf(result.times_s, result.cylinderPressure_Pa, 60e5));
    const end_kg_m3 = nitrogenDensity_kg_m3(60e5, end_K);
    const steps = 200;
    let time_s = 0;
    for (let step = 0; step < steps; step += 1) {
      const density_kg_m3 = start.density_kg_m3 + ((step + 0.5) / steps) * (end_kg_m3 - start.density_kg_m3);
      const state = nitrogenAtEntropy(density_kg_m3, start.entropy_J_kgK, 240);
      if (!state) throw new Error('The isentrope stays within the equation.');
      const flow_kg_s = 0.85 * (Math.PI / 4) * 0.005 ** 2 * realChokedFlux_kg_m2s(state.pressure_Pa, state.temperature_K);
      time_s += (((start.density_kg_m3 - end_kg_m3) / steps) * 0.08) / flow_kg_s;
    }
    expect(crossingOf(result.times_s, result.cylinderPressure_Pa, 60e5).time_s / time_s).toBeCloseTo(1, 3);
  });
  test('stops where the equation ends, and says so', () => {
    expect(result.ended).toBe('gas-limit');
    expect(result.leastCylinderTemperature_K).toBeGreaterThanOrEqual(126.2);
    expect(result.leastCylinderTemperature_K).toBeLessThan(129);
  });
});

describe('a unit as it is built: 80 L of 300 bar(g), regulated to 60 bar(g), one nozzle', () => {
  const result = runDischarge(SMALL_UNIT);

  test('24.7 kg, about 0.38 kg/s at first, 95 % of the concentration well within 120 s', () => {
    expect(result.massAtStart_kg).toBeCloseTo(24.725, 2);
    expect(result.flow_kg_s[0]).toBeGreaterThan(0.36);
    expect(result.flow_kg_s[0]).toBeLessThan(0.4);
    expect(result.timeTo95_s).toBeGreaterThan(50);
    expect(result.timeTo95_s).toBeLessThan(90);
    expect(result.ended).toBe('empty');
    expect(result.isNetworkSolved).toBe(true);
  });
  test('as an ideal gas without cooling: 0.35 kg/s and 255 Pa in the room (orifice flow)', () => {
    const plain = runDischarge({ ...SMALL_UNIT, gas: 'ideal', process: 'isothermal' });
    expect(plain.peakFlow_kg_s).toBeCloseTo(0.354, 3);
    expect(plain.enclosures[0]?.peakOverpressure_Pa).toBeGreaterThan(250);
    expect(plain.enclosures[0]?.peakOverpressure_Pa).toBeLessThan(260);
  });
  test('the regulator holds until the cylinder has less, then passes what it has', () => {
    const set_Pa = SMALL_UNIT.regulatorPressure_Pa ?? 0;
    expect(result.cylinderPressure_Pa.filter((pressure_Pa) => pressure_Pa > set_Pa).length).toBeGreaterThan(30);
    for (const [index, source_Pa] of result.sourcePressure_Pa.entries()) expect(source_Pa).toBe(Math.min(set_Pa, result.cylinderPressure_Pa[index] ?? 0));
  });
  test('throttling to 60 bar(g) from 300 bar(g) and 15 °C starts near −9.9 °C (computed from Span et al. 2000)', () => {
    expect(result.sourceTemperature_K[0]).toBeGreaterThan(273.15 - 10.1);
    expect(result.sourceTemperature_K[0]).toBeLessThan(273.15 - 9.4);
  });
  test('the steel keeps the gas between adiabatic and isothermal', () => {
    const [heated, isothermal, adiabatic] = CYLINDER_PROCESSES.map((process) => runDischarge({ ...SMALL_UNIT, process, until_s: 40 }));
    expect(isothermal?.leastCylinderTemperature_K).toBe(288.15);
    expect(heated?.leastCylinderTemperature_K).toBeLessThan(288);
    expect(adiabatic?.leastCylinderTemperature_K).toBeLessThan((heated?.leastCylinderTemperature_K ?? 0) - 5);
  });
  test('a pipe that warms its gas passes less: the choked flow of gas at the filling temperature as long as the regulator holds (closed form), and fills the room later', () => {
    const cold = runDischarge(SMALL_UNIT);
    const warmed = runDischarge({ ...SMALL_UNIT, pipeWarmth: 'warmed' });
    expect(warmed.peakFlow_kg_s).toBeLessThan(cold.peakFlow_kg_s * 0.95);
    expect(warmed.timeTo95_s ?? 0).toBeGreaterThan((cold.timeTo95_s ?? Number.POSITIVE_INFINITY) * 1.05);
    const ideal = runDischarge({ ...SMALL_UNIT, gas: 'ideal', process: 'adiabatic', pipeWarmth: 'warmed', stretches: SMALL_UNIT.stretches.map((stretch) => ({ ...stretch, length_m: 0.01, bore_m: 1, lossFactor: 0 })) });
    const [nozzle] = SMALL_UNIT.nozzles;
    const closed_kg_s = ((nozzle?.area_m2 ?? 0) * (nozzle?.dischargeCoefficient ?? 0) * (SMALL_UNIT.regulatorPressure_Pa ?? 0) * 0.684731) / Math.sqrt(296.803 * 288.15);
    const held = ideal.sourcePressure_Pa.filter((pressure_Pa) => pressure_Pa === SMALL_UNIT.regulatorPressure_Pa).length;
    expect(held).toBeGreaterThan(30);
    for (const flow_kg_s of ideal.flow_kg_s.slice(0, held)) expect(Math.abs(flow_kg_s / closed_kg_s - 1)).toBeLessThan(1e-4);
  });
  test('without steel wall heat is adiabatic; with very much steel surface the gas stays warm', () => {
    const at = (change: Partial<DischargeInput>): DischargeResult => runDischarge({ ...SMALL_UNIT, until_s: 30, ...change });
    expect(at({ innerArea_m2: 0 })).toEqual(at({ process: 'adiabatic' }));
    expect(at({ innerArea_m2: 1e5, steelMass_kg: 1e6 }).leastCylinderTemperature_K).toBeGreaterThan(287.5);
  });
  test('a pipe that is a regulator of its own: pressures fall along it and the peak is at its start', () => {
    expect(result.nodes[0]?.peakPressure_Pa).toBe(SMALL_UNIT.regulatorPressure_Pa);
    expect(result.nodes[1]?.peakPressure_Pa).toBeLessThan(SMALL_UNIT.regulatorPressure_Pa ?? 0);
    expect(result.peakPipePressure_Pa).toBe(SMALL_UNIT.regulatorPressure_Pa);
  });
  test('two rooms in one enclosure share a pressure, and the slower one decides the time', () => {
    const [nozzle] = SMALL_UNIT.nozzles;
    if (!nozzle) throw new Error('The unit has a nozzle.');
    const both = runDischarge({
      ...SMALL_UNIT,
      nozzles: [{ ...nozzle, area_m2: 22e-6 }, { ...nozzle, id: 'N2', space: 1, area_m2: 7.4e-6 }],
      spaces: [{ id: 'S1', volume_m3: 26, enclosure: 0, designConcentration_pct: 40.3 }, { id: 'S2', volume_m3: 9.2, enclosure: 0, designConcentration_pct: 40.3 }],
    });
    expect(both.enclosures).toHaveLength(1);
    expect(both.timeTo95_s).toBe(Math.max(...both.spaces.map(({ timeTo95_s }) => timeTo95_s ?? Number.NaN)));
    const never = runDischarge({ ...SMALL_UNIT, spaces: [...SMALL_UNIT.spaces, { id: 'S2', volume_m3: 9, enclosure: 0, designConcentration_pct: 40.3 }] });
    expect(never.timeTo95_s).toBeUndefined();
    expect(never.spaces[0]?.timeTo95_s).toBeGreaterThan(0);
  });
});

/** m95/m = ln(100/(100 − 0.95·C))/ln(100/(100 − C)) (computed). */
test.each([
  [34, 0.9388],
  [40.3, 0.9357],
  [45.2, 0.9328],
  [50, 0.9296],
])('with a steady flow, 95 percent of %d vol percent take %d of the time that all of it takes', (concentration_pct, ratio) => {
  const steady: DischargeInput = {
    ...SMALL_UNIT,
    gas: 'ideal',
    process: 'isothermal',
    cylinders: 20,
    nozzles: SMALL_UNIT.nozzles.flatMap((nozzle) => [nozzle, { ...nozzle, id: 'N2', space: 1 }]),
    // 95 % of the second is all of the first.
    spaces: [concentration_pct, concentration_pct / 0.95].map((designConcentration_pct, index) => ({ id: `S${index}`, volume_m3: 40, enclosure: 0, designConcentration_pct })),
    enclosures: SMALL_UNIT.enclosures.map((enclosure) => ({ ...enclosure, ventArea_m2: 5 })),
  };
  const { spaces } = runDischarge(steady);
  expect(Math.abs((spaces[0]?.timeTo95_s ?? 0) / (spaces[1]?.timeTo95_s ?? 1) - ratio)).toBeLessThan(1e-4);
});

describe('rooms', () => {
  test('a sealed room ends with m·R·T/V, and its back pressure is counted', () => {
    const sealed = runDischarge({ ...SMALL_UNIT, enclosures: SMALL_UNIT.enclosures.map((enclosure) => ({ ...enclosure, ventArea_m2: 0 })) });
    expect(last(sealed.enclosures[0]?.overpressure_Pa ?? []) / ((nozzleMass_kg(sealed) * NITROGEN_R_J_kgK * 293.15) / 39.87)).toBeCloseTo(1, 9);
    expect(last(sealed.cylinderPressure_Pa)).toBeGreaterThan(101_325 + last(sealed.enclosures[0]?.overpressure_Pa ?? []));
  });
  test('a very large vent leaves no overpressure', () => {
    const open = runDischarge({ ...SMALL_UNIT, enclosures: SMALL_UNIT.enclosures.map((enclosure) => ({ ...enclosure, ventArea_m2: 30 })) });
    expect(open.enclosures[0]?.peakOverpressure_Pa).toBeLessThan(1e-3);
  });
});

describe('steps', () => {
  test.each([
    ['small unit', SMALL_UNIT],
    ['small unit, adiabatic ideal gas', { ...SMALL_UNIT, gas: 'ideal', process: 'adiabatic' }],
    ['no regulator', { ...SMALL_UNIT, regulatorPressure_Pa: null }],
    ['twelve nozzles', mainWithDrops(12)],
  ] as const)('%s: a tenth of the step changes no figure by more than 0.2 percent', (_, input: DischargeInput) => {
    const run = runDischarge(input);
    const fine = runDischarge(input, { step_s: 0.1 });
    const figures = (result: DischargeResult): number[] => [
      result.peakFlow_kg_s,
      result.timeTo95_s ?? -1,
      result.leastSourceTemperature_K,
      result.leastCylinderTemperature_K,
      nozzleMass_kg(result),
      ...result.nozzles.map(({ mass_kg }) => mass_kg),
      ...result.spaces.map(({ timeTo95_s }) => timeTo95_s ?? -1),
      ...result.spaces.map(({ concentration_pct }) => last(concentration_pct)),
      ...result.enclosures.map(({ peakOverpressure_Pa }) => peakOverpressure_Pa),
    ];
    const finer = figures(fine);
    for (const [index, figure] of figures(run).entries()) expect(Math.abs(figure / (finer[index] ?? Number.NaN) - 1)).toBeLessThan(2e-3);
  });
  test('curves have at most 300 moments, rise in time and end when they should', () => {
    const { times_s, ended } = runDischarge({ ...SMALL_UNIT, until_s: 20 }, { step_s: 0.01 });
    expect(ended).toBe('time');
    expect(times_s).toHaveLength(300);
    expect(times_s[0]).toBe(0);
    expect(last([...times_s])).toBe(20);
    expect(times_s.every((time_s, index) => index === 0 || time_s > (times_s[index - 1] ?? 0))).toBe(true);
  });
});

test('more heat in the cylinders empties them sooner, with more pressure and flow', () => {
  const density_kg_m3 = nitrogenDensity_kg_m3(SMALL_UNIT.fillPressure_Pa, 288.15);
  const [cold, mild, hot] = [253.15, 288.15, 323.15].map((fillTemperature_K) =>
    runDischarge({ ...SMALL_UNIT, regulatorPressure_Pa: null, fillTemperature_K, fillPressure_Pa: nitrogenState(density_kg_m3, fillTemperature_K).pressure_Pa }),
  );
  for (const [colder, hotter] of [[cold, mild], [mild, hot]] as const) {
    expect(hotter?.massAtStart_kg).toBeCloseTo(colder?.massAtStart_kg ?? 0, 6);
    expect(hotter?.peakFlow_kg_s).toBeGreaterThan(colder?.peakFlow_kg_s ?? 0);
    expect(hotter?.timeTo95_s).toBeLessThan(colder?.timeTo95_s ?? 0);
    expect(hotter?.enclosures[0]?.peakOverpressure_Pa).toBeGreaterThan(colder?.enclosures[0]?.peakOverpressure_Pa ?? 0);
  }
});

test('twice the cylinders on twice the nozzles and rooms is twice the flow in the same time', () => {
  const [nozzle] = SMALL_UNIT.nozzles;
  const [space] = SMALL_UNIT.spaces;
  const [enclosure] = SMALL_UNIT.enclosures;
  if (!nozzle || !space || !enclosure) throw new Error('The unit has a nozzle in a room.');
  const direct = { ...SMALL_UNIT, stretches: [], nodeCount: 1, nozzles: [{ ...nozzle, node: 0 }] };
  const single = runDischarge(direct);
  const double = runDischarge({ ...direct, cylinders: 2, nozzles: [{ ...nozzle, node: 0 }, { ...nozzle, node: 0, id: 'N2', space: 1 }], spaces: [space, { ...space, enclosure: 1 }], enclosures: [enclosure, enclosure] });
  expect(double.peakFlow_kg_s / single.peakFlow_kg_s).toBeCloseTo(2, 9);
  expect(double.timeTo95_s).toBeCloseTo(single.timeTo95_s ?? 0, 9);
});

const across = (least: number, greatest: number): fc.Arbitrary<number> => fc.double({ min: Math.log(least), max: Math.log(greatest), noNaN: true }).map(Math.exp);
const unit: fc.Arbitrary<DischargeInput> = fc
  .record({
    gas: fc.constantFrom('real' as const, 'ideal' as const),
    process: fc.constantFrom(...CYLINDER_PROCESSES),
    pipeWarmth: fc.constantFrom(...PIPE_WARMTHS),
    cylinders: fc.integer({ min: 1, max: 40 }),
    cylinderVolume_m3: across(0.002, 0.2),
    fillPressure_Pa: across(20e5, 320e5),
    fillTemperature_K: fc.double({ min: 253, max: 328, noNaN: true }),
    steelMass_kg: across(2, 200),
    innerArea_m2: across(0.1, 5),
    regulatorPressure_Pa: fc.oneof(fc.constant(null), across(5e5, 100e5)),
    pipes: fc.array(fc.record({ back: fc.nat(), length_m: fc.oneof(fc.constant(0), across(0.05, 60)), bore_m: across(0.006, 0.2), lossFactor: fc.oneof(fc.constant(0), across(0.1, 20)) }), { maxLength: 60 }),
    nozzles: fc.array(fc.record({ node: fc.nat(), area_m2: across(1e-7, 2e-3), space: fc.nat({ max: 2 }) }), { minLength: 1, maxLength: 60 }),
    vents: fc.tuple(fc.oneof(fc.constant(0), across(1e-4, 10)), across(1e-3, 10)),
    until_s: across(5, 240),
  })
  .map(({ pipes, nozzles, vents, ...rest }) => ({
    ...rest,
    stretches: pipes.map(({ back, ...pipe }, index) => ({ ...pipe, roughness_m: STEEL_ROUGHNESS_m, from: index - (back % 3 === 0 ? back % (index + 1) : 0), to: index + 1 })),
    nodeCount: pipes.length + 1,
    nozzles: nozzles.map(({ node, ...nozzle }, index) => ({ ...nozzle, id: `N${index}`, dischargeCoefficient: 0.8, node: node % (pipes.length + 1) })),
    spaces: [0, 1, 2].map((index) => ({ id: `S${index}`, volume_m3: 60 + 100 * index, enclosure: index % 2, designConcentration_pct: 40.3 })),
    enclosures: vents.map((ventArea_m2, index) => ({ id: `E${index}`, temperature_K: 293.15, ambient_Pa: 101_325, ventArea_m2, ventCoefficient: 0.61 })),
  }));

/** Every number anywhere in a result. */
const numbersOf = (value: unknown): number[] => (typeof value === 'number' ? [value] : value && typeof value === 'object' ? Object.values(value).flatMap(numbersOf) : []);

test('any unit: all figures are finite, no mass is lost, pressures fall', () => {
  fc.assert(
    fc.property(unit, (input) => {
      const result = runDischarge(input);
      expect(numbersOf(result).every(Number.isFinite)).toBe(true);
      expect(result.isNetworkSolved).toBe(true);
      expect(Math.abs(nozzleMass_kg(result) + result.massLeft_kg - result.massAtStart_kg)).toBeLessThan(1e-6 * result.massAtStart_kg);
      expect(Math.abs(result.spaces.reduce((sum, { mass_kg }) => sum + mass_kg, 0) - nozzleMass_kg(result))).toBeLessThan(1e-6 * result.massAtStart_kg);
      expect(result.massLeft_kg).toBeGreaterThan(0);
      expect(result.cylinderPressure_Pa.every((pressure_Pa, index) => index === 0 || pressure_Pa <= (result.cylinderPressure_Pa[index - 1] ?? 0) + 1e4)).toBe(true);
      expect(result.spaces.every(({ concentration_pct }) => concentration_pct.every((share) => share >= 0 && share < 100))).toBe(true);
    }),
    { numRuns: 60 },
  );
});

test('cylinders that follow the slow fall of a room they fill, with a small nozzle into another one, come to an end', () => {
  const { ended, isNetworkSolved, massLeft_kg } = runDischarge({
    ...VESSEL,
    gas: 'ideal',
    process: 'isothermal',
    cylinders: 6,
    cylinderVolume_m3: 0.003,
    fillPressure_Pa: 136e5,
    nozzles: [
      { id: 'N1', node: 0, area_m2: 2e-3, dischargeCoefficient: 0.8, space: 0 },
      { id: 'N2', node: 0, area_m2: 1.6e-7, dischargeCoefficient: 0.8, space: 1 },
    ],
    spaces: [0, 1].map((index) => ({ id: `S${index}`, volume_m3: 60, enclosure: index, designConcentration_pct: 40.3 })),
    enclosures: [1e-4, 1].map((ventArea_m2, index) => ({ id: `E${index}`, temperature_K: 293.15, ambient_Pa: 101_325, ventArea_m2, ventCoefficient: 0.61 })),
    until_s: 240,
  });
  expect(['empty', 'time']).toContain(ended);
  expect(isNetworkSolved).toBe(true);
  expect(massLeft_kg).toBeLessThan(0.03);
});

test('the bases say what is not modelled', () => {
  const cautions = dischargeBases.map(({ caution }) => caution ?? '').join(' ');
  for (const word of ['waves', 'liquid', 'own capacity', 'hose', 'check valve', '126.2 K', 'listing']) expect(cautions).toContain(word);
});
