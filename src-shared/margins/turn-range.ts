import { legalArcs } from '../derived/legal-arc.ts';
import { placedFootprint } from '../derived/footprint.ts';
import type { Arc } from '../derived/turn-intervals.ts';
import { normalAngle_rad } from '../geometry/angle.ts';
import { isInsideOrOn } from '../geometry/inside.ts';
import { lastKept } from './last-kept.ts';
import { ownFloorOf } from './lost-floor.ts';
import type { Site } from './site.ts';
import { turnedClear } from './turned-clear.ts';

const TURN = 2 * Math.PI;
/** Turns are tried in strides of half a degree, a tenth where a thin thing could stand in a jet, and ends found to a thousandth of one [rad]. */
const STRIDE_rad = Math.PI / 360;
const THIN_rad = Math.PI / 1800;
const FINE_rad = Math.PI / 180_000;

/**
 * How far a nozzle may be turned each way from how it is drawn, at its place: its holes stay off corners, along near walls and
 * free (N5, N6, N7), where its coverage turns with it all floor that only it covers stays covered (N9), and it comes to blow at no
 * person, loose thing, beam, nozzle, air intake or relief vent at which it does not blow as drawn (N8, N14, N12, N15, E11).
 * @returns directions of its first hole [rad], `to_rad` less than a turn after `from_rad` or a whole one; null where it is stopped as drawn
 */
export function turnRangeOf(site: Site): Arc | null {
  const { nozzle, at } = site;
  const { rotation_rad, holes_rad } = nozzle.nozzle;
  const arc = legalArcs(nozzle).find(({ from_rad, to_rad }) => normalAngle_rad(rotation_rad - from_rad) <= to_rad - from_rad);
  if (!arc) return null;
  const isWhole = arc.to_rad - arc.from_rad >= TURN - 1e-6;
  const back_rad = isWhole ? TURN : normalAngle_rad(rotation_rad - arc.from_rad);
  const onward_rad = isWhole ? TURN : arc.to_rad - arc.from_rad - back_rad;
  const shape = nozzle.profile?.footprint;
  const first_rad = rotation_rad + (holes_rad[0] ?? 0);
  const range = (back: number, onward: number): Arc => (back + onward >= TURN ? { from_rad: 0, to_rad: TURN } : { from_rad: first_rad - back, to_rad: first_rad + onward });
  const corners = shape?.shape === 'rectangle' ? ownFloorOf(site).flat() : [];
  const isClear = turnedClear(site);
  if ((!shape || corners.length === 0) && !isClear) return range(back_rad, onward_rad);
  const isKept = (turned_rad: number): boolean => {
    if (isClear && !isClear(turned_rad)) return false;
    if (!shape || corners.length === 0) return true;
    const { ring } = placedFootprint(shape, at, rotation_rad + turned_rad);
    return corners.every((corner) => isInsideOrOn(corner, ring));
  };
  const kept = (sign: 1 | -1, most_rad: number): number | undefined => (most_rad <= 0 ? 0 : lastKept((by_rad) => isKept(sign * by_rad), most_rad, FINE_rad, isClear ? THIN_rad : STRIDE_rad));
  const [back, onward] = [kept(-1, back_rad), kept(1, onward_rad)];
  return back === undefined || onward === undefined ? null : range(back, onward);
}
