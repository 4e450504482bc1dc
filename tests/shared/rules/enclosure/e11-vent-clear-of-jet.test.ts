import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import type { Opening } from '#shared/model/plan';
import { e11VentClearOfJet as rule } from '#shared/rules/enclosure/e11-vent-clear-of-jet';
import { anyPlacing, at3, checkOne, layout, placedLayout } from '../../../support/layout.ts';

const SPREAD_rad = Math.PI / 18;
const vent: Opening = { crossing: null, undercut_m: null, ventPath: [], id: 'v1', name: 'Vent', kind: 'relief-vent', wall: 'c1', along_m: 2, width_m: 0.4, bottom_m: 2, height_m: 0.4, swing: 'none', hinge: 'start', freeArea_m2: 0.05, leadsTo: 'outdoors', closes: null };
const spec = (away_m: number, change: Partial<Opening> = {}, spread_rad: number | null = SPREAD_rad) => ({
  nozzles: [{ at: at3(6 - away_m, 2, 2.2), holes_rad: [0, Math.PI] }],
  limits: { jetSpread_rad: spread_rad },
  enclosure: { openings: { v1: { ...vent, ...change } } },
});
const asked = (...given: Parameters<typeof spec>) => checkOne(rule, layout(spec(...given)));

describe('E11', () => {
  test.each([
    ['farther than 6 ft', 1.9, 'ok'],
    ['at 6 ft', 6 * 0.3048, 'ok'],
    ['nearer', 1.82, 'warn'],
  ])('a jet from %s', (_, away_m, verdict) => {
    const finding = asked(away_m);
    expect(finding).toMatchObject({ verdict, limit: expect.closeTo(1.8288, 12), name: 'Relief vent Vent, Room' });
    expect(finding.measured).toBeCloseTo(away_m, 9);
    expect(finding.place?.dimension).toBeDefined();
  });
  test('a fault says which nozzle, and what to do', () => {
    expect(asked(1)).toMatchObject({ text: expect.stringMatching(/^N1 blows at it from .+; .+ is the least\. Its jet would push agent straight out\.$/), cure: { kind: 'advice', text: expect.stringContaining('N1') } });
  });
  test('a vent beside the jet is clear of it', () => {
    expect(asked(1, { along_m: 3 })).toMatchObject({ verdict: 'ok', text: 'No jet points at it.' });
  });
  test('a vent near the edge of the jet is in it', () => expect(asked(1.5, { along_m: 2.4 }).verdict).toBe('warn'));
  test('a blank spread is not checked, but a jet straight at the vent is told', () => {
    expect(asked(3, {}, null).verdict).toBe('not-checked');
    expect(asked(1, {}, null).verdict).toBe('warn');
  });
  test('the vent of a void is no matter of the nozzles in the room', () => {
    const void_ = { underFloor: { depth_m: 0.5, isProtected: true, exclusion: null } };
    const plan = layout({ ...spec(1), ...void_, enclosure: { openings: { v1: { ...vent, bottom_m: -0.4, height_m: 0.2 } } } });
    expect(() => checkOne(rule, plan)).toThrow('got 0');
  });
  test('turned and mirrored, the same distance', () => {
    fc.assert(
      fc.property(anyPlacing, fc.double({ min: 0.5, max: 3, noNaN: true }), (placing, away_m) => {
        const finding = checkOne(rule, placedLayout({ room: rectangle(6, 4, planPoint(0, 0)), ...spec(away_m) }, placing));
        expect(finding.measured).toBeCloseTo(away_m, 6);
        expect(finding.verdict).toBe(away_m < 1.8288 ? 'warn' : 'ok');
      }),
      { numRuns: 40 },
    );
  });
});
