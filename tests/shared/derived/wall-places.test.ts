import { describe, expect, test } from 'vitest';
import { openingMiddle, wallMiddle } from '#shared/derived/wall-places';
import { rectangle } from '#shared/geometry/outline';
import { unknownWall } from '#shared/model/plan';

const ring = (name: string, ...places: readonly { x: number; y: number }[]) => places.map(({ x, y }, i) => ({ id: `${name}${i}`, x, y, wall: unknownWall() }));
const room = { outline: ring('c', ...rectangle(6, 4)), holes: [ring('h', ...rectangle(1, 1, { x: 2, y: 2 }))] };

describe('places on walls', () => {
  test('the middle of a wall, the last one closing its ring, those of a hole too', () => {
    expect(wallMiddle(room, 'c0')).toEqual({ x: 3, y: 0 });
    expect(wallMiddle(room, 'c3')).toEqual({ x: 0, y: 2 });
    expect(wallMiddle(room, 'h1')).toEqual({ x: 3, y: 2.5 });
  });
  test('an opening counts from the corner that its wall starts at', () => {
    expect(openingMiddle(room, { wall: 'c0', along_m: 1 })).toEqual({ x: 1, y: 0 });
    expect(openingMiddle(room, { wall: 'c2', along_m: 1 })).toEqual({ x: 5, y: 4 });
  });
  test('a wall that has gone has no places', () => {
    expect(wallMiddle(room, 'gone')).toBeUndefined();
    expect(openingMiddle(room, { wall: 'gone', along_m: 1 })).toBeUndefined();
  });
});
