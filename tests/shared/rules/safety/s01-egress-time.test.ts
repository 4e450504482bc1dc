import { describe, expect, test } from 'vitest';
import type { Exposure, PeopleSums } from '#shared/calculations/design/design';
import { longestExposure_s } from '#shared/calculations/formulas/exposure';
import { notWorked, worked } from '#shared/calculations/design/worked';
import type { Enclosure, Opening } from '#shared/model/plan';
import { s01EgressTime as rule } from '#shared/rules/safety/s01-egress-time';
import { checkEnclosure, checkEnclosures, servedRoom } from '../../../support/enclosure-sums.ts';

const air = { temperature_K: 303, concentration_pct: 45, oxygen_pct: 11.5, oxygenSeaLevel_pct: 11.5, byConcentration: '3-min', byOxygen: '3-min' } as const;
const people = (exposure: Exposure): PeopleSums => ({ cold: air, hot: air, doBandsAgree: true, exposure, longest_s: longestExposure_s(exposure) });
const room = (egress_s: number | null, more: Partial<Enclosure> = {}) => servedRoom({ enclosure: { people: { exposure: '5-min', egress_s, delay_s: null }, ...more } });
const asked = (egress_s: number | null, exposure: Exposure = '3-min') => checkEnclosure(rule, room(egress_s), { people: worked(people(exposure)) });

describe('S1', () => {
  test.each<[string, number, Exposure, string]>([
    ['out in time', 179, '3-min', 'ok'],
    ['out at the last moment', 180, '3-min', 'ok'],
    ['out too late', 180.5, '3-min', 'stop'],
    ['five minutes', 300, '5-min', 'ok'],
    ['beyond five minutes', 301, '5-min', 'stop'],
    ['thirty seconds', 30, '30-s', 'ok'],
    ['nobody may be exposed, however short', 0, 'none', 'stop'],
  ])('%s', (_, egress_s, exposure, verdict) => {
    expect(asked(egress_s, exposure)).toMatchObject({ verdict, measured: egress_s, limit: longestExposure_s(exposure) });
  });
  test('it says what people may do', () => {
    expect(asked(25).text).toBe('Everybody is out after 25.0 s; with all agent in, people may stay at most 3 min.');
    expect(asked(25, 'none').text).toBe('Everybody is out only after 25.0 s; with all agent in, nobody may be inside.');
  });
  test('it shows at the doors', () => {
    const door: Opening = { crossing: null, undercut_m: null, ventPath: [], id: 'd1', name: 'Door', kind: 'door', wall: 'c0', along_m: 2, width_m: 0.9, bottom_m: 0, height_m: 2, swing: 'out', hinge: 'start', freeArea_m2: null, leadsTo: 'outdoors', closes: true };
    expect(checkEnclosure(rule, room(400, { openings: { d1: door } }), { people: worked(people('5-min')) }).place?.at).toEqual([{ x: 2, y: 0 }]);
  });
  test('data that is missing is not checked', () => {
    expect(asked(null)).toMatchObject({ verdict: 'not-checked', text: 'Not checked: the time that everybody needs to leave is not entered.' });
    expect(checkEnclosure(rule, room(25), { people: notWorked('the temperatures of the enclosure are not known.') }).verdict).toBe('not-checked');
  });
  test('where nobody can be inside it is not asked', () => {
    expect(checkEnclosures(rule, room(25, { occupancy: 'unoccupiable' }), {})).toEqual([]);
  });
});
