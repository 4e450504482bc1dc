import type { CalculationTopic } from '#shared/calculations/lines/calculation';
import type { Enclosure, Network, Plan, Ref, RefOf } from '#shared/model/plan';
import { thingName } from '#shared/model/thing-name';
import { LIMIT_CATALOGUE, type LimitKey } from '#shared/profile/limit-catalogue';
import type { SumSubject } from './sum-subjects.ts';

/** Where something that a sum rests on is entered. */
export type MissingField =
  | { readonly kind: 'field'; readonly on: Ref; /** Label of the field on the form. */ readonly label: string; readonly text: string }
  | { readonly kind: 'limit'; readonly limit: LimitKey; readonly text: string }
  | { readonly kind: 'tool'; readonly action: string; readonly text: string };

const onForm = (on: Ref, label: string, text: string): MissingField => ({ kind: 'field', on, label, text });

function aboutAgent(at: RefOf<'enclosure'>, enclosure: Enclosure): MissingField[] {
  return [
    ...(enclosure.height_m === null ? [onForm(at, 'Floor to ceiling', 'Enter the height')] : []),
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
  const walls = enclosure.outline.flatMap((corner, i): MissingField[] =>
    corner.wall.allowablePressure_Pa === null ? [onForm({ kind: 'wall', ...owner, id: corner.id }, 'Pressure it stands', `Enter what wall ${i + 1} stands`)] : [],
  );
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

const aboutRelease = (networks: readonly Network[]): MissingField[] => networks.map(({ id }) => onForm({ kind: 'network', id }, 'Supply at the end of battery', 'Enter the releasing circuit'));

/** Not more than these stand under a sum at once; when they are filled the next come up. */
const MOST = 3;

/** The fields of a topic that are still blank, nearest first. What is wrong otherwise, its sentence tells. */
export function missingFields(plan: Plan, topic: CalculationTopic, subjects: readonly SumSubject[]): MissingField[] {
  const networks = subjects.flatMap((subject) => (subject.kind === 'network' ? (plan.networks[subject.id] ?? []) : []));
  const found = subjects.flatMap((subject): MissingField[] => {
    const enclosure = subject.kind === 'enclosure' ? plan.levels[subject.level]?.enclosures[subject.id] : undefined;
    if (subject.kind !== 'enclosure' || !enclosure) return [];
    switch (topic) {
      case 'agent':
        return aboutAgent(subject, enclosure);
      case 'people':
        return [...aboutAgent(subject, enclosure), ...aboutPeople(subject, enclosure)];
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
  const supply: MissingField[] =
    networks.length === 0 && topic !== 'hold' ? [{ kind: 'tool', action: 'tool-nozzle', text: 'Hang a nozzle in the room' }] : topic === 'discharge' ? aboutNozzles(networks) : topic === 'wiring' ? aboutRelease(networks.filter(({ release }) => release === null)) : [];
  return [...found, ...aboutProfile(plan, networks, topic), ...supply].slice(0, MOST);
}
