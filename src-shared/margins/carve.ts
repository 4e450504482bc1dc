import { type Region, differenceOf } from '../derived/polygon-sums.ts';
import { type Box, type Outline, boundsOf } from '../geometry/outline.ts';
import { type PlanPoint, planPoint } from '../geometry/point.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';

const ringOf = ({ minX, minY, maxX, maxY }: Box, grown_m: number): Outline => [
  planPoint(minX - grown_m, minY - grown_m),
  planPoint(maxX + grown_m, minY - grown_m),
  planPoint(maxX + grown_m, maxY + grown_m),
  planPoint(minX - grown_m, maxY + grown_m),
];

function quarters({ minX, minY, maxX, maxY }: Box): Box[] {
  const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2];
  // A long box is halved, so that its parts are near to square.
  if (maxX - minX > 2 * (maxY - minY)) return [{ minX, minY, maxX: x, maxY }, { minX: x, minY, maxX, maxY }];
  if (maxY - minY > 2 * (maxX - minX)) return [{ minX, minY, maxX, maxY: y }, { minX, minY: y, maxX, maxY }];
  return [
    { minX, minY, maxX: x, maxY: y },
    { minX: x, minY, maxX, maxY: y },
    { minX, minY: y, maxX: x, maxY },
    { minX: x, minY: y, maxX, maxY },
  ];
}

/**
 * What is left of a region when every place that a question refuses is cut out of it, by asking at the corners and the middle
 * of ever smaller boxes. A box is kept only when all five answers are yes; one that is still in doubt when the questions are
 * used up is cut out, so that the answer errs to the small side.
 * @param most  questions that may be asked
 * @param fine_m  side of the smallest boxes [m]
 */
export function carve(region: Region, isKept: (at: PlanPoint) => boolean, most: number, fine_m: number): Region {
  const asked = new Map<string, boolean>();
  const ask = (at: PlanPoint): boolean => {
    const key = `${Math.round(at.x / SAME_PLACE_m)} ${Math.round(at.y / SAME_PLACE_m)}`;
    const answer = asked.get(key) ?? isKept(at);
    asked.set(key, answer);
    return answer;
  };
  const cut: Outline[] = [];
  let doubtful: Box[] = quarters(boundsOf(region.flat())).flatMap(quarters);
  while (doubtful.length > 0) {
    const next: Box[] = [];
    for (const box of doubtful) {
      if (asked.size >= most) {
        cut.push(ringOf(box, SAME_PLACE_m));
        continue;
      }
      const middle = planPoint((box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2);
      const answers = [...ringOf(box, 0), middle].map(ask);
      if (answers.every((yes) => yes)) continue;
      const isSmall = Math.max(box.maxX - box.minX, box.maxY - box.minY) <= fine_m;
      if (isSmall || answers.every((yes) => !yes)) cut.push(ringOf(box, SAME_PLACE_m));
      else next.push(...quarters(box));
    }
    doubtful = next;
  }
  return differenceOf(region, [cut]);
}
