import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { VentSums } from '#shared/calculations/design/design';
import { notWorked, worked } from '#shared/calculations/design/worked';
import type { Opening, VentStep } from '#shared/model/plan';
import { e10VentPath as rule } from '#shared/rules/enclosure/e10-vent-path';
import { rectangle } from '#shared/geometry/outline';
import { type PlanPoint, planPoint } from '#shared/geometry/point';
import { checkEnclosures } from '../../../support/enclosure-sums.ts';
import { anyPlacing, check, placed } from '../../../support/layout.ts';
import { planBuilder } from '../../../support/plan-builder.ts';
import { builtRoom, eastOf, ventInWall } from '../../../support/served-room.ts';

const step = (through: VentStep['through'], freeArea_m2: number | null = null, name = ''): VentStep => ({ name, through, freeArea_m2 });
const vented = (change: Partial<Opening> = {}) => builtRoom().opening(1, 2, 0.4, ventInWall(change));
const ventOf = (freeArea_m2: number): VentSums['vents'][number] => ({ ref: { kind: 'opening', level: 'level-0', enclosure: 'enclosure-1', id: 'o' }, name: 'Vent', freeArea_m2, leadsTo: 'outdoors' });
const sums = (needed_m2: number, more: Partial<VentSums> = {}): VentSums => ({
  flow_kg_s: 0.7, flowSource: 'unit profile: test', temperature_K: 293.15, specificVolume_m3_kg: 0.858, allowable_Pa: 250, needed_m2, provided_m2: 0.05,
  vents: [ventOf(0.05)],
  countedLeakage_m2: 0, pressureWithVents_Pa: 240, ...more,
});
/** Asked with a needed area as given. */
const asked = (change: Partial<Opening>, needed_m2 = 0.03, more: Partial<VentSums> = {}) => {
  const [finding] = checkEnclosures(rule, vented(change).plan, { vent: worked(sums(needed_m2, more)) });
  if (!finding) throw new Error('There is a vent.');
  return finding;
};

describe('E10', () => {
  test.each<[string, Partial<Opening>, string]>([
    ['straight to outdoors', { leadsTo: 'outdoors' }, 'ok'],
    ['to a corridor', { leadsTo: 'corridor' }, 'stop'],
    ['to a way out', { leadsTo: 'exit' }, 'stop'],
    ['to another room', { leadsTo: 'room' }, 'stop'],
    ['nobody said where', { leadsTo: 'unknown' }, 'not-checked'],
    ['to a corridor, but on by a duct to outdoors', { leadsTo: 'corridor', ventPath: [step('duct', 0.06), step('outdoors')] }, 'ok'],
    ['through a plain room to outdoors', { ventPath: [step('room', 0.06), step('louvre', 0.06), step('outdoors')] }, 'ok'],
    ['through a corridor to outdoors', { ventPath: [step('corridor', 1), step('outdoors')] }, 'stop'],
    ['through a way out', { ventPath: [step('duct', 1), step('exit', 1), step('outdoors')] }, 'stop'],
    ['through another protected room', { ventPath: [step('protected', 1), step('outdoors')] }, 'stop'],
    ['a way that ends in a duct', { ventPath: [step('duct', 1)] }, 'stop'],
  ])('%s', (_, change, verdict) => expect(asked(change)).toMatchObject({ verdict, name: 'Relief vent Vent, Room 1' }));

  test('names the corridor that it comes to', () => {
    expect(asked({ ventPath: [step('corridor', 1, 'Link'), step('outdoors')] }).text).toContain('passes “Link”, a corridor');
  });

  test.each([
    ['wider than needed', 0.031, 'ok'],
    ['just what is needed', 0.03, 'ok'],
    ['narrower', 0.0299, 'stop'],
    ['not known', null, 'not-checked'],
  ])('a step %s', (_, area_m2, verdict) => {
    // Behind a vent of 1000 m² a step loses next to nothing to the series.
    const finding = asked({ freeArea_m2: 1000, ventPath: [step('duct', area_m2, 'North duct'), step('outdoors')] }, 0.03 + (area_m2 === 0.03 ? -1e-9 : 0), { vents: [ventOf(1000)] });
    expect(finding.verdict).toBe(verdict);
  });
  test('a narrow step is named with both figures', () => {
    expect(asked({ ventPath: [step('duct', 0.02, 'North duct'), step('outdoors')] })).toMatchObject({
      verdict: 'stop',
      measured: 0.02,
      limit: 0.03,
      text: '“North duct” on its way outdoors has a free area of 0.0200 m²; 0.0300 m² are needed.',
    });
  });
  test('parts in series count as less than each: 1/A² adds up', () => {
    // 1/√(1/0.05² + 1/0.05²) = 0.05/√2 = 0.03536, by hand.
    const twice = { ventPath: [step('duct', 0.05), step('outdoors')] };
    expect(asked(twice, 0.0353)).toMatchObject({ verdict: 'ok' });
    const finding = asked(twice, 0.0354);
    expect(finding).toMatchObject({ verdict: 'stop', limit: 0.0354 });
    expect(finding.measured).toBeCloseTo(0.05 / Math.SQRT2, 12);
  });
  test('of two vents each must let out its part', () => {
    const two = { vents: [ventOf(0.05), ventOf(0.15)] };
    // A quarter of 0.08 m² falls on it.
    expect(asked({ ventPath: [step('duct', 0.03), step('outdoors')] }, 0.08, two)).toMatchObject({ verdict: 'ok', limit: 0.02 });
    expect(asked({ ventPath: [step('duct', 0.03), step('outdoors')] }, 0.08)).toMatchObject({ verdict: 'stop', limit: 0.08 });
  });
  test('leaks that count as vent are taken off', () => {
    expect(asked({ ventPath: [step('duct', 0.03), step('outdoors')] }, 0.03, { countedLeakage_m2: 0.01 })).toMatchObject({ verdict: 'ok', limit: expect.closeTo(0.02, 12) });
  });
  test('where leaks let out all, and where a part lets nothing through', () => {
    const shut = { ventPath: [step('duct', 0), step('outdoors')] };
    expect(asked(shut, 0.03, { countedLeakage_m2: 0.03 }).verdict).toBe('ok');
    expect(asked(shut).verdict).toBe('stop');
    expect(asked({ freeArea_m2: 0, ventPath: [step('duct', 1), step('outdoors')] }).verdict).toBe('not-checked');
  });
  test('a way of which the needed area is not known is not checked, but a wrong one stops', () => {
    const unknown = { vent: notWorked('the flow is blank.') };
    const of = (change: Partial<Opening>) => checkEnclosures(rule, vented(change).plan, unknown)[0]?.verdict;
    expect(of({ ventPath: [step('duct', 1), step('outdoors')] })).toBe('not-checked');
    expect(of({ leadsTo: 'corridor' })).toBe('stop');
    expect(of({})).toBe('ok');
  });

  test.each([
    ['a corridor', 'corridor', 'stop'],
    ['a way out', 'exit', 'stop'],
    ['a room', 'room', 'stop'],
    ['outdoors', 'outdoors', 'ok'],
    ['nobody knows what', 'unknown', 'ok'],
  ] as const)('said to open to outdoors where %s is drawn behind the wall', (_, kind, verdict) => {
    expect(check(rule, vented().adjoining(kind, eastOf()).plan)[0]?.verdict).toBe(verdict);
  });
  test('said to open to outdoors into another protected room', () => {
    const [finding] = check(rule, vented().room(3, 4, 2.7, planPoint(6.15, 0)).plan);
    expect(finding).toMatchObject({ verdict: 'stop', text: 'Is said to open to outdoors, but behind its wall the plan shows Room 2, which is protected as well.' });
  });
  test('a duct may pass the corridor behind the wall', () => {
    const [finding] = checkEnclosures(rule, vented({ ventPath: [step('duct', 0.06), step('outdoors')] }).adjoining('corridor', eastOf()).plan, { vent: worked(sums(0.03)) });
    expect(finding?.verdict).toBe('ok');
  });
  test('a room without a vent and one that no nozzle serves are not asked', () => {
    expect(check(rule, builtRoom().plan)).toEqual([]);
    expect(check(rule, planBuilder().room(6, 4, 2.7).opening(1, 2, 0.4, ventInWall()).plan)).toEqual([]);
  });
  test('turned and mirrored, the corridor is still behind the vent', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        const lay = (ring: readonly PlanPoint[]) => ring.map((p) => placed(p, placing));
        const at = placed(planPoint(3, 2), placing);
        const built = planBuilder().outline(lay(rectangle(6, 4)), 2.7).network().nozzle(at.x, at.y, 2.5).opening(1, 2, 0.4, ventInWall()).adjoining('corridor', lay(eastOf()));
        expect(check(rule, built.plan)[0]?.verdict).toBe('stop');
      }),
      { numRuns: 40 },
    );
  });
});
