import { pushCubic } from '#shared/underlay/flatten';
import type { Matrix } from '#shared/underlay/matrix';
import { numberOf } from './step-values.ts';

/** Steps of path data as the library packs them; any other number closes the run. */
const MOVE = 0;
const LINE = 1;
const CURVE = 2;
const QUADRATIC = 3;

/** A run of straight pieces, x and y in turn, drawing units. */
export interface PageRun {
  readonly places: number[];
  readonly isClosed: boolean;
}

/** Runs of straight pieces from packed path data, carried through a transform while curves are flattened. */
export function packedRuns(data: ArrayLike<number>, [a, b, c, d, e, f]: Matrix, tolerance: number): PageRun[] {
  const runs: PageRun[] = [];
  let places: number[] = [];
  const end = (isClosed: boolean): void => {
    if (places.length >= 4) runs.push({ places, isClosed });
  };
  const placeAt = (i: number): [number, number] => {
    const x = numberOf(data[i]);
    const y = numberOf(data[i + 1]);
    return [a * x + c * y + e, b * x + d * y + f];
  };
  const bend = (i: number, isCubic: boolean): void => {
    const [x0, y0] = [places[places.length - 2] ?? 0, places[places.length - 1] ?? 0];
    const [x1, y1] = placeAt(i);
    const [x2, y2] = isCubic ? placeAt(i + 2) : [x1, y1];
    const [x3, y3] = placeAt(isCubic ? i + 4 : i + 2);
    if (isCubic) pushCubic(places, x0, y0, x1, y1, x2, y2, x3, y3, tolerance);
    else pushCubic(places, x0, y0, x0 + (2 / 3) * (x1 - x0), y0 + (2 / 3) * (y1 - y0), x3 + (2 / 3) * (x1 - x3), y3 + (2 / 3) * (y1 - y3), x3, y3, tolerance);
  };
  for (let i = 0; i < data.length; ) {
    const step = data[i];
    i += 1;
    if (step === MOVE) {
      end(false);
      places = [...placeAt(i)];
      i += 2;
    } else if (step === LINE) {
      places.push(...placeAt(i));
      i += 2;
    } else if (step === CURVE || step === QUADRATIC) {
      bend(i, step === CURVE);
      i += step === CURVE ? 6 : 4;
    } else {
      end(true);
      // After closing, the path goes on from where the run began.
      places = places.slice(0, 2);
    }
  }
  end(false);
  return runs;
}
