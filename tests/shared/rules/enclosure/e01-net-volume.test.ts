import { describe, expect, test } from 'vitest';
import { volumeOf } from '#shared/calculations/design/volume';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import type { Obstruction } from '#shared/model/plan';
import { e01NetVolume as rule } from '#shared/rules/enclosure/e01-net-volume';
import { checkEnclosure, checkEnclosures, servedRoom } from '../../../support/enclosure-sums.ts';
import { layout } from '../../../support/layout.ts';

/** 6 m × 4 m × 2.7 m = 64.8 m³; each thing is 1 m × 0.5 m and 2 m high = 1 m³. */
const thing = (kind: Obstruction['kind'], x = 1) => ({ kind, footprint: rectangle(1, 0.5, planPoint(x, 1)), bottom_m: 0, top_m: 2 });
const asked = (obstructions: Obstruction['kind'][], edit: (plan: ReturnType<typeof servedRoom>) => void = () => undefined) => {
  const plan = servedRoom({ obstructions: obstructions.map((kind, i) => thing(kind, 1 + i)) });
  edit(plan);
  return checkEnclosure(rule, plan, ({ spaces }) => ({ volume: volumeOf(spaces) }));
};

describe('E1', () => {
  test('an empty room is kept, and so is one with fixed things alone', () => {
    expect(asked([])).toMatchObject({ verdict: 'ok', measured: 0, text: 'Its net volume is 64.80 m³; nothing is taken off the gross 64.80 m³.' });
    expect(asked(['beam', 'column', 'duct'])).toMatchObject({ verdict: 'ok', measured: 0, text: 'Its net volume is 61.80 m³; 3 fixed things are taken off the gross 64.80 m³.' });
  });
  test.each(['rack', 'cabinet', 'light', 'tray', 'other'] as const)('a %s that agent does not pass is a stop', (kind) => {
    const finding = asked(['column', kind]);
    expect(finding).toMatchObject({ verdict: 'stop', limit: 0, place: { level: 'level-0', at: [{ x: 2, y: 1 }] } });
    expect(finding.measured).toBeCloseTo(1, 9);
    expect(finding.margin).toBeCloseTo(-1, 9);
    expect(finding.text).toContain('“Thing 2” takes 1.00 m³ off the volume');
    expect(finding.cure?.text).toContain('“Thing 2”');
  });
  test('several are counted together', () => {
    const finding = asked(['rack', 'cabinet', 'tray']);
    expect(finding.measured).toBeCloseTo(3, 9);
    expect(finding.text).toContain('“Thing 1” and 2 other things take');
  });
  test('a movable thing that agent passes through is kept', () => {
    const finding = asked(['rack'], (plan) => {
      const rack = plan.levels['level-0']?.obstructions.o1;
      if (rack) rack.isPermeable = true;
    });
    expect(finding.verdict).toBe('ok');
  });
  test('a movable thing in another room takes nothing off', () => {
    const plan = servedRoom({ obstructions: [thing('rack', 20)] });
    expect(checkEnclosure(rule, plan, ({ spaces }) => ({ volume: volumeOf(spaces) })).verdict).toBe('ok');
  });
  test('an unknown height is not checked', () => {
    expect(checkEnclosure(rule, servedRoom({ height_m: null }), ({ spaces }) => ({ volume: volumeOf(spaces) }))).toMatchObject({ verdict: 'not-checked', text: 'Not checked: the height of “Room” is not known.' });
  });
  test('an enclosure without a nozzle is not asked', () => {
    expect(checkEnclosures(rule, layout({}), {})).toEqual([]);
  });
});
