import { memo, useState } from 'react';
import type { PressureTrend } from '#shared/site/pressure-trend';
import { gaugeOf_Pa } from '#shared/units/convert';
import { useFigures } from '../bench/use-plan.ts';
import { gaugeUnit } from '../charts/axis.ts';
import { CursorSlider } from '../charts/cursor-slider.tsx';
import { LineChart } from '../charts/line-chart.tsx';

const DAYS_A_MONTH = 365.25 / 12;

/** Pressures of a cylinder over time as they would read at the filling temperature, against full and 5 % less; nothing while there are fewer than two. */
export const PressureChart = memo(function PressureChart({ trend, name }: { readonly trend: PressureTrend; readonly name: string }) {
  const { system } = useFigures();
  const [moved, move] = useState<number | null>(null);
  const { fill } = trend;
  const points = trend.readings.flatMap(({ day, corrected_Pa, entry }) => (day !== undefined && corrected_Pa.isKnown ? [{ day, corrected_Pa: corrected_Pa.sums, at: entry.at }] : []));
  const [first] = points;
  const cursor = moved !== null && moved < points.length ? moved : points.length - 1;
  const shown = points[cursor];
  if (!fill.isKnown || !first || !shown || points.length < 2) return null;
  const gauge = gaugeUnit(system);
  const full = gauge.of(gaugeOf_Pa(fill.sums.fillPressure_Pa));
  const least = gauge.of(gaugeOf_Pa(0.95 * fill.sums.fillPressure_Pa));
  const values = points.map(({ corrected_Pa }) => gauge.of(gaugeOf_Pa(corrected_Pa)));
  const show = (value: number): string => `${value.toFixed(0)} ${gauge.name}`;
  return (
    <div className="charts" data-chart="pressure-trend">
      <CursorSlider label="Read on" count={points.length} cursor={cursor} shown={shown.at.slice(0, 10)} onCursor={move} />
      <LineChart
        title={`${name}, corrected for temperature`}
        yUnit={gauge.name}
        xUnit="months"
        description={`Pressure over the months since ${first.at.slice(0, 10)}, as it would read at the filling temperature. Full is ${show(full)}, 5 % less is ${show(least)}. On ${shown.at.slice(0, 10)}: ${show(values[cursor] ?? Number.NaN)}.`}
        xs={points.map(({ day }) => (day - first.day) / DAYS_A_MONTH)}
        yLeast={Math.min(least, ...values) * 0.97}
        curves={[{ label: 'Pressure', values, look: 'heavy', tone: 'warm', show }]}
        levels={[
          { label: 'Full', at: full },
          { label: '5 % lost: refill or replace', at: least },
        ]}
        cursor={cursor}
        onCursor={move}
      />
    </div>
  );
});
