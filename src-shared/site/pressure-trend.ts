import type { NetworkDesign, SupervisionSums } from '../calculations/design/design.ts';
import { type Worked, notWorked, workOut, worked } from '../calculations/design/worked.ts';
import { expectedPressure_Pa } from '../calculations/formulas/cylinder-gas.ts';
import { dayNumber, findDay } from '../model/day.ts';
import { type LogEntry, type Ref, refKey } from '../model/plan.ts';
import { slackOf } from '../rules/slack.ts';
import { GREATEST_LOSS, chargeBandAt } from './charge-band.ts';

/** A pressure as it would read at the temperature of the filling. */
export interface CorrectedReading {
  readonly entry: LogEntry;
  /** For the axis of a chart; undefined when the entry begins with no day. */
  readonly day: number | undefined;
  /** The same gas at the filling temperature, absolute [Pa]; or why it cannot be said. */
  readonly corrected_Pa: Worked<number>;
  /** Share of the filling pressure that is gone, below 0 when it reads more. */
  readonly lossShare: Worked<number>;
  /** More than 5 % is gone; undefined: not checked. */
  readonly isShort: boolean | undefined;
}

/** The readings of one cylinder over time. */
export interface PressureTrend {
  readonly about: string;
  /** Oldest first; what begins with no day keeps its place in the log, at the end. */
  readonly readings: readonly CorrectedReading[];
  readonly fill: Worked<Pick<SupervisionSums, 'fillPressure_Pa' | 'fillTemperature_K'>>;
}

/**
 * Pressure of the same real gas in the same cylinder at the temperature of its filling.
 * @param reading_Pa     absolute [Pa]
 * @param temperature_K  of the gas at the reading [K]
 */
export const correctedPressure_Pa = (reading_Pa: number, temperature_K: number, fillTemperature_K: number): Worked<number> => workOut(() => worked(expectedPressure_Pa(reading_Pa, temperature_K, fillTemperature_K)));

function correctedReading(entry: LogEntry, fill: PressureTrend['fill']): CorrectedReading {
  const found = findDay(entry.at);
  const base = { entry, day: found && dayNumber(found) };
  const { value, temperature_K } = entry;
  const without = (because: string): CorrectedReading => ({ ...base, corrected_Pa: notWorked(because), lossShare: notWorked(because), isShort: entry.isGood === false ? true : undefined });
  if (value === null) return without('no pressure was entered.');
  if (temperature_K === null) return without('the temperature of the cylinder was not entered.');
  if (!fill.isKnown) return without(fill.because);
  const { fillPressure_Pa, fillTemperature_K } = fill.sums;
  const corrected_Pa = correctedPressure_Pa(value, temperature_K, fillTemperature_K);
  if (!corrected_Pa.isKnown) return without(corrected_Pa.because);
  const least_Pa = (1 - GREATEST_LOSS) * fillPressure_Pa;
  const band = chargeBandAt(fill.sums, temperature_K);
  const isBelowChart = band.isKnown && value < band.sums.least_Pa - slackOf(band.sums.least_Pa);
  const isShort = entry.isGood === false || corrected_Pa.sums < least_Pa - slackOf(least_Pa) || isBelowChart;
  return { ...base, corrected_Pa, lossShare: worked(1 - corrected_Pa.sums / fillPressure_Pa), isShort };
}

/**
 * Logged pressures of each cylinder of a network over time, corrected to the filling temperature. One that has lost more
 * than 5 % of its pressure is refilled or replaced (NFPA 2001, memory); the chart of the manual governs.
 * @param log  of the site record
 */
export function pressureTrends({ ref, network, supervision }: Pick<NetworkDesign, 'ref' | 'network' | 'supervision'>, log: readonly LogEntry[]): PressureTrend[] {
  return Object.values(network.cylinders).map(({ id }) => {
    const cylinder: Ref = { kind: 'cylinder', network: ref.id, id };
    const about = refKey(cylinder);
    const readings = log.filter((entry) => entry.kind === 'pressure' && entry.about === about).map((entry) => correctedReading(entry, supervision));
    return { about, fill: supervision, readings: readings.sort((a, b) => (a.day ?? Number.POSITIVE_INFINITY) - (b.day ?? Number.POSITIVE_INFINITY) || 0) };
  });
}
