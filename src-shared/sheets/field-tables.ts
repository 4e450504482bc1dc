import type { Derived } from '../derived/derived.ts';
import { type FieldDimension, fieldDimensionsOf } from '../derived/field-dimensions.ts';
import type { FieldRoom, FieldRoomAnswer } from '../margins/field-room.ts';
import { tapeDown_m } from '../margins/tape-down.ts';
import { refKey } from '../model/plan.ts';
import { toMillimetres } from '../units/convert.ts';
import { formIdentityOf } from '../site/form-identity.ts';
import { FIELD_ROW_mm } from './cautions.ts';
import { identityCell, measuredField, noteFields } from './field-form.ts';
import { shiftText } from './room-table.ts';
import { lengthText, sentence } from './sheet-text.ts';
import type { Table } from './tables.ts';

/** How much less and more a dimension may come out with no other shift of the same thing but the other one off its faces [m]. */
export type FieldTolerance = readonly [minus_m: number, plus_m: number];

function toleranceIn({ box, heights }: FieldRoom, { part, planned_m }: FieldDimension, height_m: number): FieldTolerance | undefined {
  switch (part) {
    case 'first':
      return [box.minus1_m, box.plus1_m];
    case 'second':
      return [box.minus2_m, box.plus2_m];
    case 'height':
      return [planned_m - heights.least_m, heights.greatest_m - planned_m];
    case 'drop':
      return [heights.greatest_m - height_m, height_m - heights.least_m];
    default:
      return undefined;
  }
}

/**
 * Tolerance of a measured dimension: that of a nozzle follows from the room it has; undefined: ask.
 * @param all    every dimension of the plan
 * @param rooms  where each nozzle may be put
 */
export function fieldTolerance(dimension: FieldDimension, all: readonly FieldDimension[], rooms: ReadonlyMap<string, FieldRoomAnswer> | undefined): FieldTolerance | undefined {
  const key = refKey(dimension.about);
  const answer = dimension.kind === 'nozzle' ? rooms?.get(key) : undefined;
  const height = all.find(({ about, part }) => part === 'height' && refKey(about) === key);
  return answer?.isKnown && height ? toleranceIn(answer.room, dimension, height.planned_m) : undefined;
}

/** Tolerances as they are printed, cut down to the tape, by the id of the dimension [m]; those that are to be asked for are left out. */
export function printedTolerances(derived: Derived, rooms: ReadonlyMap<string, FieldRoomAnswer>): ReadonlyMap<string, FieldTolerance> {
  const { lengths } = derived.plan.settings;
  const all = fieldDimensionsOf(derived);
  return new Map(
    all.flatMap((dimension): [string, FieldTolerance][] => {
      const tolerance_m = fieldTolerance(dimension, all, rooms);
      return tolerance_m ? [[dimension.id, [tapeDown_m(tolerance_m[0], lengths), tapeDown_m(tolerance_m[1], lengths)]]] : [];
    }),
  );
}

const BLANK_ROWS = 2;

/** The dimensions of one room. */
export interface FieldPart {
  /** Of the room. */
  readonly name: string;
  readonly holds: (dimension: FieldDimension) => boolean;
}

/** The sheet that a fitter fills in: planned against measured, with room to write. @param part only those of one room */
export function fieldTable(derived: Derived, rooms?: ReadonlyMap<string, FieldRoomAnswer>, part?: FieldPart): Table {
  const { measurements } = derived.plan.siteRecord;
  const { lengths } = derived.plan.settings;
  const columns = [
    { head: 'Dim.', font: 'bold' as const },
    { head: 'From datum' },
    { head: 'To' },
    { head: 'Planned', align: 'right' as const, font: 'bold' as const, least_mm: 20 },
    { head: 'mm', align: 'right' as const },
    { head: 'Tol. −/+', least_mm: 16 },
    { head: 'Measured', least_mm: 26 },
    { head: 'Deviation', least_mm: 18 },
    { head: 'Pass, fail, re-check', least_mm: 18 },
    { head: 'By', least_mm: 14 },
    { head: 'Date and time', least_mm: 24 },
    { head: 'Instrument', least_mm: 18 },
    { head: 'Reason or note', least_mm: 30, isWide: true },
  ];
  const dimensions = fieldDimensionsOf(derived);
  const shown = part ? dimensions.filter(part.holds) : dimensions;
  const rows = shown.map((dimension) => {
    const { id, name, from, to, planned_m } = dimension;
    const tolerance_m = fieldTolerance(dimension, dimensions, rooms);
    const measured = measurements[id];
    return [
      name,
      sentence(from),
      to,
      lengthText(planned_m, lengths),
      String(Math.round(toMillimetres(planned_m))).replace('-', '−'),
      tolerance_m ? shiftText(...tolerance_m, lengths) : 'ask',
      measuredField(dimension, lengths, measured),
      measured ? lengthText(measured.value_m - planned_m, lengths) : '',
      '',
      ...noteFields(id, name, measured),
    ];
  });
  return {
    title: part ? `Field verification: ${part.name}` : 'Field verification',
    note: 'Every dimension starts at the stated face, never at another nozzle. Take two readings. Plumb the drop points with a laser. Write in ink, or fill in the fields on a screen and hand the file back.',
    columns,
    identity: identityCell(formIdentityOf(derived, dimensions)),
    rows: part && rows.length === 0 ? [] : [...rows, ...Array.from({ length: BLANK_ROWS }, () => columns.map(() => ''))],
    rowHeight_mm: FIELD_ROW_mm,
  };
}
