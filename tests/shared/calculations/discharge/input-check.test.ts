import { expect, test } from 'vitest';
import type { DischargeInput } from '#shared/calculations/discharge/discharge';
import { checkDischargeInput } from '#shared/calculations/discharge/input-check';
import { SMALL_UNIT, mainWithDrops } from './units.ts';

test('a unit that can be worked out passes', () => {
  expect(() => checkDischargeInput(SMALL_UNIT)).not.toThrow();
  expect(() => checkDischargeInput(mainWithDrops(12))).not.toThrow();
});

const [stretch] = SMALL_UNIT.stretches;
const [nozzle] = SMALL_UNIT.nozzles;
const [space] = SMALL_UNIT.spaces;
const [enclosure] = SMALL_UNIT.enclosures;
if (!stretch || !nozzle || !space || !enclosure) throw new Error('The unit has one of each.');

test.each<[string, Partial<DischargeInput>, RegExp]>([
  ['no cylinder', { cylinders: 0 }, /cylinders/],
  ['half a cylinder', { cylinders: 1.5 }, /cylinders/],
  ['a fill that is no number', { fillPressure_Pa: Number.NaN }, /fillPressure_Pa/],
  ['a fill in bar', { fillPressure_Pa: 300 }, /fillPressure_Pa/],
  ['a fill in °C', { fillTemperature_K: 15 }, /fillTemperature_K/],
  ['a regulator set to nothing', { regulatorPressure_Pa: 0 }, /regulatorPressure_Pa/],
  ['no time', { until_s: 0 }, /until_s/],
  ['a pipe without bore', { stretches: [{ ...stretch, bore_m: 0 }] }, /bore_m/],
  ['a negative length', { stretches: [{ ...stretch, length_m: -1 }] }, /length_m/],
  ['a ring', { stretches: [stretch, { ...stretch, from: 1, to: 0 }] }, /tree/],
  ['a stretch from nowhere', { stretches: [{ ...stretch, from: 2, to: 1 }], nodeCount: 3 }, /before the gas/],
  ['a node that no pipe reaches', { nodeCount: 3 }, /2 of 3 nodes/],
  ['a nozzle at no node', { nozzles: [{ ...nozzle, node: 5 }] }, /node/],
  ['a nozzle into no space', { nozzles: [{ ...nozzle, space: 1 }] }, /space/],
  ['a negative area', { nozzles: [{ ...nozzle, area_m2: -1 }] }, /area_m2/],
  ['a coefficient above 1', { nozzles: [{ ...nozzle, dischargeCoefficient: 1.1 }] }, /dischargeCoefficient/],
  ['a space without volume', { spaces: [{ ...space, volume_m3: 0 }] }, /volume_m3/],
  ['a space in no enclosure', { spaces: [{ ...space, enclosure: 1 }] }, /enclosure/],
  ['a negative vent', { enclosures: [{ ...enclosure, ventArea_m2: -1 }] }, /ventArea_m2/],
])('%s is refused by name', (_, change, message) => {
  expect(() => checkDischargeInput({ ...SMALL_UNIT, ...change })).toThrow(RangeError);
  expect(() => checkDischargeInput({ ...SMALL_UNIT, ...change })).toThrow(message);
});
