import type { PlanPoint } from '../geometry/point.ts';
import type { Settings } from '../model/plan.ts';
import type { HandPlaced } from './hand-placed.ts';
import { type LabelPlacer, labelPlacer } from './label-placer.ts';
import type { QueuedLabel } from './labels.ts';
import type { Mark, SheetLayer } from './sheet.ts';
import type { SymbolName } from './symbol-names.ts';
import type { PaperBox, TurnedBox } from './text-box.ts';
import type { TypeSizes } from '../paper/type-sizes.ts';

/** Carries places of the plan or of a section to paper: [m] → [mm], y down. */
export interface ViewFrame {
  /** Site length over paper length. */
  readonly scale: number;
  readonly x: (across_m: number) => number;
  readonly y: (up_m: number) => number;
  /** A site length on paper [mm]. */
  readonly mm: (length_m: number) => number;
}

/** A frame that puts the site place (`across_m`, `up_m`) on the paper place (`x_mm`, `y_mm`). */
export function viewFrame(scale: number, across_m: number, up_m: number, x_mm: number, y_mm: number): ViewFrame {
  const mmPerMetre = 1000 / scale;
  return {
    scale,
    x: (across) => x_mm + (across - across_m) * mmPerMetre,
    y: (up) => y_mm - (up - up_m) * mmPerMetre,
    mm: (length_m) => length_m * mmPerMetre,
  };
}

/** Places of the plan on paper, x and y in turn. */
export const onPaper = (frame: ViewFrame, places: Iterable<PlanPoint>): number[] => {
  const out: number[] = [];
  for (const { x, y } of places) out.push(frame.x(x), frame.y(y));
  return out;
};

/** A view while it is being drawn: lines first, texts last, so that no line runs over a text. */
export interface ViewDraft {
  readonly frame: ViewFrame;
  readonly sizes: TypeSizes;
  readonly lengths: Settings['lengths'];
  readonly placer: LabelPlacer;
  /** Paper that the view may use. */
  readonly room: PaperBox;
  /** Marks under everything: underlay, coverage. */
  readonly under: Mark[];
  readonly lines: Mark[];
  readonly texts: Mark[];
  /** Labels that wait for their places. */
  readonly labels: QueuedLabel[];
  /** Symbols in use, for the legend. */
  readonly used: Set<SymbolName>;
  /** Names the region of paper that a place lies in: a label rather stays in the region of what it names. */
  regionAt: (x: number, y: number) => string | undefined;
  /** Labels that found no free place; the schedules hold what they say. */
  readonly unplaced: string[];
  /** Dimension texts that the user placed; missing where dimensions cannot be taken hold of. */
  hand?: HandPlaced | undefined;
}

/** An empty view to be drawn into: nothing placed yet. */
export const viewDraft = (frame: ViewFrame, sizes: TypeSizes, lengths: Settings['lengths'], room: PaperBox): ViewDraft => ({
  frame,
  sizes,
  lengths,
  placer: labelPlacer(room),
  room,
  under: [],
  lines: [],
  texts: [],
  labels: [],
  used: new Set(),
  regionAt: () => undefined,
  unplaced: [],
});

/** Draws into a view, and puts in a layer all that this adds: lines and texts, and labels once they are settled. */
export function inLayer(view: ViewDraft, layer: SheetLayer, draw: () => void): void {
  const lists = [view.under, view.lines, view.texts].map((marks) => ({ marks, from: marks.length }));
  const firstLabel = view.labels.length;
  draw();
  for (const { marks, from } of lists) putInLayer(marks, from, layer);
  for (let i = firstLabel; i < view.labels.length; i += 1) {
    const label = view.labels[i];
    if (label) view.labels[i] = { layer, ...label };
  }
}

/** Puts marks from an index on in a layer; what has one already stays there. */
export function putInLayer(marks: Mark[], from: number, layer: SheetLayer): void {
  for (let i = from; i < marks.length; i += 1) {
    const mark = marks[i];
    if (mark) marks[i] = { layer, ...mark };
  }
}

/** Everything of a view in painting order. */
export const marksOf = (view: ViewDraft): Mark[] => [...view.under, ...view.lines, ...view.texts];

/** An upright box of paper as the placer takes it, from its middle. */
export const uprightBox = (x: number, y: number, halfWidth: number, halfHeight: number): TurnedBox => ({ x, y, halfWidth, halfHeight, rotation_rad: 0 });

/** Draws a run of straight pieces and makes it dear for texts to cross. */
export function addLine(view: ViewDraft, places: readonly number[], mark: Mark | readonly Mark[], weight: number, closed = false): void {
  if ('kind' in mark) view.lines.push(mark);
  else view.lines.push(...mark);
  const all = closed ? [...places, places[0] ?? 0, places[1] ?? 0] : places;
  for (let i = 0; i + 3 < all.length; i += 2) view.placer.avoid(all[i] ?? 0, all[i + 1] ?? 0, all[i + 2] ?? 0, all[i + 3] ?? 0, weight);
}

/** Whether a place on paper lies in the view's room. */
export const inRoom = ({ room }: ViewDraft, x: number, y: number): boolean => x >= room.left && x <= room.right && y >= room.top && y <= room.bottom;

