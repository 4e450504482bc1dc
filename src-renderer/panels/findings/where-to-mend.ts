import type { CalculationTopic } from '#shared/calculations/lines/calculation';
import type { Derived } from '#shared/derived/derived';
import type { Network, Plan, Ref, RefOf } from '#shared/model/plan';
import { LIMIT_CATALOGUE, type LimitKey } from '#shared/profile/limit-catalogue';
import type { Finding } from '#shared/rules/finding';
import { type MissingField, MOST, blankFields } from '../sums/missing-fields.ts';
import { ABOUT_ALARMS, mendAlarm } from './mend-alarms.ts';
import { ABOUT_NOZZLES, mendNozzle } from './mend-nozzles.ts';
import { ABOUT_ROOMS, mendRoom } from './mend-rooms.ts';
import { joinedTo, subjectOf } from '../sums/sum-subjects.ts';

/** The sum that a check waits for. */
const TOPICS: Readonly<Record<string, CalculationTopic>> = {
  E1: 'agent',
  E2: 'agent',
  E3: 'people',
  E4: 'people',
  E5: 'discharge',
  E6: 'hold',
  E7: 'hold',
  E8: 'vent',
  E9: 'vent',
  S1: 'people',
  S2: 'people',
  N20: 'discharge',
  N21: 'discharge',
  P6: 'discharge',
  P22: 'discharge',
  L1: 'wiring',
  L2: 'wiring',
  L3: 'wiring',
  L4: 'wiring',
  L6: 'supervision',
};

/** Checks that ask for a few fields of their sum, whatever else that sum lacks: their labels. */
const ASKED: Readonly<Record<string, readonly string[]>> = {
  E7: ['What is known of the leaks', 'Pressure difference'],
  E9: ['All walls bear', 'Pressure it stands'],
  L1: ['Draw up the circuit', 'Wire from the panel'],
  L2: ['Current it gives', 'For how long'],
  L3: ['Conduit', 'Add conductors'],
  L4: ['Add a stretch of conduit'],
  S2: ['Delay before discharge', 'Time to leave'],
};

/** Checks of supports that have nothing to judge while none is drawn. */
const ABOUT_SUPPORTS: ReadonlySet<string> = new Set(['P12', 'P18', 'P19', 'P20', 'P21', 'P22', 'P23']);

/** The field of the thing itself that a check is about, by rule: its label and what the button says. */
const OWN_FIELDS: Readonly<Record<string, readonly [string, string]>> = {
  C1: ['Coldest', 'Enter how cold and warm it gets there'],
  C2: ['Load-bearing', 'Say what the wall behind it bears'],
  C3: ['Kind of anchor', 'Enter its anchors'],
  C4: ['Rail above floor', 'Change the height of its rail'],
  C8: ['Gauge above floor', 'Change its gauge'],
  C10: ['Sun, heat, water, vehicles, weather', 'Say what it is exposed to'],
  C13: ['Add a restraint', 'Go to its restraints'],
  E3: ['Longest stay in the gas to design for', 'Choose the stay to design for'],
  E4: ['Coldest', 'Look at the temperatures'],
  N20: ['Orifice of the unit', 'Choose its orifice'],
  P26: ['Bonding to earth', 'Say whether the pipe is bonded'],
  P34: ['Marking along the pipe', 'Say how the pipe is marked and finished'],
  S1: ['Time to leave', 'Look at the times to leave and to wait'],
  S2: ['Delay before discharge', 'Change the delay'],
};

const networkOf = (plan: Plan, on: Ref) => ('network' in on ? plan.networks[on.network] : on.kind === 'network' ? plan.networks[on.id] : undefined);

/** Checks of the discharge assembly, which is entered on the form of its network: label and what the button says. */
const ASSEMBLY_FIELDS: Readonly<Record<string, readonly [string, string]>> = {
  C9: ['Lay it out', 'Look at the discharge assembly'],
  P31: ['Add relief valve', 'List a relief valve'],
  P32: ['Lay it out', 'Lay the hose out'],
  P33: ['Discharge assembly', 'Look at the discharge assembly'],
};

/** What a check of the discharge assembly waits for: a figure of the manual, its parts, or the places on its form. */
function assemblyFields(plan: Plan, network: Network, rule: string, [label, text]: readonly [string, string]): MissingField[] {
  const limits = plan.profiles[network.profile]?.limits;
  const needed: readonly LimitKey[] = rule === 'P32' ? ['hoseBendRadius_m', 'hoseReach_m', 'outletHeight_m'] : rule === 'C9' ? ['outletHeight_m', 'hoseReach_m'] : [];
  const blank = limits ? needed.filter((key) => !limits[key]) : [];
  if (blank.length > 0) return blank.map((limit) => ({ kind: 'limit', limit, text: `Enter from the manual: ${LIMIT_CATALOGUE[limit].label.toLowerCase()}` }));
  const on = { kind: 'network' as const, id: network.id };
  return [network.assembly.length === 0 ? { kind: 'field', on, label: 'Add hose', text: 'List the parts of the discharge assembly' } : { kind: 'field', on, label, text }];
}

/** The vent of a room that has too little, or a first one. */
function ventOf(plan: Plan, on: Ref): MissingField[] {
  if (on.kind !== 'enclosure') return [];
  const vent = Object.values(plan.levels[on.level]?.enclosures[on.id]?.openings ?? {}).find(({ kind }) => kind === 'relief-vent');
  return vent ? [{ kind: 'field', on: { kind: 'opening', level: on.level, enclosure: on.id, id: vent.id }, label: 'Free area', text: 'Change the free area of its vent' }] : [{ kind: 'tool', action: 'add-vent', text: 'Put a relief vent in a wall' }];
}

/** Notes that are cleared by something that is typed. */
const MENDED_NOTES: ReadonlySet<string> = new Set(['E16', 'N23', 'P34', 'S10']);

/** Bracing is said in the basis of design; then at the supports that brace. */
function bracingOf(plan: Plan, on: Ref): MissingField[] {
  if (plan.basis.seismic === 'unknown') return [{ kind: 'basis', label: 'Earthquake bracing', text: 'Say whether bracing is required' }];
  const network = networkOf(plan, on);
  const support = Object.values(network?.supports ?? {}).find(({ brace }) => brace === 'none');
  return network && support ? [{ kind: 'field', on: { kind: 'support', network: network.id, id: support.id }, label: 'Earthquake brace', text: 'Say how a support braces' }] : [];
}

/** What the battery of a panel still lacks; the battery itself when it is too small. */
function batteryFields(plan: Plan, { id }: Network): MissingField[] {
  const missing = blankFields(plan, 'battery', [{ kind: 'network', id }]);
  return missing.length > 0 ? missing.slice(0, MOST) : [{ kind: 'field', on: { kind: 'network', id }, label: 'Battery', text: 'Change the battery' }];
}

/** An electrical panel of which nobody said where its front is. */
const isBlindPanel = (plan: Plan, on: Ref): boolean => on.kind === 'obstruction' && plan.levels[on.level]?.obstructions[on.id]?.front_rad === null;

/** The field of a penetration that is the first to be blank; its sleeve when none is. */
function crossingLack(plan: Plan, { level, enclosure, id }: RefOf<'opening'>): string {
  const crossing = plan.levels[level]?.enclosures[enclosure]?.openings[id]?.crossing;
  if (!crossing || crossing.sleeve_m === null) return 'Inside of the sleeve';
  if (crossing.rating.trim() === '') return 'Fire rating of the wall';
  return crossing.seal.trim() === '' ? 'Fire-stop system' : 'Inside of the sleeve';
}

/** Fields and tools with which a finding is cleared, nearest first; none where its text or its cure says enough. */
export function whereToMend(derived: Derived, { rule, subject, verdict, cure, place }: Finding): MissingField[] {
  if (rule === 'D3' && verdict !== 'ok') return [{ kind: 'tool', action: 'info', text: 'Enter the project data' }];
  if (rule === 'D7' && verdict !== 'ok') return [{ kind: 'tool', action: 'issue-set', text: 'Issue a new set' }, { kind: 'tool', action: 'compare-issues', text: 'See what has changed' }];
  if (verdict === 'ok' || (verdict === 'note' && !MENDED_NOTES.has(rule)) || subject.kind === 'plan' || subject.kind === 'profile') return [];
  const { plan } = derived;
  const network = networkOf(plan, subject);
  if (cure?.kind === 'place-supports') return [];
  if (rule === 'P23' && plan.basis.seismic === 'unknown') return bracingOf(plan, subject);
  if (network && ABOUT_SUPPORTS.has(rule) && Object.keys(network.supports).length === 0) return [{ kind: 'field', on: { kind: 'network', id: network.id }, label: 'Place supports by the table', text: 'Place the supports' }];
  if (rule === 'P23') return bracingOf(plan, subject);
  if (rule === 'P29' && subject.kind === 'opening') return [{ kind: 'field', on: subject, label: crossingLack(plan, subject), text: 'Enter sleeve, rating and seal' }];
  if (ABOUT_NOZZLES.has(rule)) return mendNozzle(derived, { rule, subject, verdict });
  if (ABOUT_ALARMS.has(rule)) return mendAlarm(plan, { rule, subject, verdict, place });
  if (ABOUT_ROOMS.has(rule)) return cure && cure.kind !== 'advice' ? [] : mendRoom(plan, { rule, subject, verdict });
  if (rule === 'L9') return network ? batteryFields(plan, network) : [];
  const topic = TOPICS[rule];
  const about = subjectOf(subject);
  if (rule === 'E8' && verdict === 'stop') return ventOf(plan, subject);
  const blank = (topic && about ? blankFields(plan, topic, joinedTo(derived, about)) : []).filter((field) => field.kind !== 'basis' && (rule !== 'N20' || field.kind !== 'field' || field.on.kind !== 'nozzle'));
  const asked = blank.filter((field) => field.kind === 'field' && ASKED[rule]?.includes(field.label));
  const missing = asked.length > 0 ? asked : blank;
  if (missing.length > 0) return missing.slice(0, MOST);
  if (rule === 'P22' && network) return [{ kind: 'field', on: { kind: 'network', id: network.id }, label: 'Each support bears', text: 'Enter what the supports bear' }];
  if (rule === 'C11') return verdict === 'not-checked' && isBlindPanel(plan, subject) ? [{ kind: 'field', on: subject, label: 'Front faces', text: 'Say which way it opens' }] : [];
  if (rule === 'C13' && verdict === 'not-checked') return [{ kind: 'field', on: subject, label: 'Rail above floor', text: 'Enter the height of its rail' }];
  const part = ASSEMBLY_FIELDS[rule];
  if (part && network) return assemblyFields(plan, network, rule, part);
  const own = OWN_FIELDS[rule];
  return own ? [{ kind: 'field', on: subject, label: own[0], text: own[1] }] : [];
}
