import { describe, expect, test } from 'vitest';
import { LIMIT_CATALOGUE, LIMIT_KEYS, type LimitKind } from '#shared/profile/limit-catalogue';
import { SAMPLE_PROFILE } from '#shared/profile/sample-profile';
import { blankProfile, unitProfileSchema } from '#shared/profile/unit-profile';

const SUFFIX: Readonly<Record<LimitKind, RegExp>> = {
  length: /_m$/, volume: /_m3$/, mass: /_kg$/, pressure: /_Pa$/, angle: /_rad$/, area: /_m2$/, count: /[a-z]$/, massFlow: /_kg_s$/, voltage: /_V$/, current: /_A$/, time: /_s$/, temperature: /_K$/, sound: /_dB$/, factor: /[a-z]$/,
};

test('the key of every figure carries the SI unit of its kind', () => {
  for (const key of LIMIT_KEYS) expect(key).toMatch(SUFFIX[LIMIT_CATALOGUE[key].kind]);
});

describe('profile', () => {
  test('a blank one has no figure at all, and fits', () => {
    const blank = blankProfile('own', 'Our unit');
    expect(Object.keys(blank.limits)).toEqual([]);
    expect(blank).toMatchObject({ isSample: false, footprint: null, schedule: null });
    expect(unitProfileSchema.safeParse(blank).success).toBe(true);
  });

  test('the sample fits, fills every figure, and says of each that it is invented or common practice', () => {
    expect(unitProfileSchema.safeParse(SAMPLE_PROFILE).success).toBe(true);
    expect(SAMPLE_PROFILE.isSample).toBe(true);
    expect(Object.keys(SAMPLE_PROFILE.limits).sort()).toEqual([...LIMIT_KEYS].sort());
    for (const limit of Object.values(SAMPLE_PROFILE.limits)) expect(limit?.source).toMatch(/invented|common practice/);
  });

  test.each<[string, unknown]>([
    ['a figure below 0', { limits: { pathLength_m: { value: -1, source: '' } } }],
    ['a figure that is not finite', { limits: { pathLength_m: { value: Number.POSITIVE_INFINITY, source: '' } } }],
    ['a figure without its source', { limits: { pathLength_m: { value: 1 } } }],
    ['a figure that no manual has', { limits: { colour: { value: 1, source: '' } } }],
    ['a figure that no manual gives', { limits: { pathLength_m: { value: 1e300, source: '' } } }],
    ['a footprint larger than any building', { footprint: { shape: 'circle', radius_m: 1e300, source: '' } }],
    ['a footprint without size', { footprint: { shape: 'circle', radius_m: 0, source: '' } }],
    ['a pipe size that the trade has not', { pipeSizes: ['7/8'] }],
    ['a part that no profile has', { colour: 'red' }],
  ])('%s does not fit', (_, change) => {
    expect(unitProfileSchema.safeParse({ ...blankProfile('own', 'Our unit'), ...(change as object) }).success).toBe(false);
  });
});
