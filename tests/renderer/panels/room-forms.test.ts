import { describe, expect, test } from 'vitest';
import { wholeAnchors } from '../../../src-renderer/panels/bench/anchors-slip.tsx';
import { commonOf } from '../../../src-renderer/panels/bench/several-devices.tsx';
import { lackingReadings } from '../../../src-renderer/panels/bench/door-fan-readings.tsx';

test('things that are all alike have one value, others none', () => {
  expect(commonOf([1.2, 1.2])).toBe(1.2);
  expect(commonOf([null, null])).toBeNull();
  expect(commonOf([1.2, null])).toBeUndefined();
});

describe('anchors', () => {
  const whole = { kind: 'M10 sleeve', count: 4, tension_N: 3000, shear_N: 4000, edge_m: 0.2, leastEdge_m: 0.1 };

  test('count once every figure is there', () => {
    expect(wholeAnchors(whole)).toEqual(whole);
    for (const key of Object.keys(whole)) expect(wholeAnchors({ ...whole, [key]: null }), key).toBeNull();
    expect(wholeAnchors({ ...whole, kind: '' })).toBeNull();
    expect(wholeAnchors({ ...whole, edge_m: 0 })).toEqual({ ...whole, edge_m: 0 });
  });
});

describe('door-fan readings', () => {
  const reading = (direction: 'in' | 'out', pressure_Pa: number) => ({ direction, pressure_Pa, flow_m3_s: 0.1 });

  test('lack what one pressure or one way cannot tell', () => {
    expect(lackingReadings([])).toMatch(/both ways/);
    expect(lackingReadings([reading('out', 10), reading('in', 10)])).toMatch(/both ways/);
    expect(lackingReadings([reading('out', 10), reading('out', 50), reading('in', 10)])).toMatch(/blowing in/);
    expect(lackingReadings([reading('out', 10), reading('out', 50), reading('in', 10), reading('in', 50)])).toBeNull();
  });
});
