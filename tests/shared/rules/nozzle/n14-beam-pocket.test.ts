import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { n14BeamPocket as rule } from '#shared/rules/nozzle/n14-beam-pocket';
import { buildDemo } from '../../../../src-main/demos/build-demo.ts';
import { expectCured } from '../../../support/cure-check.ts';
import { type LayoutSpec, at3, check, checkOne, layout } from '../../../support/layout.ts';
import { PLACINGS, placedPlan } from '../../../support/placed-plan.ts';

const limits = { freeJet_m: 0.9 };
/** Its underside at `soffit_m`, 2 m east of a nozzle 2.5 m up. */
const beam = (soffit_m: number, kind: 'beam' | 'duct' | 'light' | 'rack' = 'beam', holes_rad: readonly number[] = [0, Math.PI], more: LayoutSpec = {}): LayoutSpec => ({
  room: rectangle(10, 6),
  nozzles: [{ at: at3(5, 3, 2.5), holes_rad }],
  obstructions: [{ kind, footprint: rectangle(0.3, 6, planPoint(7, 0)), bottom_m: soffit_m, top_m: 2.7 }],
  limits,
  ...more,
});
const NORTH = [Math.PI / 2, -Math.PI / 2];

describe('N14', () => {
  test.each([
    ['an underside just below the orifice', beam(2.499), 'warn'],
    ['on a level with it', beam(2.5), 'ok'],
    ['just above', beam(2.501), 'ok'],
    ['jets along the beam', beam(2.3, 'beam', NORTH), 'ok'],
    ['a duct across the jet', beam(2.3, 'duct'), 'warn'],
    ['a rack that stands there is none', beam(0, 'rack'), 'ok'],
    ['no holes drawn', beam(2.3, 'beam', []), 'not-checked'],
    ['a beam so near that N7 stops the jet', beam(2.3, 'beam', [0], { nozzles: [{ at: at3(6.2, 3, 2.5), holes_rad: [0] }] }), 'not-checked'],
    ['a blank free jet hides no beam', beam(2.3, 'beam', [0], { limits: { freeJet_m: null } }), 'warn'],
  ])('%s', (_, spec, verdict) => {
    const plan = layout(spec);
    for (const placing of PLACINGS) expect(checkOne(rule, placedPlan(plan, placing)).verdict).toBe(verdict);
  });

  test('a beam behind a column is not met', () => {
    const { obstructions = [], ...spec } = beam(2.3);
    const column = { kind: 'column', footprint: rectangle(0.3, 2, planPoint(6.2, 2)), bottom_m: 0, top_m: 2.7 } as const;
    expect(checkOne(rule, layout({ ...spec, obstructions: [...obstructions, column] })).verdict).toBe('ok');
  });

  test('shows the ray to the beam and says how far it hangs below the orifice', () => {
    const finding = checkOne(rule, layout(beam(2.3)));
    expect(finding).toMatchObject({ measured: expect.closeTo(2, 9), place: { rays: [{ from: { x: 5, y: 3 }, to: { x: 7, y: 3 } }] } });
    expect(finding.text).toContain('200 mm');
  });

  test.each(PLACINGS)('its cure turns the axis along the beam and stops nothing new: %o', (placing) => {
    const plan = placedPlan(layout(beam(2.3)), placing);
    expect(checkOne(rule, plan).cure?.text).toContain('90°');
    expectCured(rule, plan, 'turn-nozzle');
  });

  test('the annex: with N3 turned east-west both beams are met, and it is turned back; as designed no jet meets one', async () => {
    const { plan } = await buildDemo('F2-faults');
    const found = check(rule, plan).filter(({ verdict }) => verdict === 'warn');
    expect(found.map(({ name }) => name)).toEqual(['N3']);
    expect(found[0]?.place?.rays).toHaveLength(2);
    expect(found[0]?.cure?.text).toContain('90°');
    expect(check(rule, (await buildDemo('F2')).plan).every(({ verdict }) => verdict === 'ok')).toBe(true);
  });
});
