import { describe, expect, test } from 'vitest';
import { fannoTopic } from '#shared/calculations/fanno';
import { numberOf, runTopic } from '../../support/run-topic.ts';

describe('Fanno', () => {
  test('computed independently: f·L/D 13.4642 from Mach 0.2', () => {
    const result = runTopic(fannoTopic, { machIn: 0.2, frictionLength: 13.4642 });
    expect(result.machOut).toBeCloseTo(0.5, 5);
    expect(result.pressureRatio).toBeCloseTo(0.391918, 5);
    expect(result.temperatureRatio).toBeCloseTo(1.1429 / 1.1905, 4);
    expect(result.stagnationRatio).toBeCloseTo(1.3398 / 2.9635, 4);
    expect(result.chokeLength).toBeCloseTo(14.5333, 4);
    expect(result.choked).toBe(false);
  });

  test.each([
    ['subsonic', 0.2, 20],
    ['supersonic', 2, 0.4],
    ['just long enough', 1, 0],
  ])('a pipe longer than it can be chokes: %s', (_, machIn, frictionLength) => {
    const result = runTopic(fannoTopic, { machIn, frictionLength });
    expect([result.machOut, result.choked]).toEqual([1, true]);
  });

  test('gas-dynamics tables: the choked pressure ratio is 1/5.4554 from Mach 0.2', () => {
    expect(1 / numberOf(runTopic(fannoTopic, { machIn: 0.2, frictionLength: 15 }), 'pressureRatio')).toBeCloseTo(5.4554, 4);
  });

  test('a pipe of no length changes nothing', () => {
    expect(runTopic(fannoTopic, { machIn: 0.3, frictionLength: 0 })).toMatchObject({ machOut: 0.3, pressureRatio: 1, temperatureRatio: 1, choked: false });
  });

  test.each([
    [{ machIn: 0, frictionLength: 1 }, 'machIn'],
    [{ machIn: 0.2, frictionLength: -1 }, 'frictionLength'],
    [{ machIn: 0.2, frictionLength: 1, gamma: 1 }, 'gamma'],
  ])('%j is refused by name', (json, name) => {
    expect(() => runTopic(fannoTopic, json)).toThrow(name);
  });
});
