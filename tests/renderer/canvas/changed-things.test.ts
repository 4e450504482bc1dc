import { produce } from 'immer';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import type { Plan } from '#shared/model/plan';
import { changedConsequences, changedThings, touchedBetween } from '../../../src-renderer/canvas/changed-things.ts';
import { smallPlan } from './support/small-plan.ts';

const plan = smallPlan();
const changed = (change: (draft: Plan) => void): Plan => produce(plan, (draft) => change(draft as Plan));
const moveNode = (id: string, x: number): Plan =>
  produce(plan, (draft) => {
    const node = draft.networks.net?.nodes[id];
    if (node) node.at = { ...node.at, x };
  });

describe('what is drawn differently', () => {
  test('the same plan changes nothing', () => {
    expect(changedThings(plan, plan)).toEqual([]);
    expect(changedConsequences(derivePlan(plan), derivePlan(plan))).toEqual([]);
  });

  test('a moved pipe end takes its pipes and its nozzle with it', () => {
    expect(changedThings(plan, moveNode('n3', 3.5)).sort()).toEqual(['node///net/n3', 'nozzle///net/z1', 'pipe///net/p3']);
    expect(changedThings(plan, moveNode('n1', 0.5)).sort()).toEqual(['node///net/n1', 'pipe///net/p1', 'pipe///net/p2']);
  });

  test('what was added or taken away counts', () => {
    const without = changed((draft) => {
      const network = draft.networks.net;
      if (network) network.nozzles = {};
    });
    expect(changedThings(plan, without)).toEqual(['nozzle///net/z1']);
    expect(changedThings(without, plan)).toEqual(['nozzle///net/z1']);
  });

  test('a changed obstruction is named, the enclosure around it is not', () => {
    const moved = produce(plan, (draft) => {
      const rack = draft.levels['level-0']?.obstructions.rack;
      if (rack) rack.top_m = 2;
    });
    expect(changedThings(plan, moved)).toEqual(['obstruction/level-0///rack']);
  });
});

describe('what follows from a change', () => {
  test('a nozzle that moves takes its jets and the coverage of its space with it', () => {
    expect(changedConsequences(derivePlan(plan), derivePlan(moveNode('n3', 3.5))).sort()).toEqual(['coverage/room/room', 'jets/nozzle///net/z1']);
  });

  test('a wall that moves takes the coverage of the room and of its void with it', () => {
    const moved = produce(plan, (draft) => {
      for (const corner of draft.levels['level-0']?.enclosures.room?.outline ?? []) if (corner.x === 6) corner.x = 7;
    });
    expect(changedConsequences(derivePlan(plan), derivePlan(moved))).toEqual(expect.arrayContaining(['coverage/room/room', 'coverage/room/under-floor', 'jets/nozzle///net/z1']));
  });
});

describe('what differs at all', () => {
  const touched = (after: Plan): string[][] => {
    const { networks, levels } = touchedBetween(derivePlan(plan), derivePlan(after));
    return [[...networks], [...levels]];
  };

  test('a nozzle that moves touches its network only; a rack touches its level and the network on it', () => {
    expect(touched(plan)).toEqual([[], []]);
    expect(touched(moveNode('n3', 3.5))).toEqual([['net'], []]);
    const raised = produce(plan, (draft) => {
      const rack = draft.levels['level-0']?.obstructions.rack;
      if (rack) rack.top_m = 2;
    });
    expect(touched(raised)).toEqual([['net'], ['level-0']]);
  });
});
