import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { editSupport } from '#shared/commands/edit-support';
import type { Plan, Support } from '#shared/model/plan';
import { p23SeismicBracing as rule } from '#shared/rules/pipe/p23-seismic-bracing';
import { anyPlacing, at3, checkOne, layout, placed, placedLayout } from '../../../support/layout.ts';
import { done } from '../../../support/try-command.ts';

const FT = 0.3048;
type Braced = readonly (readonly [along_ft: number, brace: Support['brace']])[];
/** One straight run with braces along it, feet from its beginning. */
const run = (length_ft: number) => ({ runs: [{ places: [at3(0, 0, 3), at3(length_ft * FT, 0, 3)] }], nozzles: [{ at: at3(length_ft * FT, 0, 3) }] });
const supportsAt = (braces: Braced, put: (x: number) => { x: number; y: number; z: number } = (x) => at3(x, 0, 3)): Plan['networks'][string]['supports'] =>
  Object.fromEntries(braces.map(([along_ft, brace], i) => [`s${i}`, { id: `s${i}`, at: put(along_ft * FT), kind: 'rigid', capacity_N: null, brace }]));
const verdictOf = (length_ft: number, braces: Braced, seismic: Plan['basis']['seismic'] = 'required') =>
  checkOne(rule, layout({ ...run(length_ft), basis: { seismic }, network: { supports: supportsAt(braces) } }));

describe('P23', () => {
  test('asks nothing where no bracing is required, and is not checked while nobody has said', () => {
    expect(verdictOf(100, [], 'not-required').verdict).toBe('ok');
    expect(verdictOf(100, [], 'unknown').verdict).toBe('not-checked');
    expect(verdictOf(100, []).text).toContain('no support is drawn');
  });

  test.each<[string, number, Braced, string]>([
    ['lateral 40 ft apart and 20 ft from both ends', 80, [[20, 'four-way'], [60, 'four-way']], 'ok'],
    ['lateral a little farther apart', 80.1, [[20, 'four-way'], [60.1, 'four-way']], 'warn'],
    ['lateral a little too far from the end', 80.1, [[20, 'four-way'], [60, 'four-way']], 'warn'],
    ['longitudinal 80 ft apart and 40 ft from both ends', 160, [[20, 'lateral'], [40, 'longitudinal'], [60, 'lateral'], [100, 'lateral'], [120, 'longitudinal'], [140, 'lateral']], 'ok'],
    ['longitudinal a little farther apart', 160, [[20, 'lateral'], [39.9, 'longitudinal'], [60, 'lateral'], [100, 'lateral'], [120, 'longitudinal'], [140, 'lateral']], 'warn'],
    ['lateral alone', 40, [[20, 'lateral']], 'warn'],
    ['longitudinal alone', 40, [[20, 'longitudinal']], 'warn'],
    ['supports that brace nothing', 20, [[5, 'none'], [15, 'none']], 'warn'],
    ['one four-way brace in the middle', 40, [[20, 'four-way']], 'ok'],
  ])('%s', (_, length_ft, braces, verdict) => {
    expect(verdictOf(length_ft, braces).verdict).toBe(verdict);
  });

  test('a run under 12 ft may be held by a brace of pipe that it joins, a longer one may not', () => {
    const bent = (aside_ft: number) =>
      checkOne(
        rule,
        layout({
          runs: [{ places: [at3(0, 0, 3), at3(30 * FT, 0, 3), at3(30 * FT, aside_ft * FT, 3)] }],
          nozzles: [{ at: at3(30 * FT, aside_ft * FT, 3) }],
          basis: { seismic: 'required' },
          network: { supports: supportsAt([[15, 'four-way']]) },
        }),
      );
    expect(bent(11.99).verdict).toBe('ok');
    expect(bent(12).verdict).toBe('warn');
    expect(bent(12).text).toBe('1 of 2 straight runs is not braced against earthquakes: the first lacks lateral braces and longitudinal braces. Say at its supports which way they brace, or add some.');
  });

  test('saying which way a support braces clears it', () => {
    const plan = layout({ ...run(30), basis: { seismic: 'required' }, network: { supports: supportsAt([[15, 'none']]) } });
    expect(checkOne(rule, plan).verdict).toBe('warn');
    expect(checkOne(rule, done(plan, editSupport({ kind: 'support', network: 'net', id: 's0' }, { brace: 'four-way' })).next).verdict).toBe('ok');
  });

  test('turned, shifted and mirrored', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        const laid = (braces: Braced): Plan => {
          const plan = placedLayout({ ...run(79.99), basis: { seismic: 'required' } }, placing);
          if (plan.networks.net) plan.networks.net.supports = supportsAt(braces, (x) => placed(at3(x, 0, 3), placing));
          return plan;
        };
        expect(checkOne(rule, laid([[20, 'four-way'], [59.995, 'four-way']])).verdict).toBe('ok');
        expect(checkOne(rule, laid([[20, 'four-way'], [59.98, 'four-way']])).verdict).toBe('warn');
      }),
      { numRuns: 20 },
    );
  });
});
