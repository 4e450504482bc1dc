import type { DerivedNozzle } from '../derived/derived.ts';
import { boundsOf } from '../geometry/outline.ts';
import type { FieldRoomAnswer } from '../margins/field-room.ts';
import { refKey } from '../model/plan.ts';
import { line, pen, ring } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import { arcPlaces } from './symbols.ts';
import { type ViewDraft, onPaper } from './view-draft.ts';

const BRACKET_mm = 1.8;
const AWAY_mm = 0.8;
const ARC_mm = 5.5;
const TICK_mm = 1;
const WHOLE_rad = 2 * Math.PI - 1e-6;

/** Draws where each nozzle may be put as a closed thin line with corner brackets, and where its first hole may point as an arc with end ticks. */
export function drawPatches(view: ViewDraft, nozzles: readonly DerivedNozzle[], rooms: ReadonlyMap<string, FieldRoomAnswer>): void {
  const { frame, sizes } = view;
  const { factor } = sizes;
  const thin = pen(WEIGHT.hair, PRINT.quiet);
  for (const nozzle of nozzles) {
    const answer = rooms.get(refKey(nozzle.ref));
    const part = answer?.isKnown ? answer.room.patch.parts[0] : undefined;
    if (!answer?.isKnown || !part || !nozzle.at) continue;
    view.used.add('patch');
    for (const each of part) view.under.push(ring(thin, onPaper(frame, each)));
    const { minX, minY, maxX, maxY } = boundsOf(part[0] ?? []);
    const away = AWAY_mm * factor;
    const [left, right, top, bottom] = [frame.x(minX) - away, frame.x(maxX) + away, frame.y(maxY) - away, frame.y(minY) + away];
    for (const [x, y, sx, sy] of [[left, top, 1, 1], [right, top, -1, 1], [right, bottom, -1, -1], [left, bottom, 1, -1]] as const) {
      view.under.push(line(pen(WEIGHT.thin, PRINT.quiet), x + sx * BRACKET_mm * factor, y, x, y, x, y + sy * BRACKET_mm * factor));
    }
    const { turn } = answer.room;
    if (!turn || turn.to_rad - turn.from_rad >= WHOLE_rad) continue;
    const [x = 0, y = 0] = onPaper(frame, [nozzle.at]);
    const radius = ARC_mm * factor;
    view.under.push(line(thin, ...arcPlaces(x, y, radius, turn.from_rad, turn.to_rad, 24)));
    for (const end of [turn.from_rad, turn.to_rad]) {
      const at = (out_mm: number): [number, number] => [x + Math.cos(end) * out_mm, y - Math.sin(end) * out_mm];
      view.under.push(line(pen(WEIGHT.thin, PRINT.quiet), ...at(radius - TICK_mm * factor), ...at(radius + TICK_mm * factor)));
    }
  }
}
