import type { AssemblyPart } from '#shared/model/plan';
import { type Pen, type Px, along, line, polyline, trace, setLine } from '../pen.ts';

/** Length of a part's symbol along the line it sits in [px]. */
export const ASSEMBLY_SYMBOL_px = 18;

interface PartLook {
  readonly warm: string;
  readonly paper: string;
}

/** Draws a part of the discharge assembly across its line; a reversed one shows its arrow against the flow. */
export function drawAssemblyPart(
  pen: Pen,
  at: Px,
  /** Away from the cylinder along the line, as a plan direction [rad]. */
  downstream_rad: number,
  part: Pick<AssemblyPart, 'kind' | 'arrowDownstream'>,
  look: PartLook,
): void {
  const flow_rad = part.arrowDownstream ? downstream_rad : downstream_rad + Math.PI;
  if (part.kind === 'regulator') drawRegulator(pen, at, flow_rad, look);
  else if (part.kind === 'check-valve') drawCheckValve(pen, at, flow_rad, look);
  else if (part.kind === 'hose') drawHose(pen, at, downstream_rad, look);
  else if (part.kind === 'stop-valve') drawStopValve(pen, at, downstream_rad, look);
  else if (part.kind === 'relief-valve') drawReliefValve(pen, at, flow_rad, look);
  else drawAdapter(pen, at, downstream_rad, look);
}

function arrow(pen: Pen, tail: Px, flow_rad: number, length_px: number): void {
  const tip = along(tail, flow_rad, length_px);
  line(pen, tail, tip);
  polyline(pen, [along(tip, flow_rad + 2.6, 5), tip, along(tip, flow_rad - 2.6, 5)]);
}

/** A square with the flow arrow through it and the sensing line from its downstream side. */
function drawRegulator(pen: Pen, at: Px, flow_rad: number, { warm, paper }: PartLook): void {
  const half = 8;
  const side = flow_rad + Math.PI / 2;
  const corner = (f: number, s: number): Px => along(along(at, flow_rad, f), side, s);
  pen.beginPath();
  trace(pen, [corner(-half, -half), corner(half, -half), corner(half, half), corner(-half, half)], true);
  pen.fillStyle = paper;
  pen.fill();
  setLine(pen, { colour: warm, width: 1.75, join: 'miter' });
  pen.stroke();
  arrow(pen, corner(-half + 2, 0), flow_rad, 2 * half - 4);
  setLine(pen, { colour: warm, width: 1.25, dash: [2.5, 2] });
  polyline(pen, [corner(half + 4, 0), corner(half + 4, half + 4), corner(0, half + 4), corner(0, half)]);
}

/** A triangle that points where the agent may go, against a bar. */
function drawCheckValve(pen: Pen, at: Px, flow_rad: number, { warm, paper }: PartLook): void {
  const side = flow_rad + Math.PI / 2;
  const tip = along(at, flow_rad, 7);
  const tail = along(at, flow_rad, -7);
  pen.beginPath();
  trace(pen, [tip, along(tail, side, 7), along(tail, side, -7)], true);
  pen.fillStyle = paper;
  pen.fill();
  setLine(pen, { colour: warm, width: 1.75, join: 'round' });
  pen.stroke();
  line(pen, along(tip, side, 7), along(tip, side, -7));
}

/** Two triangles tip to tip. */
function drawStopValve(pen: Pen, at: Px, downstream_rad: number, { warm, paper }: PartLook): void {
  const side = downstream_rad + Math.PI / 2;
  for (const sense of [1, -1]) {
    const foot = along(at, downstream_rad, sense * 8);
    pen.beginPath();
    trace(pen, [at, along(foot, side, 6), along(foot, side, -6)], true);
    pen.fillStyle = paper;
    pen.fill();
    setLine(pen, { colour: warm, width: 1.75, join: 'round' });
    pen.stroke();
  }
}

/** A triangle beside the line with an arrow that leaves sideways. */
function drawReliefValve(pen: Pen, at: Px, flow_rad: number, { warm, paper }: PartLook): void {
  const side = flow_rad + Math.PI / 2;
  const foot = along(at, side, 8);
  pen.beginPath();
  trace(pen, [at, along(foot, flow_rad, 6), along(foot, flow_rad, -6)], true);
  pen.fillStyle = paper;
  pen.fill();
  setLine(pen, { colour: warm, width: 1.75, join: 'round' });
  pen.stroke();
  arrow(pen, foot, side, 8);
}

/** A wave along the line. */
function drawHose(pen: Pen, at: Px, downstream_rad: number, { warm, paper }: PartLook): void {
  const side = downstream_rad + Math.PI / 2;
  const wave: Px[] = [];
  for (let i = 0; i <= 16; i += 1) {
    wave.push(along(along(at, downstream_rad, i - 8), side, 4 * Math.sin((i / 16) * 3 * Math.PI)));
  }
  setLine(pen, { colour: paper, width: 8 });
  line(pen, along(at, downstream_rad, -8), along(at, downstream_rad, 8));
  setLine(pen, { colour: warm, width: 2, join: 'round', cap: 'round' });
  polyline(pen, wave);
}

/** Two bars across the line. */
function drawAdapter(pen: Pen, at: Px, downstream_rad: number, { warm }: PartLook): void {
  const side = downstream_rad + Math.PI / 2;
  setLine(pen, { colour: warm, width: 2 });
  for (const shift of [-2, 2]) {
    const foot = along(at, downstream_rad, shift);
    line(pen, along(foot, side, 6), along(foot, side, -6));
  }
}
