import type { DerivedNetwork } from '../derived/derived.ts';
import { fittingSizesOf } from '../derived/bought-fittings.ts';
import { fittingAttitude } from '../isometric/fitting-attitude.ts';
import type { Isometric, IsometricNode } from '../isometric/layout-isometric.ts';
import type { Settings } from '../model/plan.ts';
import { formatLength } from '../units/length-text.ts';
import { formatQuantity } from '../units/quantity-text.ts';
import { sizesText } from './pipe-schedules.ts';
import { degreesText, heightText, sentence, sizeText } from './sheet-text.ts';
import type { Table } from './tables.ts';

type Lengths = Settings['lengths'];

/** Area of a nozzle's holes, or that nobody entered it. */
export const orificeText = (area_m2: number | null, lengths: Lengths): string => (area_m2 === null ? 'orifice not known' : `orifice ${formatQuantity(area_m2, 'orificeArea', lengths)}`);

/** Fittings of a node in words: tees with their attitude, what has several sizes with them, like ones counted. */
export function fittingsText(network: DerivedNetwork, { fittings }: IsometricNode, lengths: Lengths): string[] {
  const counts = new Map<string, number>();
  for (const fitting of fittings) {
    const sizes = fitting.isReducing ? ` ${sizesText(fittingSizesOf(fitting), lengths)}` : '';
    const words = fittingAttitude(network, fitting) + sizes;
    counts.set(words, (counts.get(words) ?? 0) + 1);
  }
  return [...counts].map(([words, count]) => (count > 1 ? `${count} × ${words}` : words));
}

function whatIsAt(network: DerivedNetwork, node: IsometricNode, lengths: Lengths): string {
  const { isSource, nozzle } = node;
  const holes = nozzle ? (nozzle.holes_rad.length > 0 ? `holes ${nozzle.holes_rad.map(degreesText).join(', ')}` : 'no holes drawn') : '';
  const words = [
    ...(isSource ? ['pipe begins'] : []),
    ...fittingsText(network, node, lengths),
    ...(nozzle ? [`nozzle ${nozzle.nozzle.name}`, orificeText(nozzle.nozzle.orificeArea_m2, lengths), holes] : []),
  ];
  return sentence(words.join('; ')) || 'Open end';
}

/** The numbered nodes of an isometric. */
export function isometricTable({ network, nodes, runs }: Isometric, lengths: Lengths): Table {
  const numbers = new Map(nodes.map(({ id, number }) => [id, number]));
  return {
    title: `Nodes of the isometric: ${network.network.name}`,
    shortTitle: 'Nodes of the isometric',
    note: 'Numbers follow the flow. Lengths run from centre to centre of fittings; heights are above the finished floor; holes: 0° plan east, 90° plan north.',
    columns: [
      { head: 'No.', font: 'bold', align: 'right' },
      { head: 'What', isWide: true },
      { head: 'Height', align: 'right' },
      { head: 'After', align: 'right' },
      { head: 'Pipe to it', align: 'right', least_mm: 28 },
      { head: 'From source', align: 'right', least_mm: 16 },
    ],
    rows: nodes.map((node) => {
      const run = runs.find(({ to }) => to === node.id);
      return [
        String(node.number),
        whatIsAt(network, node, lengths),
        heightText(node.at.z, lengths),
        String((run && numbers.get(run.from)) ?? ''),
        run ? `${sizeText(run.size, lengths)} · ${formatLength(run.length_m, lengths)}` : 'none',
        node.distance_m === undefined ? 'not reached' : formatLength(node.distance_m, lengths),
      ];
    }),
  };
}
