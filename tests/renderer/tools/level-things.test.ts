import { describe, expect, test } from 'vitest';
import { dimensionLine, layerOf, leftOf_m, networksOn, openingSegment, wallsOf, wallsOn } from '../../../src-renderer/tools/level-things.ts';
import { planBuilder } from '../../support/plan-builder.ts';

const built = planBuilder().room(6, 4, 2.7).hole([{ x: 1, y: 1 }, { x: 1, y: 2 }, { x: 2, y: 2 }]).opening(1, 2, 1).network();
const level = built.plan.levels['level-0'];
const enclosure = Object.values(level?.enclosures ?? {})[0];
if (!level || !enclosure) throw new Error('The builder made a room.');

describe('things of a level', () => {
  test('walls run from corner to corner, shafts included, and know their neighbours', () => {
    const walls = wallsOf(level.id, enclosure);
    expect(walls).toHaveLength(7);
    expect(walls[3]).toMatchObject({ segment: { a: { x: 0, y: 4 }, b: { x: 0, y: 0 } }, before: built.corner(2).id, after: built.corner(0).id });
    expect(wallsOn(level)).toHaveLength(7);
  });

  test('an opening lies from jamb to jamb; in a wall that has gone it lies nowhere', () => {
    const opening = Object.values(enclosure.openings)[0];
    if (!opening) throw new Error('The builder made an opening.');
    expect(openingSegment(level.id, enclosure, opening)).toMatchObject({ a: { x: expect.closeTo(6, 12), y: expect.closeTo(1.5, 12) }, b: { y: expect.closeTo(2.5, 12) } });
    expect(openingSegment(level.id, enclosure, { ...opening, wall: 'gone' })).toBeUndefined();
  });

  test('a dimension is written to the left for a positive offset', () => {
    expect(dimensionLine({ a: { x: 0, y: 0 }, b: { x: 4, y: 0 }, offset_m: 0.5 })).toMatchObject({ a: { y: 0.5 }, b: { x: 4, y: 0.5 } });
    expect(leftOf_m({ x: 1, y: -0.7 }, { a: { x: 0, y: 0 }, b: { x: 4, y: 0 } })).toBeCloseTo(-0.7, 12);
    expect(leftOf_m({ x: 1, y: 1 }, { a: { x: 2, y: 2 }, b: { x: 2, y: 2 } })).toBe(0);
  });

  test('networks hang on their level, and every thing is on one layer', () => {
    expect(networksOn(built.plan, level.id)).toHaveLength(1);
    expect(networksOn(built.plan, 'elsewhere')).toHaveLength(0);
    expect(layerOf({ kind: 'wall' })).toBe('enclosures');
    expect(layerOf({ kind: 'cylinder' })).toBe('pipes');
  });
});
