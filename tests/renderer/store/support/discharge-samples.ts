import type { DischargeInput, DischargeResult } from '#shared/calculations/discharge/discharge';

/** An input of one nozzle in one space; only what is changed tells two of them apart. */
export const sampleInput = (change: Partial<DischargeInput> = {}): DischargeInput => ({
  gas: 'real',
  process: 'wall-heat',
  pipeWarmth: 'as-throttled',
  cylinders: 1,
  cylinderVolume_m3: 0.08,
  fillPressure_Pa: 30e6,
  fillTemperature_K: 288.15,
  steelMass_kg: 90,
  innerArea_m2: 1.4,
  regulatorPressure_Pa: 6e6,
  stretches: [{ from: 0, to: 1, length_m: 4, bore_m: 0.02, roughness_m: 4.57e-5, lossFactor: 2 }],
  nodeCount: 2,
  nozzles: [{ id: 'nozzle-1', node: 1, area_m2: 3e-5, dischargeCoefficient: 0.8, space: 0 }],
  spaces: [{ id: 'enclosure-1/room', volume_m3: 40, enclosure: 0, designConcentration_pct: 40.3 }],
  enclosures: [{ id: 'enclosure-1', temperature_K: 293.15, ambient_Pa: 101_325, ventArea_m2: 0.02, ventCoefficient: 0.61 }],
  until_s: 240,
  ...change,
});

/** A result that is told from others by its peak flow. */
export const sampleResult = (peakFlow_kg_s: number): DischargeResult => ({
  times_s: [0, 60],
  flow_kg_s: [peakFlow_kg_s, 0],
  cylinderPressure_Pa: [30e6, 1e6],
  cylinderTemperature_K: [288, 250],
  sourcePressure_Pa: [6e6, 1e6],
  sourceTemperature_K: [280, 250],
  nozzles: [{ id: 'nozzle-1', mass_kg: 24, peakFlow_kg_s, peakPressure_Pa: 6e6, isChokedAtPeak: true }],
  nodes: [{ peakPressure_Pa: 6e6 }, { peakPressure_Pa: 5e6 }],
  spaces: [{ id: 'enclosure-1/room', mass_kg: 24, concentration_pct: [0, 41], timeTo95_s: 50 }],
  enclosures: [{ id: 'enclosure-1', overpressure_Pa: [0, 0], peakOverpressure_Pa: 100 }],
  timeTo95_s: 50,
  peakFlow_kg_s,
  peakPipePressure_Pa: 6e6,
  leastSourceTemperature_K: 250,
  leastCylinderTemperature_K: 250,
  massAtStart_kg: 24.7,
  massLeft_kg: 0.7,
  isNetworkSolved: true,
  ended: 'empty',
});
