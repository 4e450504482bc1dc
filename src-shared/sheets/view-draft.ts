import type { PlanPoint } from '../geometry/point.ts';
import type { Settings } from '../model/plan.ts';
import { printable, textWidth_mm } from './font-widths.ts';
import { type LabelPlacer, type LabelRequest, labelPlacer } from './label-placer.ts';
import { line, pen, text } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import type { FontName, Mark } from './sheet.ts';
import type { SymbolName } from './symbol-names.ts';
import type { PaperBox, TurnedBox } from './text-box.ts';
import type { TypeSizes } from './type-sizes.ts';

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
  /** Symbols in use, for the legend. */
  readonly used: Set<SymbolName>;
  /** Names the region of paper that a place lies in: a label rather stays in the region of what it names. */
  regionAt: (x: number, y: number) => string | undefined;
  /** Labels that found no free place; the schedules hold what they say. */
  readonly unplaced: string[];
}

export const viewDraft = (frame: ViewFrame, sizes: TypeSizes, lengths: Settings['lengths'], room: PaperBox): ViewDraft => ({
  frame,
  sizes,
  lengths,
  placer: labelPlacer(room),
  room,
  under: [],
  lines: [],
  texts: [],
  used: new Set(),
  regionAt: () => undefined,
  unplaced: [],
});

/** Everything of a view in painting order. */
export const marksOf = (view: ViewDraft): Mark[] => [...view.under, ...view.lines, ...view.texts];

export interface LabelLine {
  readonly text: string;
  readonly font?: FontName;
  readonly colour?: string;
  readonly height_mm?: number;
  /** Framed as a flag. */
  readonly flag?: boolean;
}

/** Line pitch over the height of capitals. */
export const LINE_PITCH = 1.75;
const PAD = 0.4;

const measure = (view: ViewDraft, lines: readonly LabelLine[]) => {
  const heights = lines.map(({ height_mm }) => height_mm ?? view.sizes.text_mm);
  const pad = PAD * view.sizes.text_mm;
  const widths = lines.map((entry, i) => textWidth_mm(entry.text, heights[i] ?? 0, entry.font ?? 'plain') + (entry.flag ? 2 * pad : 0));
  const pitches = lines.map((entry, i) => (heights[i] ?? 0) * LINE_PITCH + (entry.flag ? pad : 0));
  return { heights, widths, pitches, pad, width: Math.max(...widths), height: pitches.reduce((sum, pitch) => sum + pitch, 0) };
};

/** A label's size and where to put it; see `LabelRequest`. */
export type LabelWish = Omit<LabelRequest, 'width_mm' | 'height_mm' | 'leaderAt_mm'>;

/** Price of a label that stands in another room than what it names, and of one that stands outside. */
const OTHER_REGION = 25;
const NO_REGION = 5;

/**
 * Writes one or more lines of text at a free place near what they name, with a leader when they stand apart.
 * @param what how the list of missing labels calls it when the view has no room for it
 */
export function addLabel(view: ViewDraft, wished: readonly LabelLine[], wish: LabelWish, what: string): void {
  if (!tryLabel(view, wished, wish)) view.unplaced.push(what);
}

/** As `addLabel`, but answers whether there was room, for a caller that has another way. */
export function tryLabel(view: ViewDraft, wished: readonly LabelLine[], wish: LabelWish): boolean {
  const entries = wished.map((entry) => ({ ...entry, text: printable(entry.text) })).filter((entry) => entry.text.trim() !== '');
  if (entries.length === 0) return true;
  const home = view.regionAt(wish.x, wish.y);
  const priceAt = (x: number, y: number): number => {
    const region = view.regionAt(x, y);
    return region === home ? 0 : region === undefined ? NO_REGION : OTHER_REGION;
  };
  const { heights, widths, pitches, pad, width, height } = measure(view, entries);
  const margin = 0.5 * view.sizes.factor;
  const placed = view.placer.place({
    priceAt,
    ...wish,
    width_mm: width + 2 * margin,
    height_mm: height + margin,
    leaderAt_mm: (pitches[0] ?? 0) / 2 + margin / 2,
  });
  if (!placed) return false;
  const { box, leader } = placed;
  if (leader) view.lines.push(line(pen(WEIGHT.hair, PRINT.ink), ...leader));
  const cos = Math.cos(box.rotation_rad);
  const sin = Math.sin(box.rotation_rad);
  const at = (u: number, v: number): [number, number] => [box.x + u * cos + v * sin, box.y - u * sin + v * cos];
  const isLeft = leader ? leader[2] < box.x : true;
  let top = -height / 2;
  entries.forEach((entry, i) => {
    const tall = heights[i] ?? 0;
    const wide = widths[i] ?? 0;
    const pitch = pitches[i] ?? 0;
    const isAlone = entries.length === 1;
    const left = isAlone ? -wide / 2 : isLeft ? -width / 2 : width / 2 - wide;
    const baseline = top + (pitch + tall) / 2;
    const [x, y] = at(left + (entry.flag ? pad : 0), baseline);
    if (entry.flag) {
      const frameTop = baseline - tall - pad;
      const frameBottom = baseline + pad;
      const frame = [...at(left, frameTop), ...at(left + wide, frameTop), ...at(left + wide, frameBottom), ...at(left, frameBottom)];
      view.lines.push({ kind: 'line', places: frame, closed: true, stroke: pen(WEIGHT.thin), fill: PRINT.paper });
    }
    view.texts.push(
      text(x, y, entry.text, {
        height_mm: tall,
        rotation_rad: box.rotation_rad,
        halo: !entry.flag,
        ...(entry.font ? { font: entry.font } : {}),
        ...(entry.colour ? { colour: entry.colour } : {}),
      }),
    );
    top += pitch;
  });
  return true;
}

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

