import type { Verdict } from '#shared/rules/finding';
import type { Ink } from '../../ink.ts';
import { type Pen, type Px, disc, line, polyline, ring, trace, setLine } from '../pen.ts';

/** Half the width of a verdict's mark [px]. */
export const VERDICT_HALF_px = 7;

/**
 * The mark of a verdict, known by its shape alone: stop is a filled square with a bar, warning an open triangle,
 * note a dot, not checked a dashed ring, kept a thin tick.
 */
export function drawVerdict(pen: Pen, at: Px, verdict: Verdict, ink: Pick<Ink, 'verdict' | 'paper'>, half = VERDICT_HALF_px): void {
  const colour = ink.verdict[verdict];
  const { paper } = ink;
  if (verdict === 'stop') {
    pen.fillStyle = paper;
    pen.fillRect(at.x - half - 1.5, at.y - half - 1.5, 2 * half + 3, 2 * half + 3);
    pen.fillStyle = colour;
    pen.fillRect(at.x - half, at.y - half, 2 * half, 2 * half);
    pen.fillStyle = paper;
    pen.fillRect(at.x - half * 0.62, at.y - half * 0.2, half * 1.24, half * 0.4);
  } else if (verdict === 'warn') {
    pen.beginPath();
    trace(
      pen,
      [
        { x: at.x, y: at.y - half },
        { x: at.x + half * 1.05, y: at.y + half * 0.85 },
        { x: at.x - half * 1.05, y: at.y + half * 0.85 },
      ],
      true,
    );
    pen.fillStyle = paper;
    pen.fill();
    setLine(pen, { colour: paper, width: 5, join: 'round' });
    pen.stroke();
    setLine(pen, { colour, width: 2.25, join: 'round' });
    pen.stroke();
  } else if (verdict === 'note') {
    disc(pen, at, half * 0.55 + 1.5, paper);
    disc(pen, at, half * 0.55, colour);
  } else if (verdict === 'not-checked') {
    disc(pen, at, half + 1, paper);
    setLine(pen, { colour, width: 2, dash: [3, 2.4] });
    ring(pen, at, half * 0.85);
  } else {
    setLine(pen, { colour, width: 1.5, cap: 'round', join: 'round' });
    polyline(pen, [
      { x: at.x - half * 0.7, y: at.y },
      { x: at.x - half * 0.15, y: at.y + half * 0.6 },
      { x: at.x + half * 0.75, y: at.y - half * 0.65 },
    ]);
  }
}

/** A measuring line under test: the line ends in bars and carries the verdict's mark in its middle. */
export function drawMeasuringLine(pen: Pen, a: Px, b: Px, verdict: Verdict, ink: Pick<Ink, 'verdict' | 'paper'>): void {
  const colour = ink.verdict[verdict];
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  if (length < 1) {
    drawVerdict(pen, a, verdict, ink);
    return;
  }
  const ux = (b.x - a.x) / length;
  const uy = (b.y - a.y) / length;
  setLine(pen, { colour: ink.paper, width: 5 });
  line(pen, a, b);
  setLine(pen, { colour, width: 2, ...(verdict === 'not-checked' ? { dash: [5, 4] } : {}) });
  line(pen, a, b);
  setLine(pen, { colour, width: 2 });
  for (const end of [a, b]) line(pen, { x: end.x - uy * 6, y: end.y + ux * 6 }, { x: end.x + uy * 6, y: end.y - ux * 6 });
  if (length > 4 * VERDICT_HALF_px) drawVerdict(pen, { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, verdict, ink);
}
