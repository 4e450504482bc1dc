import type { Box } from '#shared/geometry/outline';

/** Straight pieces sorted into cells, so that those near a place are found without looking at all of them. */
export interface SegmentGrid {
  /** Extents of the pieces; turned inside out when there are none. */
  readonly bounds: Box;
  /** Calls `visit` with the number of each piece that may touch the box; a piece may be named more than once. */
  visitNear(box: Box, visit: (piece: number) => void): void;
}

/** Most cells of a grid: 1024 × 1024. */
const MOST_CELLS = 1 << 20;

/** Extents of the ends of packed pieces; an end with a number that is not finite is left out. */
function extentsOf(segments: Float64Array): Box {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (let i = 0; i + 1 < segments.length; i += 2) {
    const x = segments[i] ?? Number.NaN;
    const y = segments[i + 1] ?? Number.NaN;
    if (!Number.isFinite(x) || !Number.isFinite(y)) continue;
    minX = Math.min(minX, x);
    minY = Math.min(minY, y);
    maxX = Math.max(maxX, x);
    maxY = Math.max(maxY, y);
  }
  return { minX, minY, maxX, maxY };
}

/**
 * Sorts packed pieces into a grid of square cells, about two pieces a cell. A piece is entered only in the
 * cells that it runs through, so that long lines do not fill whole boxes.
 * @param segments four numbers a piece: x1, y1, x2, y2
 */
export function buildSegmentGrid(segments: Float64Array): SegmentGrid {
  const count = Math.floor(segments.length / 4);
  const bounds = extentsOf(segments);
  if (count === 0 || bounds.minX > bounds.maxX) return { bounds, visitNear: () => undefined };

  const width = bounds.maxX - bounds.minX;
  const height = bounds.maxY - bounds.minY;
  const wanted = Math.max(1, Math.min(MOST_CELLS, count / 2));
  let cell = Math.max(Math.sqrt((width * height) / wanted), Math.max(width, height) / 1024) || 1;
  let columns = 1;
  let rows = 1;
  let starts = new Int32Array(0);

  const columnOf = (x: number): number => Math.max(0, Math.min(columns - 1, Math.floor((x - bounds.minX) / cell)));
  const rowOf = (y: number): number => Math.max(0, Math.min(rows - 1, Math.floor((y - bounds.minY) / cell)));
  const eachCell = (piece: number, enter: (cellNumber: number) => void): void => {
    const at = piece * 4;
    const x1 = segments[at] ?? Number.NaN;
    const y1 = segments[at + 1] ?? Number.NaN;
    const x2 = segments[at + 2] ?? Number.NaN;
    const y2 = segments[at + 3] ?? Number.NaN;
    if (!Number.isFinite(x1 + y1 + x2 + y2)) return;
    const [left, leftY, right, rightY] = x1 <= x2 ? [x1, y1, x2, y2] : [x2, y2, x1, y1];
    const first = columnOf(left);
    const last = columnOf(right);
    const rise = right > left ? (rightY - leftY) / (right - left) : 0;
    for (let column = first; column <= last; column += 1) {
      const fromX = column === first ? left : bounds.minX + column * cell;
      const toX = column === last ? right : bounds.minX + (column + 1) * cell;
      const fromY = first === last ? leftY : leftY + (fromX - left) * rise;
      const toY = first === last ? rightY : leftY + (toX - left) * rise;
      const slack = cell * 1e-6;
      const top = rowOf(Math.max(fromY, toY) + slack);
      for (let row = rowOf(Math.min(fromY, toY) - slack); row <= top; row += 1) enter(row * columns + column);
    }
  };

  for (;;) {
    columns = Math.max(1, Math.min(1024, Math.ceil(width / cell)));
    rows = Math.max(1, Math.min(1024, Math.ceil(height / cell)));
    starts = new Int32Array(columns * rows + 1);
    let entries = 0;
    const most = 16 * count + 4096;
    for (let piece = 0; piece < count && entries <= most; piece += 1) {
      eachCell(piece, (cellNumber) => {
        starts[cellNumber + 1] = (starts[cellNumber + 1] ?? 0) + 1;
        entries += 1;
      });
    }
    if (entries <= most) break;
    cell *= 2;
  }
  for (let i = 1; i < starts.length; i += 1) starts[i] = (starts[i] ?? 0) + (starts[i - 1] ?? 0);
  const pieces = new Int32Array(starts.at(-1) ?? 0);
  const next = starts.slice(0, -1);
  for (let piece = 0; piece < count; piece += 1) {
    eachCell(piece, (cellNumber) => {
      const place = next[cellNumber] ?? 0;
      pieces[place] = piece;
      next[cellNumber] = place + 1;
    });
  }

  return {
    bounds,
    visitNear(box, visit) {
      if (box.maxX < bounds.minX || box.minX > bounds.maxX || box.maxY < bounds.minY || box.minY > bounds.maxY) return;
      const slack = cell * 1e-6;
      const right = columnOf(box.maxX + slack);
      const top = rowOf(box.maxY + slack);
      for (let row = rowOf(box.minY - slack); row <= top; row += 1) {
        for (let column = columnOf(box.minX - slack); column <= right; column += 1) {
          const cellNumber = row * columns + column;
          const end = starts[cellNumber + 1] ?? 0;
          for (let i = starts[cellNumber] ?? 0; i < end; i += 1) visit(pieces[i] ?? 0);
        }
      }
    },
  };
}
