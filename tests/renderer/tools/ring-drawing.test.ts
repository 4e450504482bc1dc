import fc from 'fast-check';
import { expect, test } from 'vitest';
import { area_m2, findSelfCrossing } from '#shared/geometry/outline';
import { NO_RING, stepRing } from '../../../src-renderer/tools/ring-drawing.ts';
import type { ToolEvent } from '../../../src-renderer/tools/tool.ts';

const down = (x: number, y: number): ToolEvent => ({ kind: 'down', point: { x, y }, raw: { x, y }, reach_m: 0.1, shift: false, alt: false });

test('whatever is clicked, a ring that closes is simple and has an area', () => {
  const place = fc.tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 }));
  fc.assert(
    fc.property(fc.array(place, { minLength: 3, maxLength: 14 }), (places) => {
      let ring = NO_RING;
      for (const [x, y] of places) {
        const next = stepRing(ring, down(x, y), 'A ring');
        ring = next.ring;
        if (next.closed) {
          expect(findSelfCrossing(next.closed)).toBeUndefined();
          expect(area_m2(next.closed)).toBeGreaterThan(0);
          return;
        }
      }
      const { closed, refusal } = stepRing(ring, { kind: 'enter' }, 'A ring');
      if (closed) {
        expect(findSelfCrossing(closed)).toBeUndefined();
        expect(area_m2(closed)).toBeGreaterThan(0);
      } else expect(refusal).toMatch(/\.$/);
    }),
    { numRuns: 2000 },
  );
});

test('a click near the first corner closes, even where the locked side ends elsewhere', () => {
  let { ring } = stepRing(NO_RING, down(0, 0), 'A ring');
  for (const [x, y] of [[4, 0], [4, 4]] as const) ring = stepRing(ring, down(x, y), 'A ring').ring;
  const { closed } = stepRing(ring, { ...down(0.05, 0.05), kind: 'down', point: { x: 4, y: 0.05 }, raw: { x: 0.05, y: 0.05 }, reach_m: 0.1, shift: false, alt: false }, 'A ring');
  expect(closed).toHaveLength(3);
});
