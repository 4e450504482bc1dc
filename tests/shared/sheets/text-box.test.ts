import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { textWidth_mm } from '#shared/sheets/font-widths';
import { text } from '#shared/sheets/marks';
import { type TurnedBox, boxAround, clipPiece, clipRing, cornersOf, lengthInside_mm, markBox, shortened, textBoxOf, turnedBoxesOverlap, wrapText } from '#shared/sheets/text-box';

const size = fc.double({ min: 0.1, max: 30, noNaN: true });
const place = fc.double({ min: -50, max: 50, noNaN: true });
const turned: fc.Arbitrary<TurnedBox> = fc.record({ x: place, y: place, halfWidth: size, halfHeight: size, rotation_rad: fc.double({ min: -4, max: 4, noNaN: true }) });

/** Whether a place lies in a turned box, the plain way. */
const holds = (box: TurnedBox, x: number, y: number): boolean => {
  const [cos, sin] = [Math.cos(box.rotation_rad), Math.sin(box.rotation_rad)];
  const u = (x - box.x) * cos - (y - box.y) * sin;
  const v = -(x - box.x) * sin - (y - box.y) * cos;
  return Math.abs(u) <= box.halfWidth + 1e-9 && Math.abs(v) <= box.halfHeight + 1e-9;
};

describe('text boxes', () => {
  test.each(['left', 'middle', 'right'] as const)('a %s text stands where its baseline says', (align) => {
    const mark = text(100, 50, 'N1: 8', { height_mm: 2.5, align });
    const width = textWidth_mm('N1: 8', 2.5, 'plain');
    const box = markBox(mark);
    const left = align === 'left' ? 100 : align === 'middle' ? 100 - width / 2 : 100 - width;
    expect(box.left).toBeCloseTo(left, 9);
    expect(box.right).toBeCloseTo(left + width, 9);
    expect(box.top).toBeCloseTo(50 - 2.5 * 1.05, 9);
    expect(box.bottom).toBeCloseTo(50 + 2.5 * 0.31, 9);
  });

  test('a text turned by a right angle reads upward, its letters left of the baseline', () => {
    const box = markBox(text(100, 50, 'abc', { height_mm: 2, rotation_rad: Math.PI / 2 }));
    expect(box.bottom).toBeCloseTo(50, 9);
    expect(box.top).toBeCloseTo(50 - textWidth_mm('abc', 2, 'plain'), 9);
    expect(box.left).toBeCloseTo(100 - 2 * 1.05, 9);
    expect(box.right).toBeCloseTo(100 + 2 * 0.31, 9);
  });

  test('boxes overlap exactly when a place lies in both', () => {
    fc.assert(
      fc.property(turned, turned, fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: -1, max: 1, noNaN: true }), (a, b, s, t) => {
        const [cos, sin] = [Math.cos(a.rotation_rad), Math.sin(a.rotation_rad)];
        const [u, v] = [s * a.halfWidth * 0.999, t * a.halfHeight * 0.999];
        const [x, y] = [a.x + u * cos - v * sin, a.y - u * sin - v * cos];
        if (holds({ ...b, halfWidth: b.halfWidth * 0.999, halfHeight: b.halfHeight * 0.999 }, x, y)) expect(turnedBoxesOverlap(a, b)).toBe(true);
        expect(turnedBoxesOverlap(a, b)).toBe(turnedBoxesOverlap(b, a));
      }),
    );
    const box = { x: 0, y: 0, halfWidth: 1, halfHeight: 1, rotation_rad: 0 };
    expect(turnedBoxesOverlap(box, { ...box, x: 2 })).toBe(false);
    expect(turnedBoxesOverlap(box, { ...box, x: 1.99 })).toBe(true);
    expect(turnedBoxesOverlap(box, { ...box, x: 2.3, rotation_rad: Math.PI / 4 })).toBe(true);
    expect(turnedBoxesOverlap(box, { ...box, x: 2.3, y: 2.3, rotation_rad: Math.PI / 4 })).toBe(false);
  });

  test('corners lie on the box, and the length inside agrees with places along the piece', () => {
    fc.assert(
      fc.property(turned, place, place, place, place, (box, ax, ay, bx, by) => {
        const corners = cornersOf(box);
        for (let i = 0; i < 8; i += 2) expect(holds(box, corners[i] ?? 0, corners[i + 1] ?? 0)).toBe(true);
        const steps = 400;
        const inside = Array.from({ length: steps }, (_, i) => (i + 0.5) / steps).filter((t) => holds(box, ax + (bx - ax) * t, ay + (by - ay) * t)).length;
        expect(Math.abs(lengthInside_mm(box, ax, ay, bx, by) - (inside / steps) * Math.hypot(bx - ax, by - ay))).toBeLessThanOrEqual((Math.hypot(bx - ax, by - ay) * 2) / steps + 1e-6);
      }),
    );
  });

  test('a clipped piece lies in the box and on the piece', () => {
    const box = { left: 0, top: 0, right: 10, bottom: 10 };
    expect(clipPiece(box, -5, 5, 15, 5)).toEqual([0, 5, 10, 5]);
    expect(clipPiece(box, -5, -5, -1, 20)).toBeUndefined();
    expect(clipPiece(box, 2, 2, 3, 3)).toEqual([2, 2, 3, 3]);
    expect(clipPiece(box, -1e9, 5, 1e9, 5)?.map(Math.round)).toEqual([0, 5, 10, 5]);
  });

  test('a clipped ring keeps what lies inside', () => {
    const box = { left: 0, top: 0, right: 10, bottom: 10 };
    expect(boxAround(clipRing(box, [-5, -5, 5, -5, 5, 5, -5, 5]))).toEqual({ left: 0, top: 0, right: 5, bottom: 5 });
    expect(clipRing(box, [20, 20, 30, 20, 30, 30])).toEqual([]);
    expect(clipRing(box, [-1e7, -1e7, 1e7, -1e7, 1e7, 1e7, -1e7, 1e7])).toHaveLength(8);
  });

  test('wrapped lines fit, and together say the same', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: fc.constantFrom(...'abcWM01/"'), minLength: 1, maxLength: 30 }), { minLength: 1, maxLength: 12 }), fc.double({ min: 4, max: 60, noNaN: true }), (words, width) => {
        const lines = wrapText(words.join(' '), width, 2.5, 'plain');
        for (const line of lines) expect(textWidth_mm(line, 2.5, 'plain')).toBeLessThanOrEqual(width + 1e-6);
        expect(lines.join('').replace(/ /g, '')).toBe(words.join(''));
      }),
    );
  });

  test('a long formula is broken after a sign, not inside a number', () => {
    const lines = wrapText('2·24.7·0.87879/(1·ln(20.95·1/12))', 24, 2.5, 'plain');
    expect(lines.length).toBeGreaterThan(1);
    for (const line of lines.slice(0, -1)) expect(line).toMatch(/[·/]$/);
  });

  test('a fraction of an inch is not parted from its inches', () => {
    expect(wrapText('−2 15/16" +2 1/4"', 20, 2.5, 'plain')).toEqual(['−2 15/16"', '+2 1/4"']);
    expect(wrapText('1 1/4" pipe', 12, 2.5, 'plain')).toEqual(['1 1/4"', 'pipe']);
  });

  test('a shortened text fits and says that it was cut', () => {
    expect(shortened('short', 100, 2.5, 'plain')).toBe('short');
    const cut = shortened('a rather long sentence', 20, 2.5, 'plain');
    expect(cut).toMatch(/^a rather.*…$/);
    expect(textWidth_mm(cut, 2.5, 'plain')).toBeLessThanOrEqual(20);
    expect(textBoxOf(text(0, 0, cut, { height_mm: 2.5 })).halfWidth).toBeLessThanOrEqual(10);
  });
});
