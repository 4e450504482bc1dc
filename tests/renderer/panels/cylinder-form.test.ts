import { expect, test } from 'vitest';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { alikeFor } from '../../../src-renderer/panels/bench/cylinder-form.tsx';
import { proposedRestraint_m } from '../../../src-renderer/panels/bench/restraints-slip.tsx';

const { plan } = await buildDemo('F1');
const cylinder = Object.values(Object.values(plan.networks)[0]?.cylinders ?? {})[0];
if (!cylinder) throw new Error('The hut has its cylinder.');

test('a restraint is proposed at 2 ft, or clear above what is there', () => {
  expect(proposedRestraint_m([])).toBeCloseTo(0.6096, 9);
  expect(proposedRestraint_m([1.2192])).toBeCloseTo(0.6096, 9);
  expect(proposedRestraint_m([0.5])).toBeCloseTo(0.5 + 0.3048, 9);
  expect(proposedRestraint_m([0.6096, 1.2192])).toBeCloseTo(1.524, 9);
});

test('another cylinder is held alike, its gauge turned with its wall', () => {
  const one = { ...cylinder, back_rad: Math.PI, gauge: { height_m: 1.5, facing_rad: 0 }, exposedTo: ['sun' as const] };
  const other = { ...cylinder, back_rad: Math.PI / 2 };
  const alike = alikeFor(one, other);
  expect(alike).toMatchObject({ railHeight_m: one.railHeight_m, restraints_m: one.restraints_m, exposedTo: ['sun'], storage: null, gauge: { height_m: 1.5 } });
  expect(alike.gauge?.facing_rad).toBeCloseTo(-Math.PI / 2, 9);
  expect(alikeFor({ ...one, mounting: 'floor' }, other)).not.toHaveProperty('railHeight_m');
  expect(alikeFor({ ...one, gauge: null }, other).gauge).toBeNull();
});
