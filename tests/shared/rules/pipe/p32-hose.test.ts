import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { p32Hose as rule } from '#shared/rules/pipe/p32-hose';
import { ALONE, type AssemblySpec, SEVERAL, assemblyPlan, part } from '../../../support/assembly-layout.ts';
import { anyPlacing, at3, check, checkOne } from '../../../support/layout.ts';

const found = (spec: AssemblySpec) => checkOne(rule, assemblyPlan(spec));
/** A half turn of exactly the bend radius, 0.25 m straight before it. */
const TIGHT: AssemblySpec = { ...ALONE, cylinders: [{ y: 1, outlet_rad: -Math.PI / 2, end: at3(0.2, 0.75, 1.8) }], source: at3(0.2, 1, 1.8) };
/** By hand: a straight and a half turn. */
const NEEDED_m = 0.25 + 0.15 * Math.PI;
const hoseOf = (spec: AssemblySpec, length_m: number): AssemblySpec => ({ ...spec, parts: [part('hose', length_m), part('check-valve', 0.1), part('regulator', 0.15)] });

describe('P32', () => {
  test.each([
    ['exactly as long as its bends take', NEEDED_m, 'ok'],
    ['a millimetre longer', NEEDED_m + 1e-3, 'ok'],
    ['a tenth of a millimetre too short', NEEDED_m - 1e-4, 'stop'],
    ['far too short', 0.4, 'stop'],
  ])('a hose that is %s', (_, length_m, verdict) => {
    expect(found(hoseOf(TIGHT, length_m))).toMatchObject({ verdict, measured: expect.closeTo(NEEDED_m, 7), limit: length_m, margin: expect.closeTo(length_m - NEEDED_m, 7) });
  });

  test.each([
    ['on its reach', Math.hypot(0.25, 0.3), 'ok'],
    ['within it', 0.4, 'ok'],
    ['just beyond it', Math.hypot(0.25, 0.3) - 1e-6, 'stop'],
  ])('an end %s', (_, hoseReach_m, verdict) => {
    expect(found({ ...hoseOf(TIGHT, 0.75), limits: { hoseReach_m } }).verdict).toBe(verdict);
  });

  test('an end that is too high is C9’s to tell, not this check’s', () => {
    const high = { ...ALONE, cylinders: [{ y: 1, outlet_rad: -Math.PI / 2, end: at3(0.2, 0.75, 2.3) }], source: at3(0.2, 1, 2.3) };
    expect(found(hoseOf(high, 1.3)).verdict).toBe('ok');
  });

  test.each([
    ['in one plane', 0, 'ok'],
    ['4.9° out of it', 4.9, 'ok'],
    ['5.1° out of it', 5.1, 'warn'],
    ['20° out of it', 20, 'warn'],
  ])('a hose that bends %s', (_, aside_deg, verdict) => {
    // The outlet of C2 is turned about: the plane of chord and upright end is that much off it.
    const [first, ...others] = SEVERAL.cylinders ?? [];
    const spec = { ...SEVERAL, cylinders: [...(first ? [{ ...first, outlet_rad: -Math.PI / 2 + (aside_deg * Math.PI) / 180 }] : []), ...others] };
    expect(check(rule, assemblyPlan(spec))[0]).toMatchObject({ verdict });
  });

  test('slack for which there is no gentle way is a warning', () => {
    const tight = (length_m: number) => check(rule, assemblyPlan({ ...SEVERAL, parts: [part('hose', length_m), part('check-valve', 0.1), part('manifold', 1.2), part('regulator', 0.15)], cylinders: [{ y: 1, outlet_rad: -Math.PI / 2, end: at3(0.2, 0.85, 1.75) }] }))[0];
    // By hand: a quarter turn of 0.15 m and 0.1 m upright.
    const needed_m = 0.15 * (Math.PI / 2) + 0.1;
    expect(tight(needed_m + 0.005)?.verdict).toBe('ok');
    expect(tight(0.6)).toMatchObject({ verdict: 'warn', text: expect.stringContaining('it would kink') });
  });

  test('turned, shifted and mirrored', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        expect(found({ ...hoseOf(ALONE, 0.8), placing }).verdict).toBe('ok');
        expect(found({ ...hoseOf(ALONE, 0.7), placing }).verdict).toBe('stop');
      }),
      { numRuns: 10 },
    );
  });

  test.each([
    ['the outlet', { ...ALONE, cylinders: [{ y: 1, outlet_rad: null, end: at3(0.2, 0.75, 1.82) }] }, 'which way its outlet points is not known.'],
    ['the end', { ...ALONE, cylinders: [{ y: 1, outlet_rad: 0, end: null }] }, 'where its hose ends is not known.'],
    ['its length', hoseOf(TIGHT, 0), 'the length of “hose” is not entered. It takes'],
    ['a hose', { ...ALONE, parts: [part('check-valve')] }, 'no hose is listed first'],
    ['the bend radius', { ...ALONE, limits: { hoseBendRadius_m: null } }, 'Least bend radius of the hose'],
    ['the reach', { ...ALONE, limits: { hoseReach_m: null } }, 'Reach of the discharge hose'],
    ['the outlet height', { ...ALONE, limits: { outletHeight_m: null } }, 'Valve outlet height'],
    ['where the pipe begins', { ...ALONE, source: null }, 'where the pipe begins is not chosen.'],
    ['the manifold', { ...SEVERAL, manifold: null, cylinders: (SEVERAL.cylinders ?? []).slice(0, 1) }, 'where the manifold runs is not known.'],
  ])('not checked without %s', (_, spec, because) => {
    expect(found(spec)).toMatchObject({ verdict: 'not-checked', text: expect.stringContaining(because) });
  });
});
