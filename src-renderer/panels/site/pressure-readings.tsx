import { useMemo } from 'react';
import type { CorrectedReading, PressureTrend } from '#shared/site/pressure-trend';
import { pressureTrends } from '#shared/site/pressure-trend';
import { namesByKey } from '#shared/site/name-of-key';
import { gaugeOf_Pa } from '#shared/units/convert';
import { presentEvaluation } from '../../store/selectors.ts';
import { useStore } from '../../store/use-store.ts';
import { type Figures, useFigures } from '../bench/use-plan.ts';
import { VerdictMark } from '../verdict-mark.tsx';
import { PressureChart } from './pressure-chart.tsx';

/** What a reading says of its cylinder: a sentence. */
function verdictText({ lossShare, isShort }: CorrectedReading): string {
  const lost = lossShare.isKnown ? (lossShare.sums > 0 ? `${(lossShare.sums * 100).toFixed(1)} % lost` : 'nothing lost') : `not checked: ${lossShare.because}`;
  return isShort ? `${lost}. Refill or replace it.` : lost;
}

function TrendOf({ trend, name, figures }: { readonly trend: PressureTrend; readonly name: string; readonly figures: Figures }) {
  const gauge = (value_Pa: number): string => figures.quantity(gaugeOf_Pa(value_Pa), 'gaugePressure');
  return (
    <>
      <PressureChart trend={trend} name={name} />
      <ul className="log-list" aria-label={`Pressures of ${name}`}>
        {trend.readings.toReversed().map((reading) => {
          const { entry, corrected_Pa, isShort } = reading;
          return (
            <li key={entry.id}>
              <span className="pressure-line">
                <VerdictMark verdict={isShort === undefined ? 'not-checked' : isShort ? 'stop' : 'ok'} />
                <span>
                  <strong>{name}</strong> {entry.at.slice(0, 10)}: {entry.value === null ? 'no pressure' : gauge(entry.value)}
                  {entry.temperature_K === null ? '' : ` at ${figures.quantity(entry.temperature_K, 'temperature')}`}
                  <span className="quiet log-who">
                    {corrected_Pa.isKnown && trend.fill.isKnown ? `${gauge(corrected_Pa.sums)} at ${figures.quantity(trend.fill.sums.fillTemperature_K, 'temperature')}, ` : ''}
                    {verdictText(reading)}
                  </span>
                </span>
              </span>
            </li>
          );
        })}
      </ul>
    </>
  );
}

/** Logged pressures of every cylinder over time, corrected for temperature. */
export function PressureReadings() {
  const { derived: { plan }, design } = useStore(presentEvaluation);
  const figures = useFigures();
  const { log } = plan.siteRecord;
  const trends = useMemo(() => design.networks.flatMap((network) => pressureTrends(network, log)).filter(({ readings }) => readings.length > 0), [design, log]);
  const names = namesByKey(plan);
  return (
    <>
      <h4>Pressures at the filling temperature</h4>
      {trends.length === 0 ? <p className="quiet">No pressure is logged yet. Read gauge and temperature of the cylinder together; a cylinder takes hours to follow its room.</p> : null}
      {trends.map((trend) => (
        <TrendOf key={trend.about} trend={trend} name={names.get(trend.about) ?? 'Cylinder'} figures={figures} />
      ))}
    </>
  );
}
