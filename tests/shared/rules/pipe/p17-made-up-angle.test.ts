import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { p17MadeUpAngle as rule } from '#shared/rules/pipe/p17-made-up-angle';
import { anyPlacing, at3, check, checkOne, layout, placedLayout } from '../../../support/layout.ts';

const LIMITS = { cornerZone_m: 0.5, cornerAngle_rad: (20 * Math.PI) / 180, nearWallZone_m: 1, nearWallAngle_rad: (10 * Math.PI) / 180, freeJet_m: 0.5 } as const;
/** One nozzle with holes east and west, on a drop, so far from the south wall. */
const near = (y: number) => ({ runs: [{ places: [at3(3, y, 2.5), at3(3, y, 2.2)] }], nozzles: [{ at: at3(3, y, 2.2) }], limits: LIMITS });

describe('P17', () => {
  test('is a note with how far the holes may turn where a wall asks for it', () => {
    const finding = checkOne(rule, layout(near(0.7)));
    // Near a wall the holes blow along it within ten degrees: that is all they may turn either way. NPS 3/4 has 14 threads an inch (ASME B1.20.1): 25.4/14 = 1.81 mm.
    expect(finding).toMatchObject({ verdict: 'note', measured: expect.closeTo((20 * Math.PI) / 180, 6) });
    expect(finding.text).toBe('When its thread is tight, its holes may stand at most 10° counter-clockwise or 10° clockwise of the direction drawn, seen from above. One other range would do too: see its dial. One turn of its 3/4 in thread moves the orifice by 2 mm. Verify the direction once it is tight, and mark it.');
  });

  test('stays a note at the limit, inside it and outside it', () => {
    const turned = (rotation_deg: number) => checkOne(rule, layout({ ...near(0.7), nozzles: [{ at: at3(3, 0.7, 2.2), rotation_rad: (rotation_deg * Math.PI) / 180 }] }));
    for (const rotation_deg of [9.99, 10, 10.01, 90]) expect(turned(rotation_deg).verdict).toBe('note');
    expect(turned(9.9).text).toContain('0.1° counter-clockwise');
    expect(turned(90).text).toContain('The direction drawn will not do; 2 ranges would');
  });

  test('is kept where every direction will do', () => {
    expect(checkOne(rule, layout(near(2)))).toMatchObject({ verdict: 'ok', text: 'Its holes may end up in any direction.' });
  });

  test('is not checked with a limit blank or outside every room; a nozzle without holes is not asked', () => {
    expect(checkOne(rule, layout({ ...near(0.7), limits: { ...LIMITS, nearWallAngle_rad: null } }))).toMatchObject({ verdict: 'not-checked' });
    expect(checkOne(rule, layout(near(30)))).toMatchObject({ verdict: 'not-checked' });
    expect(check(rule, layout({ ...near(0.7), nozzles: [{ at: at3(3, 0.7, 2.2), holes_rad: [] }] }))).toEqual([]);
  });

  test('turned, shifted and mirrored', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        expect(checkOne(rule, placedLayout(near(0.7), placing))).toMatchObject({ verdict: 'note', measured: expect.closeTo((20 * Math.PI) / 180, 5) });
        expect(checkOne(rule, placedLayout(near(2), placing)).verdict).toBe('ok');
      }),
      { numRuns: 20 },
    );
  });
});
