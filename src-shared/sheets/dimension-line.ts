import { printable, textWidth_mm } from './font-widths.ts';
import { dimensionKey } from './hand-placed.ts';
import { readable_rad } from './label-placer.ts';
import { type TextMark, circle, line, pen, text } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import type { DimensionText, Mark } from './sheet.ts';
import { type TurnedBox, boxAround, cornersOf, textBoxOf } from './text-box.ts';
import { type ViewDraft, addLine } from './view-draft.ts';

/** Where a dimension line may lie: its distance beside the origin and how little it is liked. */
export interface Slot {
  readonly aside_mm: number;
  readonly price: number;
}

/** A distance to be dimensioned, in a frame of its own on paper: `along` runs the measured way, `aside` to its left. */
export interface DimensionWish {
  /** Origin on paper [mm]. */
  readonly x: number;
  readonly y: number;
  /** Measured direction on paper, counter-clockwise from its right [rad]. */
  readonly along_rad: number;
  /** Measured distance on paper [mm], > 0. */
  readonly length_mm: number;
  readonly words: string;
  readonly isBold?: boolean;
  /** Ends of the thing measured from, and places measured to, beside the origin [mm]. */
  readonly fromAside_mm: readonly number[];
  readonly toAside_mm: readonly number[];
  readonly slots: readonly Slot[];
  /** Starts at the datum: a ring in place of the stroke. */
  readonly fromDatum: boolean;
  /** Paper that a dimension should stay out of, such as another room. */
  readonly isForeign?: (x: number, y: number) => boolean;
  /** What is dimensioned, by its ids; several where one line dimensions several things. Without one the text cannot be moved. */
  readonly of?: readonly string[];
}

type Piece = [number, number, number, number];

const CROSSED_SYMBOL = 14;
/** Each of a few places of a dimension that lies in another room. */
const FOREIGN = 12;

/**
 * Draws a dimension where the user put it, else in the slot that disturbs least.
 * @returns false, with nothing drawn, when every slot is taken
 */
export function addDimension(view: ViewDraft, wish: DimensionWish): boolean {
  const { factor, text_mm } = view.sizes;
  const key = keyOf(view, wish);
  const placed = key === undefined ? undefined : view.hand?.places[key];
  // Drawn in the other round.
  if (view.hand && view.hand.round !== 'all' && (view.hand.round === 'placed') !== (placed !== undefined)) return true;
  const words = printable(wish.words);
  const font = wish.isBold ? 'bold' : 'plain';
  const width = textWidth_mm(words, text_mm, font);
  const cos = Math.cos(wish.along_rad);
  const sin = Math.sin(wish.along_rad);
  const at = (u: number, s: number): [number, number] => [wish.x + u * cos - s * sin, wish.y - u * sin - s * cos];
  const rotation_rad = readable_rad(wish.along_rad);
  /** Texts stand on the upper side of the line as it is read: left of `along` unless the reading turned it round. */
  const up = Math.cos(rotation_rad - wish.along_rad) > 0 ? 1 : -1;
  const rise = 0.9 * factor;
  const overshoot = 1.5 * factor;
  const beyond = 1.4 * factor;
  /** The text whose middle stands `u` along and beside the line at `aside`, and the paper it fills. */
  const written = (u: number, aside: number): { mark: TextMark; box: TurnedBox } => {
    const [x, y] = at(u, aside + (up === 1 ? rise : -rise));
    const mark = text(x, y, words, { height_mm: text_mm, font, align: 'middle', rotation_rad, halo: true });
    const box = textBoxOf(mark);
    return { mark, box: { ...box, halfWidth: box.halfWidth + 0.5 * factor, halfHeight: box.halfHeight + 0.5 * factor } };
  };

  const textPlaces = width + 2 * factor <= wish.length_mm ? [wish.length_mm / 2] : [wish.length_mm + beyond + width / 2, -beyond - width / 2];
  const low = (list: readonly number[]): number => Math.min(...list);
  const high = (list: readonly number[]): number => Math.max(...list);
  const faceTail = (aside: number): Piece | undefined => {
    const [near, sense] = aside < low(wish.fromAside_mm) ? [low(wish.fromAside_mm), -1] : [high(wish.fromAside_mm), 1];
    const isAbreast = aside >= low(wish.fromAside_mm) && aside <= high(wish.fromAside_mm);
    return isAbreast ? undefined : [...at(0, near + sense * factor), ...at(0, aside + sense * overshoot)];
  };
  const farTail = (aside: number): Piece => {
    const from = Math.min(low(wish.toAside_mm), aside <= low(wish.toAside_mm) ? aside - overshoot : Infinity);
    const to = Math.max(high(wish.toAside_mm), aside >= high(wish.toAside_mm) ? aside + overshoot : -Infinity);
    return [...at(wish.length_mm, from), ...at(wish.length_mm, to)];
  };

  let best: { readonly aside: number; readonly u: number; readonly mark: TextMark; readonly box: TurnedBox } | undefined;
  let least = Infinity;
  let isOver = false;
  if (placed) {
    const [u, aside] = insideRoom(view, wish, wish.length_mm / 2 + placed.along_mm, placed.off_mm, (...at) => written(...at).box);
    best = { aside, u, ...written(u, aside) };
    isOver = !view.placer.isFree(best.box);
  }
  for (const slot of placed ? [] : wish.slots) {
    if (slot.price >= least) continue;
    for (const [choice, u] of textPlaces.entries()) {
      const { mark, box } = written(u, slot.aside_mm);
      if (!view.placer.isFree(box)) continue;
      const reach = [Math.min(0, u - width / 2), Math.max(wish.length_mm, u + width / 2)] as const;
      const ends: Piece = [...at(reach[0], slot.aside_mm), ...at(reach[1], slot.aside_mm)];
      const [midX, midY] = at((reach[0] + reach[1]) / 2, slot.aside_mm);
      const strip = { x: midX, y: midY, halfWidth: (reach[1] - reach[0]) / 2, halfHeight: 1.1 * factor, rotation_rad: wish.along_rad };
      const tails = [faceTail(slot.aside_mm), farTail(slot.aside_mm)];
      let price = slot.price + choice * 1.5 + view.placer.priceOf(box) + 0.35 * view.placer.priceOf(strip);
      price += CROSSED_SYMBOL * view.placer.crossings(...ends);
      for (const tail of tails) if (tail) price += 0.5 * CROSSED_SYMBOL * Math.max(0, view.placer.crossings(...tail) - 1);
      if (wish.isForeign) {
        for (let i = 0; i <= 6; i += 1) {
          const t = i / 6;
          if (wish.isForeign(ends[0] + (ends[2] - ends[0]) * t, ends[1] + (ends[3] - ends[1]) * t)) price += FOREIGN;
        }
        if (wish.isForeign(box.x, box.y)) price += FOREIGN;
        for (const tail of tails) {
          for (let i = 0; tail && i <= 6; i += 1) {
            const t = i / 6;
            if (wish.isForeign(tail[0] + (tail[2] - tail[0]) * t, tail[1] + (tail[3] - tail[1]) * t)) price += FOREIGN;
          }
        }
      }
      if (price < least) {
        least = price;
        best = { aside: slot.aside_mm, u, mark, box };
      }
    }
  }
  if (!best) return false;

  const { aside, u, mark, box } = best;
  const from = Math.min(0, u - width / 2);
  const to = Math.max(wish.length_mm, u + width / 2);
  const main = [...at(from, aside), ...at(to, aside)];
  addLine(view, main, line(pen(WEIGHT.thin), ...main), 9);
  for (const tail of [faceTail(aside), farTail(aside)]) if (tail) addLine(view, tail, line(pen(WEIGHT.hair), ...tail), 3);
  const [startX, startY] = at(0, aside);
  const [endX, endY] = at(wish.length_mm, aside);
  view.lines.push(
    wish.fromDatum ? circle(pen(WEIGHT.medium), startX, startY, 0.9 * factor, PRINT.paper) : obliqueStroke(startX, startY, wish.along_rad, factor),
    obliqueStroke(endX, endY, wish.along_rad, factor),
  );
  view.placer.block(box);
  const dimension: DimensionText | undefined = key === undefined ? undefined : { key, along_rad: wish.along_rad, along_mm: u - wish.length_mm / 2, off_mm: aside, isByHand: placed !== undefined, ...(isOver ? { isOver } : {}) };
  view.texts.push(dimension ? { ...mark, dimension } : mark);
  return true;
}

/** Key of a dimension: that by which the user placed it, where one line dimensions several things. */
function keyOf({ hand }: ViewDraft, { of = [] }: DimensionWish): string | undefined {
  if (!hand) return undefined;
  const keys = of.map((each) => dimensionKey(hand.view, each));
  return keys.find((key) => key in hand.places) ?? keys[0];
}

/** The place along and aside at which a text that the user put off the paper of its view is just on it. */
function insideRoom({ room }: ViewDraft, { along_rad }: DimensionWish, u: number, aside: number, boxAt: (u: number, aside: number) => TurnedBox): readonly [number, number] {
  const { left, top, right, bottom } = boxAround(cornersOf(boxAt(u, aside)));
  const dx = Math.max(0, room.left - left) - Math.max(0, right - room.right);
  const dy = Math.max(0, room.top - top) - Math.max(0, bottom - room.bottom);
  return [u + alongBy(along_rad, dx, dy), aside + asideBy(along_rad, dx, dy)];
}

/** How far a move on paper leads along a measured direction [mm]. */
export const alongBy = (along_rad: number, dx: number, dy: number): number => dx * Math.cos(along_rad) - dy * Math.sin(along_rad);
/** How far it leads to the left of that direction [mm]. */
export const asideBy = (along_rad: number, dx: number, dy: number): number => -dx * Math.sin(along_rad) - dy * Math.cos(along_rad);

/** The stroke that ends a dimension line. */
export function obliqueStroke(x: number, y: number, along_rad: number, factor: number): Mark {
  const half = 1.3 * factor;
  const angle = along_rad + Math.PI / 4;
  return line(pen(WEIGHT.wide), x - Math.cos(angle) * half, y + Math.sin(angle) * half, x + Math.cos(angle) * half, y - Math.sin(angle) * half);
}

/** Slots one line pitch apart, from `first_mm` outward in the sense of `sense`. */
export const slotsOutward = (first_mm: number, sense: 1 | -1, count: number, pitch_mm: number, price: number, step = 1): Slot[] =>
  Array.from({ length: count }, (_, k) => ({ aside_mm: first_mm + sense * k * pitch_mm, price: price + k * step }));
