import { memo, useId } from 'react';
import type { FillSums } from '#shared/calculations/design/design';
import { countOf } from '../../plan-words.ts';
import { bandVerdict } from '../../store/band-verdict.ts';
import { useFigures } from '../bench/use-plan.ts';
import { axisUnit, tickText, ticksBetween } from './axis.ts';
import { scaleOf } from './plot.ts';
import { useWidth } from './use-width.ts';

const ROW_px = 34;
const HEAD_px = 20;
const FOOT_px = 22;

/** Volumes that full cylinders fit, one bar for each number of them, with the room's volume marked. */
export const FillBands = memo(function FillBands({ sums }: { readonly sums: FillSums }) {
  const id = useId();
  const { system, quantity } = useFigures();
  const { ref, width_px } = useWidth<SVGSVGElement>(310);
  const { bands, net_m3 } = sums;
  const unit = axisUnit('volume', system);
  // From a little below the least: a band is narrow, and from nought it would be a mere stroke.
  const volumes = [net_m3, ...bands.flatMap(({ least_m3, greatest_m3 }) => [least_m3, greatest_m3])];
  const range: readonly [number, number] = [unit.of(Math.min(...volumes) * 0.85), unit.of(Math.max(...volumes) * 1.05)];
  const [left, right] = [4, width_px - 8];
  const x = scaleOf(range, [left, right]);
  const height_px = HEAD_px + bands.length * ROW_px + FOOT_px;
  const ticks = ticksBetween(...range, Math.max(3, Math.floor((right - left) / 50)));
  const step = (ticks[1] ?? 1) - (ticks[0] ?? 0);
  const room = x(unit.of(net_m3));
  const isRight = room > (left + right) / 2;
  const told = bands.map((band) => `${countOf(band.cylinders, 'cylinder')}: ${quantity(band.least_m3, 'volume')} to ${quantity(band.greatest_m3, 'volume')}, ${bandVerdict(net_m3, band).words}`).join('; ');
  return (
    <figure className="chart" data-chart="fill">
      <figcaption className="chart-head">
        <strong>Volumes that full cylinders fit</strong>
        <span className="quiet">{unit.name}</span>
      </figcaption>
      <svg ref={ref} className="chart-plot is-still" width="100%" height={height_px} role="img" aria-label="Volumes that full cylinders fit" aria-describedby={id}>
        <desc id={id}>{`The room has ${quantity(net_m3, 'volume')}. ${told}.`}</desc>
        <path d={`M${room.toFixed(1)} ${HEAD_px - 4}V${height_px - FOOT_px}`} className="chart-cursor" />
        {bands.map((band, i) => {
          const y = HEAD_px + i * ROW_px;
          const { fits, words } = bandVerdict(net_m3, band);
          const [from, to] = [x(unit.of(band.least_m3)), x(unit.of(band.greatest_m3))];
          return (
            <g key={band.cylinders}>
              <text x={left} y={y + 13} className={band.cylinders === sums.cylinders ? 'chart-figure is-band is-own' : 'chart-figure is-band'}>
                {fits ? '✓ ' : ''}
                {countOf(band.cylinders, 'cylinder')}
                {band.cylinders === sums.cylinders ? ' (drawn)' : ''}: {words}
              </text>
              <path d={`M${left} ${y + 23.5}H${right}`} className="chart-grid" />
              {to > from ? <rect x={from} y={y + 18.5} width={to - from} height={10} className={fits ? 'fill-band fits' : 'fill-band'} /> : null}
            </g>
          );
        })}
        <text x={room + (isRight ? 4 : -4)} y={HEAD_px - 8} className={isRight ? 'chart-figure is-end is-own' : 'chart-figure is-own'}>
          Room {quantity(net_m3, 'volume')}
        </text>
        {ticks.map((tick) => (
          <g key={tick}>
            <path d={`M${Math.round(x(tick)) + 0.5} ${height_px - FOOT_px}v4`} className="chart-axis" />
            <text x={x(tick)} y={height_px - 5} className={x(tick) < left + 16 ? 'chart-figure' : x(tick) > right - 16 ? 'chart-figure is-end' : 'chart-figure is-middle'}>
              {tickText(tick, step)}
            </text>
          </g>
        ))}
        <path d={`M${left} ${height_px - FOOT_px + 0.5}H${right}`} className="chart-axis" />
      </svg>
    </figure>
  );
});
