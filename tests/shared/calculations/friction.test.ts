import { describe, expect, test } from 'vitest';
import { frictionTopic } from '#shared/calculations/friction';
import { runTopic } from '../../support/run-topic.ts';

describe('friction', () => {
  test('open library fluids, its printed examples: Re 1e5, ε/D 1e-4', () => {
    const result = runTopic(frictionTopic, { reynolds: 1e5, relativeRoughness: 1e-4 });
    expect(result.colebrook).toBeCloseTo(0.018513866, 9);
    expect(result.haaland).toBeCloseTo(0.018265053, 9);
    expect(result.churchill).toBeCloseTo(0.018462625, 9);
    expect(result.regime).toBe('turbulent');
  });

  test('laminar: 64/Re, and nothing by Haaland', () => {
    const result = runTopic(frictionTopic, { reynolds: 500, relativeRoughness: 0.001 });
    expect(result.colebrook).toBeCloseTo(0.128, 12);
    expect(result.churchill).toBeCloseTo(0.128, 5);
    expect([result.haaland, result.regime]).toEqual([null, 'laminar']);
  });

  test('the transition is flagged', () => {
    expect(runTopic(frictionTopic, { reynolds: 3000, relativeRoughness: 0.001 }).regime).toBe('transition');
  });

  test.each([
    [{ reynolds: 0, relativeRoughness: 0 }, 'reynolds'],
    [{ reynolds: 1e5, relativeRoughness: 0.2 }, 'relativeRoughness'],
    [{ reynolds: 1e5 }, 'relativeRoughness is missing'],
  ])('%j is refused by name', (json, name) => {
    expect(() => runTopic(frictionTopic, json)).toThrow(name);
  });
});
