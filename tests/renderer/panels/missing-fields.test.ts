import { describe, expect, test } from 'vitest';
import { CALCULATION_TOPICS } from '#shared/calculations/lines/calculation';
import type { Plan } from '#shared/model/plan';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { missingFields } from '../../../src-renderer/panels/sums/missing-fields.ts';
import type { SumSubject } from '../../../src-renderer/panels/sums/sum-subjects.ts';

const { plan: hut } = await buildDemo('F1');
const id = Object.keys(hut.levels['level-0']?.enclosures ?? {})[0] ?? '';
const subjects: SumSubject[] = [{ kind: 'enclosure', level: 'level-0', id }, { kind: 'network', id: Object.keys(hut.networks)[0] ?? '' }];

/** The hut with something taken from it. */
function without(change: (room: Plan['levels'][string]['enclosures'][string], network: Plan['networks'][string], plan: Plan) => void): Plan {
  const plan = structuredClone(hut);
  const room = plan.levels['level-0']?.enclosures[id];
  const [network] = Object.values(plan.networks);
  if (room && network) change(room, network, plan);
  return plan;
}

describe('what a sum lacks', () => {
  test('nothing in a finished plan', () => {
    for (const topic of CALCULATION_TOPICS) expect(missingFields(hut, topic, subjects), topic).toEqual([]);
  });

  test.each([
    ['agent', 'Design concentration', without((room) => Object.assign(room, { concentration_pct: null }))],
    ['agent', 'Floor to ceiling', without((room) => Object.assign(room, { height_m: null }))],
    ['people', 'Delay before discharge', without((room) => Object.assign(room.people, { delay_s: null }))],
    ['vent', 'Pressure it stands', without((room) => Object.assign(room.outline[1]?.wall ?? {}, { allowablePressure_Pa: null }))],
    ['hold', 'What is known of the leaks', without((room) => Object.assign(room, { leakage: { kind: 'unknown' } }))],
    ['hold', 'Lowest thing to protect', without((room) => Object.assign(room, { lowestProtected_m: null }))],
    ['discharge', 'Area of all holes', without((_, network) => Object.assign(Object.values(network.nozzles)[0] ?? {}, { orificeArea_m2: null }))],
  ] as const)('%s leads to “%s”', (topic, label, plan) => {
    expect(missingFields(plan, topic, subjects)).toContainEqual(expect.objectContaining({ kind: 'field', label }));
  });

  test('a figure of the manual leads to the unit profile, a room without a nozzle to the nozzle tool', () => {
    const blank = without((_, network, plan) => {
      const profile = plan.profiles[network.profile];
      if (profile) delete profile.limits.agentMass_kg;
    });
    expect(missingFields(blank, 'agent', subjects)).toEqual([expect.objectContaining({ kind: 'limit', limit: 'agentMass_kg' })]);
    expect(missingFields(hut, 'agent', subjects.slice(0, 1))).toEqual([expect.objectContaining({ kind: 'tool', action: 'tool-nozzle' })]);
  });

  test('never more than three at once', () => {
    const bare = without((room) => Object.assign(room, { height_m: null, hazardClass: 'unknown', concentration_pct: null, temperature: null, altitude_m: null }));
    expect(missingFields(bare, 'agent', subjects)).toHaveLength(3);
  });

  test('several walls of which nobody knows what they bear are entered at once', () => {
    const bare = without((room) => {
      for (const corner of room.outline) corner.wall.allowablePressure_Pa = null;
    });
    expect(missingFields(bare, 'vent', subjects)).toEqual([expect.objectContaining({ label: 'All walls bear' })]);
  });

  test.each([
    ['supports', 'Place supports by the table', without((_, network) => Object.assign(network, { supports: {} }))],
    ['supports', 'Kind of anchor', without((_, network) => Object.assign(Object.values(network.cylinders)[0] ?? {}, { anchors: null }))],
    ['wiring', 'Draw up the circuit', without((_, network) => Object.assign(network, { release: null }))],
    ['supervision', 'Low-pressure switch turns at (absolute)', without((_, network) => Object.assign(network.release ?? {}, { pressureSwitch: null }))],
  ] as const)('%s of a unit leads to “%s”', (topic, label, plan) => {
    expect(missingFields(plan, topic, subjects)).toContainEqual(expect.objectContaining({ kind: 'field', label }));
  });
});
