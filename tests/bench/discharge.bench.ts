import { bench, describe } from 'vitest';
import { runDischarge } from '#shared/calculations/discharge/run-discharge';
import { mainWithDrops } from '../shared/calculations/discharge/units.ts';

const unit = mainWithDrops(12);

describe('discharge of twelve cylinders through twelve nozzles', () => {
  bench('as it runs', () => {
    runDischarge(unit);
  });
  bench('beside: a tenth of the step', () => {
    runDischarge(unit, { step_s: 0.1 });
  });
});
