import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Adjoining, Plan } from '#shared/model/plan';
import { s04Signs as rule } from '#shared/rules/safety/s04-signs';
import { rectangle } from '#shared/geometry/outline';
import { type PlanPoint, planPoint } from '#shared/geometry/point';
import { type DeviceSpec, devicesFrom } from '../../../support/devices.ts';
import { type Placing, anyPlacing, check, placed } from '../../../support/layout.ts';
import { planBuilder } from '../../../support/plan-builder.ts';

const sign = (kind: string, x: number, y: number, wording = 'Warning'): DeviceSpec => ({ kind: 'sign', x, y, sign: kind, wording });

/** A room of 6 by 4 m with a door in the south (x 2.5 to 3.5), a corridor south of it, a cylinder at (0.2, 2) and a nozzle. */
function room(devices: readonly DeviceSpec[], gas: Adjoining['gas'] = 'alarmed', placing?: Placing): Plan {
  const at = (x: number, y: number): PlanPoint => (placing ? placed(planPoint(x, y), placing) : planPoint(x, y));
  const built = planBuilder()
    .outline(rectangle(6, 4).map(({ x, y }) => at(x, y)), 2.7)
    .opening(0, 3, 1)
    .adjoining('corridor', rectangle(6, 2, planPoint(0, -2.2)).map(({ x, y }) => at(x, y)), { gas });
  const [cylinder, nozzle] = [at(0.2, 2), at(3, 2)];
  built.network().cylinder(cylinder.x, cylinder.y, 0).nozzle(nozzle.x, nozzle.y, 2.5);
  const level = built.plan.levels['level-0'];
  if (!level) throw new Error('The builder has its level.');
  level.devices = devicesFrom(devices, placing);
  return built.plan;
}

const ALL: readonly DeviceSpec[] = [sign('entrance', 2.2, -0.1), sign('inside', 1, 3.9), sign('adjacent', 5, -1), sign('cylinder', 0.1, 3), { kind: 'manual-release', x: 3.8, y: 0.1 }, sign('manual-release', 3.8, 0.2)];
const without = (index: number): DeviceSpec[] => ALL.filter((_, i) => i !== index);
const verdicts = (plan: Plan): string[] => check(rule, plan).map(({ name, verdict }) => `${name}: ${verdict}`);

describe('S4', () => {
  test('asks for a sign at every place', () => {
    expect(verdicts(room(ALL))).toEqual(['Room 1, Door 1: ok', 'Room 1, inside: ok', 'corridor, beside Room 1: ok', 'D5: ok', 'Network 1, cylinders: ok']);
  });

  test.each([
    [0, 'Room 1, Door 1: stop'],
    [1, 'Room 1, inside: stop'],
    [2, 'corridor, beside Room 1: stop'],
    [3, 'Network 1, cylinders: stop'],
    [5, 'D5: stop'],
  ])('without sign %s: %s', (index, expected) => {
    const found = verdicts(room(without(index)));
    expect(found).toContain(expected);
    expect(found.filter((each) => each.endsWith(': stop'))).toHaveLength(1);
  });

  // From the jamb at x 2.5.
  test.each([
    ['at the limit', 1.5, 'ok'],
    ['inside', 1.6, 'ok'],
    ['outside', 1.49, 'stop'],
  ])('at the door: %s', (_, x, verdict) => {
    const door = check(rule, room([sign('entrance', x, -1e-5), ...without(0)])).find(({ name }) => name === 'Room 1, Door 1');
    expect(door).toMatchObject({ verdict, measured: expect.closeTo(2.5 - x, 4), limit: 1, limitSource: 'common practice' });
    if (verdict === 'stop') expect(door).toMatchObject({ text: expect.stringMatching(/^No sign that warns who comes in stands outside at this door\. The nearest is 1\.010 m off; 1\.000 m is common practice\. Place one\.$/), cure: { text: 'Place a sign outside at this door.' } });
  });

  test.each([
    ['at the limit', 4, 'ok'],
    ['outside', 4.01, 'stop'],
  ])('at the cylinders: %s', (_, y, verdict) => {
    expect(verdicts(room([sign('cylinder', 0.2, y), ...without(3)]))).toContain(`Network 1, cylinders: ${verdict}`);
  });

  test('a sign at the door but inside warns nobody who comes in; one on the wall does', () => {
    expect(verdicts(room([sign('entrance', 2.2, 0.1), ...without(0)]))).toContain('Room 1, Door 1: stop');
    expect(verdicts(room([sign('entrance', 2.2, 0), ...without(0)]))).toContain('Room 1, Door 1: ok');
  });

  test('blank wording is not checked, unless another sign there says something', () => {
    expect(verdicts(room([sign('entrance', 2.2, -0.1, ' '), ...without(0)]))).toContain('Room 1, Door 1: not-checked');
    expect(verdicts(room([sign('entrance', 2.4, -0.1, ''), ...ALL]))).toContain('Room 1, Door 1: ok');
  });

  test.each<[Adjoining['gas'], string | undefined]>([
    ['does-not-reach', undefined],
    ['not-assessed', 'not-checked'],
    ['ventilated', 'stop'],
  ])('an adjoining space without a sign, gas %s', (gas, verdict) => {
    expect(verdicts(room(without(2), gas)).find((each) => each.startsWith('corridor'))).toBe(verdict && `corridor, beside Room 1: ${verdict}`);
  });

  test('a room that no nozzle serves is asked for none', () => {
    const plan = room([]);
    for (const network of Object.values(plan.networks)) Object.assign(network, { nozzles: {}, cylinders: {} });
    expect(verdicts(plan)).toEqual([]);
  });

  test('turning and mirroring changes nothing', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        expect(verdicts(room(ALL, 'alarmed', placing)).every((each) => each.endsWith(': ok'))).toBe(true);
        expect(verdicts(room([sign('entrance', 1.4, -0.1), ...without(0)], 'alarmed', placing))).toContain('Room 1, Door 1: stop');
      }),
      { numRuns: 15 },
    );
  });
});
