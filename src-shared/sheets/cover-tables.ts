import type { Calculation } from '../calculations/lines/calculation.ts';
import { ALTITUDE_WORDS, CONSTANTS_WORDS, DESIGN_SET_WORDS, EXTRACT_WORDS, HOLD_MODEL_WORDS, JUDGED_BY_WORDS, LAST_SUPPORT_WORDS, LOCK_OUT_WORDS, LOGARITHM_WORDS, LOSS_SET_WORDS, PROCESS_WORDS, SEISMIC_WORDS, SPECIFICATION_WORDS, STRESS_SET_WORDS, SUPPORT_TABLE_WORDS, VENT_FLOW_WORDS, VENT_TEMPERATURE_WORDS } from '../calculations/lines/basis-words.ts';
import type { Derived } from '../derived/derived.ts';
import type { Plan } from '../model/plan.ts';
import { formatQuantity } from '../units/quantity-text.ts';
import { sentence } from './sheet-text.ts';
import type { Cell, Table } from './tables.ts';

const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

/** What the set is for, in words that follow from the plan: rooms, spaces, units, nozzles, pipe. */
export function scopeTable({ plan, spaces, networks, nozzles }: Derived): Table {
  const { lengths } = plan.settings;
  const rows: string[] = [];
  for (const room of spaces.filter(({ kind, isProtected }) => kind === 'room' && isProtected)) {
    const own = spaces.filter(({ enclosure, isProtected }) => enclosure.id === room.enclosure.id && isProtected);
    const isKnown = own.every(({ grossVolume_m3 }) => grossVolume_m3 !== undefined);
    const volume = isKnown ? `gross volume ${formatQuantity(own.reduce((sum, { grossVolume_m3 = 0 }) => sum + grossVolume_m3, 0), 'volume', lengths)}` : 'gross volume not known';
    const voids = own.filter(({ kind }) => kind !== 'room').map(({ kind }) => (kind === 'under-floor' ? 'the space under its floor' : 'the space over its ceiling'));
    const served = nozzles.filter(({ space }) => space?.enclosure.id === room.enclosure.id);
    const through = [...new Set(served.map(({ network }) => network.network.name))];
    rows.push(`${room.name}${voids.length > 0 ? `, with ${voids.join(' and ')}` : ''}: ${volume}, ${served.length === 0 ? 'no nozzle drawn' : `${counted(served.length, 'nozzle')} on ${through.join(', ')}`}.`);
  }
  const cylinders = networks.reduce((sum, { network }) => sum + Object.keys(network.cylinders).length, 0);
  const units = [...new Set(networks.flatMap(({ profile }) => (profile ? [profile.name] : [])))];
  if (networks.length > 0) rows.push(`In all ${counted(networks.length, 'network')} of pipe, ${counted(cylinders, 'cylinder')} of nitrogen, ${counted(nozzles.length, 'nozzle')}. Unit: ${units.length > 0 ? units.join(', ') : 'profile lost'}.`);
  rows.push('The set shows where everything goes, what it is built of, how it was worked out, what was found, and what is tested before it is put in service.');
  rows.push('Not part of it: fire detection beyond what is drawn, the structure, the tightness test of the rooms, work on other trades’ services.');
  return { title: 'Scope of the work', shortTitle: 'Scope', columns: [{ head: '' }, { head: '', isWide: true }], rows: rows.map((words) => ['•', words]), isPlain: true };
}

/** The adopted code, and wherever editions differ the method that this plan follows. */
export function basisTable({ info, basis }: Plan): Table {
  const rows: readonly (readonly [string, string])[] = [
    ['Adopted code', [info.code, info.edition].map((words) => words.trim()).filter(Boolean).join(', edition ') || 'not entered'],
    ['Design concentration, people, limits', `${DESIGN_SET_WORDS[basis.designSet]}; people judged by ${JUDGED_BY_WORDS[basis.exposureBy]}`],
    ['Agent quantity', [CONSTANTS_WORDS[basis.constants], LOGARITHM_WORDS[basis.logarithm], ALTITUDE_WORDS[basis.altitudeMethod]].join('; ')],
    ['Relief vent', [VENT_FLOW_WORDS[basis.ventFlow], VENT_TEMPERATURE_WORDS[basis.ventTemperature]].join('; ')],
    ['Hold', `${HOLD_MODEL_WORDS[basis.holdModel]}, ${Math.round(basis.holdTime_s / 6) / 10} min, at least ${basis.holdEnd_pct} % of the design concentration left`],
    ['Discharge', [PROCESS_WORDS[basis.cylinderProcess], LOSS_SET_WORDS[basis.lossSet]].join('; ')],
    ['Pipe', [SPECIFICATION_WORDS[basis.pipeSpecification], STRESS_SET_WORDS[basis.stressSet]].join('; ')],
    ['Supports', [SUPPORT_TABLE_WORDS[basis.supportTable], LAST_SUPPORT_WORDS[basis.lastSupport]].join('; ')],
    ['Earthquakes', SEISMIC_WORDS[basis.seismic]],
    ['Lock-out', LOCK_OUT_WORDS[basis.lockOutValve]],
    ['After a discharge', EXTRACT_WORDS[basis.extract]],
  ];
  return { title: 'Codes and basis of design', shortTitle: 'Codes', columns: [{ head: '', font: 'bold', most_mm: 40 }, { head: '', isWide: true }], rows: rows.map(([what, words]) => [what, sentence(words)]), isPlain: true };
}

/** "Net volume" of "Net volume, V": the signs of the formulas stand beside them, on the calculation sheets. */
const withoutSign = (label: string): string => label.replace(/, (?:\w{1,2}|\w+_\w+)$/u, '');

/** The results that are looked for first, as on the calculation sheets. */
export function resultsTable(calculations: readonly Calculation[]): Table {
  const rows = calculations.flatMap(({ title, subjectName, lines }) =>
    lines.filter(({ isMain }) => isMain).map((line, i): Cell[] => [i === 0 ? subjectName : '', i === 0 ? title : '', withoutSign(line.label), { kind: 'bold', words: line.result }]),
  );
  return {
    title: 'Design at a glance',
    shortTitle: 'Design',
    note: 'Formulas, numbers and sources stand on the calculation sheets.',
    columns: [{ head: 'Of', most_mm: 24 }, { head: 'Sum', most_mm: 26 }, { head: 'What', most_mm: 44, isWide: true }, { head: 'Result', most_mm: 62 }],
    rows,
    repeated: 2,
    isTight: true,
  };
}

/** Who is answerable for what. Source: usual parting of the work (common practice). */
export function responsibilityTable({ info }: Plan): Table {
  const named = (name: string): string => name.trim() || 'not entered';
  return {
    title: 'Who is responsible for what',
    shortTitle: 'Responsibility',
    note: 'As the work is usually parted (common practice); contract, code and authority decide.',
    columns: [{ head: 'Who', font: 'bold' }, { head: 'Name', most_mm: 40 }, { head: 'Answers for', isWide: true }],
    rows: [
      ['Designer', named(info.drawnBy), 'Layout, sums, this set; every change beyond the room to move.'],
      ['Checker', named(info.checkedBy), 'A second look at layout, sums and findings before issue.'],
      ['Approver', named(info.approvedBy), 'Release of the set for the work; the authority keeps its own approval.'],
      ['Installer', '', 'Measuring before cutting, building as drawn, hold points, the field sheet.'],
      ['Electrician', '', 'Releasing circuit, shutdowns and alarms; dead and proved before terminals.'],
      ['Structural engineer', '', 'Wall, anchors, slabs, bracing, room pressure.'],
      ['Owner', named(info.client), 'Tight room, doors and dampers that close, use as entered, service, instruction of people.'],
    ],
  };
}

/** Short forms that the sheets use. */
const ABBREVIATIONS: readonly (readonly [string, string])[] = [
  ['C1, N1, P1', 'cylinder, nozzle, pipe mark, by number'],
  ['A, B, C …', 'corners of a room on the field sheet'],
  ['H1 to H12', 'hold points; W: witnessed'],
  ['+8\'-6"', 'height above the finished floor of the level; − below it'],
  ['ø', 'diameter'],
  ['Sch', 'schedule of pipe'],
  ['AWG', 'wire gauge'],
  ['dBA, cd', 'loudness, light'],
  ['Ah', 'charge of a battery'],
  ['Tol. −/+', 'how much less and more a dimension may come out'],
  ['Rev.', 'revision; a triangle names the present one'],
];

/** What short words on the sheets stand for. */
export const abbreviationTable = (): Table => ({
  title: 'Abbreviations',
  columns: [{ head: '', font: 'bold' }, { head: '', isWide: true }],
  rows: ABBREVIATIONS.map(([short, words]) => [short, words]),
  isPlain: true,
  isTight: true,
});
