import { describe, expect, test } from 'vitest';
import { workedDischarge } from '#shared/calculations/discharge/worked-discharge';
import { rectangle } from '#shared/geometry/outline';
import { type Enclosure, type Opening, unknownWall } from '#shared/model/plan';
import { e01NetVolume } from '#shared/rules/enclosure/e01-net-volume';
import { e02AgentQuantity } from '#shared/rules/enclosure/e02-agent-quantity';
import { e03People } from '#shared/rules/enclosure/e03-people';
import { e04FixedFill } from '#shared/rules/enclosure/e04-fixed-fill';
import { e05DischargeTime } from '#shared/rules/enclosure/e05-discharge-time';
import { e06HoldTime } from '#shared/rules/enclosure/e06-hold-time';
import { e07LeakageArea } from '#shared/rules/enclosure/e07-leakage-area';
import { e08ReliefVent } from '#shared/rules/enclosure/e08-relief-vent';
import { e09WallStrength } from '#shared/rules/enclosure/e09-wall-strength';
import type { Rule } from '#shared/rules/rule';
import { s01EgressTime } from '#shared/rules/safety/s01-egress-time';
import { s02DischargeDelay } from '#shared/rules/safety/s02-discharge-delay';
import { celsius_K } from '#shared/units/convert';
import { type LayoutSpec, at3, check, layout } from '../../../support/layout.ts';

const RULES = [e01NetVolume, e02AgentQuantity, e03People, e04FixedFill, e05DischargeTime, e06HoldTime, e07LeakageArea, e08ReliefVent, e09WallStrength, s01EgressTime, s02DischargeDelay];
const vent: Opening = { crossing: null, undercut_m: null, ventPath: [], id: 'v1', name: 'Vent', kind: 'relief-vent', wall: 'c1', along_m: 2, width_m: 0.3, bottom_m: 2, height_m: 0.3, swing: 'none', hinge: 'start', freeArea_m2: 0.03, leadsTo: 'outdoors', closes: null };
const walls = (strengths_Pa: readonly (number | null)[]): Enclosure['outline'] =>
  rectangle(5, 3).map(({ x, y }, i) => ({ id: `c${i}`, x, y, wall: { ...unknownWall(), allowablePressure_Pa: strengths_Pa[i] ?? null } }));

/** A room of 40.5 m³ about which everything is known, with one cylinder of the invented sample unit. */
const complete: Partial<Enclosure> = {
  outline: walls([250, 250, 250, 250]),
  temperature: { least_K: celsius_K(18), greatest_K: celsius_K(27) },
  altitude_m: 0,
  occupancy: 'normally-occupied',
  hazardClass: 'A-surface',
  concentration_pct: 40.3,
  people: { exposure: '5-min', egress_s: 25, delay_s: 30 },
  leakage: { kind: 'area', area_m2: 0.006, pressure_Pa: 10 },
  lowestProtected_m: 0.3,
  openings: { v1: vent },
};
const asked = (rule: Rule, enclosure: Partial<Enclosure>, more: LayoutSpec = {}) =>
  check(
    rule,
    layout({
      nozzles: [{ at: at3(2.5, 1.5, 2.6) }],
      runs: [{ places: [at3(0.3, 1.5, 1.7), at3(0.3, 1.5, 2.6), at3(2.5, 1.5, 2.6)] }],
      network: { nozzles: { n1: { id: 'n1', name: 'N1', node: 'k3', holes_rad: [0, Math.PI], rotation_rad: 0, tilt_rad: 0, orificeArea_m2: 2.2e-5, serves: null } } },
      basis: { greatestDelay_s: 60, designSet: 'en-15004-2008' },
      ...more,
      enclosure: { ...complete, ...enclosure },
    }),
    discharges,
  );
const discharges = workedDischarge();
const verdicts = (enclosure: Partial<Enclosure>, more?: LayoutSpec): Record<string, string> =>
  Object.fromEntries(RULES.map((rule) => [rule.id, asked(rule, enclosure, more).map(({ verdict }) => verdict).join()]));

describe('checks of an enclosure with the sums that the program works out', () => {
  test('are all judged where everything is known', () => {
    const { E5, ...others } = verdicts({});
    expect(['ok', 'stop']).toContain(E5);
    expect(Object.entries(others).filter(([, verdict]) => verdict !== 'ok')).toEqual([]);
  });

  test.each<[string, Partial<Enclosure>, LayoutSpec, readonly string[]]>([
    ['the height', { height_m: null }, {}, ['E1', 'E2', 'E3', 'E4', 'E5', 'E6', 'E7', 'E8', 'S1']],
    ['the temperatures', { temperature: null }, {}, ['E2', 'E3', 'E4', 'E5', 'E6', 'E7', 'E8', 'S1']],
    ['the height above the sea', { altitude_m: null }, {}, ['E2', 'E3', 'E4', 'E5', 'E6', 'E7', 'E8', 'S1']],
    ['the design concentration', { concentration_pct: null }, {}, ['E2', 'E3', 'E4', 'E5', 'E6', 'E7', 'E8', 'S1']],
    ['what can burn', { hazardClass: 'unknown' }, {}, ['E2', 'E5']],
    ['the use of the room', { occupancy: 'unknown' }, {}, ['E3']],
    ['the leaks', { leakage: { kind: 'unknown' } }, {}, ['E6', 'E7']],
    ['the lowest protected place', { lowestProtected_m: null }, {}, ['E6', 'E7']],
    ['the free area of the vent', { openings: { v1: { ...vent, freeArea_m2: null } } }, {}, ['E8']],
    ['what one wall bears', { outline: walls([250, null, 250, 250]) }, {}, ['E8', 'E9']],
    ['the time to leave', { people: { exposure: '5-min', egress_s: null, delay_s: 30 } }, {}, ['S1', 'S2']],
    ['the delay', { people: { exposure: '5-min', egress_s: 25, delay_s: null } }, {}, ['S2']],
    ['the fill of a cylinder', {}, { limits: { agentMass_kg: null } }, ['E2', 'E3', 'E4', 'E5', 'E8', 'S1']],
    ['the peak flow of a cylinder', {}, { limits: { peakFlow_kg_s: null } }, ['E8']],
    ['the discharge coefficient', {}, { limits: { nozzleCoefficient: null } }, ['E5']],
    ['any cylinder', {}, { cylinders: 0 }, ['E2', 'E3', 'E4', 'E5', 'E8', 'S1']],
  ])('what rests on it does not pass without %s', (_, enclosure, more, least) => {
    const found = verdicts(enclosure, more);
    const passed = least.filter((id) => found[id] === 'ok' || found[id] === '');
    expect(passed).toEqual([]);
  });

  test('an enclosure that no nozzle serves has one finding alone, and it does not pass', () => {
    const found = RULES.flatMap((rule) => asked(rule, {}, { nozzles: [], network: {} }));
    expect(found).toMatchObject([{ rule: 'E2', verdict: 'not-checked' }]);
  });
});
