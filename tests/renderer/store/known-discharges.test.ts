import { describe, expect, test } from 'vitest';
import { keyOf, makeKnownDischarges } from '../../../src-renderer/store/known-discharges.ts';
import { sampleInput, sampleResult } from './support/discharge-samples.ts';

describe('known discharges', () => {
  test('equal inputs are one, whatever objects they are', () => {
    expect(keyOf(sampleInput())).toBe(keyOf(sampleInput()));
    expect(keyOf(sampleInput({ cylinders: 2 }))).not.toBe(keyOf(sampleInput()));
  });

  test('nothing is known at first; then the same answer is given every time', () => {
    const known = makeKnownDischarges();
    expect(known.source('network-1', sampleInput())).toBeUndefined();
    known.learn(sampleInput(), sampleResult(0.3));
    const answer = known.source('network-1', sampleInput());
    expect(answer).toMatchObject({ isStale: false, result: { peakFlow_kg_s: 0.3 } });
    expect(known.source('network-1', sampleInput())).toBe(answer);
  });

  test('while a new one is not known the last of the network stands and says that it is the last', () => {
    const known = makeKnownDischarges();
    known.learn(sampleInput(), sampleResult(0.3));
    known.source('network-1', sampleInput());
    const changed = sampleInput({ fillPressure_Pa: 20e6 });
    expect(known.source('network-1', changed)).toMatchObject({ isStale: true, result: { peakFlow_kg_s: 0.3 } });
    expect(known.source('network-2', changed)).toBeUndefined();
    known.learn(changed, sampleResult(0.2));
    expect(known.source('network-1', changed)).toMatchObject({ isStale: false, result: { peakFlow_kg_s: 0.2 } });
  });

  test('a result of another shape never stands in: its nozzles and spaces would be somebody else’s', () => {
    const known = makeKnownDischarges();
    known.learn(sampleInput(), sampleResult(0.3));
    known.source('network-1', sampleInput());
    const [nozzle] = sampleInput().nozzles;
    for (const other of [
      sampleInput({ nodeCount: 3 }),
      sampleInput({ nozzles: nozzle ? [nozzle, { ...nozzle, id: 'nozzle-2' }] : [] }),
      sampleInput({ spaces: [{ id: 'enclosure-2/room', volume_m3: 40, enclosure: 0, designConcentration_pct: 40.3 }] }),
    ]) {
      expect(known.source('network-1', other)).toBeUndefined();
    }
  });

  test('why there is none is told, and never stands in for another', () => {
    const known = makeKnownDischarges();
    known.learn(sampleInput(), 'out of range');
    expect(known.source('network-1', sampleInput())).toBe('out of range');
    expect(known.source('network-1', sampleInput({ cylinders: 2 }))).toBeUndefined();
  });

  test('the source becomes another when it is renewed, and only then', () => {
    const known = makeKnownDischarges();
    const before = known.source;
    known.learn(sampleInput(), sampleResult(0.3));
    expect(known.source).toBe(before);
    known.renew();
    expect(known.source).not.toBe(before);
  });

  test('old results are let go, what is needed is kept however old', () => {
    const known = makeKnownDischarges();
    const needed = sampleInput();
    known.learn(needed, sampleResult(0.3));
    for (let i = 1; i <= 500; i += 1) known.learn(sampleInput({ until_s: i }), sampleResult(i));
    known.trim([needed]);
    expect(known.size).toBeLessThan(60);
    expect(known.has(sampleInput())).toBe(true);
    expect(known.has(sampleInput({ until_s: 500 }))).toBe(true);
    expect(known.has(sampleInput({ until_s: 1 }))).toBe(false);
  });
});
