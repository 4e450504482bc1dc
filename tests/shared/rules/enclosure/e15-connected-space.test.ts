import { describe, expect, test } from 'vitest';
import { planPoint } from '#shared/geometry/point';
import type { Enclosure, Opening, Wall } from '#shared/model/plan';
import { e15ConnectedSpace as rule } from '#shared/rules/enclosure/e15-connected-space';
import { check, checkOne } from '../../../support/layout.ts';
import { builtRoom } from '../../../support/served-room.ts';

const grille: Partial<Opening> = { name: 'Grille', kind: 'grille', closes: false, swing: 'none' };
const beside = planPoint(6.15, 0);

describe('E15', () => {
  test('a room by itself', () => expect(checkOne(rule, builtRoom().plan)).toMatchObject({ verdict: 'ok', text: expect.stringContaining('discharged by itself'), inputs: [{ value: 'no other room' }] }));

  describe('openings', () => {
    const asked = (opening: Partial<Opening>, first = '', second = '') => check(rule, builtRoom({ dischargedWith: first }).opening(1, 2, 1, { ...grille, ...opening }).room(6, 4, 2.7, beside, { dischargedWith: second }).nozzle(9, 2, 2.5, [0], {}).plan);
    test('one that stays open to another room stops', () => expect(asked({})[0]).toMatchObject({ verdict: 'stop', name: 'Room 1', text: expect.stringContaining('“Grille” stays open to Room 2') }));
    test('one that closes, or of which it is not known, is left to the check of openings', () => {
      for (const closes of [true, null]) expect(asked({ closes }, 'A', 'A')[0]?.verdict).toBe('ok');
    });
    test('rooms that are discharged together may be joined', () => expect(asked({}, 'A', 'A')[0]).toMatchObject({ verdict: 'ok', text: 'Is discharged together with Room 2.' }));
    test('an opening to the other side is no matter of it', () => expect(check(rule, builtRoom().opening(3, 2, 1, grille).room(6, 4, 2.7, beside).plan)[0]?.verdict).toBe('ok'));
  });

  describe('networks', () => {
    const shared = (first: string, second: string) => check(rule, builtRoom({ dischargedWith: first }).room(6, 4, 2.7, beside, { dischargedWith: second }).nozzle(9, 2, 2.5).plan);
    test('two rooms on one network that are not said to be together stop, both', () => {
      expect(shared('', '')).toMatchObject([
        { verdict: 'stop', text: '“Network 1” also blows into Room 2, but the two are not said to be discharged together.' },
        { verdict: 'stop', name: 'Room 2' },
      ]);
      expect(shared('A', 'B').map(({ verdict }) => verdict)).toEqual(['stop', 'stop']);
    });
    test('said to be together they are kept', () => expect(shared('A', ' a').map(({ verdict }) => verdict)).toEqual(['ok', 'ok']));
    test('rooms with a network each are not asked to be', () => {
      const { plan } = builtRoom().room(6, 4, 2.7, beside).network().nozzle(9, 2, 2.5);
      expect(check(rule, plan).map(({ verdict }) => verdict)).toEqual(['ok', 'ok']);
    });
    test('a name that nobody shares is a warning', () => expect(checkOne(rule, builtRoom({ dischargedWith: 'Zone A' }).plan)).toMatchObject({ verdict: 'warn', text: expect.stringContaining('no other room has that name') }));
  });

  describe('the void over the ceiling', () => {
    const asked = (make: Enclosure['ceiling']['make'], reaches: Wall['reaches'], isProtected = false) => {
      const { plan } = builtRoom({ ceiling: { make, clipped_m: null }, ceilingVoid: { depth_m: 0.5, isProtected, exclusion: null } });
      const [enclosure] = Object.values(plan.levels['level-0']?.enclosures ?? {});
      for (const [i, { wall }] of (enclosure?.outline ?? []).entries()) wall.reaches = i === 0 ? reaches : 'slab';
      return checkOne(rule, plan).verdict;
    };
    test.each([
      ['tiles', 'ceiling', 'stop'],
      ['tiles', 'slab', 'ok'],
      ['open', 'slab', 'stop'],
      ['hard', 'ceiling', 'ok'],
      ['unknown', 'ceiling', 'not-checked'],
      ['unknown', 'slab', 'ok'],
    ] as const)('a ceiling of %s, a wall up to the %s', (make, reaches, verdict) => expect(asked(make, reaches)).toBe(verdict));
    test('a protected void is no unprotected space', () => expect(asked('open', 'ceiling', true)).toBe('ok'));
  });
});
