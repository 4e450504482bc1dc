import { expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { segmentToPrism_m } from '#shared/geometry/prism';
import { place3 as p } from '../../support/plan-builder.ts';

const slab = { footprint: rectangle(6, 4), bottom_m: 2.7, top_m: 2.9 };
const beam = { footprint: rectangle(0.3, 4, planPoint(3, 0)), bottom_m: 2.3, top_m: 2.7 };

test.each([
  ['a riser through a slab', slab, p(1, 1, 0), p(1, 1, 5), 0],
  ['a riser that ends below a slab', slab, p(1, 1, 0), p(1, 1, 2.5), 0.2],
  ['a riser that ends on a slab', slab, p(1, 1, 0), p(1, 1, 2.7), 0],
  ['a run wholly inside a beam', beam, p(3.1, 1, 2.5), p(3.2, 3, 2.5), 0],
  ['a run through a beam', beam, p(1, 2, 2.5), p(5, 2, 2.5), 0],
  ['a run over a beam', beam, p(1, 2, 2.8), p(5, 2, 2.8), 0.1],
  ['a run under a beam', beam, p(1, 2, 2.1), p(5, 2, 2.1), 0.2],
  ['a slope that touches the edge of a beam', beam, p(2, 2, 1.3), p(4, 2, 3.3), 0],
  ['a slope that ends on the upper edge of a beam', beam, p(2, 2, 3.7), p(3, 2, 2.7), 0],
])('%s', (_, prism, a, b, distance_m) => {
  expect(segmentToPrism_m({ a, b }, prism)).toBeCloseTo(distance_m, 12);
  expect(segmentToPrism_m({ a: b, b: a }, prism)).toBeCloseTo(distance_m, 12);
});
