import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { GREATEST_BENDS_rad, bendsSum_rad } from '#shared/calculations/formulas/conduit-bends';

const rad = (degrees: readonly number[]): number[] => degrees.map((each) => (each * Math.PI) / 180);

describe('bends between pull points', () => {
  // NEC 358.26 and 348.26 (memory): not more than the equivalent of four quarter bends, 360° in all.
  test.each([
    ['none', [], true],
    ['four right angles', [90, 90, 90, 90], true],
    ['four right angles and 5°', [90, 90, 90, 90, 5], false],
    ['four right angles and a twentieth of a degree', [90, 90, 90, 90, 0.05], false],
    ['five right angles', [90, 90, 90, 90, 90], false],
    ['two offsets of 30° and two right angles', [30, 30, 30, 30, 90, 90], true],
    ['a saddle of 45° and three right angles', [22.5, 45, 22.5, 90, 90, 90], true],
    ['two saddles of 45° and three right angles', [22.5, 45, 22.5, 22.5, 45, 22.5, 90, 90, 90], false],
  ])('NEC (memory): %s', (_, degrees, expected) => {
    expect(bendsSum_rad(rad(degrees)) <= GREATEST_BENDS_rad + 1e-9).toBe(expected);
  });

  test('the limit is a whole turn', () => {
    expect((GREATEST_BENDS_rad * 180) / Math.PI).toBeCloseTo(360, 12);
  });

  test('bends add up whatever their order, and one more never makes the pull easier', () => {
    const bends = fc.array(fc.double({ min: 0, max: Math.PI, noNaN: true }), { maxLength: 12 });
    fc.assert(
      fc.property(bends, fc.double({ min: 0, max: Math.PI, noNaN: true }), (stretch, more) => {
        expect(bendsSum_rad([...stretch].reverse())).toBeCloseTo(bendsSum_rad(stretch), 9);
        expect(bendsSum_rad([...stretch, more])).toBeCloseTo(bendsSum_rad(stretch) + more, 9);
      }),
    );
  });

  test('a bend the other way does not undo one', () => {
    expect(() => bendsSum_rad([1, -1])).toThrow('bend_rad');
  });
});
