import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planPoint } from '#shared/geometry/point';
import { n05CornerShot as rule } from '#shared/rules/nozzle/n05-corner-shot';
import { anyPlacing, at3, checkOne, layout, placedLayout } from '../../../support/layout.ts';

const rad = (deg: number): number => (deg * Math.PI) / 180;
const limits = { cornerZone_m: 1.5, cornerAngle_rad: rad(20) };
/** One metre from both walls of the south-west corner: the corner lies at 225°. */
const inCorner = (hole_deg: number) => ({ nozzles: [{ at: at3(1, 1, 2.5), holes_rad: [rad(hole_deg)] }], limits });

describe('N5', () => {
  test.each([
    ['into the corner', 225, 'stop', 0],
    ['just inside the tolerance', 225 + 19.9, 'stop', 19.9],
    ['on the tolerance', 225 + 20, 'ok', 20],
    ['on the tolerance, other side', 225 - 20, 'ok', 20],
    ['just outside', 225 - 20.1, 'ok', 20.1],
    ['away from it', 45, 'ok', 180],
  ])('%s', (_, hole_deg, verdict, off_deg) => {
    const finding = checkOne(rule, layout(inCorner(hole_deg)));
    expect(finding.verdict).toBe(verdict);
    expect(finding.measured).toBeCloseTo(rad(off_deg), 9);
  });

  test.each([
    ['on the edge of the zone of both walls', 1.5, 1.5, 'stop'],
    ['beyond the zone of one wall', 1.51, 1, 'ok'],
    ['in the middle', 3, 2, 'ok'],
  ])('%s', (_, x, y, verdict) => {
    const bearing_rad = Math.atan2(-y, -x);
    expect(checkOne(rule, layout({ nozzles: [{ at: at3(x, y, 2.5), holes_rad: [bearing_rad] }], limits })).verdict).toBe(verdict);
  });

  test('a corner that points into the room traps nothing', () => {
    const lShape = [planPoint(0, 0), planPoint(6, 0), planPoint(6, 3), planPoint(3, 3), planPoint(3, 6), planPoint(0, 6)];
    const nozzles = [{ at: at3(2.5, 2.5, 2.5), holes_rad: [rad(45)] }];
    expect(checkOne(rule, layout({ room: lShape, nozzles, limits })).verdict).toBe('ok');
  });

  test('wherever the building stands, the verdict is the same', () => {
    fc.assert(
      fc.property(anyPlacing, fc.constantFrom(19.9, 20, 20.1), (placing, off_deg) => {
        expect(checkOne(rule, placedLayout(inCorner(225 + off_deg), placing)).verdict).toBe(off_deg < 20 ? 'stop' : 'ok');
      }),
    );
  });

  test('its cure turns the nozzle to where the rule is kept', () => {
    const plan = layout(inCorner(230));
    const { cure } = checkOne(rule, plan);
    expect(cure?.kind).toBe('turn-nozzle');
    const nozzle = plan.networks.net?.nozzles.n1;
    if (cure?.kind === 'turn-nozzle' && nozzle) nozzle.rotation_rad = cure.rotation_rad;
    expect(checkOne(rule, plan).verdict).toBe('ok');
  });

  test('no print of an angle hides the fault', () => {
    const { text, cure } = checkOne(rule, layout(inCorner(225 + 19.98)));
    expect(text).toContain('19.98° off it: turn it 0.1° or more');
    expect(cure?.text).toMatch(/^Turn it 0\.1°/);
  });

  test('while a limit of the legal turns is blank it advises instead of guessing', () => {
    const { cure } = checkOne(rule, layout({ ...inCorner(225), limits: { ...limits, freeJet_m: null } }));
    expect(cure).toMatchObject({ kind: 'advice', text: expect.stringContaining('Least free jet') });
  });

  test('blank figures, no holes or no enclosure are not checked', () => {
    expect(checkOne(rule, layout({ ...inCorner(45), limits: { cornerZone_m: null } })).verdict).toBe('not-checked');
    expect(checkOne(rule, layout({ ...inCorner(45), limits: { cornerAngle_rad: null } })).verdict).toBe('not-checked');
    expect(checkOne(rule, layout({ nozzles: [{ at: at3(1, 1, 2.5), holes_rad: [] }], limits })).verdict).toBe('not-checked');
    expect(checkOne(rule, layout({ nozzles: [{ at: at3(-1, 1, 2.5) }], limits })).verdict).toBe('not-checked');
  });
});
