import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import type { PlanBuilder } from '../../support/plan-builder.ts';
import { STANDING_WORDS, standingAt } from '../../../src-renderer/panels/bench/node-words.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';

const built = () =>
  planBuilder()
    .network()
    .run([place3(0, 0, 2), place3(0, 0, 2.5), place3(2, 0, 2.5), place3(4, 0, 2.5)], '1')
    .run([place3(4, 0, 2.5), place3(8, 0, 2.5), place3(8, 0, 2.2)], '3/4')
    .nozzle(8, 0, 2.2)
    .run([place3(4, 0, 2.5), place3(4, 3, 2.5)], '3/4');
const at = (drawn: PlanBuilder, x: number, y: number, z: number) => {
  const network = derivePlan(drawn.plan).networks[0];
  if (!network) throw new Error('There is no network.');
  return standingAt(network, drawn.nodeAt(x, y, z).id);
};

describe('what stands at a place', () => {
  test('an elbow with its class and size can be a street elbow and takes a dirt trap', () => {
    expect(at(built(), 0, 0, 2.5)).toMatchObject({ kind: 'turn', fittings: ['90° elbow, NPS 1, Class 300'], takesTrap: true });
    expect(at(built(), 0, 0, 2.5).parts.map(({ value }) => value)).toEqual(['none', 'street-elbow']);
  });
  test('a straight joint takes a union or coupling', () => {
    expect(at(built(), 2, 0, 2.5)).toMatchObject({ kind: 'straight', fittings: [] });
    expect(at(built(), 2, 0, 2.5).parts.map(({ value }) => value)).toEqual(['none', 'union', 'coupling']);
  });
  test('an end says why it ends; a nozzle, the source and a branch take nothing', () => {
    expect(at(built(), 4, 3, 2.5)).toMatchObject({ kind: 'end', fittings: ['Cap, NPS 3/4, Class 300'] });
    expect(at(built(), 4, 3, 2.5).parts.map(({ value }) => value)).toEqual(['none', 'cap', 'plug', 'drain', 'dirt-trap']);
    expect(at(built(), 8, 0, 2.2)).toMatchObject({ kind: 'nozzle', parts: [] });
    expect(at(built(), 0, 0, 2)).toMatchObject({ kind: 'source', parts: [] });
    expect(at(built(), 4, 0, 2.5)).toMatchObject({ kind: 'branch', parts: [], takesTrap: false });
    expect(at(built(), 4, 0, 2.5).fittings[0]).toMatch(/tee, NPS/);
  });
  test('a turn that no fitting makes says its angle', () => {
    const drawn = planBuilder().network().run([place3(0, 0, 2), place3(4, 0, 2), place3(5, 2, 2)]);
    expect(at(drawn, 4, 0, 2).fittings[0]).toContain('(63.4°)');
    expect(STANDING_WORDS.turn).toContain('Turn');
  });
});
