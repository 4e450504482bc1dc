import type { Derived } from '../derived/derived.ts';
import type { Settings } from '../model/plan.ts';
import type { PipeSize } from '../profile/pipe-table.ts';
import { formatLength } from '../units/length-text.ts';
import { nozzleName } from '../derived/nozzle-name.ts';
import { sizeText } from './sheet-text.ts';
import type { Table } from './tables.ts';

type Lengths = Settings['lengths'];

/** Sizes of a fitting as the trade names them. */
export const sizesText = (sizes: readonly PipeSize[], lengths: Lengths): string => sizes.map((size) => sizeText(size, lengths)).join(' × ');

/** Way of the agent from the cylinders to each nozzle. */
export function pathSchedule(derived: Derived): Table {
  const { lengths } = derived.plan.settings;
  return {
    title: 'Paths',
    note: 'Developed length from the end of the discharge assembly, drops included. A tee with a dirt trap counts as an elbow, not as a tee: it turns the flow and does not part it.',
    columns: [{ head: 'Nozzle', font: 'bold', isWide: true }, { head: 'Length', align: 'right' }, { head: 'Elbows', align: 'right' }, { head: 'Tees', align: 'right' }],
    rows: derived.networks.flatMap((network) =>
      network.paths.map((path) => {
        const nozzle = network.nozzles.find(({ ref }) => ref.id === path.nozzle);
        return [nozzle ? nozzleName(derived, nozzle) : path.nozzle, formatLength(path.length_m, lengths), String(path.elbows), String(path.tees)];
      }),
    ),
  };
}
