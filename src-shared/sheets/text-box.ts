import { DEPTH, RISE, textWidth_mm } from './font-widths.ts';
import type { TextMark } from './marks.ts';
import type { FontName, Mark } from './sheet.ts';

/** A box on paper that may be turned: middle, half sizes and rotation counter-clockwise as seen [mm, rad]. */
export interface TurnedBox {
  readonly x: number;
  readonly y: number;
  readonly halfWidth: number;
  readonly halfHeight: number;
  readonly rotation_rad: number;
}

/** An upright box on paper [mm], y down. */
export interface PaperBox {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The box that a printed text fills, from the tallest letter to the deepest. */
export function textBoxOf(mark: TextMark): TurnedBox {
  const width = textWidth_mm(mark.text, mark.height_mm, mark.font);
  const rotation_rad = mark.rotation_rad ?? 0;
  const along = mark.align === 'left' ? width / 2 : mark.align === 'right' ? -width / 2 : 0;
  const up = ((RISE - DEPTH) / 2) * mark.height_mm;
  const cos = Math.cos(rotation_rad);
  const sin = Math.sin(rotation_rad);
  return {
    x: mark.x + along * cos - up * sin,
    y: mark.y - along * sin - up * cos,
    halfWidth: width / 2,
    halfHeight: ((RISE + DEPTH) / 2) * mark.height_mm,
    rotation_rad,
  };
}

/** The four corners of a turned box, x and y in turn. */
export function cornersOf({ x, y, halfWidth, halfHeight, rotation_rad }: TurnedBox): number[] {
  const cos = Math.cos(rotation_rad);
  const sin = Math.sin(rotation_rad);
  const signs = [-1, -1, 1, -1, 1, 1, -1, 1];
  const corners: number[] = [];
  for (let i = 0; i < 8; i += 2) {
    const u = (signs[i] ?? 0) * halfWidth;
    const v = (signs[i + 1] ?? 0) * halfHeight;
    corners.push(x + u * cos - v * sin, y - u * sin - v * cos);
  }
  return corners;
}

/** Smallest upright box around places given x and y in turn; turned inside out when there are none. */
export function boxAround(places: ArrayLike<number>, grow_mm = 0): PaperBox {
  let left = Infinity;
  let top = Infinity;
  let right = -Infinity;
  let bottom = -Infinity;
  for (let i = 0; i + 1 < places.length; i += 2) {
    left = Math.min(left, places[i] ?? left);
    right = Math.max(right, places[i] ?? right);
    top = Math.min(top, places[i + 1] ?? top);
    bottom = Math.max(bottom, places[i + 1] ?? bottom);
  }
  return { left: left - grow_mm, top: top - grow_mm, right: right + grow_mm, bottom: bottom + grow_mm };
}

/** Smallest box around several boxes. */
export const joinBoxes = (boxes: Iterable<PaperBox>): PaperBox => {
  let joined: PaperBox = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };
  for (const { left, top, right, bottom } of boxes) {
    joined = { left: Math.min(joined.left, left), top: Math.min(joined.top, top), right: Math.max(joined.right, right), bottom: Math.max(joined.bottom, bottom) };
  }
  return joined;
};

/** Whether a box lies wholly inside another. */
export const boxHolds = (outer: PaperBox, inner: PaperBox): boolean =>
  inner.left >= outer.left && inner.right <= outer.right && inner.top >= outer.top && inner.bottom <= outer.bottom;

/** The paper that one mark inks, line widths included; what a clip box cuts off does not count. */
export function markBox(mark: Mark): PaperBox {
  switch (mark.kind) {
    case 'line':
      return boxAround(mark.places, mark.stroke.width_mm / 2);
    case 'segments':
      return boxAround(mark.places, mark.stroke.width_mm / 2);
    case 'circle':
    case 'arc': {
      const reach = mark.radius_mm + (mark.stroke?.width_mm ?? 0) / 2;
      return { left: mark.x - reach, top: mark.y - reach, right: mark.x + reach, bottom: mark.y + reach };
    }
    case 'area':
      return joinBoxes(mark.rings.map((places) => boxAround(places)));
    case 'text':
      return boxAround(cornersOf(textBoxOf(mark)));
    case 'image': {
      const [a, b, c, d, e, f] = mark.matrix;
      return boxAround([e, f, e + a, f + b, e + c, f + d, e + a + c, f + b + d]);
    }
    case 'clip': {
      const cut = joinBoxes(mark.marks.map(markBox));
      return {
        left: Math.max(cut.left, mark.x),
        top: Math.max(cut.top, mark.y),
        right: Math.min(cut.right, mark.x + mark.width_mm),
        bottom: Math.min(cut.bottom, mark.y + mark.height_mm),
      };
    }
  }
}

/** Smallest box around all marks. */
export const marksBox = (marks: readonly Mark[]): PaperBox => joinBoxes(marks.map(markBox));

/** Whether two turned boxes share more than a touch (separating axes). */
export function turnedBoxesOverlap(a: TurnedBox, b: TurnedBox): boolean {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  for (const axis of [a.rotation_rad, a.rotation_rad + Math.PI / 2, b.rotation_rad, b.rotation_rad + Math.PI / 2]) {
    const ux = Math.cos(axis);
    const uy = -Math.sin(axis);
    const apart = Math.abs(dx * ux + dy * uy);
    if (apart >= reachAlong(a, axis) + reachAlong(b, axis) - 1e-6) return false;
  }
  return true;
}

/** How far a turned box reaches from its middle in a direction [mm]. */
export const reachAlong = (of: TurnedBox, direction_rad: number): number =>
  of.halfWidth * Math.abs(Math.cos(direction_rad - of.rotation_rad)) + of.halfHeight * Math.abs(Math.sin(direction_rad - of.rotation_rad));

/** How much of a straight piece lies inside a turned box [mm]; 0 when it passes by. */
export function lengthInside_mm(of: TurnedBox, ax: number, ay: number, bx: number, by: number): number {
  const cos = Math.cos(of.rotation_rad);
  const sin = Math.sin(of.rotation_rad);
  const toBox = (x: number, y: number): readonly [number, number] => [(x - of.x) * cos - (y - of.y) * sin, -(x - of.x) * sin - (y - of.y) * cos];
  const [u0, v0] = toBox(ax, ay);
  const [u1, v1] = toBox(bx, by);
  const inside = insideRange(u0, v0, u1, v1, -of.halfWidth, -of.halfHeight, of.halfWidth, of.halfHeight);
  return inside ? (inside[1] - inside[0]) * Math.hypot(bx - ax, by - ay) : 0;
}

/** From where to where a straight piece lies inside a box, as shares of its length; undefined when it passes by or only touches. */
function insideRange(ax: number, ay: number, bx: number, by: number, left: number, low: number, right: number, high: number): readonly [number, number] | undefined {
  let from = 0;
  let to = 1;
  for (const [start, delta, least, most] of [
    [ax, bx - ax, left, right],
    [ay, by - ay, low, high],
  ] as const) {
    if (Math.abs(delta) < 1e-12) {
      if (start <= least || start >= most) return undefined;
      continue;
    }
    const [p, q] = [(least - start) / delta, (most - start) / delta];
    from = Math.max(from, Math.min(p, q));
    to = Math.min(to, Math.max(p, q));
  }
  return to > from ? [from, to] : undefined;
}

/** The part of a straight piece that lies inside an upright box; undefined when none does. */
export function clipPiece({ left, top, right, bottom }: PaperBox, ax: number, ay: number, bx: number, by: number): readonly [number, number, number, number] | undefined {
  const inside = insideRange(ax, ay, bx, by, left, top, right, bottom);
  if (!inside) return undefined;
  const [from, to] = inside;
  return [ax + (bx - ax) * from, ay + (by - ay) * from, ax + (bx - ax) * to, ay + (by - ay) * to];
}

/** The part of a filled ring that lies inside an upright box, x and y in turn (Sutherland and Hodgman, side by side). */
export function clipRing({ left, top, right, bottom }: PaperBox, ring: readonly number[]): number[] {
  const sides: readonly (readonly [axis: 0 | 1, limit: number, sense: 1 | -1])[] = [
    [0, left, 1],
    [0, right, -1],
    [1, top, 1],
    [1, bottom, -1],
  ];
  return sides.reduce<number[]>((places, [axis, limit, sense]) => {
    const kept: number[] = [];
    for (let i = 0; i + 1 < places.length; i += 2) {
      const p = [places[i] ?? 0, places[i + 1] ?? 0] as const;
      const next = (i + 2) % places.length;
      const q = [places[next] ?? 0, places[next + 1] ?? 0] as const;
      const [inP, inQ] = [(p[axis] - limit) * sense >= 0, (q[axis] - limit) * sense >= 0];
      if (inP) kept.push(...p);
      if (inP === inQ) continue;
      const t = (limit - p[axis]) / (q[axis] - p[axis]);
      kept.push(p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t);
    }
    return kept;
  }, [...ring]);
}

/** Signs after which a long formula is broken rather than inside a number or a name. */
const BREAK_AFTER = /^.{3,}[·/+−,;=]/u;

/** Words of a text: a fraction of an inch stays with its whole inches, so that 2 15/16" is never read as 2. */
export const wordsIn = (text: string): string[] => text.split(/ +(?!\d+\/\d+")/u).filter((part) => part !== '');

/** Breaks a text into lines no wider than `width_mm`; a word that is too long alone is broken inside, a formula after a sign. */
export function wrapText(words: string, width_mm: number, height_mm: number, font: FontName): string[] {
  const lines: string[] = [];
  let current = '';
  const fits = (candidate: string): boolean => textWidth_mm(candidate, height_mm, font) <= width_mm + 1e-9;
  for (const word of wordsIn(words)) {
    const joined = current === '' ? word : `${current} ${word}`;
    if (fits(joined)) {
      current = joined;
      continue;
    }
    if (current !== '') lines.push(current);
    current = '';
    for (const character of word) {
      while (current !== '' && !fits(current + character)) {
        const kept = BREAK_AFTER.exec(current)?.[0] ?? current;
        lines.push(kept);
        current = current.slice(kept.length);
      }
      current += character;
    }
  }
  if (current !== '') lines.push(current);
  return lines;
}

/** The beginning of a text that fits, with … when something was left out. */
export function shortened(words: string, width_mm: number, height_mm: number, font: FontName): string {
  const rest = textWidth_mm('…', height_mm, font);
  let kept = '';
  let keptWithSign = '';
  let width = 0;
  for (const character of words) {
    width += textWidth_mm(character, height_mm, font);
    if (width > width_mm) return `${keptWithSign.trimEnd()}…`;
    kept += character;
    if (width + rest <= width_mm) keptWithSign = kept;
  }
  return words;
}
