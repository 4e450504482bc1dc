import { describe, expect, test } from 'vitest';
import { LIMIT_CATALOGUE, LIMIT_KEYS } from '#shared/profile/limit-catalogue';
import { SAMPLE_PROFILE } from '#shared/profile/sample-profile';
import { type MadeFitting, madeFittingSchema } from '#shared/profile/unit-profile';
import { formatQuantity, parseQuantity } from '#shared/units/quantity-text';
import { BLANK_MADE, LEG_WORDS, MADE_WORDS, type MadeDraft, type MadeKind, draftOfMade, isSameMade, legsAsked, madeText, wholeMade } from '../../../src-renderer/panels/dialogs/made-fitting-draft.ts';
import { readProfile } from '../../../src-renderer/panels/dialogs/profile-dialog.tsx';

describe('a profile file of an older version', () => {
  const { madeFittings: _, assemblyOrder: __, teeAttitudes: ___, ...older } = SAMPLE_PROFILE;
  const { orifices: ____, ...oldest } = older;

  test('without made fittings, order of the assembly and ways of tees loads, with these blank', () => {
    expect(readProfile(JSON.stringify(older))).toEqual({ ...SAMPLE_PROFILE, madeFittings: [], assemblyOrder: null, teeAttitudes: null });
  });

  test('from before orifices were listed loads, too', () => {
    expect(readProfile(JSON.stringify(oldest))).toEqual({ ...SAMPLE_PROFILE, orifices: [], madeFittings: [], assemblyOrder: null, teeAttitudes: null });
  });

  test('without the newer limits loads, and they stay blank', () => {
    const { storageLeast_K: _____, hoseReach_m: ______, ...limits } = SAMPLE_PROFILE.limits;
    expect(readProfile(JSON.stringify({ ...older, limits }))).toMatchObject({ limits });
  });

  test('what is there and wrong is refused, not made blank', () => {
    expect(readProfile(JSON.stringify({ ...older, madeFittings: [{ kind: 'tee', legs: [], weight_kg: null, source: '' }] }))).toMatch(/no unit profile/);
    expect(readProfile(JSON.stringify({ ...older, teeAttitudes: ['sideways'] }))).toMatch(/no unit profile/);
    expect(readProfile('null')).toMatch(/unit profile/);
  });
});

describe('a made fitting', () => {
  const KINDS = Object.keys(MADE_WORDS) as MadeKind[];
  const filled = (kind: MadeKind, isAlike = false): MadeDraft => ({ ...BLANK_MADE, kind, isAlike, legs: BLANK_MADE.legs.map((leg) => ({ ...leg, reach_m: 0.03 })) });

  test.each(KINDS)('%s counts only when every end is known, and fits the profile', (kind) => {
    expect(wholeMade({ ...BLANK_MADE, kind })).toBeUndefined();
    const whole = wholeMade(filled(kind));
    expect(madeFittingSchema.safeParse(whole).success).toBe(true);
    expect(whole?.legs).toHaveLength(LEG_WORDS[kind].length);
    const lacking = { ...filled(kind), legs: filled(kind).legs.map((leg, i) => (i === LEG_WORDS[kind].length - 1 ? { ...leg, reach_m: null } : leg)) };
    expect(wholeMade(lacking)).toBeUndefined();
  });

  test('one length does for all ends where they can be alike, never for a reducer or a street elbow', () => {
    expect(wholeMade(filled('tee', true))?.legs).toHaveLength(1);
    expect(legsAsked({ kind: 'reducer', isAlike: true })).toBe(2);
    expect(legsAsked({ kind: 'street-elbow', isAlike: true })).toBe(2);
  });

  test('every fitting of the sample goes into the form and out again unchanged', () => {
    for (const made of SAMPLE_PROFILE.madeFittings) {
      const back = wholeMade(draftOfMade(made));
      expect(back).toEqual(made);
    }
  });

  test('is named by what is bought, each end with its length', () => {
    // 1.69 in lies nearest 1 11/16 in; 1.81 in nearest 1 13/16 in, to 1/64.
    const tee: MadeFitting = { kind: 'tee', legs: [{ size: '1-1/4', reach_m: 0.0254 * 1.6875 }, { size: '1-1/4', reach_m: 0.0254 * 1.6875 }, { size: '1', reach_m: 0.0254 * 1.8125 }], weight_kg: null, source: '' };
    expect(madeText(tee, 'feet')).toEqual({ name: 'Reducing tee', ends: '1 1/4": 1 11/16", 1 1/4": 1 11/16", 1": 1 13/16"' });
    expect(madeText({ ...tee, kind: 'street-elbow', legs: tee.legs.slice(0, 2) }, 'metric').name).toBe('90° street elbow');
  });

  test('another entry of the same sizes takes its place, one of other sizes does not', () => {
    const [first, second] = SAMPLE_PROFILE.madeFittings;
    if (!first || !second) throw new Error('the sample lists fittings');
    expect(isSameMade(first, { ...first, weight_kg: 9, source: 'other' })).toBe(true);
    expect(isSameMade(first, second)).toBe(false);
  });
});

describe('temperatures of the manual', () => {
  const keys = LIMIT_KEYS.filter((key) => LIMIT_CATALOGUE[key].kind === 'temperature');

  test('are asked for', () => {
    expect(keys).toEqual(['storageLeast_K', 'storageGreatest_K']);
  });

  // 0 °F = 255.372 K, 130 °F = 327.594 K, −20 °C = 253.15 K (NIST SP 811, appendix B).
  test.each([
    ['0', 'feet', 255.3722],
    ['130 °F', 'feet', 327.5944],
    ['-4 F', 'feet', 253.15],
    ['-20 °C', 'feet', 253.15],
    ['-20', 'metric', 253.15],
    ['130 °F', 'metric', 327.5944],
  ] as const)('%j typed in a plan in %s is %f K, and comes back as it reads', (typed, system, kelvin) => {
    const read = parseQuantity(typed, 'temperature', system);
    expect(read.ok && read.value).toBeCloseTo(kelvin, 3);
    const again = parseQuantity(formatQuantity(kelvin, 'temperature', system), 'temperature', system);
    expect(again.ok && again.value).toBeCloseTo(kelvin, 1);
  });
});
