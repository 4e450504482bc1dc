import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { thingsToShut } from '#shared/derived/things-to-shut';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import type { Plan } from '#shared/model/plan';
import type { PlanBuilder } from '../../support/plan-builder.ts';
import { builtRoom } from '../../support/served-room.ts';

const listed = (plan: Plan) => {
  const [on] = derivePlan(plan).levels;
  const [enclosure] = Object.values(on?.level.enclosures ?? {});
  return on && enclosure ? thingsToShut(enclosure, on).map(({ name, kind, isWanting }) => [name, kind, isWanting]) : [];
};
const built = (): PlanBuilder => builtRoom().opening(0, 2, 1, { name: 'West door' }).opening(1, 2, 0.5, { name: 'D1', kind: 'damper', bottom_m: 2.2, height_m: 0.4 });
const duct = rectangle(2, 0.5, planPoint(5, 1.75));

describe('what can be shut around a room', () => {
  test('its dampers and doors; a damper without a row is wanting', () => {
    expect(listed(built().plan)).toEqual([['Damper D1', 'damper', true], ['West door', 'door', false]]);
  });
  test('a row for damper or duct is enough', () => {
    const one = built();
    expect(listed(one.shutdown('damper', one.lastOpening.id).plan)[0]).toEqual(['Damper D1', 'damper', false]);
    const other = built().obstruction('duct', duct, 2.2, 2.6);
    expect(listed(other.shutdown('damper', other.onLevel('obstruction').id).plan)).toEqual([['Damper D1', 'damper', false], ['West door', 'door', false], ['duct', 'damper', false]]);
  });
  test('diffusers in it want their fan, once', () => {
    const aired = () => builtRoom().device('diffuser', 1, 1, { name: 'S1' }).device('diffuser', 9, 1, { name: 'S2' });
    expect(listed(aired().plan)).toEqual([['Diffuser S1', 'fan', true]]);
    expect(listed(aired().shutdown('fan', null).plan)).toEqual([['Diffuser S1', 'fan', false]]);
  });
});
