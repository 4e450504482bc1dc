import { produce } from 'immer';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import type { Opening, Plan } from '#shared/model/plan';
import { highPressureRun } from '../../../src-renderer/canvas/draw-cylinders.ts';
import { openingPlace } from '../../../src-renderer/canvas/draw-enclosures.ts';
import { toScreen } from '../../../src-renderer/canvas/viewport.ts';
import { smallPlan } from './support/small-plan.ts';

const view = { camera: { at: { x: 3, y: 2 }, scale_px_m: 100 }, width: 1000, height: 700 };

describe('where an opening sits', () => {
  const door = smallPlan().levels['level-0']?.enclosures.room?.openings.door;
  if (!door) throw new Error('there is a door');
  const placeIn = (plan: Plan, opening: Opening = door) => {
    const room = derivePlan(plan).spaces.find((space) => space.kind === 'room');
    return room && openingPlace(view, room, opening);
  };

  test('from jamb to jamb along its wall, counted from the wall’s corner, looking into the room', () => {
    const place = placeIn(smallPlan());
    expect(place?.a).toEqual(toScreen(view, { x: 4.05, y: 0 }));
    expect(place?.b).toEqual(toScreen(view, { x: 4.95, y: 0 }));
    expect(place?.inward.x).toBeCloseTo(0);
    expect(place?.inward.y).toBeCloseTo(-1);
  });

  test('counted from the same corner when the room was drawn the other way round', () => {
    const clockwise = produce(smallPlan(), (draft) => {
      draft.levels['level-0']?.enclosures.room?.outline.reverse();
    });
    // Drawn clockwise, the wall of that corner runs from it to the west corner at x = 0, y = 4.
    const place = placeIn(clockwise, { ...door, along_m: 1, width_m: 0.8 });
    expect(place?.a).toEqual(toScreen(view, { x: 0, y: 0.6 }));
    expect(place?.b).toEqual(toScreen(view, { x: 0, y: 1.4 }));
    expect(place?.inward.x).toBeCloseTo(1);
  });

  test('nowhere once its wall has gone', () => {
    expect(placeIn(smallPlan(), { ...door, wall: 'gone' })).toBeUndefined();
  });
});

describe('the high-pressure side on the plan', () => {
  const runOf = (plan: Plan) => {
    const network = derivePlan(plan).networks[0];
    if (!network) throw new Error('there is a network');
    return highPressureRun(view, network);
  };

  test('a pipe that begins above its only cylinder needs no line', () => {
    expect(runOf(smallPlan())).toEqual({ run: [], outlets: [] });
  });

  test('it passes the outlet of every cylinder, the farthest first, to where the pipe begins', () => {
    const row = produce(smallPlan(), (draft) => {
      const cylinders = draft.networks.net?.cylinders;
      if (cylinders?.c1) for (const i of [2, 3]) cylinders[`c${i}`] = { ...cylinders.c1, id: `c${i}`, name: `C${i}`, at: { x: 0.3, y: 2 - 0.4 * (i - 1) } };
    });
    const { run, outlets } = runOf(row);
    expect(outlets).toHaveLength(3);
    expect(run.map(({ y }) => Math.round(y))).toEqual([1.2, 1.6, 2, 2].map((y) => Math.round(toScreen(view, { x: 0, y }).y)));
    expect(run.at(-1)).toEqual(toScreen(view, { x: 0.3, y: 2 }));
    // Outlets face away from the wall behind.
    for (const [inner, front] of outlets) expect(front.x).toBeGreaterThan(inner.x);
  });

  test('without a pipe it ends at the last cylinder', () => {
    const bare = produce(smallPlan(), (draft) => {
      const network = draft.networks.net;
      if (network) network.source = null;
    });
    expect(runOf(bare).run).toHaveLength(1);
  });
});
