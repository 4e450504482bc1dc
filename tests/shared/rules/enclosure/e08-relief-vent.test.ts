import { describe, expect, test } from 'vitest';
import type { FillingSums, VentSums } from '#shared/calculations/design/design';
import { notWorked, worked } from '#shared/calculations/design/worked';
import type { Opening } from '#shared/model/plan';
import { e08ReliefVent as rule } from '#shared/rules/enclosure/e08-relief-vent';
import { checkEnclosure, servedRoom } from '../../../support/enclosure-sums.ts';

const opening: Opening = { crossing: null, undercut_m: null, ventPath: [], id: 'v1', name: 'Vent', kind: 'relief-vent', wall: 'c1', along_m: 1, width_m: 0.3, bottom_m: 2, height_m: 0.3, swing: 'none', hinge: 'start', freeArea_m2: 0.05, leadsTo: 'outdoors', closes: null };
const plan = servedRoom({ enclosure: { openings: { v1: opening } } });
const vent = (provided_m2: number, more: Partial<VentSums> = {}): VentSums => ({
  flow_kg_s: 0.7,
  flowSource: 'unit profile: sample',
  temperature_K: 293.15,
  specificVolume_m3_kg: 0.858,
  allowable_Pa: 240,
  needed_m2: 0.05,
  provided_m2,
  vents: [{ ref: { kind: 'opening', level: 'level-0', enclosure: 'e1', id: 'v1' }, name: 'Vent', freeArea_m2: provided_m2, leadsTo: 'outdoors' }],
  countedLeakage_m2: 0,
  pressureWithVents_Pa: 240,
  ...more,
});
const weakest = worked({ pressure_Pa: 240, wall: { kind: 'wall', level: 'level-0', enclosure: 'e1', id: 'c2' } as const, wallName: 'Wall 3 of Room' });
const filling = (peakOverpressure_Pa: number, isStale = false) => worked<FillingSums>({ spaces: [], timeTo95_s: 50, limit_s: 60, limitSource: 'test', peakOverpressure_Pa, isStale });
const asked = (provided_m2: number, more: Partial<VentSums> = {}) => checkEnclosure(rule, plan, { vent: worked(vent(provided_m2, more)), weakest });

describe('E8', () => {
  test.each([
    ['more', 0.051, 'ok', 0.001],
    ['just what is needed', 0.05, 'ok', 0],
    ['float noise less', 0.05 * (1 - 1e-12), 'ok', 0],
    ['less', 0.0499, 'stop', -0.0001],
  ])('%s', (_, provided_m2, verdict, margin) => {
    const finding = asked(provided_m2);
    expect(finding).toMatchObject({ verdict, measure: 'area', limit: 0.05, limitSource: 'unit profile: sample' });
    expect(finding.margin).toBeCloseTo(margin, 12);
  });
  test('a fault names areas, wall and what is missing, at the vent', () => {
    expect(asked(0.03)).toMatchObject({
      text: 'Its free relief area is 0.0300 m²; 0.0500 m² are needed for what Wall 3 of Room bears, 240 Pa.',
      place: { at: [{ x: 6, y: 1 }] },
      cure: { kind: 'advice', text: 'Give it 0.0200 m² more free area, leading outdoors.' },
    });
  });
  test('without any vent it shows at the weakest wall', () => {
    const finding = checkEnclosure(rule, servedRoom(), { vent: worked(vent(0, { vents: [], pressureWithVents_Pa: undefined })), weakest });
    expect(finding).toMatchObject({ verdict: 'stop', text: expect.stringContaining('It has no relief vent'), place: { at: [{ x: 3, y: 4 }] } });
  });
  test('leaks that count are told', () => {
    expect(asked(0.06, { countedLeakage_m2: 0.01 }).text).toContain('leaks of 0.0100 m² counted');
  });
  test.each([
    ['at what the wall bears', 240, 'ok'],
    ['above what the wall bears', 241, 'stop'],
  ])('the calculated overpressure %s', (_, peak_Pa, verdict) => {
    expect(checkEnclosure(rule, plan, { vent: worked(vent(0.06)), weakest, filling: filling(peak_Pa) }).verdict).toBe(verdict);
  });
  test('too much overpressure is told in its own unit though the vents are large enough', () => {
    const finding = checkEnclosure(rule, plan, { vent: worked(vent(0.06)), weakest, filling: filling(300) });
    expect(finding).toMatchObject({ measure: 'pressureDifference', measured: 300, limit: 240, margin: -60, text: expect.stringContaining('brings 300 Pa over the pressure outdoors, but Wall 3 of Room bears only 240 Pa') });
  });
  test('both faults are one finding', () => {
    expect(checkEnclosure(rule, plan, { vent: worked(vent(0.03)), weakest, filling: filling(300) })).toMatchObject({ verdict: 'stop', measure: 'area', text: expect.stringContaining('The discharge brings 300 Pa') });
  });
  test('a pressure of the discharge before the last change says that it is one', () => {
    const asFound = (isStale: boolean): string => checkEnclosure(rule, plan, { vent: worked(vent(0.06)), weakest, filling: filling(300, isStale) }).text;
    const sentence = 'bears only 240 Pa. This is the discharge before the last change: the new one is being worked out.';
    expect(asFound(true)).toContain(sentence);
    expect(asFound(false)).not.toContain('before the last change');
  });

  test('an unknown flow is not checked, unless the discharge already brings too much', () => {
    const unknown = notWorked('“Peak flow of one cylinder” is blank in the unit profile.');
    expect(checkEnclosure(rule, plan, { vent: unknown, weakest }).verdict).toBe('not-checked');
    expect(checkEnclosure(rule, plan, { vent: unknown, weakest, filling: filling(200) }).verdict).toBe('not-checked');
    expect(checkEnclosure(rule, plan, { vent: unknown, weakest, filling: filling(300) }).verdict).toBe('stop');
  });
});
