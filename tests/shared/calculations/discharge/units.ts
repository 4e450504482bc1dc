import type { DischargeInput, DischargeResult } from '#shared/calculations/discharge/discharge';

/** NPS 3/4 Sch 40, ASME B36.10M, memory. */
const BORE_3_4_m = 0.02093;
export const STEEL_ROUGHNESS_m = 0.0457e-3;

/** One 80 L cylinder of 300 bar(g), regulated to 60 bar(g), through a short pipe to one nozzle in one room. */
export const SMALL_UNIT: DischargeInput = {
  gas: 'real',
  process: 'wall-heat',
  pipeWarmth: 'as-throttled',
  cylinders: 1,
  cylinderVolume_m3: 0.08,
  fillPressure_Pa: 300e5 + 101_325,
  fillTemperature_K: 288.15,
  steelMass_kg: 95,
  innerArea_m2: 1.3,
  regulatorPressure_Pa: 60e5 + 101_325,
  stretches: [{ from: 0, to: 1, length_m: 4, bore_m: BORE_3_4_m, roughness_m: STEEL_ROUGHNESS_m, lossFactor: 2.1 }],
  nodeCount: 2,
  nozzles: [{ id: 'N1', node: 1, area_m2: 25e-6 / 0.85, dischargeCoefficient: 0.85, space: 0 }],
  spaces: [{ id: 'S1', volume_m3: 39.87, enclosure: 0, designConcentration_pct: 40.3 }],
  enclosures: [{ id: 'E1', temperature_K: 293.15, ambient_Pa: 101_325, ventArea_m2: 0.0242, ventCoefficient: 0.61 }],
  until_s: 180,
};

/** A cylinder that empties through one orifice into the open: no regulator, no pipe, a room without end. */
export const VESSEL: DischargeInput = {
  ...SMALL_UNIT,
  regulatorPressure_Pa: null,
  stretches: [],
  nodeCount: 1,
  nozzles: [{ id: 'N1', node: 0, area_m2: (Math.PI / 4) * 0.005 ** 2, dischargeCoefficient: 0.85, space: 0 }],
  spaces: [{ id: 'S1', volume_m3: 1e9, enclosure: 0, designConcentration_pct: 40.3 }],
  fillPressure_Pa: 200e5,
};

/** A main with a drop to each nozzle, three rooms. */
export function mainWithDrops(nozzles: number): DischargeInput {
  const drops = Array.from({ length: nozzles }, (_, index) => index);
  return {
    ...SMALL_UNIT,
    cylinders: nozzles,
    nodeCount: 2 * nozzles + 1,
    stretches: drops.flatMap((index) => [
      { from: index === 0 ? 0 : 2 * index - 1, to: 2 * index + 1, length_m: 3, bore_m: 0.0525, roughness_m: STEEL_ROUGHNESS_m, lossFactor: 0.5 },
      { from: 2 * index + 1, to: 2 * index + 2, length_m: 2 + 0.1 * index, bore_m: BORE_3_4_m, roughness_m: STEEL_ROUGHNESS_m, lossFactor: 1.5 },
    ]),
    nozzles: drops.map((index) => ({ id: `N${index}`, node: 2 * index + 2, area_m2: 29e-6, dischargeCoefficient: 0.85, space: index % 3 })),
    spaces: [0, 1, 2].map((index) => ({ id: `S${index}`, volume_m3: 13 * nozzles, enclosure: 0, designConcentration_pct: 40.3 })),
    enclosures: SMALL_UNIT.enclosures.map((enclosure) => ({ ...enclosure, ventArea_m2: 0.0242 * nozzles })),
  };
}

/** Place of the first crossing of a falling or rising curve, by straight line between its points. */
export function crossingOf(times_s: readonly number[], values: readonly number[], level: number): { time_s: number; index: number; share: number } {
  for (let index = 1; index < values.length; index += 1) {
    const a = values[index - 1] ?? 0;
    const b = values[index] ?? 0;
    if ((a - level) * (b - level) > 0 || a === b) continue;
    const share = (level - a) / (b - a);
    return { time_s: (times_s[index - 1] ?? 0) + share * ((times_s[index] ?? 0) - (times_s[index - 1] ?? 0)), index, share };
  }
  throw new Error(`The curve never comes to ${level}.`);
}

/** A value of a curve at a crossing. */
export const valueAt = (values: readonly number[], { index, share }: { index: number; share: number }): number => (values[index - 1] ?? 0) * (1 - share) + (values[index] ?? 0) * share;

export const nozzleMass_kg = ({ nozzles }: DischargeResult): number => nozzles.reduce((sum, { mass_kg }) => sum + mass_kg, 0);
