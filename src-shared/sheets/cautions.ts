import { HOLD_POINTS } from '../model/hold-points.ts';
import { checkFields } from './field-form.ts';
import type { Table } from './tables.ts';

/** Printed on every sheet: what stands above it. */
export const STANDING =
  'Preliminary engineering. The manual of the unit, its listing, the adopted code and the judgement of licensed practice stand above this sheet.';

/** Printed once in a set. Source: usual safety practice for inert-gas systems (common practice). */
const CAUTIONS: readonly string[] = [
  'Nitrogen has no smell and gives no warning. Wear an oxygen meter; nobody stays in the room during a discharge or a puff test.',
  'A full cylinder is under high pressure. Keep the outlet cap on until the cylinder is strapped and piped; never stand in line with an outlet; never move a cylinder without its cap.',
  'Cylinders are heavy: two persons and a trolley. The wall behind the rail must carry the filled mass.',
  'Lock the release out while anybody works in the room. Connect the actuator last, with the panel clear and the circuit proved dead.',
  'Wear ear and eye protection at a test. Relief vents move.',
  'Measure every dimension from the datum faces, never from nozzle to nozzle. Check room, ceiling height and obstructions against the sheet before cutting pipe; report a difference before going on.',
  'Verify and mark the final direction of the holes after tightening.',
];

/** The cautions of a set. */
export const cautionsTable = (): Table => ({
  title: 'Cautions',
  columns: [{ head: '' }, { head: '', isWide: true }],
  rows: [STANDING, ...CAUTIONS].map((words) => ['•', words]),
  isPlain: true,
});

/** The hold points with fields for name and time; ticks from the plan's site record are kept. */
export const holdPointsTable = (checks: Readonly<Record<string, { readonly done: boolean; readonly by: string; readonly witness: string; readonly at: string }>>): Table => ({
  title: 'Hold points',
  note: 'The work stops at each until it is signed. W: witnessed.',
  columns: [
    { head: 'No.' },
    { head: 'What', isWide: true },
    { head: 'W' },
    { head: 'Done', least_mm: 12 },
    { head: 'By', least_mm: 28 },
    { head: 'Witness', least_mm: 28 },
    { head: 'Date and time', least_mm: 30 },
  ],
  rows: HOLD_POINTS.map(({ id, words, isWitnessed }) => {
    const check = checks[id];
    return [id, words, isWitnessed ? 'W' : '', ...checkFields(id, isWitnessed, check)];
  }),
  rowHeight_mm: FIELD_ROW_mm,
});

/** Height of a row to be written in by hand: 3/8 in. */
export const FIELD_ROW_mm = 9.6;
