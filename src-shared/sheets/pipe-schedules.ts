import type { Derived, FittingKind } from '../derived/derived.ts';
import { FITTING_WORDS, boughtWords } from '../derived/fitting-words.ts';
import type { Settings } from '../model/plan.ts';
import { type PipeSize, pipeSizeRank } from '../profile/pipe-table.ts';
import { fittingCountsOf } from '../take-off/fitting-counts.ts';
import { piecesOf } from '../take-off/pieces-of.ts';
import { formatLength } from '../units/length-text.ts';
import { networkStretches } from './pipe-stretches.ts';
import { nozzleName } from './schedules.ts';
import { heightText, sentence, sizeText } from './sheet-text.ts';
import type { Table } from './tables.ts';

type Lengths = Settings['lengths'];

/** Total of pipe by size, schedule, material and joint. */
export function pipeSchedule(derived: Derived): Table {
  const { lengths } = derived.plan.settings;
  const totals = new Map<string, { size: PipeSize; words: readonly [string, string, string]; length_m: number; pieces: number }>();
  for (const network of derived.networks) {
    for (const { pipe, length_m } of network.pipes) {
      const words = [`Sch ${pipe.schedule}`, pipe.material.replace('-', ' '), pipe.joint] as const;
      const key = [pipe.size, ...words].join('/');
      const known = totals.get(key) ?? { size: pipe.size, words, length_m: 0, pieces: 0 };
      totals.set(key, { ...known, length_m: known.length_m + length_m, pieces: known.pieces + 1 });
    }
  }
  return {
    title: 'Pipe',
    note: 'Lengths run from centre to centre of fittings; the cut length is shorter by the take-off of the fittings.',
    columns: [
      { head: 'Size', font: 'bold' },
      { head: 'Wall' },
      { head: 'Material', isWide: true },
      { head: 'Joint' },
      { head: 'Total length', align: 'right' },
    ],
    rows: [...totals.values()]
      .sort((a, b) => pipeSizeRank(b.size) - pipeSizeRank(a.size))
      .map(({ size, words: [wall, material, joint], length_m }) => [sizeText(size, lengths), wall, sentence(material), joint, formatLength(length_m, lengths)]),
  };
}

/** Sizes of a fitting as the trade names them. */
export const sizesText = (sizes: readonly PipeSize[], lengths: Lengths): string => sizes.map((size) => sizeText(size, lengths)).join(' × ');

/** Count of fittings as they are bought, by kind and size; the same as in the bill of materials. */
export function fittingSchedule({ networks, plan }: Pick<Derived, 'networks' | 'plan'>): Table {
  const { lengths } = plan.settings;
  const kinds = Object.keys(FITTING_WORDS);
  const rows = new Map<string, { kind: FittingKind; cells: readonly [string, string]; count: number }>();
  for (const { kind, isStreet, sizes, place, count } of fittingCountsOf(networks.map((network) => ({ network, pieces: piecesOf(network) })))) {
    const words = boughtWords({ kind, isStreet, isReducing: sizes.length > 1 });
    const cells = [sentence(place === 'stock' ? `${words} between stock lengths` : words), sizesText(sizes, lengths)] as const;
    rows.set(cells.join('/'), { kind, cells, count: (rows.get(cells.join('/'))?.count ?? 0) + count });
  }
  return {
    title: 'Fittings',
    columns: [{ head: 'Fitting', isWide: true }, { head: 'Size' }, { head: 'Count', align: 'right' }],
    rows: [...rows.values()].sort((a, b) => kinds.indexOf(a.kind) - kinds.indexOf(b.kind) || (a.cells.join() < b.cells.join() ? -1 : 1)).map(({ cells, count }) => [...cells, String(count)]),
  };
}

/** Straight stretches of pipe with both ends in figures, for the cut list and for checking the route. */
export function runSchedule(derived: Derived): Table {
  const { lengths } = derived.plan.settings;
  const rows = derived.networks.flatMap((network) =>
    networkStretches(network, network.pipes).map((stretch) => {
      const way = stretch.lie === 'upright' ? (stretch.way === 'riser' ? 'up' : 'down') : stretch.lie;
      const heights = stretch.lie === 'level' ? heightText(stretch.from.z, lengths) : `${heightText(stretch.from.z, lengths)} to ${heightText(stretch.to.z, lengths)}`;
      return [network.network.name, sizeText(stretch.size, lengths), way, formatLength(stretch.length_m, lengths), heights];
    }),
  );
  return {
    title: 'Pipe runs in flow order',
    shortTitle: 'Pipe runs',
    note: 'Straight pipe from fitting to fitting; heights of the centreline above the finished floor.',
    columns: [{ head: 'Network', isWide: true }, { head: 'Size' }, { head: 'Lies' }, { head: 'Length', align: 'right' }, { head: 'Height', align: 'right' }],
    rows,
  };
}

/** Way of the agent from the cylinders to each nozzle. */
export function pathSchedule(derived: Derived): Table {
  const { lengths } = derived.plan.settings;
  return {
    title: 'Paths',
    note: 'Developed length from the end of the discharge assembly, drops included.',
    columns: [{ head: 'Nozzle', font: 'bold', isWide: true }, { head: 'Length', align: 'right' }, { head: 'Elbows', align: 'right' }, { head: 'Tees', align: 'right' }],
    rows: derived.networks.flatMap((network) =>
      network.paths.map((path) => {
        const nozzle = network.nozzles.find(({ ref }) => ref.id === path.nozzle);
        return [nozzle ? nozzleName(derived, nozzle) : path.nozzle, formatLength(path.length_m, lengths), String(path.elbows), String(path.tees)];
      }),
    ),
  };
}
