import type { PressureZone } from '../../derived/pipe-zone.ts';
import { type LabelLine, addLabel } from '../labels.ts';
import { box, line, pen, segments } from '../marks.ts';
import { PRINT, WEIGHT } from '../print-ink.ts';
import { arrowHead, pipeLine } from '../symbols.ts';
import { type ViewDraft, addLine, uprightBox } from '../view-draft.ts';

/** Draws in the millimetres of a detail, x right and y up. */
export interface DetailPen {
  line(weight_mm: number, places: readonly number[], dash_mm?: readonly number[]): void;
  pipe(zone: PressureZone, places: readonly number[]): void;
  /** A box from its lower left corner; solid parts are hatched, other things white. */
  box(x: number, y: number, width: number, height: number, isSolid?: boolean): void;
  /** Words led to a place; lines below each other. */
  note(x: number, y: number, words: string | readonly string[], toward_rad?: number): void;
  /** A dimension from place to place, its words along it. */
  dimension(ax: number, ay: number, bx: number, by: number, words: string): void;
  /** A place of the detail on paper. */
  at(x: number, y: number): [number, number];
  readonly factor: number;
}

const HATCH_mm = 2.2;

/** Begins to draw a detail into its view. */
export function detailPen(view: ViewDraft): DetailPen {
  const { frame, sizes } = view;
  const { factor } = sizes;
  const at = (x: number, y: number): [number, number] => [frame.x(x), frame.y(y)];
  const placed = (places: readonly number[]): number[] => places.map((value, i) => (i % 2 === 0 ? frame.x(value) : frame.y(value)));
  const hatch = (x: number, y: number, width: number, height: number): number[] => {
    const places: number[] = [];
    for (let start = -height; start < width; start += HATCH_mm) {
      const [u0, u1] = [Math.max(0, start), Math.min(width, start + height)];
      if (u1 > u0) places.push(...at(x + u0, y + u0 - start), ...at(x + u1, y + u1 - start));
    }
    return places;
  };
  return {
    factor,
    at,
    line: (weight_mm, places, dash_mm) => addLine(view, placed(places), line(pen(weight_mm * factor, PRINT.ink, dash_mm?.map((each) => each * factor)), ...placed(places)), 10),
    pipe: (zone, places) => addLine(view, placed(places), pipeLine(zone, factor, ...placed(places)), 20),
    box(x, y, width, height, isSolid = false) {
      const [left, top] = at(x, y + height);
      view.lines.push(box(pen((isSolid ? WEIGHT.thin : WEIGHT.wide) * factor, isSolid ? PRINT.solid : PRINT.ink), left, top, width * factor, height * factor, isSolid ? PRINT.solidFill : PRINT.paper));
      if (isSolid) view.lines.push(segments(pen(WEIGHT.hair, PRINT.faint), hatch(x, y, width, height)));
      view.placer.block(uprightBox(left + (width * factor) / 2, top + (height * factor) / 2, (width * factor) / 2, (height * factor) / 2), `box ${x} ${y}`);
    },
    note(x, y, words, toward_rad = Math.PI / 4) {
      const lines: LabelLine[] = (typeof words === 'string' ? [words] : words).map((text) => ({ text }));
      const [px, py] = at(x, y);
      addLabel(view, lines, { x: px, y: py, clearance_mm: 0.8 * factor, toward_rad }, lines[0]?.text ?? '');
    },
    dimension(ax, ay, bx, by, words) {
      const ends = [...at(ax, ay), ...at(bx, by)] as [number, number, number, number];
      const way = Math.atan2(by - ay, bx - ax);
      const tick = (x: number, y: number): number[] => [...at(x - Math.sin(way) * 1.6, y + Math.cos(way) * 1.6), ...at(x + Math.sin(way) * 1.6, y - Math.cos(way) * 1.6)];
      addLine(view, ends, line(pen(WEIGHT.thin * factor, PRINT.quiet), ...ends), 12);
      view.lines.push(segments(pen(WEIGHT.thin * factor, PRINT.quiet), [...tick(ax, ay), ...tick(bx, by)]));
      view.lines.push(arrowHead(...at(bx, by), way, 1.6 * factor, PRINT.quiet), arrowHead(...at(ax, ay), way + Math.PI, 1.6 * factor, PRINT.quiet));
      const [mx, my] = at((ax + bx) / 2, (ay + by) / 2);
      addLabel(view, [{ text: words }], { x: mx, y: my, clearance_mm: 0.9 * factor, along: { ax: ends[0], ay: ends[1], bx: ends[2], by: ends[3] }, toward_rad: way + Math.PI / 2 }, words);
    },
  };
}
