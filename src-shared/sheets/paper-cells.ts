import type { PaperBox, TurnedBox } from './text-box.ts';

/** Side of a cell [mm]. */
const CELL_mm = 12;
/** Rows of cells that a key can tell apart; no paper is higher. */
const CELL_ROWS = 4096;

/** Things on paper by square cells, so that only neighbours are compared. */
export function paperCells<T>() {
  interface Entry {
    readonly thing: T;
    /** The visit that met it last: a thing in several cells is met once. */
    seen: number;
  }
  const held = new Map<number, Entry[]>();
  let visit = 0;
  const eachCell = ({ left, top, right, bottom }: PaperBox, use: (key: number, i: number, j: number) => void): void => {
    for (let i = Math.floor(left / CELL_mm); i <= Math.floor(right / CELL_mm); i += 1) {
      for (let j = Math.floor(top / CELL_mm); j <= Math.floor(bottom / CELL_mm); j += 1) use(i * CELL_ROWS + j, i, j);
    }
  };
  return {
    add(at: PaperBox, thing: T, isIn: (cell: TurnedBox) => boolean = () => true): void {
      const entry: Entry = { thing, seen: 0 };
      const half = CELL_mm / 2;
      eachCell(at, (key, i, j) => {
        if (!isIn({ x: (i + 0.5) * CELL_mm, y: (j + 0.5) * CELL_mm, halfWidth: half + 1e-6, halfHeight: half + 1e-6, rotation_rad: 0 })) return;
        const list = held.get(key);
        if (list) list.push(entry);
        else held.set(key, [entry]);
      });
    },
    remove(at: PaperBox, isIt: (thing: T) => boolean): void {
      eachCell(at, (key) => {
        const list = held.get(key);
        if (list) held.set(key, list.filter(({ thing }) => !isIt(thing)));
      });
    },
    /** Calls `use` once for each thing near a box, until it answers true; answers whether it did. */
    some(at: PaperBox, use: (thing: T) => boolean): boolean {
      visit += 1;
      for (let i = Math.floor(at.left / CELL_mm); i <= Math.floor(at.right / CELL_mm); i += 1) {
        for (let j = Math.floor(at.top / CELL_mm); j <= Math.floor(at.bottom / CELL_mm); j += 1) {
          for (const entry of held.get(i * CELL_ROWS + j) ?? []) {
            if (entry.seen === visit) continue;
            entry.seen = visit;
            if (use(entry.thing)) return true;
          }
        }
      }
      return false;
    },
  };
}
