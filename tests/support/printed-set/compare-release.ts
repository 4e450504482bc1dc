import type { Comparison } from './printed-figure.ts';
import { type PrintedPage, seriesOf } from './printed-set.ts';
import { type PrintedRow, tableRows } from './printed-table.ts';

const SIGNALS = ['First detector', 'Second detector', 'Manual release', 'Release of the agent'];

/** Rows of a table whose room stands in its first row only. */
function byRoom(rows: readonly PrintedRow[]): PrintedRow[] {
  let Room = '';
  return rows.map((row) => {
    Room = row.Room ?? Room;
    return { ...row, Room };
  });
}

/** The release matrix against the devices that give its signals, what it shuts, and the form on which it is tested. */
export function compareRelease(pages: readonly PrintedPage[], all: Comparison): void {
  const matrix = byRoom(tableRows(pages, 'Release matrix: what is shut, and on what'));
  const devices = tableRows(pages, 'Devices');
  const tested = byRoom(tableRows(pages, (title) => title.startsWith('Functional test: ')));
  all.figures('Rows of the release matrix', matrix.length > 0 ? 1 : 0, 1, 0);
  for (const row of matrix) {
    const { Room = '', What = '', Kind = '', 'On the plan': target = '' } = row;
    const marked = SIGNALS.filter((signal) => row[signal] === 'X');
    all.figures(`Signals that shut “${What}” of ${Room}`, marked.length, 1, 0);
    const [signal = ''] = marked;
    all.figures(`${signal} of ${Room} that shuts “${What}”, and its devices`, givers(devices, Room, signal), signal === 'Second detector' ? 2 : 1, 0);
    const outcome = `${What}: ${/damper|door/i.test(Kind) ? 'shuts' : 'goes off'} (${target})`;
    all.figures(`“${outcome}” of ${Room} in matrix and test`, tested.filter((each) => each.Room === Room && each.Input === signal && each['Must bring about'] === outcome).length, 1, 0);
    if (target !== 'not drawn') all.figures(`“${target}”, which ${Room} shuts, in a schedule or on a plan`, isDrawn(pages, devices, target) ? 1 : 0, 1, 0);
  }
}

/** Detectors, or zones where two must agree, or manual releases: 1 where there is what gives a signal; 2 for a second detector. */
function givers(devices: readonly PrintedRow[], room: string, signal: string): number {
  const own = devices.filter(({ Room }) => Room === room || Room === `outside ${room}`);
  const detectors = own.filter((device) => device['What it is'] === 'Detector');
  if (signal === 'Second detector') return Math.min(2, new Set(detectors.map((each) => /zone (\w+)/.exec(each['What is known'] ?? '')?.[1])).size);
  if (signal === 'Manual release') return Math.min(1, own.filter((device) => device['What it is'] === 'Manual release').length);
  return Math.min(1, detectors.length);
}

const isDrawn = (pages: readonly PrintedPage[], devices: readonly PrintedRow[], target: string): boolean =>
  devices.some(({ Device = '' }) => target.startsWith(Device)) ||
  tableRows(pages, 'Openings and penetrations').some(({ Opening = '' }) => target.startsWith(Opening)) ||
  [2, 3, 7].some((series) => seriesOf(pages, series).some(({ texts }) => texts.some(({ text }) => text === target)));
