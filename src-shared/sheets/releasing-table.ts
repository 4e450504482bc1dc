import type { Design, NetworkDesign } from '../calculations/design/design.ts';
import { END_OF_LINE_WORDS, WIRING_WORDS } from '../model/circuit-words.ts';
import type { Release, ReleaseDevice, Settings } from '../model/plan.ts';
import { formatLength } from '../units/length-text.ts';
import { formatQuantity } from '../units/quantity-text.ts';
import type { Cell, Table } from './tables.ts';

const NOT_KNOWN = 'not known';

const known = (value: number | null | undefined, kind: 'current' | 'voltage' | 'time' | 'charge', lengths: Settings['lengths']): string => (value === null || value === undefined ? NOT_KNOWN : formatQuantity(value, kind, lengths));
const answered = (answer: boolean | null): string => (answer === null ? NOT_KNOWN : answer ? 'yes' : 'NO');

/** Devices in the order in which the wire reaches them; those whose place on it is not known last. */
const alongWire = (devices: readonly ReleaseDevice[]): ReleaseDevice[] => [...devices].sort((a, b) => (a.distance_m ?? Infinity) - (b.distance_m ?? Infinity));

function deviceRows({ name: network, network: { release }, profile, release: sums }: NetworkDesign, lengths: Settings['lengths']): Cell[][] {
  if (!release) return [[network, '', 'releasing circuit not drawn up', '', '', '', '', '']];
  if (release.devices.length === 0) return [[network, '', 'no device on the circuit', '', '', '', '', '']];
  return alongWire(release.devices).map((device, i) => {
    const there = sums.isKnown ? sums.sums.devices.find(({ id }) => id === device.id) : undefined;
    const isSolenoid = device.kind === 'solenoid';
    const current_A = device.current_A ?? (isSolenoid ? profile?.limits.solenoidCurrent_A?.value : undefined);
    const least_V = device.leastVoltage_V ?? (isSolenoid ? profile?.limits.solenoidLeastVoltage_V?.value : undefined);
    return [
      i === 0 ? network : '',
      String(i + 1),
      device.name || (isSolenoid ? 'Solenoid' : 'Device'),
      device.wiring === 'tapped' ? WIRING_WORDS.tapped.toUpperCase() : WIRING_WORDS[device.wiring],
      device.distance_m === null ? NOT_KNOWN : formatLength(device.distance_m, lengths),
      known(current_A, 'current', lengths),
      known(there?.voltage_V, 'voltage', lengths),
      known(least_V, 'voltage', lengths),
    ];
  });
}

/** What is said of a circuit besides its devices: a sentence for the foot of the table. */
function circuitWords(network: string, release: Release, lengths: Settings['lengths']): string {
  const { battery, conduit, panel, endOfLine } = release;
  const said = [
    `${release.wireGauge} AWG copper, ${release.stranding}, ${conduit ? `in ${conduit.kind} trade size ${conduit.size}` : 'conduit not chosen'}`,
    `panel at the end of its battery ${formatQuantity(release.supply_V, 'voltage', lengths)}, releasing output ${known(release.panelCurrent_A, 'current', lengths)} for ${known(release.panelPulse_s, 'time', lengths)}`,
    `end-of-line part: ${END_OF_LINE_WORDS[endOfLine]}`,
    `taking the actuator off shows at the panel: ${answered(release.isActuatorWatched)}`,
    `panel listed for releasing: ${answered(panel.isListed)}, with this solenoid: ${answered(panel.isCompatible)}, by: ${panel.listing.trim() || NOT_KNOWN}`,
    battery ? `battery ${known(battery.capacity_Ah || null, 'charge', lengths)}, ${known(battery.standby_A || null, 'current', lengths)} standing by, ${known(battery.alarm_A || null, 'current', lengths)} in alarm` : `battery ${NOT_KNOWN}`,
  ];
  return `${network}: ${said.join('; ')}.`;
}

/** The releasing circuits as an electrician wires them: every device along its wire, and what is said of panel, battery and supervision. Without rows while none is drawn up. */
export function releasingTable({ networks }: Design, lengths: Settings['lengths']): Table {
  const isAnyDrawn = networks.some(({ network }) => network.release !== null);
  return {
    title: 'Releasing circuits: terminals in the order of the wire',
    shortTitle: 'Releasing circuits',
    note: 'Connect the actuator last, with the panel clear and the circuit proved dead. Test on a dummy load with the actuator off.',
    columns: [
      { head: 'Network', font: 'bold' },
      { head: 'No.', align: 'right' },
      { head: 'Device', isWide: true },
      { head: 'Wired' },
      { head: 'Wire, one way', align: 'right', least_mm: 20 },
      { head: 'Current', align: 'right' },
      { head: 'Gets', align: 'right' },
      { head: 'Needs', align: 'right' },
    ],
    rows: isAnyDrawn ? networks.flatMap((network) => deviceRows(network, lengths)) : [],
    repeated: 1,
    foot: networks.flatMap(({ name, network: { release } }) => (release ? [{ kind: 'words' as const, words: circuitWords(name, release, lengths) }] : [])),
  };
}
