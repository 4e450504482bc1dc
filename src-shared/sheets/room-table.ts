import type { Derived } from '../derived/derived.ts';
import { faceName } from '../derived/datum.ts';
import { normalAngle_rad } from '../geometry/angle.ts';
import type { FieldRoomAnswer } from '../margins/field-room.ts';
import { tapeDown_m, tapeUp_m } from '../margins/tape-down.ts';
import { refKey } from '../model/plan.ts';
import { formatLength } from '../units/length-text.ts';
import { formatQuantity } from '../units/quantity-text.ts';
import { nozzlePlaces } from './schedules.ts';
import { nozzleName } from '../derived/nozzle-name.ts';
import { lengthText, sentence } from './sheet-text.ts';
import type { Table } from './tables.ts';

const WHOLE_rad = 2 * Math.PI - 1e-6;

/** Figures of a shift, cut down to the tape: "−2" +11"". */
export const shiftText = (minus_m: number, plus_m: number, lengths: 'feet' | 'metric'): string => `−${formatLength(tapeDown_m(minus_m, lengths), lengths)} +${formatLength(tapeDown_m(plus_m, lengths), lengths)}`;

/** Which ways its first hole may point, cut to the degree within. */
export function turnText({ room }: Extract<FieldRoomAnswer, { isKnown: true }>, lengths: 'feet' | 'metric'): string {
  const { turn } = room;
  if (!turn) return 'as drawn only';
  if (turn.to_rad - turn.from_rad >= WHOLE_rad) return 'any way';
  // Cut to the degree within: what is printed is never more than what is allowed.
  const degree = Math.PI / 180;
  const [from, to] = [Math.ceil(turn.from_rad / degree - 1e-6) * degree, Math.floor(turn.to_rad / degree + 1e-6) * degree];
  return from > to ? 'as drawn only' : `${formatQuantity(normalAngle_rad(from), 'angle', lengths)} to ${formatQuantity(normalAngle_rad(to), 'angle', lengths)}`;
}

/** How far a fitter may shift, raise and turn each nozzle without a call, everything else as drawn. */
export function roomTable(derived: Derived, rooms: ReadonlyMap<string, FieldRoomAnswer>): Table {
  const { lengths } = derived.plan.settings;
  const columns = [
    { head: 'Nozzle', font: 'bold' as const },
    { head: 'Off the face' },
    { head: 'may shift' },
    { head: 'Off the face' },
    { head: 'may shift' },
    { head: 'Orifice above floor' },
    { head: 'First hole (0° east, 90° north)', isWide: true },
  ];
  const rows = nozzlePlaces(derived).map(({ nozzle, datum }) => {
    const answer = rooms.get(refKey(nozzle.ref));
    const name = nozzleName(derived, nozzle);
    if (!answer?.isKnown) return [name, '', '', '', '', '', `Ask before any change: ${answer?.because ?? 'not worked out.'}`];
    const { box, heights } = answer.room;
    return [
      name,
      datum ? sentence(faceName(datum.faces[0])) : 'To the east',
      shiftText(box.minus1_m, box.plus1_m, lengths),
      datum ? sentence(faceName(datum.faces[1])) : 'To the north',
      shiftText(box.minus2_m, box.plus2_m, lengths),
      `${lengthText(tapeUp_m(heights.least_m, lengths), lengths)} to ${lengthText(tapeDown_m(heights.greatest_m, lengths), lengths)}`,
      turnText(answer, lengths),
    ];
  });
  return {
    title: 'Room to move without a call',
    note: 'Everything else as drawn, its drop going along. − is toward the face, + away from it. Both shifts may be used up together, with the height and the holes as drawn; one of height or turn may be used with no shift. Beyond any of these, or when two nozzles move: ask the designer. Record what was done. Supports are not counted: where pipe became longer, add or shift them so that spans, turns and the last one before a nozzle keep to the table. The discharge is to be calculated anew.',
    columns,
    rows,
  };
}
