import { memo, useMemo, useState } from 'react';
import type { DischargeSums, EnclosureDesign } from '#shared/calculations/design/design';
import { isAlike } from '#shared/derived/remember';
import { useFigures } from '../bench/use-plan.ts';
import { Choice } from '../fields/choice.tsx';
import { atPlaces, axisUnit, nearestIndex } from './axis.ts';
import { CursorSlider } from './cursor-slider.tsx';
import { LineChart, type Mark } from './line-chart.tsx';

interface DischargeChartsProps {
  readonly sums: DischargeSums;
  /** The enclosures that the network blows into. */
  readonly enclosures: readonly EnclosureDesign[];
  /** Names of the spaces, in the order of the input. */
  readonly spaceNames: readonly string[];
  /** Oxygen in plain air [vol %]. */
  readonly oxygenBase_pct: number;
}

/** The share of the design concentration that is timed. */
const TIMED_SHARE = 0.95;

const percent = (value: number): string => (Number.isFinite(value) ? `${value.toFixed(1)} %` : 'not known');

/** All that the charts show; they are not drawn anew for a pipe that is dragged while its last discharge still stands. */
const shownOf = ({ sums: { input, result, slow }, enclosures, spaceNames, oxygenBase_pct }: DischargeChartsProps) => ({
  result,
  slow,
  spaces: input.spaces,
  rooms: input.enclosures,
  regulatorPressure_Pa: input.regulatorPressure_Pa,
  limits: enclosures.map(({ ref, filling, weakest }) => [ref.id, filling.isKnown && filling.sums.limit_s, weakest.isKnown && weakest.sums.pressure_Pa]),
  spaceNames,
  oxygenBase_pct,
});

/** How a network empties: flow, pressures, and what the spaces and their walls see of it. */
export const DischargeCharts = memo(function DischargeCharts({ sums: { input, result, slow }, enclosures, spaceNames, oxygenBase_pct }: DischargeChartsProps) {
  const { system, quantity } = useFigures();
  const { times_s } = result;
  const slowest = slow.spaces.reduce((worst, { timeTo95_s }, i) => ((timeTo95_s ?? Number.POSITIVE_INFINITY) > (slow.spaces[worst]?.timeTo95_s ?? Number.POSITIVE_INFINITY) ? i : worst), 0);
  const [picked, pick] = useState<number | null>(null);
  const space = picked !== null && picked < slow.spaces.length ? picked : slowest;
  const of = input.spaces[space];
  const ran = slow.spaces[space];
  const pressed = of && result.enclosures[of.enclosure];
  const design = of && enclosures.find(({ ref }) => ref.id === input.enclosures[of.enclosure]?.id);
  const [moved, move] = useState<number | null>(null);
  const cursor = moved !== null && moved < times_s.length ? moved : nearestIndex(times_s, ran?.timeTo95_s ?? times_s.at(-1) ?? 0);

  const { flow, pressure, wall } = useMemo(() => ({ flow: axisUnit('massFlow', system), pressure: axisUnit('pressure', system), wall: axisUnit('pressureDifference', system) }), [system]);
  const series = useMemo(
    () => ({
      flow: result.flow_kg_s.map(flow.of),
      slowFlow: atPlaces(slow.times_s, slow.flow_kg_s, result.times_s).map(flow.of),
      cylinder: result.cylinderPressure_Pa.map(pressure.of),
      source: result.sourcePressure_Pa.map(pressure.of),
      oxygen: ran?.concentration_pct.map((concentration) => oxygenBase_pct * (1 - concentration / 100)) ?? [],
      over: pressed?.overpressure_Pa.map(wall.of) ?? [],
    }),
    [result, slow, ran, pressed, oxygenBase_pct, flow, pressure, wall],
  );

  const timed_pct = of ? of.designConcentration_pct * TIMED_SHARE : undefined;
  const filling = design?.filling.isKnown ? design.filling.sums : undefined;
  const allowable_Pa = design?.weakest.isKnown ? design.weakest.sums.pressure_Pa : undefined;
  const moments: Mark[] = [];
  if (filling) moments.push({ label: `${filling.limit_s.toFixed(0)} s at most`, at: filling.limit_s });
  const common = { xs: times_s, xUnit: 's', cursor, onCursor: move } as const;
  // The gas in the room is that of the slower run, which has times of its own.
  const slowCommon = { ...common, xs: slow.times_s, cursor: nearestIndex(slow.times_s, times_s[cursor] ?? 0), onCursor: (index: number) => move(nearestIndex(times_s, slow.times_s[index] ?? 0)) } as const;
  const reached = ran?.timeTo95_s;
  return (
    <div className="charts" data-chart="discharge">
      <CursorSlider label="Time after release" count={times_s.length} cursor={cursor} shown={`${(times_s[cursor] ?? 0).toFixed(1)} s`} onCursor={move} />
      <LineChart
        {...common}
        title="Flow"
        yUnit={flow.name}
        description={`Flow out of the cylinders over time. Its peak is ${quantity(result.peakFlow_kg_s, 'massFlow')}.`}
        curves={[
          { label: 'Cold gas', values: series.flow, look: 'plain', show: (value) => `${value.toFixed(2)} ${flow.name}` },
          { label: 'Warmed by the pipe', values: series.slowFlow, look: 'dashed', show: (value) => `${value.toFixed(2)} ${flow.name}` },
        ]}
      />
      <LineChart
        {...common}
        title="Pressure"
        yUnit={pressure.name}
        description={`Pressure in the cylinder and where the pipe begins, over time. The pipe sees ${quantity(result.peakPipePressure_Pa, 'pressure')} at most.`}
        curves={[
          { label: 'Cylinder', values: series.cylinder, look: 'heavy', tone: 'warm', show: (value) => `${value.toFixed(0)} ${pressure.name}` },
          { label: input.regulatorPressure_Pa === null ? 'Start of the pipe' : 'Behind the regulator', values: series.source, look: 'dashed', tone: 'cool', show: (value) => `${value.toFixed(0)} ${pressure.name}` },
        ]}
      />
      {slow.spaces.length > 1 ? (
        <Choice label="Space shown" value={String(space)} options={spaceNames.map((name, i) => ({ value: String(i), label: name }))} onCommit={(chosen) => pick(Number(chosen))} wide />
      ) : null}
      {ran ? (
        <LineChart
          {...slowCommon}
          title={`Gas in ${spaceNames[space] ?? 'the room'}`}
          yUnit="% by volume"
          description={`Share of nitrogen added and of oxygen left, over time, with gas that the pipe has warmed: the slower case. ${reached === undefined ? '95 % of the design concentration is never reached' : `95 % of the design concentration is reached after ${reached.toFixed(1)} s`}${filling ? `; ${filling.limit_s.toFixed(0)} s are allowed` : ''}.`}
          curves={[
            { label: 'Agent', values: ran.concentration_pct, look: 'plain', show: percent },
            { label: 'Oxygen', values: series.oxygen, look: 'dotted', show: percent },
          ]}
          levels={timed_pct === undefined ? [] : [{ label: `95 % of design: ${timed_pct.toFixed(1)} %`, at: timed_pct }]}
          moments={moments}
          height_px={150}
        />
      ) : null}
      {pressed ? (
        <LineChart
          {...common}
          title="Pressure on the walls"
          yUnit={wall.name}
          description={`Pressure in the room over outdoors, over time. Its peak is ${quantity(pressed.peakOverpressure_Pa, 'pressureDifference')}${allowable_Pa === undefined ? '; what the weakest wall stands is not known' : `; the weakest wall stands ${quantity(allowable_Pa, 'pressureDifference')}`}.`}
          curves={[{ label: 'Over outdoors', values: series.over, look: 'plain', show: (value) => `${value.toFixed(wall.name === 'Pa' ? 0 : 2)} ${wall.name}` }]}
          levels={allowable_Pa === undefined ? [] : [{ label: `weakest wall: ${quantity(allowable_Pa, 'pressureDifference')}`, at: wall.of(allowable_Pa) }]}
        />
      ) : null}
      {pressed && allowable_Pa === undefined ? <p className="field-help">What the weakest wall stands is not known, so no limit is drawn.</p> : null}
    </div>
  );
}, (before, now) => isAlike(shownOf(before), shownOf(now), 3));
