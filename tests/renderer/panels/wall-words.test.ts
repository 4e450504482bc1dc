import { describe, expect, test } from 'vitest';
import type { Enclosure } from '#shared/model/plan';
import { wallSide } from '../../../src-renderer/panels/bench/wall-words.ts';
import { planBuilder } from '../../support/plan-builder.ts';

const enclosureOf = (built: ReturnType<typeof planBuilder>): Enclosure => {
  const found = Object.values(built.plan.levels['level-0']?.enclosures ?? {})[0];
  if (!found) throw new Error('The plan has no room.');
  return found;
};
const sides = (enclosure: Enclosure) => enclosure.outline.map(({ id }) => wallSide(enclosure, id));

describe('the side of the room on which a wall stands', () => {
  test('is told by the compass, whichever way the outline runs', () => {
    const room = enclosureOf(planBuilder().room(6, 4, 2.7));
    expect(sides(room)).toEqual(['south', 'east', 'north', 'west']);
    expect(sides({ ...room, outline: [...room.outline].reverse() })).toEqual(['north', 'east', 'south', 'west']);
  });

  test('lies between two points of the compass for a wall across', () => {
    expect(sides(enclosureOf(planBuilder().outline([{ x: 0, y: 0 }, { x: 4, y: 0 }, { x: 0, y: 4 }], 2.7)))).toEqual(['south', 'north-east', 'west']);
  });

  test('is not told of a wall that is no outer one', () => {
    expect(wallSide(enclosureOf(planBuilder().room(6, 4, 2.7)), 'elsewhere')).toBeUndefined();
  });
});
