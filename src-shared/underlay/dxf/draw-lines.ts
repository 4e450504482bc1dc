import { transformed } from '../matrix.ts';
import { type Drawer, planeOf, workOf } from './reading.ts';

/** LINE: a straight piece between two places. */
export const drawLine: Drawer = (reading) => {
  const { records } = reading;
  workOf(reading).line(records.number(10, 0), records.number(20, 0), records.number(11, 0), records.number(21, 0));
};

/** SOLID and TRACE: a filled area of three or four corners; the file lists the last two crosswise. */
export const drawSolid: Drawer = (reading) => {
  const { records } = reading;
  const third = [records.number(12, 0), records.number(22, 0)] as const;
  const fourth = records.has(13) ? ([records.number(13, 0), records.number(23, 0)] as const) : third;
  const corners = [records.number(10, 0), records.number(20, 0), records.number(11, 0), records.number(21, 0), ...fourth, ...third];
  const ring = transformed(planeOf(records, records.number(30, 0)), corners);
  const work = workOf(reading);
  work.polyline(ring, true);
  work.fill(ring);
};

/** 3DFACE: up to four corners whose edges may be hidden one by one. */
export const drawFace: Drawer = (reading) => {
  const { records } = reading;
  const work = workOf(reading);
  const corners: number[] = [];
  for (const code of [10, 11, 12, 13]) {
    if (code === 13 && !records.has(13)) break;
    corners.push(records.number(code, 0), records.number(code + 10, 0));
  }
  const hidden = records.whole(70, 0) & 15;
  if (hidden === 0) {
    work.polyline(corners, true);
    return;
  }
  const count = corners.length / 2;
  for (let i = 0; i < count; i += 1) {
    if (hidden & (1 << i)) continue;
    const next = (i + 1) % count;
    work.line(corners[2 * i] ?? 0, corners[2 * i + 1] ?? 0, corners[2 * next] ?? 0, corners[2 * next + 1] ?? 0);
  }
};

/** LEADER: a run of straight pieces to an arrow. */
export const drawLeader: Drawer = (reading) => {
  const { records } = reading;
  const places: number[] = [];
  for (let i = 0; i + 1 < records.count; i += 1) {
    if (records.codeAt(i) === 10 && records.codeAt(i + 1) === 20) places.push(records.numberAt(i), records.numberAt(i + 1));
  }
  workOf(reading).polyline(places, false);
};

/** MLINE: parallel lines along a run; each vertex tells the direction of its mitre and each line's distance along it. */
export const drawParallels: Drawer = (reading) => {
  const { records } = reading;
  const lines: number[][] = [];
  let at: [number, number] = [0, 0];
  let mitre: [number, number] = [0, 0];
  let line = -1;
  let isFirstNumber = false;
  for (let i = 0; i < records.count; i += 1) {
    const code = records.codeAt(i);
    if (code === 11) at = [records.numberAt(i), 0];
    else if (code === 21) at[1] = records.numberAt(i);
    else if (code === 13) {
      mitre = [records.numberAt(i), 0];
      line = -1;
    } else if (code === 23) mitre[1] = records.numberAt(i);
    else if (code === 74) {
      line += 1;
      isFirstNumber = true;
    } else if (code === 41 && isFirstNumber) {
      isFirstNumber = false;
      const offset = records.numberAt(i);
      const places = lines[line] ?? [];
      lines[line] = places;
      places.push(at[0] + mitre[0] * offset, at[1] + mitre[1] * offset);
    }
  }
  const isClosed = (records.whole(71, 0) & 2) !== 0;
  const work = workOf(reading);
  for (const places of lines) if (places) work.polyline(places, isClosed);
};
