import type { Derived } from '../derived/derived.ts';
import { fieldDimensionsOf } from '../derived/field-dimensions.ts';
import type { FieldRoomAnswer } from '../margins/field-room.ts';
import { exactLengthText } from '../units/exact-length-text.ts';
import { formatLength } from '../units/length-text.ts';
import { type FieldTolerance, fieldTolerance } from './field-tables.ts';
import { pinnedPhotos } from './photo-table.ts';
import { lengthText } from './sheet-text.ts';
import type { Cell, Table } from './tables.ts';

/** Difference of two lengths that is only rounding [m]. */
const NOISE_m = 1e-9;

/** What a measured value means by itself: exact enough, within the room to move, or for the designer. Fails safe: beyond its tolerance, or without one beyond that of the site, it is asked. */
export function deviationVerdict(deviation_m: number, siteTolerance_m: number, tolerance: FieldTolerance | undefined): 'fits' | 'record' | 'ask' {
  const isInside = tolerance && deviation_m >= -tolerance[0] - NOISE_m && deviation_m <= tolerance[1] + NOISE_m;
  if (Math.abs(deviation_m) <= siteTolerance_m + NOISE_m) return isInside === false ? 'ask' : 'fits';
  return isInside ? 'record' : 'ask';
}

const VERDICTS: Readonly<Record<ReturnType<typeof deviationVerdict>, Cell>> = {
  fits: 'Fits, within the site tolerance',
  record: 'Within the room to move: recorded',
  ask: { kind: 'bold', words: 'NOT within what is known to be allowed: ask the designer' },
};

const signed = (deviation_m: number, lengths: 'feet' | 'metric'): string => (deviation_m > NOISE_m ? `+${formatLength(deviation_m, lengths)}` : deviation_m < -NOISE_m ? `−${formatLength(-deviation_m, lengths)}` : formatLength(0, lengths));

/**
 * Every dimension that was measured, beside what was approved. Without rows while none was.
 * @param answers  what each comes to, by its id; the bare deviation is judged where it is missing
 */
export function asBuiltTable(derived: Derived, rooms?: ReadonlyMap<string, FieldRoomAnswer>, answers?: ReadonlyMap<string, string>): Table {
  const { siteRecord, settings, issuedSets } = derived.plan;
  const { lengths, siteTolerance_m } = settings;
  const all = fieldDimensionsOf(derived);
  const photos = pinnedPhotos(derived);
  const approved = issuedSets.filter((set) => set.approved).at(-1);
  return {
    title: 'As built: approved and built values',
    shortTitle: 'As built',
    note: `${approved?.approved ? `Approved: issue ${approved.mark} of ${approved.date}, by ${approved.approved.by}, ${approved.approved.date}.` : 'No approved issue is entered.'} The approved set stays as it was. Struck through: as drawn; bold: as built.`,
    columns: [
      { head: 'Dim.', font: 'bold' },
      { head: 'From' },
      { head: 'To' },
      { head: 'Approved', align: 'right' },
      { head: 'Built', align: 'right', font: 'bold' },
      { head: 'Deviation', align: 'right' },
      { head: 'Reason', isWide: true, most_mm: 44 },
      { head: 'Re-check', most_mm: 40 },
      { head: 'Approved by', most_mm: 24 },
      { head: 'Measured by, when, with', most_mm: 40 },
      ...(photos.length > 0 ? [{ head: 'Photographs', most_mm: 20 }] : []),
    ],
    rows: all.flatMap((dimension): Cell[][] => {
      const measured = siteRecord.measurements[dimension.id];
      if (!measured) return [];
      const deviation_m = measured.value_m - dimension.planned_m;
      const verdict = deviationVerdict(deviation_m, siteTolerance_m, fieldTolerance(dimension, all, rooms));
      return [
        [
          dimension.name,
          dimension.from,
          dimension.to,
          lengthText(dimension.planned_m, lengths),
          exactLengthText(measured.value_m, lengths).replace(/^-/, '−'),
          signed(deviation_m, lengths),
          measured.reason.trim() || (verdict === 'fits' ? '' : 'not given'),
          answers?.get(dimension.id) ?? VERDICTS[verdict],
          measured.approvedBy.trim() || (verdict === 'fits' ? '' : 'nobody yet'),
          [measured.by, measured.at, measured.instrument].map((words) => words.trim()).filter(Boolean).join(', '),
          ...(photos.length > 0 ? [photos.flatMap((photo) => (photo.dimension === dimension.id ? [photo.number] : [])).join(', ')] : []),
        ],
      ];
    }),
  };
}
