import type { Plan } from '#shared/model/plan';
import { printedNodes } from './compare-pipe.ts';
import { type Comparison, SIXTEENTH_m, figureIn, lengthIn } from './printed-figure.ts';
import type { PrintedPage } from './printed-set.ts';
import { tableRows } from './printed-table.ts';

const LEAST_m = 1e-6;
const IN2_PER_M2 = 1 / 0.0254 ** 2;
const size = (words: string): string => words.replace(/"$/, '').replace(' ', '-');

/** What is printed against the raw figures of the plan file: heights, areas and names as somebody drew them, distances by Pythagoras. */
export function comparePlan(pages: readonly PrintedPage[], plan: Plan, all: Comparison): void {
  const nozzles = tableRows(pages, 'Nozzles');
  const nodes = printedNodes(pages);
  const assemblies = tableRows(pages, 'Cylinders and discharge assembly');
  const networks = Object.values(plan.networks);
  all.sets('Networks printed and drawn', assemblies.map(({ Network = '' }) => Network), networks.map(({ name }) => name));
  all.sets('Nozzles printed and drawn', nozzles.map(({ Nozzle = '' }) => Nozzle), networks.flatMap((network) => Object.values(network.nozzles).map(({ name }) => name)));
  all.sets('Devices printed and drawn', tableRows(pages, 'Devices').map(({ Device = '' }) => Device), Object.values(plan.levels).flatMap(({ devices }) => Object.values(devices).map(({ name }) => name)));
  for (const network of networks) {
    const cylinders = assemblies.find(({ Network }) => Network === network.name)?.Cylinders?.replace(/^\d+: /, '').split(', ') ?? [];
    all.sets(`Cylinders of ${network.name} printed and drawn`, cylinders, Object.values(network.cylinders).map(({ name }) => name));
    for (const nozzle of Object.values(network.nozzles)) {
      const row = nozzles.find(({ Nozzle }) => Nozzle === nozzle.name);
      const at = network.nodes[nozzle.node]?.at;
      all.figures(`Height of ${nozzle.name} printed and drawn`, lengthIn(row?.['Orifice height'] ?? ''), at?.z, SIXTEENTH_m / 2 + LEAST_m);
      const area_in2 = (nozzle.orificeArea_m2 ?? Number.NaN) * IN2_PER_M2;
      all.figures(`Orifice of ${nozzle.name} printed and drawn`, figureIn(row?.['Orifice area']), area_in2, 0.005 * area_in2);
    }
    // However many pipes one straight run is drawn with, each size is as long in all.
    const own = nodes.filter((node) => node.network === network.name && node.size !== '');
    for (const each of new Set(Object.values(network.pipes).map((pipe) => pipe.size))) {
      const drawn = Object.values(network.pipes).filter((pipe) => pipe.size === each).reduce((sum, { from, to }) => {
        const [a, b] = [network.nodes[from]?.at, network.nodes[to]?.at];
        return sum + (a && b ? Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z) : Number.NaN);
      }, 0);
      const printed = own.filter((node) => size(node.size) === each);
      all.figures(`${each} in pipe of ${network.name} printed and drawn`, printed.reduce((sum, { length }) => sum + (lengthIn(length) ?? Number.NaN), 0), drawn, (printed.length * SIXTEENTH_m) / 2 + LEAST_m);
    }
  }
}
