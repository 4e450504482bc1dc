import type { Evaluation } from '../../evaluate.ts';
import type { FlowBlock } from '../flow.ts';
import type { SheetLayout } from '../frame.ts';
import type { Drawing } from '../tables.ts';
import { LEAST_RISER_mm, drawRiser } from './draw-riser.ts';
import { type RiserCircuit, panelWords, riserCircuits, wireWords } from './riser-circuits.ts';
import { riserReach } from './riser-devices.ts';

/** Between two columns of tables [mm at factor 1]. */
const COLUMNS_APART_mm = 7;

/** Paper that title and note take above a diagram [mm at factor 1]. */
const HEAD_mm = 24;

/** A diagram, in as many parts as it takes for each to have room on a sheet; the panel stands beside every part. */
function onSheets(circuits: readonly RiserCircuit[], most_mm: number, draw: (circuits: readonly RiserCircuit[]) => Drawing): Drawing[] {
  const drawing = draw(circuits);
  if (drawing.height_mm <= most_mm) return [drawing];
  const [only] = circuits;
  if (circuits.length > 1) {
    const half = Math.ceil(circuits.length / 2);
    return [circuits.slice(0, half), circuits.slice(half)].flatMap((part) => onSheets(part, most_mm, draw));
  }
  if (!only || only.stations.length < 2) return [drawing];
  const half = Math.ceil(only.stations.length / 2);
  return [only.stations.slice(0, half), only.stations.slice(half)].flatMap((stations) => onSheets([{ stations }], most_mm, draw));
}

/** The riser diagram of each network that has cylinders or a releasing circuit, two side by side where the paper is wide enough. */
export function riserBlocks({ derived, design }: Pick<Evaluation, 'derived' | 'design'>, { area, tableColumns, sizes }: SheetLayout): FlowBlock[] {
  const { lengths } = derived.plan.settings;
  const width = area.right - area.left;
  const column = (width - (tableColumns - 1) * COLUMNS_APART_mm * sizes.factor) / tableColumns;
  const drawn = design.networks.filter(({ network }) => network.release !== null || Object.keys(network.cylinders).length > 0);
  const isNarrow = drawn.length > 1 && tableColumns > 1 && column >= LEAST_RISER_mm * sizes.factor;
  return drawn.map((network): FlowBlock => {
    const reach = riserReach(derived, network.ref);
    const [panel, notes] = [panelWords(reach, network, lengths), wireWords(network.network, lengths)];
    const drawings = onSheets(riserCircuits(reach, network, lengths), area.bottom - area.top - HEAD_mm * sizes.factor, (circuits) => drawRiser(panel, circuits, notes, isNarrow ? column : width, sizes));
    return {
      span: isNarrow ? 'column' : 'full',
      table: {
        title: `Riser diagram: ${network.name}`,
        shortTitle: 'Riser diagram',
        note: 'One line for all wires of a circuit, not to scale. A broken ring stands for what is not given. Connect the actuator last, panel clear, circuit proved dead.',
        columns: [],
        rows: [],
        isPlain: true,
        foot: drawings.map((drawing) => ({ kind: 'drawings', drawings: [drawing] })),
      },
    };
  });
}
