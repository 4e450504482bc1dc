import type { DerivedLevel, DerivedNetwork, Space } from '../../derived/derived.ts';
import { devicesOf } from '../../derived/device-place.ts';
import { devicesOfKind } from '../../derived/devices-by-kind.ts';
import { remembered } from '../../derived/remember.ts';
import { distance_m } from '../../geometry/point.ts';
import { distanceToSegment_m } from '../../geometry/segment.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import type { Device } from '../../model/plan.ts';
import type { FindingInput, Place } from '../finding.ts';
import { type Answer, type Asked, defineRule, notChecked } from '../rule.ts';
import { perNetworkOnLevel } from '../subjects.ts';
import { together } from '../together.ts';

type Disconnect = Extract<Device, { kind: 'disconnect' }>;
type LockOut = Extract<Device, { kind: 'lock-out-valve' }>;

/** A disconnect this near to a cylinder belongs to its network [m]; common practice. */
const AT_CYLINDER_m = 2;
/** A valve this near to pipe or cylinder of a network is drawn in it [m]. */
const ON_PIPE_m = 0.5;

/** A network with what switches it off and shuts it. */
interface Isolated {
  readonly place: Place | undefined;
  readonly disconnects: readonly Disconnect[];
  /** Disconnects of the level that stand at no network. */
  readonly elsewhere: number;
  readonly valves: readonly LockOut[];
}

/** Devices that belong to some room of a level. */
const inRoomsOf = remembered((spaces: readonly Space[]): ReadonlySet<Device> => new Set(spaces.filter(({ kind }) => kind === 'room').flatMap(({ enclosure, level }) => devicesOf(level, enclosure.id).map(({ device }) => device))));

function isolation({ ref, network, nozzles, pipes }: DerivedNetwork, { level, spaces }: DerivedLevel): Asked<Isolated>[] {
  const cylinders = Object.values(network.cylinders).map(({ at }) => at);
  if (cylinders.length === 0 && pipes.length === 0) return [];
  const served = new Set(nozzles.flatMap(({ space }) => space?.enclosure.id ?? []));
  const placed = new Set([...served].flatMap((id) => devicesOf(level, id)).map(({ device }) => device));
  const all = devicesOfKind(level, 'disconnect');
  const inRooms = all.length > 0 ? inRoomsOf(spaces) : undefined;
  const isHere = (device: Disconnect): boolean => placed.has(device) || cylinders.some((at) => distance_m(at, device.at) <= AT_CYLINDER_m + LENGTH_SLACK_m);
  const isOnPipe = ({ at }: LockOut): boolean =>
    cylinders.some((cylinder) => distance_m(cylinder, at) <= ON_PIPE_m + LENGTH_SLACK_m) || pipes.some(({ from, to }) => distanceToSegment_m(at, { a: from, b: to }) <= ON_PIPE_m + LENGTH_SLACK_m);
  return [
    {
      subject: {
        place: cylinders.length > 0 ? { level: level.id, at: cylinders } : undefined,
        disconnects: all.filter(isHere),
        elsewhere: all.filter((device) => !isHere(device) && !inRooms?.has(device)).length,
        valves: devicesOfKind(level, 'lock-out-valve').filter(isOnPipe),
      },
      ref,
      name: network.name,
    },
  ];
}

const nameOf = ({ name }: Device, otherwise: string): string => (name ? `“${name}”` : otherwise);
const said = (known: boolean | null, open: string, kept: string, fault: string): Answer => (known === null ? notChecked(open) : { kind: 'judged', isKept: known, text: known ? kept : fault });

function disconnectAnswer({ disconnects, elsewhere }: Isolated): Answer {
  if (disconnects.length === 0) {
    if (elsewhere > 0) return notChecked('a disconnect is drawn on the level, but neither in a room that this network serves nor at its cylinders: which network it switches off cannot be told. Draw it where it stands.');
    return { kind: 'judged', isKept: false, text: 'No disconnect switches its release off while people work inside. Add one that is keyed and that the panel watches.' };
  }
  const answers = disconnects.map((device): Answer => {
    const name = nameOf(device, 'the disconnect');
    return together([
      said(device.isKeyed, `nobody has said whether ${name} needs a key.`, `Disconnect ${name} needs a key.`, `Disconnect ${name} needs no key: anybody can switch the protection off. Take a keyed one.`),
      said(device.isSupervised, `nobody has said whether the panel watches ${name}.`, 'The panel watches it.', `The panel does not watch ${name}: it may stay off and nobody knows. Let the panel watch it.`),
    ]);
  });
  const [first, ...others] = answers;
  return first ? together([first, ...others]) : notChecked('no disconnect is drawn.');
}

function valveAnswer({ valves }: Isolated, asked: BasisOfDesign['lockOutValve']): Answer {
  if (asked === 'unknown') return notChecked('the basis of design does not say whether the authority asks for a lock-out valve.');
  if (asked === 'required' && valves.length === 0) return { kind: 'judged', isKept: false, text: 'The authority asks for a lock-out valve, and none is drawn in its pipe. Add one that the panel watches.' };
  if (valves.length === 0) return { kind: 'judged', isKept: true, text: 'No lock-out valve is asked for.' };
  const [first, ...others] = valves.map((device): Answer => {
    const name = nameOf(device, 'the lock-out valve');
    return said(device.isSupervised, `nobody has said whether the panel watches ${name}.`, `The panel watches lock-out valve ${name}.`, `The panel does not watch lock-out valve ${name}: it may stay shut and nobody knows. Let the panel watch it.`);
  });
  return first ? together([first, ...others]) : notChecked('no lock-out valve is drawn.');
}

const yesNo = (known: boolean | null): string => (known === null ? 'not known' : known ? 'yes' : 'no');
const inputsOf = ({ disconnects, valves }: Isolated, asked: BasisOfDesign['lockOutValve']): FindingInput[] => [
  { label: 'Lock-out valve', value: asked === 'unknown' ? 'not known whether asked for' : asked === 'required' ? 'asked for' : 'not asked for', source: 'basis of design' },
  ...disconnects.map((device) => ({ label: device.name || 'Disconnect', value: `keyed: ${yesNo(device.isKeyed)}, watched: ${yesNo(device.isSupervised)}`, source: 'plan' })),
  ...valves.map((device) => ({ label: device.name || 'Lock-out valve', value: `watched: ${yesNo(device.isSupervised)}`, source: 'plan' })),
];

/**
 * S7: while people work inside the release is switched off by a keyed disconnect, and where the authority asks for it the
 * agent is shut off by a valve; the panel watches both.
 * A disconnect counts for the networks that serve the room in which or at whose door it stands, or whose cylinders are
 * within 2 m; a valve for the network in whose pipe it is drawn.
 * Measure: what the plan says of them.
 * Not checked: it has not been said, or not whether the authority asks for a valve. A fault of the other is reported even then.
 */
export const s07Disconnect = defineRule<Isolated>({
  id: 'S7',
  title: 'Disconnect and lock-out',
  severity: 'stop',
  measure: 'count',
  basis: {
    formula: 'a disconnect that is keyed and watched; a lock-out valve that is watched where the authority asks for one',
    source: 'NFPA 2001, disconnect switch and lock-out valve (memory); authority having jurisdiction',
    caution: 'A disconnect that works in the software of a panel is not enough. Lock out and tag out by the rules of the site before anybody works inside.',
  },
  subjects: perNetworkOnLevel(isolation),
  check(subject, { basis }) {
    const answer = together([disconnectAnswer(subject), valveAnswer(subject, basis.lockOutValve)]);
    const drawn = [...subject.disconnects, ...subject.valves].map(({ at }) => at);
    const place = subject.place && drawn.length > 0 ? { ...subject.place, at: drawn } : subject.place;
    if (answer.kind === 'not-checked') return { ...answer, place };
    return { ...answer, inputs: inputsOf(subject, basis.lockOutValve), place, cure: answer.isKept ? undefined : { kind: 'advice', text: 'Add a keyed disconnect that the panel watches, and a watched lock-out valve where one is asked for.' } };
  },
});
