import { describe, expect, test } from 'vitest';
import type { DischargeSource } from '#shared/calculations/discharge/discharge-source';
import { workedDischarge } from '#shared/calculations/discharge/worked-discharge';
import { place3, type PlanBuilder } from '../../../support/plan-builder.ts';
import { KNOWN_ROOM, REGULATOR, designFor, enclosureSums, finishRoom, known, networkOf, networkSums, profileOf, reason, roomOf, sure, wholePlan } from '../../../support/whole-plan.ts';

const SAME_UNIT = { assembly: [{ ...REGULATOR }] };

/** A second network of two cylinders into the same room. */
const twoNetworks = (): PlanBuilder =>
  wholePlan()
    .network(SAME_UNIT)
    .cylinder(4.8, 0.5, 0)
    .cylinder(4.8, 0.9, 0)
    .run([place3(4.8, 0.5, 2), place3(4.8, 0.5, 2.3), place3(3.5, 0.5, 2.3), place3(3.5, 0.5, 2.2)])
    .nozzle(3.5, 0.5, 2.2, [0, Math.PI], { orificeArea_m2: 4.4e-5 });

/** One network with a nozzle in each of two rooms of 40 m³, the second on the same branch. */
const twoRooms = (): PlanBuilder =>
  finishRoom(wholePlan().room(5, 3.2, 2.5, { x: 6, y: 0 }, structuredClone(KNOWN_ROOM)), 0.0242)
    .cylinder(0.2, 0.9, Math.PI)
    .run([place3(2.5, 0.5, 2.3), place3(7, 0.5, 2.3), place3(7, 0.5, 2.2)])
    .nozzle(7, 0.5, 2.2, [0, Math.PI], { orificeArea_m2: 2.2e-5 });

describe('what is installed for an enclosure', () => {
  test('all networks that blow into it, added up', () => {
    const built = twoNetworks();
    const { supply, filling, fill } = enclosureSums(built);
    expect(known(supply)).toMatchObject({ cylinders: 3, installed_kg: expect.closeTo(74.1, 9), networks: [{ name: 'Network 1', cylinders: 1, share: 1 }, { name: 'Network 2', cylinders: 2, share: 1 }] });
    expect(known(fill).cylinders).toBe(3);
    expect(reason(filling)).toBe('several networks fill the enclosure, and their discharge together is not worked out here.');
  });

  test('a network that also serves another enclosure brings the share that its discharge gives', () => {
    const built = twoRooms();
    const { enclosures, networks } = designFor(built);
    const parts = enclosures.map(({ supply }) => known(supply));
    const shares = known(sure(networks[0]).shares);
    expect(parts.map(({ networks: [part] }) => part?.share)).toEqual(shares.map(({ flowShare }) => expect.closeTo(flowShare, 12)));
    expect(parts.reduce((sum, { installed_kg }) => sum + installed_kg, 0)).toBeCloseTo(2 * 24.7, 9);
    for (const { installed_kg } of parts) expect(installed_kg).toBeCloseTo(24.7, 0);
    for (const { fill, vent } of enclosures) {
      expect(reason(fill)).toMatch(/^“Network 1” also serves another enclosure/);
      expect(known(vent).flow_kg_s).toBeCloseTo(0.35, 1);
    }
  });

  test('while that discharge is not worked out neither is the supply, nor what rests on it', () => {
    const { supply, people, vent, cylindersNeeded } = enclosureSums(twoRooms(), () => undefined);
    expect(reason(supply)).toBe('“Network 1” also serves another enclosure, and how it parts its agent is not worked out: the discharge is being worked out.');
    for (const group of [people, vent, cylindersNeeded]) expect(reason(group)).toBe(reason(supply));
  });

  test('when nothing comes out there is no share', () => {
    const source = workedDischarge();
    const nothing: DischargeSource = (network, input) => {
      const answer = source(network, input);
      if (typeof answer !== 'object') return answer;
      return { ...answer, result: { ...answer.result, spaces: answer.result.spaces.map((space) => ({ ...space, mass_kg: 0 })) } };
    };
    const built = twoRooms();
    expect(reason(enclosureSums(built, nothing).supply)).toBe('nothing comes out of “Network 1”.');
    expect(reason(networkSums(built, nothing).shares)).toBe('nothing comes out.');
  });

  test('enclosures on two levels with one id are two enclosures', () => {
    const built = wholePlan();
    const below = structuredClone(sure(built.plan.levels['level-0']));
    built.plan.levels.upper = { ...below, id: 'upper', name: 'Upper', obstructions: {} };
    const [lower, upper] = designFor(built).enclosures;
    expect(known(sure(lower).supply).cylinders).toBe(1);
    expect(reason(sure(upper).supply)).toBe('no nozzle serves the enclosure.');
  });

  test.each<[string, (built: PlanBuilder) => void, string]>([
    ['nozzles', (built) => { networkOf(built).nozzles = {}; }, 'no nozzle serves the enclosure.'],
    ['a unit profile', (built) => { networkOf(built).profile = 'lost'; }, '“Network 1” has no unit profile.'],
    ['its fill', (built) => void delete profileOf(built).limits.agentMass_kg, '“Agent mass” is blank in the unit profile “Sample 80 L unit (invented)”.'],
    ['cylinders', (built) => { networkOf(built).cylinders = {}; }, '“Network 1” has no cylinder yet.'],
    ['a space for each nozzle', (built) => void built.run([place3(2.5, 0.5, 2.3), place3(9, 0.5, 2.3)]).nozzle(9, 0.5, 2.3), 'nozzle N2 of “Network 1” serves no space, and what it takes away is not known.'],
    [
      'protection of the space that it blows into',
      (built) => {
        roomOf(built).underFloor = { depth_m: 0.3, isProtected: false, exclusion: null };
        built.run([place3(2.5, 0.5, 2.3), place3(2.5, 0.5, -0.1)]).nozzle(2.5, 0.5, -0.1);
      },
      'nozzle N2 of “Network 1” blows into “Room 1, under floor”, which is not marked as protected.',
    ],
  ])('without %s it is not known', (_, change, because) => {
    const built = wholePlan();
    change(built);
    expect(reason(enclosureSums(built).supply)).toBe(because);
  });

  test('cylinders of different fills are not added up', () => {
    const built = twoNetworks();
    const other = structuredClone(profileOf(built));
    built.plan.profiles.other = { ...other, id: 'other', limits: { ...other.limits, agentMass_kg: { value: 20, source: '' } } };
    networkOf(built).profile = 'other';
    expect(reason(enclosureSums(built).supply)).toBe('the networks that serve the enclosure have cylinders with different fills.');
  });
});
