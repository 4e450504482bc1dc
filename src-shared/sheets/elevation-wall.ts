import type { Elevation, WallOpening, WallSolid } from '../elevation/elevation.ts';
import { formatLength } from '../units/length-text.ts';
import type { ElevationLayout } from './elevation-frame.ts';
import { addLabel } from './labels.ts';
import { line, pen, ring, segments } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import { heightText } from './sheet-text.ts';
import { type ViewDraft, addLine } from './view-draft.ts';

/** What opens in a wall besides doors, as the drawing names it. */
const OPENING_WORDS = { door: 'door', 'relief-vent': 'relief vent', damper: 'damper', grille: 'grille', penetration: 'pipe crossing', window: 'window' } as const;
/** Dashes of what opens away from the viewer, and of what hangs or stands in front [mm at factor 1]. */
const AWAY_mm = [1.6, 1];

/** Draws floor, ceiling, the ends of the wall and what breaks it off. */
export function drawWallShell(view: ViewDraft, elevation: Elevation, { floor_mm }: ElevationLayout): void {
  const { frame, sizes } = view;
  const { shown, ceiling, top_m, frame: wall } = elevation;
  const { factor } = sizes;
  const heavy = pen(WEIGHT.heavy * factor);
  const [left, right] = [frame.x(shown.from_m), frame.x(shown.to_m)];
  const floor = [left, floor_mm, right, floor_mm];
  addLine(view, floor, line(heavy, ...floor), 20);
  const hatch: number[] = [];
  for (let x = left + factor; x < right; x += 2.4 * factor) hatch.push(x, floor_mm, x - 1.3 * factor, floor_mm + 1.3 * factor);
  const profile = ceiling.flatMap(({ s, z }) => [frame.x(s), frame.y(z)]);
  if (profile.length >= 4) addLine(view, profile, line(heavy, ...profile), 20);
  for (const [s, out] of [
    [shown.from_m, -1],
    [shown.to_m, 1],
  ] as const) {
    const isEnd = s < 1e-6 || s > wall.length_m - 1e-6;
    const x = frame.x(s);
    const top = frame.y(ceiling.find((each) => Math.abs(each.s - s) < 1e-6)?.z ?? top_m);
    if (isEnd) {
      const end = [x, floor_mm, x, top];
      addLine(view, end, line(heavy, ...end), 20);
      for (let y = top + factor; y < floor_mm; y += 2.4 * factor) hatch.push(x, y, x + out * 1.3 * factor, y - 1.3 * factor);
      continue;
    }
    const middle = (top + floor_mm) / 2;
    const zag = [x, top, x, middle - 2 * factor, x + 1.2 * factor, middle - 0.7 * factor, x - 1.2 * factor, middle + 0.7 * factor, x, middle + 2 * factor, x, floor_mm];
    addLine(view, zag, line(pen(WEIGHT.thin * factor), ...zag), 6);
  }
  view.lines.push(segments(pen(WEIGHT.hair * factor), hatch));
}

/** Draws the openings of the wall; a door's leaf as two strokes toward its hinges, broken where it opens away from the room. */
export function drawWallOpenings(view: ViewDraft, openings: readonly WallOpening[]): void {
  const { frame, sizes, lengths } = view;
  for (const { opening, from_m, to_m, bottom_m, top_m, hinge } of openings) {
    const [left, right, top, bottom] = [frame.x(from_m), frame.x(to_m), frame.y(top_m), frame.y(bottom_m)];
    const places = [left, top, right, top, right, bottom, left, bottom];
    view.used.add(opening.kind === 'door' ? 'door' : opening.kind === 'relief-vent' ? 'relief-vent' : 'opening');
    addLine(view, places, ring(pen(WEIGHT.medium * sizes.factor), places, PRINT.paper), 5, true);
    if (hinge) {
      const [hung, free] = hinge === 'left' ? [left, right] : [right, left];
      const leaf = [free, top, hung, (top + bottom) / 2, free, bottom];
      const dash = opening.swing === 'out' ? AWAY_mm.map((mm) => mm * sizes.factor) : undefined;
      addLine(view, leaf, line(pen(WEIGHT.thin * sizes.factor, PRINT.quiet, dash), ...leaf), 3);
    }
    const name = opening.name || OPENING_WORDS[opening.kind];
    const [x, y] = [(left + right) / 2, (top + bottom) / 2];
    const words = [name, `${formatLength(opening.width_m, lengths)} × ${formatLength(opening.height_m, lengths)}`];
    addLabel(view, words.map((text) => ({ text })), { x, y, clearance_mm: 1, spots: [x, y, x, (y + bottom) / 2, x, (y + top) / 2], toward_rad: Math.PI / 2 }, name);
  }
}

/** Draws things that stand or hang at the wall: broken lines where they stand before it. */
export function drawWallSolids(view: ViewDraft, elevation: Elevation): void {
  const { frame, sizes, lengths } = view;
  for (const solid of elevation.solids) {
    const { left, right, top, bottom } = shownSolid(view, elevation, solid);
    if (right - left < 0.2 || bottom - top < 0.2) continue;
    const places = [left, top, right, top, right, bottom, left, bottom];
    const isAtWall = solid.near_m <= 0.05;
    view.used.add(solid.isOverhead ? 'overhead' : 'standing');
    const stroke = pen((isAtWall ? WEIGHT.medium : WEIGHT.thin) * sizes.factor, PRINT.solid, isAtWall ? undefined : AWAY_mm.map((mm) => mm * sizes.factor));
    addLine(view, places, ring(stroke, places, isAtWall ? PRINT.solidFill : undefined), 4, true);
    if (solid.isOverhead && isAtWall) view.lines.push(segments(pen(WEIGHT.hair * sizes.factor, PRINT.faint), [left, top, right, bottom, left, bottom, right, top]));
    const { obstruction, bottom_m, top_m } = solid.solid;
    const name = obstruction.name || obstruction.kind;
    const height = solid.isOverhead ? `underside ${heightText(bottom_m, lengths)}` : `top ${heightText(top_m, lengths)}`;
    const [x, y] = [(left + right) / 2, (top + bottom) / 2];
    addLabel(view, [name, height].map((text) => ({ text, colour: PRINT.solid })), { x, y, clearance_mm: 1, spots: [x, y], toward_rad: -Math.PI / 2 }, name);
  }
  for (const { space, near_m } of elevation.solids) {
    if (!space || near_m > 0.4) continue;
    const { s } = elevation.frame.place({ ...space.at, z: 0 });
    if (elevation.frame.seen(space.front_rad).toward < 0.7) continue;
    const [left, right] = [frame.x(Math.max(elevation.shown.from_m, s - space.width_m / 2)), frame.x(Math.min(elevation.shown.to_m, s + space.width_m / 2))];
    const places = [left, frame.y(0), left, frame.y(space.height_m), right, frame.y(space.height_m), right, frame.y(0)];
    addLine(view, places, line(pen(WEIGHT.thin * sizes.factor, PRINT.ink, [0.5 * sizes.factor, 0.8 * sizes.factor]), ...places), 3);
  }
}

function shownSolid({ frame }: ViewDraft, { shown, top_m }: Elevation, { from_m, to_m, solid }: WallSolid) {
  return {
    left: frame.x(Math.max(shown.from_m, from_m)),
    right: frame.x(Math.min(shown.to_m, to_m)),
    top: frame.y(Math.min(top_m, solid.top_m)),
    bottom: frame.y(Math.max(0, solid.bottom_m)),
  };
}
