import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { rectangle } from '#shared/geometry/outline';
import { netVolumeOf_m3 } from '#shared/calculations/design/net-volume';
import { type PlanBuilder, planBuilder } from '../../../support/plan-builder.ts';

const volume = (built: PlanBuilder): number | undefined => {
  const space = derivePlan(built.plan).spaces[0];
  return space && netVolumeOf_m3(space);
};
const room = () => planBuilder().room(5, 4, 2.5);

describe('net volume', () => {
  test('is gross without solids, unknown without a height', () => {
    expect(volume(room())).toBeCloseTo(50, 9);
    expect(volume(planBuilder().room(5, 4, null))).toBeUndefined();
  });

  test('leaves out what stands solid, as far as it is in the room', () => {
    expect(volume(room().obstruction('column', rectangle(1, 1, { x: 2, y: 2 }), 0, 2.5))).toBeCloseTo(47.5, 6);
    expect(volume(room().obstruction('beam', rectangle(1, 6, { x: 2, y: -1 }), 2, 9))).toBeCloseTo(48, 6);
  });

  test('keeps what agent passes through', () => {
    expect(volume(room().obstruction('rack', rectangle(1, 1, { x: 2, y: 2 }), 0, 2, { isPermeable: true }))).toBeCloseTo(50, 9);
  });

  test('leaves out what two solids share once', () => {
    const built = room().obstruction('column', rectangle(1, 1, { x: 2, y: 2 }), 0, 2).obstruction('column', rectangle(1, 1, { x: 2.5, y: 2 }), 1, 2.5);
    // 0–1 m: 1 m²; 1–2 m: 1.5 m²; 2–2.5 m: 1 m².
    expect(volume(built)).toBeCloseTo(50 - 1 - 1.5 - 0.5, 6);
  });

  test('takes a solid off only up to the lowest ceiling over it', () => {
    const built = room().ceilingZone(rectangle(2, 4), 2).obstruction('column', rectangle(1, 1, { x: 0.5, y: 1 }), 0, 2.5);
    expect(volume(built)).toBeCloseTo(5 * 4 * 2.5 - 2 * 4 * 0.5 - 2, 6);
  });
});
