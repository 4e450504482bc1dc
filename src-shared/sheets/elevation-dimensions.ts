import type { Elevation } from '../elevation/elevation.ts';
import { formatLength } from '../units/length-text.ts';
import { obliqueStroke } from './dimension-line.ts';
import { type ElevationLayout, FIRST_LINE_mm, LINE_PITCH_mm } from './elevation-frame.ts';
import { printable, textWidth_mm } from './font-widths.ts';
import { circle, line, pen, text } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import { textBoxOf } from './text-box.ts';
import { type ViewDraft, addLine } from './view-draft.ts';

/** Line pitch over the height of capitals in the ladder of heights. */
const PITCH = 1.9;

/** Spreads heights on paper so that none is nearer to the next than a pitch, moving all as little as it takes. */
export function spread(wished_mm: readonly number[], pitch_mm: number): number[] {
  // Neighbours that would meet become one group around their common middle; groups that meet join.
  const groups = wished_mm.map((at) => ({ sum: at, count: 1, top: at }));
  for (let i = 1; i < groups.length; ) {
    const [before, here] = [groups[i - 1], groups[i]];
    if (!before || !here) break;
    if (before.top + before.count * pitch_mm <= here.top + 1e-9) {
      i += 1;
      continue;
    }
    const count = before.count + here.count;
    // Sum of where each group's first line would have to stand for its own wishes.
    const sum = before.sum + here.sum - here.count * before.count * pitch_mm;
    groups.splice(i - 1, 2, { sum, count, top: sum / count });
    i = Math.max(1, i - 1);
  }
  return groups.flatMap(({ top, count }) => Array.from({ length: count }, (_, k) => top + k * pitch_mm));
}

/** The heights beside the wall: one upright line from the floor, a stroke at each height, its words beside it. */
export function drawLadder(view: ViewDraft, { rows, ladder_mm, ladderSide, floor_mm, frame: { y } }: ElevationLayout, elevation: Elevation): void {
  const { sizes, frame } = view;
  const { factor, text_mm } = sizes;
  const top = y(Math.max(...rows.map(({ z_m }) => z_m)));
  const wallX = frame.x(ladderSide === 'left' ? elevation.shown.from_m : elevation.shown.to_m);
  const out = ladderSide === 'left' ? -1 : 1;
  addLine(view, [ladder_mm, floor_mm, ladder_mm, top], line(pen(WEIGHT.thin * factor), ladder_mm, floor_mm, ladder_mm, top), 9);
  const wished = rows.toReversed().map(({ z_m }) => y(z_m));
  const places = spread(wished, text_mm * PITCH);
  rows.toReversed().forEach(({ z_m, words }, i) => {
    const [at, words_y] = [y(z_m), places[i] ?? 0];
    const end = ladder_mm + out * 5.6 * factor;
    view.lines.push(
      line(pen(WEIGHT.hair * factor), wallX + out * factor, at, ladder_mm, at),
      z_m === 0 ? circle(pen(WEIGHT.medium * factor), ladder_mm, at, 0.9 * factor, PRINT.paper) : obliqueStroke(ladder_mm, at, Math.PI / 2, factor),
      line(pen(WEIGHT.hair * factor), ladder_mm + out * factor, at, ladder_mm + out * 2.2 * factor, at, ladder_mm + out * 4.4 * factor, words_y, end, words_y),
    );
    const mark = text(end + out * 0.8 * factor, words_y + text_mm / 2, printable(words), { height_mm: text_mm, align: ladderSide === 'left' ? 'right' : 'left' });
    view.placer.block(textBoxOf(mark));
    view.texts.push(mark);
  });
}

/** Distances along the wall, all from the corner: to the axis of each cylinder, then to both ends of the rails with their lengths. */
export function drawRunning(view: ViewDraft, { floor_mm, running, runningLines }: ElevationLayout, { datum, frame: wall, shown, rails, racks }: Elevation): void {
  const { frame, sizes, lengths } = view;
  const { factor, text_mm } = sizes;
  const datumX = frame.x(datum === 'left' ? 0 : wall.length_m);
  const lineY = floor_mm + FIRST_LINE_mm * factor - 3 * factor;
  const far = running.at(-1);
  if (!far) return;
  const endX = frame.x(far.s);
  addLine(view, [datumX, lineY, endX, lineY], line(pen(WEIGHT.thin * factor), datumX, lineY, endX, lineY), 9);
  view.lines.push(line(pen(WEIGHT.hair * factor), datumX, floor_mm + factor, datumX, lineY + 1.5 * factor), circle(pen(WEIGHT.medium * factor), datumX, lineY, 0.9 * factor, PRINT.paper));
  const put = (x: number, y: number, words: string, font: 'plain' | 'bold' = 'plain', align: 'left' | 'middle' | 'right' = 'middle'): void => {
    const mark = text(x, y, printable(words), { height_mm: text_mm, align, font, halo: true });
    view.placer.block(textBoxOf(mark));
    view.texts.push(mark);
  };
  running.forEach(({ s, words }, i) => {
    const x = frame.x(s);
    const row = i % runningLines;
    const y = lineY + (1.2 + row) * LINE_PITCH_mm * factor;
    view.lines.push(line(pen(WEIGHT.hair * factor), x, floor_mm + factor, x, y - text_mm - 0.6 * factor), obliqueStroke(x, lineY, 0, factor));
    put(x, y, words, 'bold');
  });
  const railY = lineY + (runningLines + 1.1) * LINE_PITCH_mm * factor;
  for (const { from_m, to_m, kind } of [...rails.map((rail) => ({ ...rail, kind: 'rail' })), ...racks.map((rack) => ({ ...rack, kind: 'floor frame' }))].filter((one, i, all) => all.findIndex((other) => other.from_m === one.from_m && other.to_m === one.to_m && other.kind === one.kind) === i)) {
    const [left, right] = [frame.x(from_m), frame.x(to_m)];
    addLine(view, [left, railY, right, railY], line(pen(WEIGHT.thin * factor), left, railY, right, railY), 9);
    view.lines.push(obliqueStroke(left, railY, 0, factor), obliqueStroke(right, railY, 0, factor));
    const begins_m = datum === 'left' ? from_m : wall.length_m - to_m;
    const words = `${kind} ${formatLength(to_m - from_m, lengths)}, begins ${formatLength(begins_m, lengths)}`;
    const width = textWidth_mm(words, text_mm, 'plain') + 2 * factor;
    const y = railY + text_mm + 1.7 * factor;
    const middle = Math.min(frame.x(shown.to_m) - width / 2, Math.max(frame.x(shown.from_m) + width / 2, (left + right) / 2));
    put(middle, y, words);
  }
}
