import type { CalculationTopic } from '#shared/calculations/lines/calculation';
import type { Enclosure, Network, Plan, Ref, RefOf } from '#shared/model/plan';
import { thingName } from '#shared/model/thing-name';
import { LIMIT_CATALOGUE, type LimitKey } from '#shared/profile/limit-catalogue';
import type { SumSubject } from './sum-subjects.ts';

/** Where something that a sum rests on is entered. */
export type MissingField =
  | { readonly kind: 'field'; readonly on: Ref; /** Label of the field on the form, or what its button says. */ readonly label: string; readonly text: string }
  | { readonly kind: 'basis'; /** Label of the choice. */ readonly label: string; readonly text: string }
  | { readonly kind: 'limit'; readonly limit: LimitKey; readonly text: string }
  | { readonly kind: 'tool'; readonly action: string; readonly text: string };

const onForm = (on: Ref, label: string, text: string): MissingField => ({ kind: 'field', on, label, text });

function aboutAgent(at: RefOf<'enclosure'>, enclosure: Enclosure): MissingField[] {
  return [
    ...(enclosure.height_m === null ? [onForm(at, 'Floor to ceiling', 'Enter the height')] : []),
    ...(enclosure.hazardClass === 'unknown' ? [onForm(at, 'What can burn', 'Say what can burn')] : []),
    ...(enclosure.concentration_pct === null ? [onForm(at, 'Design concentration', 'Enter the design concentration')] : []),
    ...(enclosure.temperature === null ? [onForm(at, 'Coldest', 'Enter the temperatures')] : []),
    ...(enclosure.altitude_m === null ? [onForm(at, 'Height above the sea', 'Enter the height above the sea')] : []),
  ];
}

function aboutPeople(at: RefOf<'enclosure'>, { people, occupancy }: Enclosure): MissingField[] {
  return [
    ...(occupancy === 'unknown' ? [onForm(at, 'People', 'Say who is in the room')] : []),
    ...(people.egress_s === null ? [onForm(at, 'Time to leave', 'Enter the time to leave')] : []),
    ...(people.delay_s === null ? [onForm(at, 'Delay before discharge', 'Enter the delay')] : []),
  ];
}

function aboutVent(plan: Plan, at: RefOf<'enclosure'>, enclosure: Enclosure): MissingField[] {
  const owner = { level: at.level, enclosure: at.id };
  const open = enclosure.outline.flatMap((corner, i): MissingField[] =>
    corner.wall.allowablePressure_Pa === null ? [onForm({ kind: 'wall', ...owner, id: corner.id }, 'Pressure it stands', `Enter what wall ${i + 1} stands`)] : [],
  );
  const walls = open.length > 1 ? [onForm(at, 'All walls bear', 'Enter what all walls bear')] : open;
  const vents = Object.values(enclosure.openings).flatMap((opening): MissingField[] => {
    const ref: Ref = { kind: 'opening', ...owner, id: opening.id };
    return opening.kind === 'relief-vent' && opening.freeArea_m2 === null ? [onForm(ref, 'Free area', `Enter the free area of ${thingName(plan, ref)}`)] : [];
  });
  return [...walls, ...vents];
}

function aboutHold(at: RefOf<'enclosure'>, { leakage, lowestProtected_m }: Enclosure): MissingField[] {
  return [
    ...(leakage.kind === 'unknown' ? [onForm(at, 'What is known of the leaks', 'Say what is known of the leaks')] : []),
    ...(leakage.kind === 'door-fan' ? [onForm(at, 'Pressure difference', 'Enter the door-fan readings')] : []),
    ...(lowestProtected_m === null ? [onForm(at, 'Lowest thing to protect', 'Enter the lowest thing to protect')] : []),
  ];
}

const LIMITS: Partial<Record<CalculationTopic, readonly LimitKey[]>> = {
  agent: ['agentMass_kg'],
  people: ['agentMass_kg'],
  discharge: ['cylinderVolume_m3', 'fillPressure_Pa', 'nozzleCoefficient', 'regulatorPressure_Pa'],
  vent: ['peakFlow_kg_s'],
  strength: ['fillPressure_Pa', 'regulatorPressure_Pa'],
  supervision: ['fillPressure_Pa', 'lowPressureSwitch_Pa'],
  wiring: ['solenoidVoltage_V', 'solenoidCurrent_A', 'solenoidLeastVoltage_V'],
};

function aboutProfile(plan: Plan, networks: readonly Network[], topic: CalculationTopic): MissingField[] {
  const blank = new Set(networks.flatMap(({ profile }) => (LIMITS[topic] ?? []).filter((key) => plan.profiles[profile] && !plan.profiles[profile].limits[key])));
  return [...blank].map((limit) => ({ kind: 'limit', limit, text: `Enter from the manual: ${LIMIT_CATALOGUE[limit].label.toLowerCase()}` }));
}

const aboutNozzles = (networks: readonly Network[]): MissingField[] =>
  networks.flatMap((network) =>
    Object.values(network.nozzles).flatMap((nozzle): MissingField[] => (nozzle.orificeArea_m2 === null ? [onForm({ kind: 'nozzle', network: network.id, id: nozzle.id }, 'Area of all holes', `Enter the orifice of ${nozzle.name}`)] : [])),
  );

const aboutSupports = ({ id, supports, cylinders }: Network): MissingField[] => [
  ...(Object.keys(supports).length === 0 ? [onForm({ kind: 'network', id }, 'Place supports by the table', 'Place the supports')] : []),
  ...Object.values(cylinders).flatMap((cylinder): MissingField[] => {
    const ref: Ref = { kind: 'cylinder', network: id, id: cylinder.id };
    if (cylinder.mounting !== 'wall') return [];
    return [
      ...(cylinder.railHeight_m === null ? [onForm(ref, 'Rail above floor', `Enter the height of the rail of ${cylinder.name}`)] : []),
      ...(cylinder.anchors === null ? [onForm(ref, 'Kind of anchor', `Enter the anchors of ${cylinder.name}`)] : []),
    ];
  }),
];

function aboutRelease({ id, release }: Network, topic: 'wiring' | 'supervision'): MissingField[] {
  const ref: Ref = { kind: 'network', id };
  if (release === null) return [onForm(ref, 'Draw up the circuit', 'Draw up the releasing circuit')];
  if (topic === 'supervision') return release.pressureSwitch ? [] : [onForm(ref, 'Low-pressure switch turns at (absolute)', 'Enter the low-pressure switch')];
  return [
    ...(release.devices.some(({ distance_m }) => distance_m === null) ? [onForm(ref, 'Wire from the panel', 'Enter how long the wire is')] : []),
    ...(release.conduit === null ? [onForm(ref, 'Conduit', 'Choose the conduit')] : []),
    ...(release.conductors.length === 0 ? [onForm(ref, 'Add conductors', 'Enter the conductors')] : []),
    ...(release.panelCurrent_A === null ? [onForm(ref, 'Current it gives', 'Enter what the panel gives')] : []),
    ...(release.panelPulse_s === null ? [onForm(ref, 'For how long', 'Enter how long the panel gives it')] : []),
    ...(release.pulls.length === 0 ? [onForm(ref, 'Add a stretch of conduit', 'Enter how the conduit bends')] : []),
  ];
}

function aboutBattery({ basis }: Plan, { id, release }: Network): MissingField[] {
  const ref: Ref = { kind: 'network', id };
  if (release === null) return [onForm(ref, 'Draw up the circuit', 'Draw up the releasing circuit')];
  const { capacity_Ah, standby_A, alarm_A } = release.battery ?? { capacity_Ah: 0, standby_A: 0, alarm_A: 0 };
  return [
    ...(capacity_Ah === 0 ? [onForm(ref, 'Battery', 'Enter the battery')] : []),
    ...(standby_A === 0 ? [onForm(ref, 'Current while it stands by', 'Enter what the panel takes while it stands by')] : []),
    ...(alarm_A === 0 ? [onForm(ref, 'Current in alarm', 'Enter what the panel takes in alarm')] : []),
    ...(basis.batteryStandby_s === null ? [{ kind: 'basis' as const, label: 'Battery stands by for, hours', text: 'Enter how long the battery stands by' }] : []),
    ...(basis.batteryAlarm_s === null ? [{ kind: 'basis' as const, label: 'Then sounds the alarm for, minutes', text: 'Enter how long it sounds alarm' }] : []),
  ];
}

/** What the pipe network itself still lacks for a topic. */
function aboutNetworks(networks: readonly Network[], topic: CalculationTopic): MissingField[] {
  if (topic === 'discharge' || topic === 'vent') return aboutNozzles(networks);
  if (topic === 'supports') return [...networks.flatMap(aboutSupports), ...aboutNozzles(networks)];
  return topic === 'wiring' || topic === 'supervision' ? networks.flatMap((network) => aboutRelease(network, topic)) : [];
}

/** All fields of a topic that are still blank, nearest first. */
export function blankFields(plan: Plan, topic: CalculationTopic, subjects: readonly SumSubject[]): MissingField[] {
  const networks = subjects.flatMap((subject) => (subject.kind === 'network' ? (plan.networks[subject.id] ?? []) : []));
  const found = subjects.flatMap((subject): MissingField[] => {
    const enclosure = subject.kind === 'enclosure' ? plan.levels[subject.level]?.enclosures[subject.id] : undefined;
    if (subject.kind !== 'enclosure' || !enclosure) return [];
    switch (topic) {
      case 'agent':
        return aboutAgent(subject, enclosure);
      case 'people': {
        const allowed: MissingField[] = plan.basis.greatestDelay_s === null ? [{ kind: 'basis', label: 'Longest delay the authority allows', text: 'Enter the longest delay allowed' }] : [];
        return [...aboutAgent(subject, enclosure), ...aboutPeople(subject, enclosure), ...allowed];
      }
      case 'vent':
        return aboutVent(plan, subject, enclosure);
      case 'hold':
        return [...aboutAgent(subject, enclosure), ...aboutHold(subject, enclosure)];
      case 'discharge':
        return aboutAgent(subject, enclosure);
      default:
        return [];
    }
  });
  if (topic === 'battery') return networks.flatMap((network) => aboutBattery(plan, network));
  const supply: MissingField[] = networks.length === 0 && topic !== 'hold' ? [{ kind: 'tool', action: 'tool-nozzle', text: 'Hang a nozzle in the room' }] : aboutNetworks(networks, topic);
  return [...found, ...aboutProfile(plan, networks, topic), ...supply];
}

/** Not more than these stand under a sum at once; when they are filled the next come up. */
export const MOST = 3;

/** The next fields of a topic to fill. What is wrong otherwise, its sentence tells. */
export const missingFields = (plan: Plan, topic: CalculationTopic, subjects: readonly SumSubject[]): MissingField[] => blankFields(plan, topic, subjects).slice(0, MOST);
