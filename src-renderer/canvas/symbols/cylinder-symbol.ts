import { type Pen, type Px, along, line, polyline, trace, setLine } from '../pen.ts';

export interface CylinderLook {
  readonly colour: string;
  readonly paper: string;
  /** Colour of the high-pressure side, for the outlet notch. */
  readonly warm: string;
  readonly radius_px: number;
  /** Direction from the cylinder to the wall behind it [rad]. */
  readonly back_rad: number;
}

/** Share of the radius at which the flat on the wall side cuts the circle. */
const FLAT = 0.82;
const HALF_FLAT_rad = Math.acos(FLAT);
const HALF_NOTCH_rad = 0.3;

/** A cylinder seen from above: a circle with a flat on the wall side and its outlet as a notch in front. */
export function drawCylinder(pen: Pen, at: Px, { colour, paper, warm, radius_px, back_rad }: CylinderLook): void {
  const front_rad = back_rad + Math.PI;
  const rim: Px[] = [];
  const start = back_rad + HALF_FLAT_rad;
  const end = front_rad - HALF_NOTCH_rad;
  for (let i = 0; i <= 14; i += 1) rim.push(along(at, start + ((end - start) * i) / 14, radius_px));
  rim.push(along(at, front_rad, radius_px * 0.6));
  const again = front_rad + HALF_NOTCH_rad;
  const last = back_rad + 2 * Math.PI - HALF_FLAT_rad;
  for (let i = 0; i <= 14; i += 1) rim.push(along(at, again + ((last - again) * i) / 14, radius_px));
  pen.beginPath();
  trace(pen, rim, true);
  pen.fillStyle = paper;
  pen.fill();
  setLine(pen, { colour, width: 2, join: 'round' });
  pen.stroke();
  setLine(pen, { colour: warm, width: 2.5, cap: 'round', join: 'round' });
  polyline(pen, [
    along(at, front_rad - HALF_NOTCH_rad, radius_px),
    along(at, front_rad, radius_px * 0.6),
    along(at, front_rad + HALF_NOTCH_rad, radius_px),
  ]);
}

/** The clamp rail behind a cylinder: a line along the wall with two short stops. */
export function drawRail(pen: Pen, at: Px, radius_px: number, back_rad: number, colour: string): void {
  const side = back_rad + Math.PI / 2;
  const foot = along(at, back_rad, radius_px * FLAT + 2);
  const reach = radius_px + 5;
  setLine(pen, { colour, width: 2 });
  line(pen, along(foot, side, reach), along(foot, side, -reach));
  for (const end of [reach, -reach]) {
    const stop = along(foot, side, end);
    line(pen, stop, along(stop, back_rad + Math.PI, 4));
  }
}

/** A cylinder seen from the side: body, shoulder and valve, with its outlet at a height. */
export function drawCylinderFromSide(
  pen: Pen,
  foot: Px,
  { colour, paper, width_px, outlet_px }: { readonly colour: string; readonly paper: string; readonly width_px: number; readonly outlet_px: number },
): void {
  const half = width_px / 2;
  const shoulder = outlet_px * 0.86;
  const neck = Math.max(2, half * 0.3);
  const body: Px[] = [
    { x: foot.x - half, y: foot.y },
    { x: foot.x - half, y: foot.y - shoulder + half * 0.6 },
    { x: foot.x - neck, y: foot.y - shoulder },
    { x: foot.x - neck, y: foot.y - outlet_px },
    { x: foot.x + neck, y: foot.y - outlet_px },
    { x: foot.x + neck, y: foot.y - shoulder },
    { x: foot.x + half, y: foot.y - shoulder + half * 0.6 },
    { x: foot.x + half, y: foot.y },
  ];
  pen.beginPath();
  trace(pen, body, true);
  pen.fillStyle = paper;
  pen.fill();
  setLine(pen, { colour, width: 2, join: 'round' });
  pen.stroke();
}
