import { type PathCorner, drawPath } from './paths.ts';
import { type Drawer, planeOf, workOf } from './reading.ts';

const CLOSED = 1;
const SPACE_CURVE = 8;
const GRID_MESH = 16;
const FACE_MESH = 64;
const FRAME_ONLY = 16;

/** LWPOLYLINE: corners in the order of the file, each with its own bulge and widths. */
export const drawLightPolyline: Drawer = (reading) => {
  const { records, tolerance } = reading;
  const common = records.number(43, 0);
  const corners: PathCorner[] = [];
  let x: number | undefined;
  let y = 0;
  let bulge = 0;
  let startWidth = common;
  let endWidth = common;
  const keep = (): void => {
    if (x !== undefined) corners.push({ x, y, bulge, startWidth, endWidth });
  };
  for (let i = 0; i < records.count; i += 1) {
    const code = records.codeAt(i);
    if (code === 10) {
      keep();
      x = records.numberAt(i);
      y = 0;
      bulge = 0;
      startWidth = common;
      endWidth = common;
    } else if (code === 20) y = records.numberAt(i);
    else if (code === 42) bulge = records.numberAt(i);
    else if (code === 40) startWidth = records.numberAt(i);
    else if (code === 41) endWidth = records.numberAt(i);
  }
  keep();
  drawPath(workOf(reading), planeOf(records, records.number(38, 0)), corners, (records.whole(70, 0) & CLOSED) !== 0, tolerance);
};

/** POLYLINE: its corners follow as VERTEX records up to SEQEND. */
export const drawPolyline: Drawer = (reading) => {
  const { records, tolerance, tally } = reading;
  const flags = records.whole(70, 0);
  const startCommon = records.number(40, 0);
  const endCommon = records.number(41, 0);
  const isFlat = (flags & SPACE_CURVE) === 0;
  const plane = isFlat ? planeOf(records, records.number(30, 0)) : ([1, 0, 0, 1, 0, 0] as const);
  const work = workOf(reading);
  const corners: PathCorner[] = [];
  while (records.upcoming === 'VERTEX') {
    records.next();
    if (records.whole(70, 0) & FRAME_ONLY) continue;
    corners.push({
      x: records.number(10, 0),
      y: records.number(20, 0),
      bulge: isFlat ? records.number(42, 0) : 0,
      startWidth: isFlat ? records.number(40, startCommon) : 0,
      endWidth: isFlat ? records.number(41, endCommon) : 0,
    });
  }
  if (records.upcoming === 'SEQEND') records.next();
  if (flags & (GRID_MESH | FACE_MESH)) tally.note('mesh');
  else drawPath(work, plane, corners, (flags & CLOSED) !== 0, tolerance);
};
