import { memo, useMemo, useState } from 'react';
import type { SupervisionSums } from '#shared/calculations/design/design';
import { useFigures } from '../bench/use-plan.ts';
import { axisUnit, gaugeUnit, nearestIndex } from './axis.ts';
import { CursorSlider } from './cursor-slider.tsx';
import { LineChart } from './line-chart.tsx';

/** What the gauge of a full cylinder shows at each temperature, and of one that has lost too much. */
export const CylinderChart = memo(function CylinderChart({ sums: { chart, fillTemperature_K } }: { readonly sums: SupervisionSums }) {
  const { system } = useFigures();
  const { warmth, gauge } = useMemo(() => ({ warmth: axisUnit('temperature', system), gauge: gaugeUnit(system) }), [system]);
  const series = useMemo(
    () => ({ at: chart.map(({ temperature_K }) => warmth.of(temperature_K)), full: chart.map(({ full_Pa }) => gauge.of(full_Pa)), reject: chart.map(({ reject_Pa }) => gauge.of(reject_Pa)) }),
    [chart, warmth, gauge],
  );
  const [moved, move] = useState<number | null>(null);
  const cursor = moved !== null && moved < chart.length ? moved : nearestIndex(series.at, warmth.of(fillTemperature_K));
  const show = (value: number): string => `${value.toFixed(0)} ${gauge.name}`;
  const shown = `${(series.at[cursor] ?? 0).toFixed(0)} ${warmth.name}`;
  const least = Math.min(...series.reject);
  return (
    <div className="charts" data-chart="cylinder">
      <CursorSlider label="Cylinder at" count={chart.length} cursor={cursor} shown={shown} onCursor={move} />
      <LineChart
        title="Gauge of the cylinder"
        yUnit={gauge.name}
        xUnit={warmth.name}
        description={`Gauge pressure over temperature: of a full cylinder, and of one that has lost 5 % of its gas. At ${shown}: full ${show(series.full[cursor] ?? Number.NaN)}, lost 5 % ${show(series.reject[cursor] ?? Number.NaN)}.`}
        xs={series.at}
        yLeast={least > 0 ? least * 0.9 : 0}
        curves={[
          { label: 'Full', values: series.full, look: 'heavy', tone: 'warm', show },
          { label: '5 % lost: take it out', values: series.reject, look: 'dashed', show },
        ]}
        cursor={cursor}
        onCursor={move}
      />
    </div>
  );
});
