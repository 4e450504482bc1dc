import { compareFieldRoom } from './compare-field-room.ts';
import { compareFindings } from './compare-findings.ts';
import { compareIndex } from './compare-index.ts';
import { compareNozzles } from './compare-nozzles.ts';
import { comparePipe } from './compare-pipe.ts';
import { comparePressure } from './compare-pressure.ts';
import { compareRelease } from './compare-release.ts';
import { compareRooms } from './compare-rooms.ts';
import { Comparison } from './printed-figure.ts';
import type { PrintedPage } from './printed-set.ts';

/** Compares what the sheets of one printed set say of the same things, from the printed words alone. */
export function compareSet(pages: readonly PrintedPage[]): Comparison {
  const all = new Comparison();
  for (const compare of [comparePipe, compareNozzles, compareFieldRoom, compareRooms, compareRelease, comparePressure, compareFindings, compareIndex]) compare(pages, all);
  return all;
}
