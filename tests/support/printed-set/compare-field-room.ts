import { type Comparison, lengthIn } from './printed-figure.ts';
import { type PrintedPage, seriesOf } from './printed-set.ts';
import { type PrintedRow, tableRows } from './printed-table.ts';

const degrees = (words: string | undefined): number => Number(/^([\d.]+)°/.exec(words ?? '')?.[1] ?? Number.NaN);

/** Whether a direction lies in "346.0° to 14.0°", the way that it turns up. */
function isAllowed(direction_deg: number, words: string): boolean {
  if (words === 'any way' || words === 'as drawn only') return Number.isFinite(direction_deg);
  const [from, to] = words.split(' to ').map(degrees);
  if (from === undefined || to === undefined) return false;
  const up = (by: number): number => ((by % 360) + 360) % 360;
  return up(direction_deg - from) <= up(to - from);
}

/** How far a nozzle may be moved and turned: what its flag on the field sheet says, its table, and the place and holes of the schedule. */
export function compareFieldRoom(pages: readonly PrintedPage[], all: Comparison): void {
  const moves = tableRows(pages, 'Room to move without a call');
  const nozzles = tableRows(pages, 'Nozzles');
  all.sets('Nozzles of the schedule and of the room to move', nozzles.map(({ Nozzle = '' }) => Nozzle), moves.map(({ Nozzle = '' }) => Nozzle));
  for (const row of nozzles) {
    const name = row.Nozzle ?? '';
    const move = moves.find(({ Nozzle }) => Nozzle === name);
    const turn = move?.['First hole (0° east, 90° north)'] ?? '';
    const flags = seriesOf(pages, 12).flatMap(({ texts }) => texts.flatMap(({ text }, i) => (text === name ? [texts.slice(i + 1, i + 4).map((next) => next.text)] : []))).filter(([first = '']) => first.includes(' face ') || first === 'ask before any change');
    all.figures(`${name} on the drawings of the field sheet`, flags.length, 1, 0);
    const [flag = []] = flags;
    if (turn.startsWith('Ask before')) {
      all.words(`Room of ${name} on field sheet and in its table`, flag[0], 'ask before any change');
      continue;
    }
    all.words(`Turn of ${name} on field sheet and in its table`, flag[2], `first hole ${turn}`);
    all.words(`First shift of ${name} on field sheet and in its table`, flag[0], shiftOf(move, ''));
    all.words(`Second shift of ${name} on field sheet and in its table`, flag[1], shiftOf(move, ' 2'));
    all.figures(`First hole of ${name} (${row.Holes}) within “${turn}”`, isAllowed(degrees(row.Holes), turn) ? 1 : 0, 1, 0);
    const [least, greatest] = (move?.['Orifice above floor'] ?? '').split(' to ').map(lengthIn);
    const height = lengthIn(row['Orifice height'] ?? '') ?? Number.NaN;
    all.figures(`Height of ${name} within its room`, (least ?? Number.NaN) <= height + 1e-6 && height - 1e-6 <= (greatest ?? Number.NaN) ? 1 : 0, 1, 0);
  }
}

const shiftOf = (move: PrintedRow | undefined, which: '' | ' 2'): string | undefined => move && `${(move[`Off the face${which}`] ?? '').replace(/^./, (first) => first.toLowerCase())} ${move[`may shift${which}`]}`;
