import { describe, expect, test } from 'vitest';
import { type DrawnPiece, crowding } from '#shared/isometric/crowding';

const piece = (from: string, to: string, ax: number, ay: number, bx: number, by: number): DrawnPiece => ({ from, to, a: { x: ax, y: ay }, b: { x: bx, y: by } });

describe('how hard drawn pipes are to tell apart', () => {
  test('nothing is the matter with pipes farther apart than the gap', () => {
    expect(crowding([piece('a', 'b', 0, 0, 4, 0), piece('c', 'd', 0, 1.01, 4, 1.01)], 1)).toBe(0);
  });

  test('nearer ones cost the more the nearer they are', () => {
    const at = (y: number): number => crowding([piece('a', 'b', 0, 0, 4, 0), piece('c', 'd', 0, y, 4, y)], 1);
    expect(at(0.9)).toBeCloseTo(0.1, 9);
    expect(at(0.2)).toBeCloseTo(0.8, 9);
  });

  test('a crossing costs more than any nearness', () => {
    expect(crowding([piece('a', 'b', 0, 0, 4, 0), piece('c', 'd', 2, -1, 2, 1)], 1)).toBeGreaterThan(1);
  });

  test('pipes of one node cost nothing unless they run over each other', () => {
    expect(crowding([piece('a', 'b', 0, 0, 4, 0), piece('b', 'c', 4, 0, 6, 2)], 1)).toBe(0);
    expect(crowding([piece('a', 'b', 0, 0, 4, 0), piece('b', 'c', 4, 0, 8, 0)], 1)).toBe(0);
    expect(crowding([piece('a', 'b', 0, 0, 4, 0), piece('b', 'c', 4, 0, 1, 0)], 1)).toBeGreaterThan(1);
  });

  test('a pipe without length is told from no other', () => {
    expect(crowding([piece('a', 'b', 0, 0, 0, 0), piece('b', 'c', 0, 0, 8, 0)], 1)).toBe(0);
  });
});
