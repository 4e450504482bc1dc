import { type Comparison, SIXTEENTH_m, figureIn, lengthIn } from './printed-figure.ts';
import { type PrintedPage, seriesOf } from './printed-set.ts';
import { type PrintedRow, fieldRows, resultOf, sumLines, tableRows } from './printed-table.ts';

const FOOT_m = 0.3048;

/** Rooms, cylinders and devices in schedules, on drawings and in sums; every length that is printed in two ways. */
export function compareRooms(pages: readonly PrintedPage[], all: Comparison): void {
  const spaces = tableRows(pages, 'Spaces');
  all.figures('Spaces are listed', spaces.length > 0 ? 1 : 0, 1, 0);
  for (const row of spaces) {
    const name = row.Space ?? '';
    const [floor_ft2, height_m, volume_ft3] = [figureIn(row.Floor), lengthIn(row.Height ?? ''), figureIn(row['Gross volume'])];
    all.figures(`Volume of ${name}: floor times height`, volume_ft3, (floor_ft2 * (height_m ?? Number.NaN)) / FOOT_m, 0.06 + floor_ft2 * (SIXTEENTH_m / 2 / FOOT_m) * 0.02 + 0.005 * 10);
    let drawn = 0;
    for (const series of [2, 3]) {
      const under = seriesOf(pages, series).flatMap(({ texts }) => texts.flatMap(({ text }, i) => (text === name && / ft², /.test(texts[i + 1]?.text ?? '') ? [texts[i + 1]?.text ?? ''] : [])));
      for (const words of under) all.words(`Floor and height of ${name} in schedule and on its drawing`, `${row.Floor}, ${row.Height}`, words.replace(/, (ceiling|depth) /, ', '));
      if (under.length > 0) drawn += 1;
    }
    all.figures(`Floor and height of ${name} on a plan or ceiling plan`, drawn > 0 ? 1 : 0, 1, 0);
    all.figures(`${name} on a plan`, seriesOf(pages, 2).some(({ texts }) => texts.some(({ text }) => text === name)) ? 1 : 0, 1, 0);
  }
  compareSums(pages, all);
  compareCylinders(pages, all);
  compareDevices(pages, all);
  compareTwice(pages, all);
}

function compareSums(pages: readonly PrintedPage[], all: Comparison): void {
  const spaces = tableRows(pages, 'Spaces');
  const rooms = spaces.map(({ Space = '' }) => Space).filter((name) => sumLines(pages, 'Agent quantity', name).length > 0);
  all.figures('Rooms with a sum of their agent', rooms.length > 0 ? 1 : 0, 1, 0);
  for (const room of rooms) {
    const agent = sumLines(pages, 'Agent quantity', room);
    const result = (what: string): string | undefined => agent.find(({ What }) => What === what)?.Result;
    for (const { What = '', Result } of agent) {
      const name = /^Gross volume of (.+)$/.exec(What)?.[1];
      if (name === undefined) continue;
      const volume = spaces.find(({ Space }) => Space === name)?.['Gross volume'];
      all.figures(`Volume of ${name} in schedule and calculation`, figureIn(volume), figureIn(/= (.+) ft³$/.exec(Result ?? '')?.[1]), 1e-9);
    }
    all.words(`Design concentration of ${room} in schedule and calculation`, spaces.find(({ Space }) => Space === room)?.Design, result('Design concentration, C'));
    const people = sumLines(pages, 'People and oxygen', room);
    all.words(`Net volume of ${room} in two sums`, result('Net volume, V'), people.find(({ What }) => What === 'Net volume, V')?.Result);
    all.words(`Agent of ${room} in two sums`, result('Agent installed, m_in'), people.find(({ What }) => What === 'Agent installed, m')?.Result);
  }
  for (const { Of = '', Sum = '', What = '', Result } of glance(pages)) {
    // Signs of formulas are left off the cover: "Net volume, V" of the sum is its "Net volume".
    const line = sumLines(pages, Sum, Of).find((row) => row.What === What || row.What?.replace(/, [^, ]+$/, '') === What);
    all.words(`${What} of ${Of} at a glance and in its sum`, Result, resultOf(line));
  }
}

/** Rows of the design at a glance, each with the thing and the sum that the row before it names when it names none. */
function glance(pages: readonly PrintedPage[]): PrintedRow[] {
  let last: PrintedRow = {};
  return tableRows(pages, 'Design at a glance').map((row) => {
    last = { Of: last.Of ?? '', Sum: last.Sum ?? '', ...row };
    return last;
  });
}

function compareCylinders(pages: readonly PrintedPage[], all: Comparison): void {
  const field = fieldRows(pages);
  for (const { Network = '', Cylinders = '', 'Rail height': rail } of tableRows(pages, 'Cylinders and discharge assembly')) {
    const [, count, list = ''] = /^(\d+): (.+)$/.exec(Cylinders) ?? [];
    const names = list.split(', ');
    all.figures(`Cylinders of ${Network}: counted and named`, Number(count), names.length, 0);
    all.words(`Cylinders of ${Network} in schedule and calculation`, `${names.length} cylinder${names.length === 1 ? '' : 's'}`, resultOf(sumLines(pages, 'Discharge', Network).find(({ What }) => What === 'Cylinders')));
    for (const name of names) {
      for (const series of [2, 4]) all.figures(`${name} on a sheet of series ${series}`, seriesOf(pages, series).some(({ texts }) => texts.some(({ text }) => text === name || text.startsWith(`${name}: `))) ? 1 : 0, 1, 0);
      all.lengths(`Rail of ${name} in schedule and field sheet`, rail, field.find((row) => row['Dim.'] === `${name} c`)?.Planned);
    }
    const wall = seriesOf(pages, 4).filter(({ texts }) => texts.some(({ text }) => text === `Cylinder wall, ${Network}`));
    all.figures(`Rail of ${Network} in schedule and on its wall`, wall.some(({ texts }) => texts.some(({ text }) => text === `rail ${rail}`)) ? 1 : 0, 1, 0);
  }
  for (const row of field) all.lengths(`${row['Dim.']} of the field sheet in feet and mm`, row.Planned, row.mm === undefined ? undefined : `${row.mm} mm`, SIXTEENTH_m / 2 + 0.0005 + 1e-6);
}

function compareDevices(pages: readonly PrintedPage[], all: Comparison): void {
  const devices = tableRows(pages, 'Devices');
  all.figures('Devices are listed', devices.length > 0 ? 1 : 0, 1, 0);
  for (const { Device = '', 'What it is': kind, Height = '' } of devices) {
    const is = (text: string): boolean => text === Device || text.startsWith(`${Device} `) || text.startsWith(`${Device},`);
    all.figures(`${Device} on an electrical plan`, seriesOf(pages, 7).some(({ bookmark, texts }) => bookmark.includes(' plan') && texts.some(({ text }) => is(text))) ? 1 : 0, 1, 0);
    if (kind !== 'Detector') continue;
    const drawn = seriesOf(pages, 3).flatMap(({ texts }) => texts.flatMap(({ text }, i) => (is(text) ? [texts[i + 1]?.text ?? ''] : []))).filter((words) => lengthIn(words) !== undefined);
    for (const words of drawn) all.words(`Height of ${Device} in schedule and ceiling plan`, Height, words);
  }
}

/** Every length that is printed in metric and in feet says the same in both. */
function compareTwice(pages: readonly PrintedPage[], all: Comparison): void {
  for (const { number, texts } of pages) {
    for (const { text } of texts) {
      for (const [words, metric = '', feet = ''] of text.matchAll(/([−-]?[\d.]+ m?m) = ([−-]?(?:\d+'-)?\d+(?: \d+\/\d+)?(?:\/\d+)?")/g)) {
        all.lengths(`“${words}” on ${number}`, metric, feet, SIXTEENTH_m / 2 + (metric.endsWith('mm') ? 0.0005 : 0.5 * 10 ** -(/\.(\d+)/.exec(metric)?.[1]?.length ?? 0)) + 1e-6);
      }
    }
  }
}
