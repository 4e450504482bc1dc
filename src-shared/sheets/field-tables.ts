import type { Derived } from '../derived/derived.ts';
import type { FieldRoomAnswer } from '../margins/field-room.ts';
import { refKey } from '../model/plan.ts';
import { toMillimetres } from '../units/convert.ts';
import { formatLength } from '../units/length-text.ts';
import { FIELD_ROW_mm } from './cautions.ts';
import { faceName } from '../derived/datum.ts';
import { shiftText } from './room-table.ts';
import { nozzleName, nozzlePlaces } from './schedules.ts';
import { sentence } from './sheet-text.ts';
import type { Table } from './tables.ts';

/** A dimension that the fitter measures, with the id under which the plan's site record keeps it. */
export interface FieldDimension {
  /** `<network>/<nozzle>/<first, second, height or drop>`. */
  readonly id: string;
  /** As printed: the nozzle and a letter, e.g. "N1 a". */
  readonly name: string;
  readonly from: string;
  readonly to: string;
  readonly planned_m: number;
  /** How much less and more it may come out with no other shift of the same nozzle but the other one off its faces [m]; undefined: ask. */
  readonly tolerance_m?: readonly [minus: number, plus: number];
}

/**
 * Every dimension of the set that is measured on site, in the order of the nozzle schedule.
 * @param rooms  where each nozzle may be put, for the tolerances; none are told when missing
 */
export function fieldDimensions(derived: Derived, rooms?: ReadonlyMap<string, FieldRoomAnswer>): FieldDimension[] {
  return nozzlePlaces(derived).flatMap(({ nozzle, datum, fromFaces_m }) => {
    const { at, ref, localCeiling_m } = nozzle;
    const name = nozzleName(derived, nozzle);
    const rows: FieldDimension[] = [];
    const answer = rooms?.get(refKey(ref));
    const room = answer?.isKnown ? answer.room : undefined;
    const add = (key: string, from: string, to: string, planned_m: number, tolerance_m?: FieldDimension['tolerance_m']): void => {
      rows.push({ tolerance_m, id: `${ref.network}/${ref.id}/${key}`, name: `${name} ${'abcd'.charAt(rows.length)}`, from: sentence(from), to, planned_m });
    };
    if (datum && fromFaces_m) {
      add('first', faceName(datum.faces[0]), 'orifice axis', fromFaces_m[0], room && [room.box.minus1_m, room.box.plus1_m]);
      add('second', faceName(datum.faces[1]), 'orifice axis', fromFaces_m[1], room && [room.box.minus2_m, room.box.plus2_m]);
    }
    if (at) add('height', 'finished floor', 'orifice', at.z, room && [at.z - room.heights.least_m, room.heights.greatest_m - at.z]);
    if (at && localCeiling_m !== undefined) add('drop', nozzle.space?.kind === 'under-floor' ? 'finished floor above' : 'ceiling', 'orifice', localCeiling_m - at.z, room && [room.heights.greatest_m - at.z, at.z - room.heights.least_m]);
    return rows;
  });
}

const BLANK_ROWS = 2;

/** The sheet that a fitter fills in: planned against measured, with room to write. */
export function fieldTable(derived: Derived, rooms?: ReadonlyMap<string, FieldRoomAnswer>): Table {
  const { measurements } = derived.plan.siteRecord;
  const { lengths } = derived.plan.settings;
  const columns = [
    { head: 'Dim.', font: 'bold' as const },
    { head: 'From datum' },
    { head: 'To' },
    { head: 'Planned', align: 'right' as const, font: 'bold' as const },
    { head: 'mm', align: 'right' as const },
    { head: 'Tol. −/+', least_mm: 16 },
    { head: 'Measured', least_mm: 24 },
    { head: 'Deviation', least_mm: 20 },
    { head: 'Pass, fail, re-check', least_mm: 22 },
    { head: 'By, time, instrument', least_mm: 34, isWide: true },
  ];
  const rows = fieldDimensions(derived, rooms).map(({ id, name, from, to, planned_m, tolerance_m }) => {
    const measured = measurements[id];
    return [
      name,
      from,
      to,
      formatLength(planned_m, lengths),
      String(Math.round(toMillimetres(planned_m))),
      tolerance_m ? shiftText(...tolerance_m, lengths) : 'ask',
      measured ? formatLength(measured.value_m, lengths) : '',
      measured ? formatLength(measured.value_m - planned_m, lengths) : '',
      '',
      measured ? [measured.by, measured.at, measured.instrument].filter(Boolean).join(', ') : '',
    ];
  });
  return {
    title: 'Field verification',
    note: 'Every dimension starts at the stated face, never at another nozzle. Take two readings. Plumb the drop points with a laser. Write in ink.',
    columns,
    rows: [...rows, ...Array.from({ length: BLANK_ROWS }, () => columns.map(() => ''))],
    rowHeight_mm: FIELD_ROW_mm,
  };
}
