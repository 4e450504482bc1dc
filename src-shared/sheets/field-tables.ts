import type { Derived } from '../derived/derived.ts';
import { toMillimetres } from '../units/convert.ts';
import { formatLength } from '../units/length-text.ts';
import { FIELD_ROW_mm } from './cautions.ts';
import { faceName } from '../derived/datum.ts';
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
}

/** Every dimension of the set that is measured on site, in the order of the nozzle schedule. */
export function fieldDimensions(derived: Derived): FieldDimension[] {
  return nozzlePlaces(derived).flatMap(({ nozzle, datum, fromFaces_m }) => {
    const { at, ref, localCeiling_m } = nozzle;
    const name = nozzleName(derived, nozzle);
    const rows: FieldDimension[] = [];
    const add = (key: string, from: string, to: string, planned_m: number): void => {
      rows.push({ id: `${ref.network}/${ref.id}/${key}`, name: `${name} ${'abcd'.charAt(rows.length)}`, from: sentence(from), to, planned_m });
    };
    if (datum && fromFaces_m) {
      add('first', faceName(datum.faces[0]), 'orifice axis', fromFaces_m[0]);
      add('second', faceName(datum.faces[1]), 'orifice axis', fromFaces_m[1]);
    }
    if (at) add('height', 'finished floor', 'orifice', at.z);
    if (at && localCeiling_m !== undefined) add('drop', nozzle.space?.kind === 'under-floor' ? 'finished floor above' : 'ceiling', 'orifice', localCeiling_m - at.z);
    return rows;
  });
}

const BLANK_ROWS = 2;

/** The sheet that a fitter fills in: planned against measured, with room to write. */
export function fieldTable(derived: Derived): Table {
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
  const rows = fieldDimensions(derived).map(({ id, name, from, to, planned_m }) => {
    const measured = measurements[id];
    return [
      name,
      from,
      to,
      formatLength(planned_m, lengths),
      String(Math.round(toMillimetres(planned_m))),
      '',
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
