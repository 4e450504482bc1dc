import { describe, expect, test } from 'vitest';
import type { AgentSums, EnclosureDesign, SupplySums } from '#shared/calculations/design/design';
import { notWorked, worked } from '#shared/calculations/design/worked';
import { celsius_K } from '#shared/units/convert';
import { e02AgentQuantity as rule } from '#shared/rules/enclosure/e02-agent-quantity';
import { checkEnclosure, servedRoom } from '../../../support/enclosure-sums.ts';
import { layout } from '../../../support/layout.ts';

const agent = (massNeeded_kg: number): AgentSums => ({
  net_m3: 60,
  concentration_pct: 40.3,
  least_K: celsius_K(15),
  greatest_K: celsius_K(30),
  altitude_m: 0,
  altitudeFactor: 1,
  coldSpecificVolume_m3_kg: 0.844,
  hotSpecificVolume_m3_kg: 0.888,
  massSeaLevel_kg: massNeeded_kg,
  massNeeded_kg,
  referenceVolume_m3: 31,
  floodingFactor_kg_m3: massNeeded_kg / 60,
});
const supply = (cylinders: number): SupplySums => ({ networks: [], cylinders, massEach_kg: 20, installed_kg: cylinders * 20 });
const least = worked({ concentration_pct: 40.3, source: 'EN 15004-8:2008 Table 4' });
const asked = (needed_kg: number, cylinders: number, more: Partial<EnclosureDesign> = {}, concentration_pct: number | null = 40.3) =>
  checkEnclosure(rule, servedRoom({ enclosure: { concentration_pct } }), { agent: worked(agent(needed_kg)), supply: worked(supply(cylinders)), cylindersNeeded: worked(Math.ceil(needed_kg / 20)), minimum: least, ...more });

describe('E2', () => {
  test.each([
    ['more than enough', 39, 'ok', 1],
    ['just enough', 40, 'ok', 0],
    ['float noise short', 40 * (1 + 1e-12), 'ok', 0],
    ['a gram short', 40.001, 'stop', -0.001],
  ])('%s', (_, needed_kg, verdict, margin) => {
    const finding = asked(needed_kg, 2);
    expect(finding).toMatchObject({ verdict, measure: 'mass', measured: 40 });
    expect(finding.margin).toBeCloseTo(margin, 9);
  });
  test('the text names cylinders, masses and temperature; rounding hides no fault', () => {
    expect(asked(39, 2).text).toBe('Has enough agent: 2 cylinders hold 40.0 kg; 39.0 kg are needed at 15.0 °C.');
    expect(asked(40.001, 2)).toMatchObject({ text: 'Short of agent: 2 cylinders hold 40.000 kg, but 40.001 kg are needed at 15.0 °C.', cure: { kind: 'advice', text: 'It needs 3 cylinders full.' } });
    expect(asked(19, 1).text).toContain('1 cylinder holds');
  });
  test.each([
    ['above the least', 41, 'ok'],
    ['at the least', 40.3, 'ok'],
    ['below the least', 40.2, 'stop'],
  ])('a design concentration %s', (_, concentration_pct, verdict) => {
    expect(asked(39, 2, {}, concentration_pct).verdict).toBe(verdict);
  });
  test('below the least the finding is in per cent and names the edition', () => {
    const finding = asked(39, 2, {}, 37.2);
    expect(finding).toMatchObject({ measure: 'ratio', limitSource: 'EN 15004-8:2008 Table 4' });
    expect(finding.measured).toBeCloseTo(0.372, 12);
    expect(finding.text).toContain('37.2 %, below the 40.3 % that EN 15004-8:2008 Table 4 asks for');
  });
  test('short of agent and too thin says both', () => {
    expect(asked(50, 2, {}, 37.2)).toMatchObject({ verdict: 'stop', measure: 'mass', text: expect.stringContaining('37.2 %') });
  });
  test('without a least concentration enough agent is not checked, too little still a stop', () => {
    const minimum = notWorked('what can burn in the enclosure is not known.');
    expect(asked(39, 2, { minimum })).toMatchObject({ verdict: 'not-checked', text: expect.stringContaining('what can burn') });
    expect(asked(41, 2, { minimum })).toMatchObject({ verdict: 'stop', text: expect.stringContaining('not checked: what can burn') });
  });
  test('a concentration too low is a stop though the agent is not known', () => {
    expect(asked(39, 2, { agent: notWorked('the temperatures of the enclosure are not known.') }, 30)).toMatchObject({ verdict: 'stop', measure: 'ratio' });
  });
  test('without agent or supply it is not checked, and an enclosure that no nozzle serves says so here', () => {
    expect(asked(39, 2, { agent: notWorked('the temperatures of the enclosure are not known.') })).toMatchObject({ verdict: 'not-checked', text: 'Not checked: the temperatures of the enclosure are not known.' });
    expect(checkEnclosure(rule, layout({}), { supply: notWorked('no nozzle serves the enclosure.') })).toMatchObject({ verdict: 'not-checked', text: 'Not checked: no nozzle serves the enclosure.' });
  });
  test('it shows where the room is', () => {
    expect(asked(41, 2).place).toMatchObject({ level: 'level-0', at: [{ x: 0, y: 0 }, { x: 6, y: 0 }, { x: 6, y: 4 }, { x: 0, y: 4 }] });
  });
});
