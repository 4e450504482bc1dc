import { addSupport } from '#shared/commands/add-support';
import { type PlanPoint, type PlanPoint3, bearing_rad, distance_m, midpoint } from '#shared/geometry/point';
import { placingTool } from './placing.ts';
import { placeOnPipe, supportPlaceAt } from './support-place.ts';
import type { ToolView } from './tool.ts';
import { lengthText, placeToward } from './typed-place.ts';

/** Where the next support would stand, and the ends of its pipe, the nearer one first. */
interface SupportSpot {
  readonly network: string;
  readonly at: PlanPoint3;
  readonly end: PlanPoint3;
  readonly far: PlanPoint3;
}

/** A pipe is pointed at within so many reaches: a support has nowhere else to go. */
const REACHES = 3;
/** Half the stroke of the sketch, in shares of a reach. */
const HALF_STROKE = 1.4;

function spotAt({ plan, session }: ToolView, at: PlanPoint, reach_m: number): SupportSpot | null {
  const hit = supportPlaceAt(plan, session.level, at, reach_m * REACHES);
  const pipe = hit?.network.pipes[hit.id];
  const [a, b] = [hit?.network.nodes[pipe?.from ?? '']?.at, hit?.network.nodes[pipe?.to ?? '']?.at];
  if (!hit || !a || !b) return null;
  const isNearA = distance_m(hit.at, a) <= distance_m(hit.at, b);
  return { network: hit.network.id, at: hit.at, end: isNearA ? a : b, far: isNearA ? b : a };
}

/** Puts rigid supports on pipe that runs over the plan; those of risers and drops are set in the section strip and by the table. */
export const supportTool = placingTool<SupportSpot>({
  id: 'support',
  hint: (spot) => (spot ? 'Click to put a rigid support here, or type its distance from the nearer end of the pipe.' : 'Point at the pipe that the support holds.'),
  sketch(spot, view) {
    if (!spot) return {};
    const half_m = (HALF_STROKE * 8) / view.session.camera.scale_px_m;
    const across_rad = bearing_rad(spot.end, spot.far) + Math.PI / 2;
    const stroke = [placeToward(spot.at, across_rad, half_m), placeToward(spot.at, across_rad, -half_m)];
    return {
      lines: [{ places: stroke }, { places: [spot.end, spot.at], dashed: true }],
      labels: [{ at: midpoint(spot.end, spot.at), text: lengthText(view, distance_m(spot.end, spot.at)) }],
      asks: ['length'],
    };
  },
  spotAt: (view, { raw, reach_m }) => spotAt(view, raw, reach_m),
  nowhere: 'No pipe runs here. A support stands on a pipe.',
  typedSpot(view, spot, { length_m }) {
    if (!spot || length_m === null) return 'Point at a pipe, then type the distance from its nearer end.';
    const run_m = distance_m(spot.end, spot.far);
    if (length_m <= 0 || length_m >= run_m) return `This pipe is ${lengthText(view, run_m)} long.`;
    return { ...spot, at: placeOnPipe(spot.end, spot.far, placeToward(spot.end, bearing_rad(spot.end, spot.far), length_m)) };
  },
  put: (_, { network, at }) => addSupport(network, at, 'rigid'),
});
