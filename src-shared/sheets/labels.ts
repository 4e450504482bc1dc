import type { Verdict } from '../rules/finding.ts';
import { printable, textWidth_mm } from './font-widths.ts';
import type { LabelRequest, PlacedLabel } from './label-placer.ts';
import { line, pen, text } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import type { FontName, SheetLayer } from './sheet.ts';
import { verdictMark } from './symbols.ts';
import type { TypeSizes } from '../paper/type-sizes.ts';
import { type ViewDraft, putInLayer } from './view-draft.ts';

export interface LabelLine {
  readonly text: string;
  readonly font?: FontName;
  readonly colour?: string;
  readonly height_mm?: number;
  /** Framed as a flag. */
  readonly flag?: boolean;
  /** Mark before the text. */
  readonly verdict?: Verdict;
  /** Name of its place on the sheets, and of the place it leads to. */
  readonly place?: string;
  readonly goesTo?: string;
}

/** A label's place as it is wished; see `LabelRequest`. */
export type LabelWish = Omit<LabelRequest, 'width_mm' | 'height_mm' | 'leaderAt_mm'>;

/** One way to write a label. */
export interface LabelWay {
  readonly lines: readonly LabelLine[];
  readonly wish: LabelWish;
}

/** A label that waits until all are known. */
export interface QueuedLabel {
  /** Ways to write it, the best liked first. */
  readonly ways: readonly LabelWay[];
  /** What the sheet calls it when the view has no room for it. */
  readonly what: string;
  readonly layer?: SheetLayer;
}

/** Line pitch over the height of capitals. */
const LINE_PITCH = 1.75;
const PAD = 0.4;
/** Price of a label that stands in another room than what it names, and of one that stands outside. */
const OTHER_REGION = 60;
const NO_REGION = 5;
/** Price of each way after the first. */
const SECOND_CHOICE = 12;
/** How often every label may look for a better place once all have one. */
const PASSES = 3;

/** Queues a label of one or more lines. */
export function addLabel(view: ViewDraft, lines: readonly LabelLine[], wish: LabelWish, what: string): void {
  addLabelWays(view, [{ lines, wish }], what);
}

/** Queues a label that may be written in several ways, the best liked first. */
export function addLabelWays(view: ViewDraft, ways: readonly LabelWay[], what: string): void {
  const printed = ways.map(({ lines, wish }) => ({
    wish,
    lines: lines.map((entry) => ({ ...entry, text: printable(entry.text) })).filter((entry) => entry.text.trim() !== ''),
  }));
  if (printed.every(({ lines }) => lines.length > 0)) view.labels.push({ ways: printed, what });
}

interface Settled {
  readonly way: LabelWay;
  readonly placed: PlacedLabel;
  readonly price: number;
}

/**
 * Finds a place for every queued label, in their order; then lets each look again now that all stand,
 * which only ever betters the whole. Labels without room are told in `view.unplaced`.
 */
export function settleLabels(view: ViewDraft): void {
  const settled: (Settled | undefined)[] = view.labels.map((label) => {
    const found = bestWay(view, label);
    if (found) view.placer.take(found.placed, found.way.wish.owner);
    return found;
  });
  for (let pass = 0; pass < PASSES; pass += 1) {
    let isBetter = false;
    view.labels.forEach((label, i) => {
      const before = settled[i];
      if (before) view.placer.giveBack(before.placed);
      const found = bestWay(view, label) ?? before;
      if (found) view.placer.take(found.placed, found.way.wish.owner);
      if (found && (!before || found.price < before.price - 0.01)) isBetter = true;
      settled[i] = found;
    });
    if (!isBetter) break;
  }
  settled.forEach((found, i) => {
    const { layer } = view.labels[i] ?? {};
    const [lines, texts] = [view.lines.length, view.texts.length];
    if (found) draw(view, found);
    if (layer) {
      putInLayer(view.lines, lines, layer);
      putInLayer(view.texts, texts, layer);
    }
    if (!found) view.unplaced.push(view.labels[i]?.what ?? '');
  });
  view.labels.length = 0;
}

function bestWay(view: ViewDraft, { ways }: QueuedLabel): Settled | undefined {
  let best: Settled | undefined;
  ways.forEach((way, i) => {
    const { wish, lines } = way;
    const { pitches, width, height } = measure(view.sizes, lines);
    const margin = 0.5 * view.sizes.factor;
    const home = view.regionAt(wish.x, wish.y);
    const priceAt = (x: number, y: number): number => {
      const region = view.regionAt(x, y);
      return region === home ? 0 : region === undefined ? NO_REGION : OTHER_REGION;
    };
    const request = { priceAt, ...wish, width_mm: width + 2 * margin, height_mm: height + margin, leaderAt_mm: (pitches[0] ?? 0) / 2 + margin / 2 };
    const dear = i * SECOND_CHOICE;
    const placed = view.placer.find(request, best ? best.price - dear : undefined);
    if (placed) best = { way, placed, price: placed.price + dear };
  });
  return best;
}

const measure = (sizes: TypeSizes, lines: readonly LabelLine[]) => {
  const heights = lines.map(({ height_mm }) => height_mm ?? sizes.text_mm);
  const pad = PAD * sizes.text_mm;
  const marks = lines.map(({ verdict }, i) => (verdict ? (heights[i] ?? 0) * 1.7 : 0));
  const widths = lines.map((entry, i) => textWidth_mm(entry.text, heights[i] ?? 0, entry.font ?? 'plain') + (marks[i] ?? 0) + (entry.flag ? 2 * pad : 0));
  const pitches = lines.map((entry, i) => (heights[i] ?? 0) * LINE_PITCH + (entry.flag ? pad : 0));
  return { heights, widths, pitches, marks, pad, width: Math.max(...widths), height: pitches.reduce((sum, pitch) => sum + pitch, 0) };
};

function draw(view: ViewDraft, { way: { lines }, placed: { box, leader } }: Settled): void {
  const { heights, widths, pitches, marks, pad, width, height } = measure(view.sizes, lines);
  if (leader) view.lines.push(line(pen(WEIGHT.hair, PRINT.ink), ...leader));
  const cos = Math.cos(box.rotation_rad);
  const sin = Math.sin(box.rotation_rad);
  const at = (u: number, v: number): [number, number] => [box.x + u * cos + v * sin, box.y - u * sin + v * cos];
  const isLeft = leader ? leader[2] < box.x : true;
  let top = -height / 2;
  lines.forEach((entry, i) => {
    const tall = heights[i] ?? 0;
    const wide = widths[i] ?? 0;
    const pitch = pitches[i] ?? 0;
    const left = lines.length === 1 ? -wide / 2 : isLeft ? -width / 2 : width / 2 - wide;
    const baseline = top + (pitch + tall) / 2;
    const markWidth = marks[i] ?? 0;
    const [x, y] = at(left + markWidth + (entry.flag ? pad : 0), baseline);
    if (entry.flag) {
      const frameTop = baseline - tall - pad;
      const frameBottom = baseline + pad;
      const frame = [...at(left, frameTop), ...at(left + wide, frameTop), ...at(left + wide, frameBottom), ...at(left, frameBottom)];
      view.lines.push({ kind: 'line', places: frame, closed: true, stroke: pen(WEIGHT.thin), fill: PRINT.paper });
    }
    if (entry.verdict) {
      const [markX, markY] = at(left + markWidth * 0.4, baseline - tall / 2);
      view.lines.push(...verdictMark(markX, markY, tall * 1.35, entry.verdict));
    }
    view.texts.push(
      text(x, y, entry.text, {
        height_mm: tall,
        rotation_rad: box.rotation_rad,
        halo: !entry.flag,
        ...(entry.font ? { font: entry.font } : {}),
        ...(entry.colour ? { colour: entry.colour } : {}),
        ...(entry.place ? { place: entry.place } : {}),
        ...(entry.goesTo ? { goesTo: entry.goesTo } : {}),
      }),
    );
    top += pitch;
  });
}
