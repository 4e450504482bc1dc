import { type PointerEvent, memo, useId } from 'react';
import { nearestIndex, tickText, ticksBetween } from './axis.ts';
import { type Frame, pathThrough, scaleOf } from './plot.ts';
import { useWidth } from './use-width.ts';

/** How a curve is told from the others: by its stroke, and only then by its colour. */
export type CurveLook = 'heavy' | 'plain' | 'dashed' | 'dotted';

export interface Curve {
  readonly label: string;
  readonly values: readonly number[];
  readonly look: CurveLook;
  readonly tone?: 'ink' | 'warm' | 'cool';
  /** The value at the cursor, with its unit. */
  show(value: number): string;
}

/** A straight line across the chart: a limit, or a moment. */
export interface Mark {
  readonly label: string;
  readonly at: number;
}

interface LineChartProps {
  readonly title: string;
  /** What the chart shows, for whoever cannot see it. */
  readonly description: string;
  readonly xs: readonly number[];
  readonly xUnit: string;
  readonly yUnit: string;
  readonly curves: readonly Curve[];
  /** Levels, with words. */
  readonly levels?: readonly Mark[];
  /** Moments, with words. */
  readonly moments?: readonly Mark[];
  /** Least and greatest figure that the upright axis must hold. */
  readonly yLeast?: number;
  readonly cursor: number;
  onCursor(index: number): void;
  readonly height_px?: number;
}

const LETTER_px = 6.4;
const TOP_px = 8;
const BOTTOM_px = 20;
const WORDS_px = 16;

/** The stroke of a curve beside its name. */
function Swatch({ look, tone = 'ink' }: Pick<Curve, 'look' | 'tone'>) {
  return (
    <svg className="swatch" width="22" height="8" viewBox="0 0 22 8" aria-hidden="true">
      <path d="M1 4H21" className={`curve is-${look} is-${tone}`} />
    </svg>
  );
}

interface CurvePathProps extends Frame {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly least: number;
  readonly greatest: number;
  readonly name: string;
}

/** One curve; drawn anew only when it changes, not while the cursor moves over it. */
const CurvePath = memo(function CurvePath({ xs, ys, left, right, top, bottom, least, greatest, name }: CurvePathProps) {
  return <path d={pathThrough(xs, ys, scaleOf([xs[0] ?? 0, xs.at(-1) ?? 1], [left, right]), scaleOf([least, greatest], [bottom, top]))} className={name} />;
});

/** Curves over one axis. The names above it carry the values at the cursor, which follows the pointer and its owner's slider. */
export function LineChart({ title, description, xs, xUnit, yUnit, curves, levels = [], moments = [], yLeast = 0, cursor, onCursor, height_px = 132 }: LineChartProps) {
  const id = useId();
  const { ref, width_px } = useWidth<SVGSVGElement>(310);
  const all = [...curves.flatMap(({ values }) => values.filter(Number.isFinite)), ...levels.map(({ at }) => at), yLeast];
  const greatest = all.reduce((most, value) => Math.max(most, value), yLeast);
  const yTicks = ticksBetween(yLeast, greatest > yLeast ? greatest * 1.04 : yLeast + 1, 4);
  const step = (yTicks[1] ?? 1) - (yTicks[0] ?? 0);
  const plot_px = height_px - TOP_px - BOTTOM_px;
  // The words of a level stand over the beginning of its line, where curves are still low: the highest one leaves room for them.
  const overLevel = (Math.max(yLeast, ...levels.map(({ at: level }) => level)) - yLeast) * (plot_px / (plot_px - WORDS_px));
  const highest = Math.max(greatest + (greatest - yLeast) * 0.06, yLeast + overLevel, yLeast + step);
  const marginLeft = Math.max(...yTicks.map((tick) => tickText(tick, step).length)) * LETTER_px + 8;
  const frame: Frame = { left: marginLeft, right: width_px - 8, top: TOP_px, bottom: height_px - BOTTOM_px };
  const range: readonly [number, number] = [xs[0] ?? 0, xs.at(-1) ?? 1];
  const x = scaleOf(range, [frame.left, frame.right]);
  const y = scaleOf([yLeast, highest], [frame.bottom, frame.top]);
  const xTicks = ticksBetween(range[0], range[1], Math.max(3, Math.floor((frame.right - frame.left) / 52)));
  const xStep = (xTicks[1] ?? 1) - (xTicks[0] ?? 0);
  const at = xs[cursor] ?? range[0];
  const onPointer = (event: PointerEvent<SVGSVGElement>): void => {
    const box = event.currentTarget.getBoundingClientRect();
    const share = (event.clientX - box.left - frame.left) / (frame.right - frame.left);
    onCursor(nearestIndex(xs, range[0] + Math.min(1, Math.max(0, share)) * (range[1] - range[0])));
  };
  return (
    <figure className="chart">
      <figcaption className="chart-head">
        <strong>{title}</strong>
        <span className="quiet">{yUnit}</span>
      </figcaption>
      <ul className="chart-names">
        {curves.map((curve) => (
          <li key={curve.label}>
            <Swatch look={curve.look} tone={curve.tone} />
            <span>{curve.label}</span>
            <b>{curve.show(curve.values[cursor] ?? Number.NaN)}</b>
          </li>
        ))}
      </ul>
      <svg ref={ref} className="chart-plot" width="100%" height={height_px} role="img" aria-label={title} aria-describedby={id} onPointerMove={onPointer} onPointerDown={onPointer}>
        {/* No title element: it would stand over the chart as soon as the pointer rests. */}
        <desc id={id}>{description}</desc>
        {yTicks.map((tick) => (
          <g key={tick}>
            <path d={`M${frame.left} ${Math.round(y(tick)) + 0.5}H${frame.right}`} className="chart-grid" />
            <text x={frame.left - 5} y={y(tick) + 4} className="chart-figure is-end">
              {tickText(tick, step)}
            </text>
          </g>
        ))}
        <path d={`M${frame.left} ${frame.bottom + 0.5}H${frame.right}`} className="chart-axis" />
        {xTicks.map((tick, i) => (
          <g key={tick}>
            <path d={`M${Math.round(x(tick)) + 0.5} ${frame.bottom}v4`} className="chart-axis" />
            <text x={x(tick)} y={height_px - 4} className={x(tick) > frame.right - 24 ? 'chart-figure is-end' : 'chart-figure is-middle'}>
              {i === xTicks.length - 1 ? `${tickText(tick, xStep)} ${xUnit}` : tickText(tick, xStep)}
            </text>
          </g>
        ))}
        {levels.map(({ label, at: level }) => (
          <path key={label} d={`M${frame.left} ${y(level).toFixed(1)}H${frame.right}`} className="chart-level" />
        ))}
        {moments.map(({ label, at: moment }) => (moment >= range[0] && moment <= range[1] ? <path key={label} d={`M${x(moment).toFixed(1)} ${frame.top}V${frame.bottom}`} className="chart-moment" /> : null))}
        {curves.map(({ label, values, look, tone = 'ink' }) => (
          <CurvePath key={label} xs={xs} ys={values} {...frame} least={yLeast} greatest={highest} name={`curve is-${look} is-${tone}`} />
        ))}
        <path d={`M${x(at).toFixed(1)} ${frame.top}V${frame.bottom}`} className="chart-cursor" />
        {curves.map(({ label, values, tone = 'ink' }) => {
          const value = values[cursor];
          return value === undefined || !Number.isFinite(value) ? null : <circle key={label} cx={x(at)} cy={y(value)} r="3" className={`chart-dot is-${tone}`} />;
        })}
        {levels.map(({ label, at: level }) => (
          <text key={label} x={frame.left + 4} y={y(level) - 4} className="chart-figure is-named">
            {label}
          </text>
        ))}
        {moments.map(({ label, at: moment }) => {
          if (moment < range[0] || moment > range[1]) return null;
          const isRight = x(moment) + label.length * LETTER_px + 6 > frame.right;
          return (
            <text key={label} x={x(moment) + (isRight ? -4 : 4)} y={frame.bottom - 5} className={isRight ? 'chart-figure is-end is-named' : 'chart-figure is-named'}>
              {label}
            </text>
          );
        })}
      </svg>
    </figure>
  );
}
