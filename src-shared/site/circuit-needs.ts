import type { NetworkDesign } from '../calculations/design/design.ts';
import { type Worked, notWorked, worked } from '../calculations/design/worked.ts';
import { refKey } from '../model/plan.ts';
import type { Settings } from '../model/plan.ts';
import { formatQuantity } from '../units/quantity-text.ts';
import type { ReadingBounds, ReadingNeed } from './reading-need.ts';

/** Least resistance of wires against earth and each other [Ω]. Source: common practice; the manual of the panel governs. */
export const LEAST_INSULATION_ohm = 1e6;
/** What leads and joints add to the wire [Ω]. Source: common practice. */
const JOINTS_ohm = 1;
/** The watching current is at most this share of what the weakest device needs to act. Source: common practice. */
const WATCHING_SHARE = 0.1;
/** A meter shows no more than this on terminals that are dead [V]. Source: common practice. */
export const DEAD_V = 0.5;

const COMMON = 'common practice; the manual of the panel governs';

/** Current that all release devices of a circuit take [A], and the least that one of them takes. */
function deviceCurrents({ release, network }: NetworkDesign): Worked<{ readonly all_A: number; readonly least_A: number }> {
  if (!release.isKnown) return release;
  const taken = release.sums.devices.map(({ current_A }) => current_A).filter((current_A) => current_A > 0);
  if (taken.length === 0) return notWorked(`no device on the circuit of “${network.name}” takes any current.`);
  return worked({ all_A: release.sums.total_A, least_A: Math.min(...taken) });
}

/** Voltage that the device with the highest need must have [V]. */
function leastVoltage_V({ release, network }: NetworkDesign): Worked<number> {
  if (!release.isKnown) return release;
  const needs = release.sums.devices.map(({ least_V }) => least_V);
  const known = needs.filter((least_V) => least_V !== undefined);
  return known.length === needs.length && known.length > 0 ? worked(Math.max(...known)) : notWorked(`the least voltage of a device on the circuit of “${network.name}” is not known.`);
}

/** Resistance that the pair may have when its far end is joined [Ω]. */
function loop_ohm({ release }: NetworkDesign): Worked<number> {
  if (!release.isKnown) return release;
  const farthest_m = Math.max(0, ...release.sums.devices.map(({ distance_m }) => distance_m));
  return worked(2 * farthest_m * release.sums.resistance_ohm_m + JOINTS_ohm);
}

const mapped = <T>(sums: Worked<T>, bounds: (value: T) => ReadingBounds): Worked<ReadingBounds> => (sums.isKnown ? worked(bounds(sums.sums)) : sums);

/** The readings that prove the releasing circuit of a network on a dummy load, and those before the last connection. */
export function circuitNeeds(network: NetworkDesign, lengths: Settings['lengths']): ReadingNeed[] {
  const about = refKey(network.ref);
  const { name } = network;
  const currents = deviceCurrents(network);
  const least_V = leastVoltage_V(network);
  const loop = loop_ohm(network);
  const say = (sums: Worked<number>, kind: 'current' | 'voltage' | 'resistance', words: (figure: string) => string, otherwise: string): string => (sums.isKnown ? words(formatQuantity(sums.sums, kind, lengths)) : otherwise);
  const all_A = currents.isKnown ? worked(currents.sums.all_A) : currents;
  const watching_A = currents.isKnown ? worked(currents.sums.least_A * WATCHING_SHARE) : currents;
  const need = (point: string, kind: ReadingNeed['kind'], asks: string, source: string, bounds: Worked<ReadingBounds>, remedy: string, order: Partial<Pick<ReadingNeed, 'after' | 'proved'>> = {}): ReadingNeed => ({
    point, kind, about, name, asks, source, bounds: () => bounds, after: [], proved: null, remedy, ...order,
  });
  return [
    need('H9', 'insulation', `at least ${formatQuantity(LEAST_INSULATION_ohm, 'insulation', lengths)}, panel and devices taken off`, COMMON, worked({ least: LEAST_INSULATION_ohm, most: null }), 'Find the damaged or wet wire.'),
    need('H9', 'continuity', say(loop, 'resistance', (figure) => `at most ${figure}: both wires, far end joined`, 'no more than the wire itself has'), `sums of the releasing circuit, wire at 75 °C; 1 Ω for leads and joints: ${COMMON}`, mapped(loop, (most) => ({ least: 0, most })), 'Find the loose terminal or the longer way.'),
    need('H9', 'supervision', say(watching_A, 'current', (figure) => `more than nothing, at most ${figure}`, 'more than nothing, far below what releases'), `a tenth of what the weakest device takes: ${COMMON}`, mapped(watching_A, (most) => ({ least: 0, most, isOverLeast: true })), 'Nothing means a broken wire; more could release. Check the end-of-line part.'),
    need('H9', 'alarm', say(all_A, 'current', (figure) => `at least ${figure}`, 'at least what the devices take'), 'sums of the releasing circuit', mapped(all_A, (least) => ({ least, most: null })), 'The solenoid would not act: check supply, wire and dummy load.'),
    need('H9', 'live', say(least_V, 'voltage', (figure) => `at least ${figure} at the end of the wire`, 'at least what the device needs'), 'least voltage of the devices', mapped(least_V, (least) => ({ least, most: null })), 'The solenoid would not act: use heavier wire or a stronger supply.'),
    need('H12', 'dead', `at most ${formatQuantity(DEAD_V, 'voltage', lengths)}, with a meter that was proved on live terminals, after the last test under voltage`, COMMON, worked({ least: 0, most: DEAD_V }), 'Do not connect the actuator. Find where the voltage comes from.', { after: ['live', 'alarm'], proved: 'live' }),
  ];
}
