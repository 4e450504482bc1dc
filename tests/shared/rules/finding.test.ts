import { describe, expect, test } from 'vitest';
import { evaluate } from '#shared/evaluate';
import { findingKey } from '#shared/rules/finding';
import { at3, layout } from '../../support/layout.ts';

describe('the key of a finding', () => {
  const plan = layout({ underFloor: { depth_m: 0.3, isProtected: true, exclusion: null }, nozzles: [{ at: at3(2, 2, 2.4) }] });
  const { findings } = evaluate(plan);

  test('tells the room from the void of one enclosure', () => {
    const gaps = findings.filter(({ rule }) => rule === 'N9');
    expect(gaps).toHaveLength(2);
    expect(new Set(gaps.map(findingKey)).size).toBe(2);
  });

  test('is had by one finding only, and stays while figures change', () => {
    const keys = findings.map(findingKey);
    expect(new Set(keys).size).toBe(keys.length);
    const moved = structuredClone(plan);
    for (const network of Object.values(moved.networks)) for (const node of Object.values(network.nodes)) node.at.x += 0.05;
    expect(new Set(evaluate(moved).findings.map(findingKey))).toEqual(new Set(keys));
  });
});
