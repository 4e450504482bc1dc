import { printable } from '../font-widths.ts';
import { box, line, pen, shiftMarks, text } from '../marks.ts';
import { PRINT, WEIGHT } from '../print-ink.ts';
import type { Mark } from '../sheet.ts';
import type { Drawing } from '../tables.ts';
import { shortened, wrapText } from '../text-box.ts';
import type { TypeSizes } from '../../paper/type-sizes.ts';
import type { RiserCircuit, RiserStation } from './riser-circuits.ts';
import { SIGN_mm, riserSign } from './riser-sign.ts';

/** Widths across the diagram: the panel's box, the wire to the signs, the gap to the words [mm at factor 1]. */
const PANEL_mm = 44;
const WIRE_mm = 35;
const WORDS_mm = SIGN_mm + 2.4;
const PAD_mm = 2;
/** Between two circuits, and between two stations of one [mm at factor 1]. */
const CIRCUITS_APART_mm = 2;
const STATIONS_APART_mm = 1.2;
const PITCH = 1.6;
/** The least paper that a diagram is drawn on [mm at factor 1]. */
export const LEAST_RISER_mm = 140;

/** A line of words longer than this many rows is cut: the schedules tell the rest. */
const MOST_LINES = 4;

interface Written {
  readonly words: string;
  readonly isBold: boolean;
}

function written(title: string, words: readonly string[], width_mm: number, height_mm: number): Written[] {
  const lines = (each: string, isBold: boolean): Written[] => {
    const all = wrapText(printable(each), width_mm, height_mm, isBold ? 'bold' : 'plain');
    return all.slice(0, MOST_LINES).map((line, i) => ({ words: i === MOST_LINES - 1 && all.length > MOST_LINES ? `${line.slice(0, -2)}…` : line, isBold }));
  };
  return [...lines(title, true), ...words.flatMap((each) => lines(each, false))];
}

/**
 * A single-line diagram: the panel at the left, each circuit leaving it to the right, what stands along a wire below
 * each other. Every row is as high as its words, so that nothing runs into anything.
 * @param width_mm  paper that it takes
 */
export function drawRiser(panel: { readonly title: string; readonly words: readonly string[] }, circuits: readonly RiserCircuit[], notes: readonly string[], width_mm: number, sizes: TypeSizes): Drawing {
  const { factor, text_mm } = sizes;
  const pitch = text_mm * PITCH;
  const trunk = (PANEL_mm + WIRE_mm) * factor;
  const wordsAt = trunk + WORDS_mm * factor;
  const marks: Mark[] = [];
  const put = (lines: readonly Written[], x: number, top: number): void => {
    for (const [i, { words, isBold }] of lines.entries()) marks.push(text(x, top + (i + 0.5) * pitch + text_mm / 2, words, { height_mm: text_mm, font: isBold ? 'bold' : 'plain' }));
  };
  const wire = pen(WEIGHT.wide * factor);
  const signs: Mark[] = [];
  let y = PAD_mm * factor;
  const drawStation = ({ sign, title, words, wire: run }: RiserStation, before: number | undefined): number => {
    const lines = written(title, words, width_mm - wordsAt, text_mm);
    const tall = Math.max(lines.length * pitch, 2 * (SIGN_mm + 0.4) * factor);
    const middle = y + Math.max(pitch / 2, SIGN_mm * factor);
    put(lines, wordsAt, middle - pitch / 2);
    signs.push(...riserSign(trunk, middle, sign, factor));
    if (before !== undefined) {
      marks.push(line(wire, trunk, before, trunk, middle));
      if (run !== '') marks.push(text(trunk - 1.6 * factor, (before + middle) / 2 + text_mm / 2, shortened(printable(run), WIRE_mm * factor - 3 * factor, text_mm, 'plain'), { height_mm: text_mm, align: 'right' }));
    }
    y = Math.max(y + tall, middle - pitch / 2 + lines.length * pitch) + STATIONS_APART_mm * factor;
    return middle;
  };
  for (const { stations } of circuits) {
    let before: number | undefined;
    for (const station of stations) {
      const middle = drawStation(station, before);
      if (before === undefined) marks.push(line(wire, PANEL_mm * factor, middle, trunk, middle));
      before = middle;
    }
    y += (CIRCUITS_APART_mm - STATIONS_APART_mm) * factor;
  }
  const facts = written(panel.title, panel.words, (PANEL_mm - 2 * PAD_mm) * factor, text_mm);
  const tall = Math.max(y, facts.length * pitch + 2 * PAD_mm * factor);
  marks.unshift(box(pen(WEIGHT.heavy * factor), 0, 0, PANEL_mm * factor, tall, PRINT.paper));
  put(facts, PAD_mm * factor, PAD_mm * factor);
  const below = notes.flatMap((note) => wrapText(printable(note), width_mm, text_mm, 'plain')).map((words) => ({ words, isBold: false }));
  put(below, 0, tall + PAD_mm * factor);
  const all = [...marks, ...signs].map((mark): Mark => ({ ...mark, layer: 'devices' }));
  return { kind: 'drawing', width_mm, height_mm: tall + PAD_mm * factor + below.length * pitch, draw: (dx, dy) => shiftMarks(all, dx, dy) };
}

