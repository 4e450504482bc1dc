import { type Region, differenceOf, fillOf, intersectionOf } from '../derived/polygon-sums.ts';
import { clipToHalfPlane } from '../geometry/half-plane.ts';
import { LENGTH_SLACK_m } from '../geometry/tolerance.ts';
import { type Forbidden, type Site, windowOf } from './site.ts';

/**
 * N2, N3: every place over which the ceiling is lower than the orifice, higher above it than the limit, or not known. Under a
 * zone of the ceiling its height counts, the lowest where several overlap; a slope is cut where it passes the limits.
 */
export function wrongCeiling(site: Site): Forbidden {
  const { space, at, limits } = site;
  const window = windowOf(site);
  const isWrong = (ceiling_m: number): boolean => at.z > ceiling_m + LENGTH_SLACK_m || ceiling_m - at.z > limits.nozzleToCeiling_m + LENGTH_SLACK_m;
  const { enclosure, kind } = space;
  if (kind === 'under-floor') return { rule: 'N2', region: isWrong(0) ? window : [] };
  const raised_m = kind === 'ceiling-void' ? (enclosure.ceilingVoid?.depth_m ?? 0) : 0;
  const wrong: Region[] = [];
  let open = window;
  for (const { outline, height_m } of Object.values(enclosure.ceilingZones).toSorted((a, b) => a.height_m - b.height_m)) {
    const zone = fillOf([outline]);
    if (isWrong(height_m + raised_m)) wrong.push(intersectionOf(zone, open));
    open = differenceOf(open, [zone]);
  }
  const { height_m, slope } = enclosure;
  if (height_m === null) wrong.push(open);
  else if (!slope) {
    if (isWrong(height_m + raised_m)) wrong.push(open);
  } else {
    const { x, y } = { x: slope.rise * Math.cos(slope.direction_rad), y: slope.rise * Math.sin(slope.direction_rad) };
    const base_m = height_m + raised_m - x * slope.at.x - y * slope.at.y;
    // Too low where base + x·px + y·py < z; too high where it is above z + limit.
    const low = open.map((ring) => clipToHalfPlane(ring, { x, y, limit: at.z - base_m }));
    const high = open.map((ring) => clipToHalfPlane(ring, { x: -x, y: -y, limit: base_m - at.z - limits.nozzleToCeiling_m }));
    wrong.push([...low, ...high].filter((ring) => ring.length > 0));
  }
  return { rule: 'N2', region: wrong.flat() };
}
