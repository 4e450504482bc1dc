/** An axis-parallel box on the screen [px]. */
export interface LabelBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A text that looks for a place. */
export interface LabelWish {
  readonly key: string;
  readonly width: number;
  readonly height: number;
  /** Top left corners that would do, the best first. */
  readonly spots: readonly { readonly x: number; readonly y: number }[];
  /** Shown even where it must cover another text; otherwise it is left out there. */
  readonly must?: boolean;
}

/** What labels should keep clear of: symbols (boxes) and lines. */
export interface LabelObstacles {
  readonly boxes: readonly LabelBox[];
  readonly lines: readonly (readonly [x1: number, y1: number, x2: number, y2: number])[];
}

const CELL_px = 96;
/** Squares in a row of the grid: more than any drawing has. */
const ROW = 1 << 20;

/** Boxes and lines by the squares of a coarse grid that they touch. */
class Squares<T> {
  private readonly cells = new Map<number, T[]>();

  add(item: T, minX: number, minY: number, maxX: number, maxY: number): void {
    this.each(minX, minY, maxX, maxY, (key) => {
      const cell = this.cells.get(key);
      if (cell) cell.push(item);
      else this.cells.set(key, [item]);
    });
  }

  /** What may touch a box, each once. */
  near(box: LabelBox): readonly T[] {
    let only: readonly T[] | undefined;
    let several: Set<T> | undefined;
    this.each(box.x, box.y, box.x + box.width, box.y + box.height, (key) => {
      const cell = this.cells.get(key);
      if (!cell) return;
      if (!only) {
        only = cell;
        return;
      }
      several ??= new Set(only);
      for (const item of cell) several.add(item);
    });
    return several ? [...several] : (only ?? []);
  }

  private each(minX: number, minY: number, maxX: number, maxY: number, visit: (key: number) => void): void {
    for (let i = Math.floor(minX / CELL_px); i <= Math.floor(maxX / CELL_px); i += 1) {
      for (let j = Math.floor(minY / CELL_px); j <= Math.floor(maxY / CELL_px); j += 1) visit(i * ROW + j);
    }
  }
}

/** Area that two boxes share [px²]. */
export const overlap_px2 = (a: LabelBox, b: LabelBox): number =>
  Math.max(0, Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x)) *
  Math.max(0, Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y));

/** Length of a line inside a box [px]; 0 when it passes by. */
export function lineInside_px({ x, y, width, height }: LabelBox, [x1, y1, x2, y2]: readonly [number, number, number, number]): number {
  const dx = x2 - x1;
  const dy = y2 - y1;
  let from = 0;
  let to = 1;
  if (dx === 0) {
    if (x1 < x || x1 > x + width) return 0;
  } else {
    from = Math.max(from, Math.min((x - x1) / dx, (x + width - x1) / dx));
    to = Math.min(to, Math.max((x - x1) / dx, (x + width - x1) / dx));
  }
  if (dy === 0) {
    if (y1 < y || y1 > y + height) return 0;
  } else {
    from = Math.max(from, Math.min((y - y1) / dy, (y + height - y1) / dy));
    to = Math.min(to, Math.max((y - y1) / dy, (y + height - y1) / dy));
  }
  return to <= from ? 0 : (to - from) * Math.hypot(dx, dy);
}

/** Widest square span that a line is entered under in one piece; longer lines are cut so that few squares hold them. */
const PIECE_px = 4 * CELL_px;

function enterLine(squares: Squares<readonly [number, number, number, number]>, line: readonly [number, number, number, number]): void {
  const [x1, y1, x2, y2] = line;
  const length = Math.hypot(x2 - x1, y2 - y1);
  if (!Number.isFinite(length) || length > 40_000) return;
  const count = Math.max(1, Math.ceil(length / PIECE_px));
  for (let i = 0; i < count; i += 1) {
    const ax = x1 + ((x2 - x1) * i) / count;
    const ay = y1 + ((y2 - y1) * i) / count;
    const bx = x1 + ((x2 - x1) * (i + 1)) / count;
    const by = y1 + ((y2 - y1) * (i + 1)) / count;
    squares.add([ax, ay, bx, by], Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by));
  }
}

/**
 * Finds places for texts, in the order given: each takes the spot that covers least of the symbols, lines and
 * texts placed before it. A text that could only stand on another text is left out unless it `must` show.
 * @returns the box of every text that is shown
 */
export function placeLabels(wishes: readonly LabelWish[], obstacles: LabelObstacles): Map<string, LabelBox> {
  const taken = new Squares<LabelBox>();
  const symbols = new Squares<LabelBox>();
  const lines = new Squares<readonly [number, number, number, number]>();
  for (const box of obstacles.boxes) symbols.add(box, box.x, box.y, box.x + box.width, box.y + box.height);
  for (const line of obstacles.lines) enterLine(lines, line);

  const placed = new Map<string, LabelBox>();
  for (const wish of wishes) {
    let best: { box: LabelBox; cost: number; onText: number } | undefined;
    for (const [order, spot] of wish.spots.entries()) {
      const box = { x: spot.x, y: spot.y, width: wish.width, height: wish.height };
      let onText = 0;
      for (const other of taken.near(box)) onText += overlap_px2(box, other);
      let cost = onText * 10 + order * 2;
      for (const symbol of symbols.near(box)) cost += overlap_px2(box, symbol) * 2;
      for (const line of lines.near(box)) cost += lineInside_px(box, line) * 4;
      if (!best || cost < best.cost) best = { box, cost, onText };
      if (cost === order * 2) break;
    }
    if (!best || (best.onText > 1 && !wish.must)) continue;
    placed.set(wish.key, best.box);
    taken.add(best.box, best.box.x, best.box.y, best.box.x + best.box.width, best.box.y + best.box.height);
  }
  return placed;
}

/** Eight spots around a symbol for a box of a size: beside, above, below and at the corners, right side first. */
export function spotsAround(at: { readonly x: number; readonly y: number }, gap_px: number, width: number, height: number): { x: number; y: number }[] {
  const right = at.x + gap_px;
  const left = at.x - gap_px - width;
  const above = at.y - gap_px - height;
  const below = at.y + gap_px;
  const near = gap_px * 0.7;
  return [
    { x: at.x + near, y: at.y - near - height },
    { x: at.x + near, y: at.y + near },
    { x: at.x - near - width, y: at.y - near - height },
    { x: at.x - near - width, y: at.y + near },
    { x: right, y: at.y - height / 2 },
    { x: left, y: at.y - height / 2 },
    { x: at.x - width / 2, y: above },
    { x: at.x - width / 2, y: below },
  ];
}
