import { type ReactNode, useId } from 'react';
import type { Outline } from '#shared/geometry/outline';
import type { PlanPoint } from '#shared/geometry/point';
import type { Verdict } from '#shared/rules/finding';
import type { WhyDrawing, WhyShape } from '#shared/why/why-drawing';
import { useWidth } from '../charts/use-width.ts';

const LEAST_HEIGHT_px = 110;
const MOST_HEIGHT_px = 200;
const NOZZLE_px = 5;
const LETTER_px = 7;
const TICK_px = 5;

/** Turns metres of the drawing into pixels of the picture. */
interface Onto {
  x(of: PlanPoint): number;
  y(of: PlanPoint): number;
  readonly px_m: number;
}

const path = (rings: readonly Outline[], onto: Onto): string => rings.map((ring) => `M${ring.map((p) => `${onto.x(p).toFixed(1)} ${onto.y(p).toFixed(1)}`).join('L')}Z`).join('');

/** A measuring line with a stroke across each end, so that it is one without its colour. */
function Measure({ a, b, onto }: { readonly a: PlanPoint; readonly b: PlanPoint; readonly onto: Onto }) {
  const [x1, y1, x2, y2] = [onto.x(a), onto.y(a), onto.x(b), onto.y(b)];
  const length = Math.hypot(x2 - x1, y2 - y1) || 1;
  const [across, up] = [(-(y2 - y1) / length) * TICK_px, ((x2 - x1) / length) * TICK_px];
  const end = (x: number, y: number): string => `M${x - across} ${y - up}L${x + across} ${y + up}`;
  return <path className="why-measure" d={`M${x1} ${y1}L${x2} ${y2}${end(x1, y1)}${end(x2, y2)}`} />;
}

function shapeOf(shape: WhyShape, onto: Onto, width_px: number): ReactNode {
  switch (shape.kind) {
    case 'area':
      return <path className={`why-${shape.as}`} fillRule="evenodd" d={path(shape.rings, onto)} />;
    case 'line':
      return shape.as === 'measure' ? <Measure a={shape.a} b={shape.b} onto={onto} /> : <line className={`why-${shape.as}`} x1={onto.x(shape.a)} y1={onto.y(shape.a)} x2={onto.x(shape.b)} y2={onto.y(shape.b)} />;
    case 'circle':
      return <circle className={`why-${shape.as}`} cx={onto.x(shape.at)} cy={onto.y(shape.at)} r={shape.radius_m * onto.px_m} />;
    case 'dot':
      return <circle className={`why-dot is-${shape.as}`} cx={onto.x(shape.at)} cy={onto.y(shape.at)} r={NOZZLE_px} />;
    case 'text': {
      const half = (shape.words.length * LETTER_px) / 2;
      const x = Math.min(width_px - half - 4, Math.max(half + 4, onto.x(shape.at)));
      return (
        <text className={shape.isMain ? 'why-words' : 'why-name'} x={x} y={onto.y(shape.at) - 8} textAnchor="middle">
          {shape.words}
        </text>
      );
    }
  }
}

/** The small drawing of what a finding measured, in the colour of its verdict. */
export function WhyPicture({ drawing, verdict }: { readonly drawing: WhyDrawing; readonly verdict: Verdict }) {
  const clip = useId();
  const { ref, width_px } = useWidth<SVGSVGElement>(280);
  const { minX, minY, maxX, maxY } = drawing.bounds;
  const height_px = Math.round(Math.min(MOST_HEIGHT_px, Math.max(LEAST_HEIGHT_px, (width_px * (maxY - minY)) / (maxX - minX))));
  const px_m = Math.min(width_px / (maxX - minX), height_px / (maxY - minY));
  const [left, bottom] = [(width_px - (maxX - minX) * px_m) / 2, height_px - (height_px - (maxY - minY) * px_m) / 2];
  const onto: Onto = { x: (p) => left + (p.x - minX) * px_m, y: (p) => bottom - (p.y - minY) * px_m, px_m };
  return (
    <svg ref={ref} className={`why-picture is-${verdict}`} width="100%" height={height_px} viewBox={`0 0 ${width_px} ${height_px}`} role="img" aria-label={drawing.words}>
      <clipPath id={clip}>
        <rect width={width_px} height={height_px} />
      </clipPath>
      <g clipPath={`url(#${clip})`}>
        {drawing.shapes.map((shape, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: marks have no other name, and are drawn anew together
          <g key={i}>{shapeOf(shape, onto, width_px)}</g>
        ))}
      </g>
      <text className="why-view" x="6" y={height_px - 6}>
        {drawing.view === 'plan' ? 'from above' : 'from the side'}
      </text>
    </svg>
  );
}
