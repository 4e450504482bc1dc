import { ringOf } from './line-work.ts';
import type { NumberList } from './number-list.ts';

/** More pieces than this on one layer are not searched. */
const MOST_SEARCHED = 300_000;

/**
 * Closed rings that separate pieces form end to end. A place where three or more pieces meet belongs to none.
 * @param pieces four numbers each
 * @param reach  ends this near to each other meet, unit of the pieces, > 0
 */
export function closedChains(pieces: NumberList, reach: number): Float64Array[] {
  const count = pieces.length / 4;
  if (count < 3 || count > MOST_SEARCHED || !(reach > 0)) return [];
  const all = new Float64Array(pieces.length);
  pieces.copyTo(all, 0);
  const places = new Map<string, number>();
  const placeOf = (x: number, y: number): number => {
    const column = Math.round(x / reach);
    const row = Math.round(y / reach);
    const key = `${column},${row}`;
    const known = places.get(key);
    if (known !== undefined) return known;
    const fresh = places.size;
    places.set(key, fresh);
    return fresh;
  };
  const ends = new Int32Array(count * 2);
  for (let i = 0; i < count * 2; i += 1) ends[i] = placeOf(all[2 * i] ?? 0, all[2 * i + 1] ?? 0);
  // Two slots a place for the ends that meet there; -1 empty, -2 too many.
  const meeting = new Int32Array(places.size * 2).fill(-1);
  for (let i = 0; i < ends.length; i += 1) {
    const at = 2 * (ends[i] ?? 0);
    if (meeting[at] === -1) meeting[at] = i;
    else if (meeting[at + 1] === -1) meeting[at + 1] = i;
    else meeting[at] = -2;
  }
  const used = new Uint8Array(count);
  const rings: Float64Array[] = [];
  for (let start = 0; start < count; start += 1) {
    if (used[start]) continue;
    const run: number[] = [];
    let piece = start;
    let leaves = 2 * start + 1;
    let isClosed = false;
    for (;;) {
      used[piece] = 1;
      const enters = leaves ^ 1;
      run.push(all[2 * enters] ?? 0, all[2 * enters + 1] ?? 0);
      const at = 2 * (ends[leaves] ?? 0);
      const first = meeting[at] ?? -1;
      const second = meeting[at + 1] ?? -1;
      if (first < 0 || second < 0) break;
      const next = first === leaves ? second : first;
      piece = next >> 1;
      if (piece === start) {
        isClosed = next === 2 * start;
        break;
      }
      if (used[piece]) break;
      leaves = next ^ 1;
    }
    const ring = isClosed ? ringOf(run) : undefined;
    if (ring) rings.push(ring);
  }
  return rings;
}
