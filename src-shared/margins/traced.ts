import { type Region, differenceOf, fillOf } from '../derived/polygon-sums.ts';
import { type Box, type Outline, boundsOf, distanceToOutline_m, isInside } from '../geometry/outline.ts';
import { type PlanPoint, planPoint } from '../geometry/point.ts';
import { ringAroundSegment } from '../geometry/round-rings.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import { borderLine } from './border-line.ts';

/** What is cut away reaches so far past the border that was found, so that nothing between two places of it is let through [m]. */
const MARGIN_m = 5e-4;
/** Boxes in which the border makes no line are quartered down to this side, and then cut away as a whole [m]. */
const LEAST_m = 0.002;

export interface TraceOptions {
  /** Side of the boxes that are looked through: what breaks only within less than that may be passed over [m]. */
  readonly box_m: number;
  /** Which boxes have to be looked through so finely; all of them otherwise. */
  readonly isDetail?: (middle: PlanPoint, half_m: number) => boolean;
  /** How much larger the boxes are that are looked at first, a power of 2. */
  readonly coarse?: number;
  /** Questions that may be asked; boxes in doubt after that are cut away. */
  readonly most?: number;
}

const cornersOf = ({ minX, minY, maxX, maxY }: Box): [PlanPoint, PlanPoint, PlanPoint, PlanPoint] => [planPoint(minX, minY), planPoint(maxX, minY), planPoint(maxX, maxY), planPoint(minX, maxY)];

function quarters({ minX, minY, maxX, maxY }: Box): Box[] {
  const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2];
  return [
    { minX, minY, maxX: x, maxY: y },
    { minX: x, minY, maxX, maxY: y },
    { minX, minY: y, maxX: x, maxY },
    { minX: x, minY: y, maxX, maxY },
  ];
}

const grown = ({ minX, minY, maxX, maxY }: Box): Outline => cornersOf({ minX: minX - SAME_PLACE_m, minY: minY - SAME_PLACE_m, maxX: maxX + SAME_PLACE_m, maxY: maxY + SAME_PLACE_m });

/**
 * The part of a region in which a question is answered with yes, found by asking: at the corners of boxes, then along the border
 * wherever the corners of a box disagree, by halving, until the line through the places found lies within a millimetre of the
 * border. It errs to the small side by about that much.
 */
export function tracedWithin(region: Region, isKept: (at: PlanPoint) => boolean, { box_m, isDetail = () => true, coarse = 1, most = Infinity }: TraceOptions): Region {
  if (region.length === 0) return [];
  const isIn = (p: PlanPoint): boolean => region.filter((ring) => isInside(p, ring)).length % 2 === 1;
  const asked = new Map<string, boolean>();
  const ask = (p: PlanPoint): boolean => {
    const key = `${Math.round(p.x * 1e7)} ${Math.round(p.y * 1e7)}`;
    let answer = asked.get(key);
    if (answer === undefined) {
      answer = isKept(p);
      asked.set(key, answer);
    }
    return answer;
  };
  const cut: Outline[] = [];
  const { minX, minY, maxX, maxY } = boundsOf(region.flat());
  const first_m = box_m * coarse;
  const boxes: Box[] = [];
  // A little past the region, so that no border of it lies on a border of boxes.
  for (let x = minX - box_m * 0.37; x < maxX; x += first_m) for (let y = minY - box_m * 0.41; y < maxY; y += first_m) boxes.push({ minX: x, minY: y, maxX: x + first_m, maxY: y + first_m });
  const touches = (middle: PlanPoint, half_m: number): boolean => isIn(middle) || region.some((ring) => distanceToOutline_m(middle, ring) <= half_m);
  for (let box = boxes.pop(); box; box = boxes.pop()) {
    const side_m = box.maxX - box.minX;
    const middle = planPoint((box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2);
    const half_m = side_m * Math.SQRT1_2;
    if (!touches(middle, half_m)) continue;
    if (side_m > box_m * 1.5 && isDetail(middle, half_m)) {
      boxes.push(...quarters(box));
      continue;
    }
    if (asked.size >= most) {
      cut.push(grown(box));
      continue;
    }
    const corners = cornersOf(box);
    const answers = corners.map(ask);
    const kept = answers.filter((yes) => yes).length;
    if (kept === 4) continue;
    if (kept === 0) {
      cut.push(grown(box));
      continue;
    }
    const line = borderLine(corners, answers, ask);
    if (line) cut.push(line.broken, ...line.border.slice(1).map((b, i) => ringAroundSegment({ a: line.border[i] ?? b, b }, MARGIN_m)));
    else if (side_m > LEAST_m) boxes.push(...quarters(box));
    else cut.push(grown(box));
  }
  return cut.length === 0 ? region : differenceOf(region, [fillOf(cut)]);
}
