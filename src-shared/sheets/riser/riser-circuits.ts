import type { NetworkDesign } from '../../calculations/design/design.ts';
import { WIRING_WORDS } from '../../model/circuit-words.ts';
import type { Device, DeviceKind, Release, ReleaseDevice, Settings } from '../../model/plan.ts';
import { SHUTDOWN_WORDS } from '../../model/shutdown-words.ts';
import { SENSES_WORDS, SPACE_WORDS } from '../../model/surroundings-words.ts';
import { gaugeOf_Pa } from '../../units/convert.ts';
import { formatLength } from '../../units/length-text.ts';
import { formatQuantity } from '../../units/quantity-text.ts';
import { deviceFacts } from '../device-schedule.ts';
import type { RiserReach } from './riser-devices.ts';

/** What stands at the end of a wire, or along it. */
export type RiserSign = { readonly kind: 'device'; readonly device: Device } | { readonly kind: 'solenoid' | 'load' | 'end-of-line' | 'pressure-switch' | 'contact' | 'missing' };

/** One thing on a circuit: its sign, its words, and the wire from the thing before it. */
export interface RiserStation {
  readonly sign: RiserSign;
  readonly title: string;
  readonly words: readonly string[];
  /** Length of the wire from the panel or from the station before; blank where it is drawn but its length belongs to none. */
  readonly wire: string;
}

/** Wires that leave the panel together, with what stands along them. */
export interface RiserCircuit {
  readonly stations: readonly RiserStation[];
}

/** What is drawn for whatever nobody has said. */
export const NOT_GIVEN = 'not given';

const small = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);
const names = (devices: readonly Device[]): string => devices.map(({ name }) => name).join(', ');
const only = <K extends DeviceKind>(devices: readonly Device[], kind: K): Extract<Device, { kind: K }>[] => devices.filter((device): device is Extract<Device, { kind: K }> => device.kind === kind);
const missing = (title: string, words = `${NOT_GIVEN}: none is drawn`): RiserCircuit => ({ stations: [{ sign: { kind: 'missing' }, title, words: [words], wire: '' }] });

/** The detection circuits: one a zone, those without a zone by themselves. */
function detection({ devices }: RiserReach): RiserCircuit[] {
  const zones = new Map<string, Extract<Device, { kind: 'detector' }>[]>();
  for (const device of only(devices, 'detector')) zones.set(device.zone, [...(zones.get(device.zone) ?? []), device]);
  if (zones.size === 0) return [missing('Detection')];
  return [...zones]
    .sort(([a], [b]) => a.localeCompare(b, 'en', { numeric: true }))
    .flatMap(([zone, all]): RiserCircuit[] => {
      const [first] = all;
      if (!first) return [];
      const kinds = new Map<string, Device[]>();
      for (const each of all) {
        const what = `${each.senses === null ? `what they sense ${NOT_GIVEN}` : small(SENSES_WORDS[each.senses])}, ${small(SPACE_WORDS[each.space])}`;
        kinds.set(what, [...(kinds.get(what) ?? []), each]);
      }
      return [{ stations: [{ sign: { kind: 'device', device: first }, title: `Detection, zone ${zone || NOT_GIVEN}: ${all.length}`, words: [...kinds].map(([what, list]) => `${names(list)}: ${what}`), wire: '' }] }];
    });
}

/** A circuit of devices of one kind; a line of words for each. */
function plain({ devices }: RiserReach, kind: DeviceKind, title: string, lengths: Settings['lengths']): RiserCircuit {
  const all = only(devices, kind);
  const [first] = all;
  if (!first) return missing(title, kind === 'abort' ? 'none is drawn' : undefined);
  return { stations: [{ sign: { kind: 'device', device: first }, title: `${title}: ${all.length}`, words: all.map((device) => `${device.name}: ${deviceFacts(device, lengths)}`), wire: '' }] };
}

function deviceStation(device: ReleaseDevice, before_m: number | null, isFirst: boolean, { profile, release: sums }: NetworkDesign, lengths: Settings['lengths']): RiserStation {
  const isSolenoid = device.kind === 'solenoid';
  const there = sums.isKnown ? sums.sums.devices.find(({ id }) => id === device.id) : undefined;
  const current_A = device.current_A ?? (isSolenoid ? profile?.limits.solenoidCurrent_A?.value : undefined);
  const least_V = device.leastVoltage_V ?? (isSolenoid ? profile?.limits.solenoidLeastVoltage_V?.value : undefined);
  const said = (value: number | undefined, kind: 'current' | 'voltage'): string => (value === undefined ? NOT_GIVEN : formatQuantity(value, kind, lengths));
  return {
    sign: { kind: isSolenoid ? 'solenoid' : 'load' },
    title: device.name || (isSolenoid ? 'Cylinder solenoid' : 'Device'),
    words: [
      `wired: ${device.wiring === 'unknown' ? NOT_GIVEN : WIRING_WORDS[device.wiring]}; ${device.distance_m === null ? `wire from the panel ${NOT_GIVEN}` : `${formatLength(device.distance_m, lengths)} from the panel, one way`}`,
      `current ${said(current_A, 'current')}; gets ${said(there?.voltage_V, 'voltage')}, needs ${said(least_V, 'voltage')}`,
    ],
    wire: device.distance_m === null || before_m === null ? NOT_GIVEN : `${isFirst ? 'from panel ' : ''}${formatLength(Math.max(0, device.distance_m - before_m), lengths)}`,
  };
}

const END_WORDS: Readonly<Record<Release['endOfLine'], string>> = {
  unknown: `its place is ${NOT_GIVEN}`,
  none: 'NONE: the panel does not watch over the wire',
  'before-last': 'stands BEFORE the last device: the wire behind it is not watched',
  'after-last': 'behind the last device: the panel watches over the whole wire',
};

/** The releasing circuit in the order of its wire: disconnect, devices, end of line. */
function releasing(reach: RiserReach, design: NetworkDesign, lengths: Settings['lengths']): RiserCircuit {
  const { release } = design.network;
  const switches = only(reach.devices, 'disconnect');
  const [first] = switches;
  const disconnect: RiserStation = first
    ? { sign: { kind: 'device', device: first }, title: `Disconnect of the release: ${names(switches)}`, words: [`${deviceFacts(first, lengths)}; place along the wire ${NOT_GIVEN}`], wire: '' }
    : { sign: { kind: 'missing' }, title: 'Disconnect of the release', words: [`${NOT_GIVEN}: none is drawn`], wire: '' };
  if (!release) return { stations: [disconnect, { sign: { kind: 'missing' }, title: 'Release device', words: [`${NOT_GIVEN}: the releasing circuit is not drawn up`], wire: NOT_GIVEN }] };
  const devices = [...release.devices].sort((a, b) => (a.distance_m ?? Infinity) - (b.distance_m ?? Infinity));
  const stations = devices.map((device, i) => deviceStation(device, i === 0 ? 0 : (devices[i - 1]?.distance_m ?? null), i === 0, design, lengths));
  const end: RiserStation = { sign: { kind: release.endOfLine === 'unknown' || release.endOfLine === 'none' ? 'missing' : 'end-of-line' }, title: 'End-of-line part', words: [END_WORDS[release.endOfLine]], wire: '' };
  const none: RiserStation[] = devices.length > 0 ? [] : [{ sign: { kind: 'missing' }, title: 'Release device', words: [`${NOT_GIVEN}: no device is on the circuit`], wire: NOT_GIVEN }];
  const at = release.endOfLine === 'before-last' ? Math.max(0, stations.length - 1) : stations.length;
  return { stations: [disconnect, ...none, ...stations.slice(0, at), end, ...stations.slice(at)] };
}

function pressureSwitch({ network }: NetworkDesign, lengths: Settings['lengths']): RiserCircuit {
  const { release, cylinders } = network;
  const where = Object.values(cylinders).map(({ name }) => name).join(', ') || `cylinders ${NOT_GIVEN}`;
  const known = release?.pressureSwitch;
  if (!known) return missing('Low-pressure switch', `${NOT_GIVEN}: at ${where}`);
  return { stations: [{ sign: { kind: 'pressure-switch' }, title: `Low-pressure switch at ${where}`, words: [`set at ${formatQuantity(gaugeOf_Pa(known.setPoint_Pa), 'gaugePressure', lengths)}; contact ${known.isClosedWhenCharged ? 'closed' : 'open'} while charged`], wire: '' }] };
}

function shutdowns({ enclosures }: RiserReach): RiserCircuit {
  const rows = enclosures.flatMap((enclosure) => Object.values(enclosure.shutdowns));
  if (rows.length === 0) return missing('Shutdowns', `${NOT_GIVEN}: the release matrix has no row`);
  return { stations: [{ sign: { kind: 'contact' }, title: `Shutdowns: ${rows.length}, as the release matrix says`, words: [rows.map(({ name, kind }) => name || SHUTDOWN_WORDS[kind]).join(', ')], wire: '' }] };
}

/** All circuits of the panel that release a network or belong to it, from the first sign of a fire to the cylinder. */
export const riserCircuits = (reach: RiserReach, design: NetworkDesign, lengths: Settings['lengths']): RiserCircuit[] => [
  ...detection(reach),
  plain(reach, 'manual-release', 'Manual release', lengths),
  plain(reach, 'abort', 'Abort switch', lengths),
  plain(reach, 'sounder', 'Sounders and lights', lengths),
  shutdowns(reach),
  releasing(reach, design, lengths),
  pressureSwitch(design, lengths),
];

/** What is said of the panel, in its box. */
export function panelWords({ panels }: RiserReach, { network: { release }, battery, release: sums }: NetworkDesign, lengths: Settings['lengths']): { readonly title: string; readonly words: readonly string[] } {
  const said = (value: number | null | undefined, kind: 'current' | 'voltage' | 'time' | 'charge'): string => (value === null || value === undefined ? NOT_GIVEN : formatQuantity(value, kind, lengths));
  const yes = (answer: boolean | null | undefined): string => (answer === null || answer === undefined ? NOT_GIVEN : answer ? 'yes' : 'NO');
  return {
    title: panels.length > 0 ? `Control panel ${names(panels)}` : `Control panel: place ${NOT_GIVEN}`,
    words: [
      `end of battery: ${said(release?.supply_V, 'voltage')}`,
      `output: ${said(release?.panelCurrent_A, 'current')} for ${said(release?.panelPulse_s, 'time')}`,
      `battery: ${said(release?.battery?.capacity_Ah || null, 'charge')}${battery.isKnown ? '' : ', not worked out'}`,
      `listed for releasing: ${yes(release?.panel.isListed)}`,
      `with this solenoid: ${yes(release?.panel.isCompatible)}`,
      `voltage drop: ${sums.isKnown ? said(sums.sums.drop_V, 'voltage') : NOT_GIVEN}`,
    ],
  };
}

/** Wire and conduit of the releasing circuit, and what is known of the others. */
export function wireWords({ release }: NetworkDesign['network'], lengths: Settings['lengths']): string[] {
  const others = `Wire, lengths and conduit of the other circuits: ${NOT_GIVEN}.`;
  if (!release) return [`Wire of the releasing circuit: ${NOT_GIVEN}.`, others];
  const conduit = release.conduit ? `${release.conduit.kind} trade size ${release.conduit.size}` : `conduit ${NOT_GIVEN}`;
  const pulls = release.pulls.map(({ name, bends_rad }) => `${name} with ${bends_rad.length} ${bends_rad.length === 1 ? 'bend' : 'bends'}`);
  const longest = Math.max(0, ...release.devices.map(({ distance_m }) => distance_m ?? 0));
  return [
    `Releasing circuit: ${release.wireGauge} AWG copper, ${release.stranding}; ${conduit}; pulls: ${pulls.length > 0 ? pulls.join(', ') : NOT_GIVEN}; run to the last device ${longest > 0 ? formatLength(longest, lengths) : NOT_GIVEN}.`,
    others,
  ];
}
