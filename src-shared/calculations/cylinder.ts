import {
  cylinderMassBasis,
  cylinderMass_kg,
  expectedPressureBasis,
  idealCylinderMassBasis,
  idealCylinderMass_kg,
  pressureAfterLossBasis,
  pressureChart,
  pressureShortBasis,
} from './formulas/cylinder-gas.ts';
import { NITROGEN_LEAST_K, nitrogenDensity_kg_m3 } from './formulas/nitrogen.ts';
import { numberGiven, numbersGiven } from './given.ts';
import type { Topic } from './topic.ts';

/** Nitrogen in a cylinder, and what its gauge shows at other temperatures. */
export const cylinderTopic: Topic = {
  id: 'cylinder',
  title: 'Nitrogen in a cylinder and its pressure at other temperatures',
  inputs: [
    { kind: 'number', name: 'volume', quantity: 'volume', least: 1e-6, greatest: 100, help: 'Water volume of the cylinder' },
    { kind: 'number', name: 'pressure', quantity: 'pressure', least: 1000, greatest: 5e7, help: 'Filling pressure' },
    { kind: 'number', name: 'temperature', quantity: 'temperature', least: NITROGEN_LEAST_K, greatest: 400, help: 'Filling temperature' },
    { kind: 'numbers', name: 'otherTemperatures', quantity: 'temperature', least: NITROGEN_LEAST_K, greatest: 400, isOptional: true, help: 'Temperatures at which the pressure is asked' },
    { kind: 'number', name: 'loss', quantity: 'percent', least: 0, greatest: 50, standard: 5, help: 'Loss that the supervision must show' },
  ],
  outputs: {
    mass_kg: 'nitrogen in the cylinder, real gas',
    idealMass_kg: 'what an ideal gas would weigh: for comparison',
    density_kg_m3: 'density of the fill',
    pressures_Pa: 'absolute pressure of the full cylinder at each other temperature',
    afterLoss_Pa: 'absolute pressure at each other temperature when that share of the mass is gone',
    short_Pa: 'absolute pressure at each other temperature when that share of the pressure is gone',
  },
  bases: [cylinderMassBasis, idealCylinderMassBasis, expectedPressureBasis, pressureAfterLossBasis, pressureShortBasis],
  run(values) {
    const volume_m3 = numberGiven(values, 'volume');
    const pressure_Pa = numberGiven(values, 'pressure');
    const temperature_K = numberGiven(values, 'temperature');
    const others = values.otherTemperatures === undefined ? [] : numbersGiven(values, 'otherTemperatures');
    const rows = pressureChart(pressure_Pa, temperature_K, others, numberGiven(values, 'loss') / 100);
    return {
      mass_kg: cylinderMass_kg(volume_m3, pressure_Pa, temperature_K),
      idealMass_kg: idealCylinderMass_kg(volume_m3, pressure_Pa, temperature_K),
      density_kg_m3: nitrogenDensity_kg_m3(pressure_Pa, temperature_K),
      pressures_Pa: rows.map(({ expected_Pa }) => expected_Pa),
      afterLoss_Pa: rows.map(({ afterLoss_Pa }) => afterLoss_Pa),
      short_Pa: rows.map(({ short_Pa }) => short_Pa),
    };
  },
};
