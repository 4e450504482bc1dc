import { describe, expect, test } from 'vitest';
import { scaleProof } from '../../../src-renderer/panels/bench/scale-proof.ts';

const first = { a: { x: 0, y: 0 }, b: { x: 300, y: 0 }, distance_m: 3 };
const second = { a: { x: 0, y: 0 }, b: { x: 0, y: 500 }, distance_m: 4 };

describe('scaleProof', () => {
  test('a typed distance sets the scale, and only the others check it', () => {
    const { setting, checks } = scaleProof({ calibration: 'two-points', knownLengths: [first, second], metresPerUnit: 0.01 });
    expect(setting).toBe(first);
    expect(checks).toEqual([{ known: second, drawn_m: 5, off: 0.25 }]);
  });

  test('where the file says its units, the first distance checks them already', () => {
    const { setting, checks } = scaleProof({ calibration: 'file-units', knownLengths: [first], metresPerUnit: 0.01 });
    expect(setting).toBeUndefined();
    expect(checks).toEqual([{ known: first, drawn_m: 3, off: 0 }]);
  });
});
