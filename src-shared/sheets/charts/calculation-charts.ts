import type { Calculation } from '../../calculations/lines/calculation.ts';
import type { Design, EnclosureDesign, NetworkDesign } from '../../calculations/design/design.ts';
import type { LengthSystem } from '../../units/length-text.ts';
import { toBar, toCelsius, toCubicFeet, toFahrenheit, toPounds, toPsf, toPsi, gaugeOf_Pa } from '../../units/convert.ts';
import { formatFigures, formatQuantity } from '../../units/quantity-text.ts';
import type { Drawing } from '../tables.ts';
import type { TypeSizes } from '../../paper/type-sizes.ts';
import { drawBandChart } from './band-chart.ts';
import { type LineChart, drawLineChart } from './line-chart.ts';

/** Height of a chart of curves [mm at factor 1]. */
const HEIGHT_mm = 44;
/** Points of a curve at most: more cannot be told apart on paper. */
const MOST_POINTS = 240;

interface ChartUnits {
  readonly gauge: (pressure_Pa: number) => number;
  readonly gaugeName: string;
  readonly flow: (flow_kg_s: number) => number;
  readonly flowName: string;
  readonly difference: (pressure_Pa: number) => number;
  readonly differenceName: string;
  readonly temperature: (temperature_K: number) => number;
  readonly temperatureName: string;
  readonly volume: (volume_m3: number) => number;
  readonly volumeName: string;
}
const same = (value: number): number => value;
const UNITS: Readonly<Record<LengthSystem, ChartUnits>> = {
  metric: { gauge: (p) => toBar(gaugeOf_Pa(p)), gaugeName: 'bar gauge', flow: same, flowName: 'kg/s', difference: same, differenceName: 'Pa', temperature: toCelsius, temperatureName: '°C', volume: same, volumeName: 'm³' },
  feet: { gauge: (p) => toPsi(gaugeOf_Pa(p)), gaugeName: 'psi gauge', flow: toPounds, flowName: 'lb/s', difference: toPsf, differenceName: 'psf', temperature: toFahrenheit, temperatureName: '°F', volume: toCubicFeet, volumeName: 'ft³' },
};

/** What the charts of a set share. */
export interface ChartSpace {
  readonly design: Design;
  readonly lengths: LengthSystem;
  readonly sizes: TypeSizes;
  /** Of the table that they stand under. */
  readonly width_mm: number;
}

/** Charts that help to read a calculation; none where its sums are not known. */
export function chartsOf({ topic, subject }: Calculation, space: ChartSpace): Drawing[] {
  const network = space.design.networks.find(({ ref }) => subject.kind === 'network' && ref.id === subject.id);
  const enclosure = space.design.enclosures.find(({ ref }) => subject.kind === 'enclosure' && ref.id === subject.id && ref.level === subject.level);
  if (topic === 'agent' && enclosure) return bandOf(enclosure, space);
  if (topic === 'discharge' && network) return dischargeCharts(network, space);
  if (topic === 'discharge' && enclosure) return fillingCharts(enclosure, space);
  if (topic === 'vent' && enclosure) return pressureChart(enclosure, space);
  if (topic === 'supervision' && network) return gaugeChart(network, space);
  return [];
}

const half = ({ width_mm, sizes }: ChartSpace): number => (width_mm - 4 * sizes.factor) / 2;
const drawn = (chart: LineChart, space: ChartSpace): Drawing => drawLineChart(chart, half(space), HEIGHT_mm * space.sizes.factor, space.sizes);

/** A curve over time, thinned so that its first and last points and its shape stay. */
function overTime(times_s: readonly number[], values: readonly number[], of: (value: number) => number = same): [number, number][] {
  const every = Math.max(1, Math.ceil(times_s.length / MOST_POINTS));
  return times_s.flatMap((time, i): [number, number][] => (i % every === 0 || i === times_s.length - 1 ? [[time, of(values[i] ?? 0)]] : []));
}

/** Until when a discharge is worth looking at: the flow has all but ended, and every time that is judged is on it. */
function horizon_s(times_s: readonly number[], flow_kg_s: readonly number[], judged_s: readonly (number | undefined)[]): number {
  const least = 0.02 * Math.max(...flow_kg_s);
  const flowing = times_s.filter((_, i) => (flow_kg_s[i] ?? 0) >= least).at(-1) ?? 0;
  const needed = Math.max(flowing, ...judged_s.map((time) => (time ?? 0) * 1.1));
  return needed > 0 ? needed : (times_s.at(-1) ?? 1);
}

function bandOf({ fill }: EnclosureDesign, { lengths, sizes, width_mm }: ChartSpace): Drawing[] {
  if (!fill.isKnown || fill.sums.bands.length === 0) return [];
  const { volume, volumeName } = UNITS[lengths];
  const { bands, net_m3, cylinders } = fill.sums;
  return [
    drawBandChart(
      {
        title: `Volumes that full cylinders fit [${volumeName}]: enough agent when coldest, enough oxygen when hottest`,
        bands: bands.map((band) => ({
          name: `${Number(band.cylinders.toFixed(2))} ${band.cylinders === 1 ? 'cylinder' : 'cylinders'}`,
          least: volume(band.least_m3),
          greatest: volume(band.greatest_m3),
          isDrawn: band.cylinders === cylinders,
        })),
        value: volume(net_m3),
        valueName: `this enclosure ${formatFigures(net_m3, 'volume', lengths, 4).replace(/\.0+(?= )/, '')}`,
      },
      width_mm,
      sizes,
    ),
  ];
}

function dischargeCharts({ discharge }: NetworkDesign, space: ChartSpace): Drawing[] {
  if (!discharge.isKnown) return [];
  const { input, result, slow } = discharge.sums;
  const { gauge, gaugeName, flow, flowName } = UNITS[space.lengths];
  const { times_s } = result;
  const toX = horizon_s(times_s, result.flow_kg_s, [slow.timeTo95_s]);
  const reached = slow.timeTo95_s === undefined ? [] : [{ name: '95 % in the slowest space, warmed gas', at: slow.timeTo95_s }];
  return [
    drawn({ title: `Flow of all nozzles [${flowName}] against time [s]`, curves: [{ name: 'cold gas', points: overTime(times_s, result.flow_kg_s, flow) }, { name: 'warmed by pipe', points: overTime(slow.times_s, slow.flow_kg_s, flow) }], fromX: 0, toX, holdsY: [0], levels: [], moments: reached }, space),
    drawn(
      {
        title: `Pressure of the cold gas [${gaugeName}] against time [s]`,
        curves: [
          ...(input.regulatorPressure_Pa === null ? [] : [{ name: 'before the pipe', points: overTime(times_s, result.sourcePressure_Pa, gauge) }]),
          { name: 'in the cylinder', points: overTime(times_s, result.cylinderPressure_Pa, gauge) },
        ],
        fromX: 0,
        toX,
        holdsY: [0],
        levels: [],
        moments: [],
      },
      space,
    ),
  ];
}

/** The discharge that fills an enclosure: of the one network that serves it. */
function servingOf({ supply, ref }: EnclosureDesign, { design }: ChartSpace) {
  const [only, ...others] = supply.isKnown ? supply.sums.networks : [];
  const network = others.length === 0 && only ? design.networks.find((one) => one.ref.id === only.ref.id) : undefined;
  if (!network?.discharge.isKnown) return undefined;
  const { input, result, slow } = network.discharge.sums;
  const index = input.enclosures.findIndex(({ id }) => id === ref.id);
  return index < 0 ? undefined : { input, result, slow, index };
}

function fillingCharts(enclosure: EnclosureDesign, space: ChartSpace): Drawing[] {
  const serving = servingOf(enclosure, space);
  if (!serving || !enclosure.filling.isKnown) return [];
  const { input, slow, index } = serving;
  const { limit_s, spaces } = enclosure.filling.sums;
  const own = input.spaces.flatMap((each, i) => (each.enclosure === index ? [i] : []));
  const nameOf = (key: string): string => spaces.find((one) => one.space.key === key)?.space.name ?? enclosure.name;
  const toX = horizon_s(slow.times_s, slow.flow_kg_s, [limit_s]);
  const base_pct = oxygenOfAir(enclosure);
  const curves = own.map((i) => ({ name: nameOf(input.spaces[i]?.id ?? ''), points: overTime(slow.times_s, slow.spaces[i]?.concentration_pct ?? []) }));
  const [design_pct] = own.map((i) => input.spaces[i]?.designConcentration_pct ?? 0);
  const moments = [{ name: `limit ${Number(limit_s.toFixed(1))} s`, at: limit_s }];
  const levels = design_pct === undefined ? [] : [{ name: `95 % of C: ${(0.95 * design_pct).toFixed(1)} %`, at: 0.95 * design_pct }];
  return [
    drawn({ title: 'Concentration of agent, gas warmed by the pipe [vol %] against time [s]', curves, fromX: 0, toX, holdsY: [0], levels, moments }, space),
    drawn(
      {
        title: 'Oxygen left, gas warmed by the pipe [vol %] against time [s]',
        curves: curves.map(({ name, points }) => ({ name, points: points.map(([time, c]): [number, number] => [time, base_pct * (1 - c / 100)]) })),
        fromX: 0,
        toX,
        holdsY: [Math.floor(base_pct) + 1],
        levels: leastOxygen(enclosure),
        moments,
      },
      space,
    ),
  ];
}

/** Least oxygen for people: a limit that holds at sea level asks for more where the air is thinner. */
function leastOxygen({ fill, agent }: EnclosureDesign): LineChart['levels'] {
  if (!fill.isKnown || !agent.isKnown) return [];
  const here_pct = fill.sums.oxygenLimit_pct / agent.sums.altitudeFactor;
  return [{ name: `least for people: ${Number(here_pct.toFixed(2))} %`, at: here_pct }];
}

/** Oxygen before the discharge, as the sums for people took it. */
function oxygenOfAir({ people }: EnclosureDesign): number {
  if (!people.isKnown) return 20.95;
  const { concentration_pct, oxygen_pct } = people.sums.hot;
  return concentration_pct < 100 ? oxygen_pct / (1 - concentration_pct / 100) : 20.95;
}

function pressureChart(enclosure: EnclosureDesign, space: ChartSpace): Drawing[] {
  const serving = servingOf(enclosure, space);
  if (!serving) return [];
  const { input, result, index } = serving;
  const { difference, differenceName } = UNITS[space.lengths];
  const found = result.enclosures.find(({ id }) => id === input.enclosures[index]?.id);
  if (!found) return [];
  const { weakest } = enclosure;
  return [
    drawn(
      {
        title: `Pressure in the room over outdoors, cold gas [${differenceName}] against time [s]`,
        curves: [{ name: 'room', points: overTime(result.times_s, found.overpressure_Pa, difference) }],
        fromX: 0,
        toX: horizon_s(result.times_s, result.flow_kg_s, []),
        holdsY: [0],
        levels: weakest.isKnown ? [{ name: `bears ${formatQuantity(weakest.sums.pressure_Pa, 'pressureDifference', space.lengths)}`, at: difference(weakest.sums.pressure_Pa) }] : [],
        moments: [],
      },
      space,
    ),
  ];
}

function gaugeChart({ supervision, network, profile }: NetworkDesign, space: ChartSpace): Drawing[] {
  if (!supervision.isKnown) return [];
  const { chart } = supervision.sums;
  const { gauge, gaugeName, temperature, temperatureName } = UNITS[space.lengths];
  const absolute = (gauge_Pa: number): number => gauge(gauge_Pa) - gauge(0);
  const switch_Pa = network.release?.pressureSwitch?.setPoint_Pa ?? profile?.limits.lowPressureSwitch_Pa?.value;
  const places = chart.map(({ temperature_K }) => temperature(temperature_K));
  return [
    drawn(
      {
        title: `Gauge of a cylinder [${gaugeName}] against the temperature of its gas [${temperatureName}]`,
        curves: [
          { name: 'full', points: chart.map(({ full_Pa }, i): [number, number] => [places[i] ?? 0, absolute(full_Pa)]) },
          { name: '5 % lost', points: chart.map(({ reject_Pa }, i): [number, number] => [places[i] ?? 0, absolute(reject_Pa)]) },
        ],
        fromX: Math.min(...places),
        toX: Math.max(...places),
        holdsY: [],
        levels: switch_Pa === undefined ? [] : [{ name: 'switch', at: gauge(switch_Pa) }],
        moments: [],
      },
      space,
    ),
  ];
}
