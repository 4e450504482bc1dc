import { nozzleFlow } from './nozzle-flow.ts';
import type { PipeGas } from './pipe-gas.ts';
import type { PipeTree, TreeBranch, TreeNode } from './network-tree.ts';
import { meanPressure_Pa, stretchInlet } from './stretch-flow.ts';

/** Grid of pressures over the least one, each so many times the one before: from 1e-12 of the greatest to all of it. */
const DECADES = 12;
const POINTS = 97;

/** What lies behind a stretch, by the pressure at its end: the pressure it needs at its inlet, and the flow. */
interface Curve {
  readonly inlet_Pa: readonly number[];
  readonly flow_kg_s: readonly number[];
}

/** Place of a pressure in a rising list: the entry before it and the share of the way to the next, by logarithms as powers run. */
function placeOf(rising_Pa: readonly number[], pressure_Pa: number, least_Pa: number): [before: number, share: number] {
  let low = 0;
  let high = rising_Pa.length - 1;
  if (pressure_Pa <= (rising_Pa[0] ?? 0)) return [0, 0];
  if (pressure_Pa >= (rising_Pa[high] ?? 0)) return [high - 1, 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((rising_Pa[middle] ?? 0) <= pressure_Pa) low = middle;
    else high = middle;
  }
  const a = (rising_Pa[low] ?? 0) - least_Pa;
  const b = (rising_Pa[high] ?? 0) - least_Pa;
  const at = pressure_Pa - least_Pa;
  return [low, b > a && a > 0 ? Math.log(at / a) / Math.log(b / a) : 0];
}

/** Between two entries, by logarithms where both are above zero. */
function between(values: readonly number[], [before, share]: [number, number]): number {
  const a = values[before] ?? 0;
  const b = values[before + 1] ?? a;
  return a > 0 && b > 0 ? a * (b / a) ** share : a + (b - a) * share;
}

/**
 * Sets the pressures of all nodes near to their solution, for any tree: from the leaves on, the flow behind each node is
 * tabulated over its pressure, which needs no iteration; then the tables are read from the source on.
 */
export function setPressuresNear(tree: PipeTree, source_Pa: number, gas: PipeGas, backs_Pa: readonly number[], least_Pa: number): void {
  const over_Pa = Array.from({ length: POINTS }, (_, point) => (source_Pa - least_Pa) * 10 ** (-DECADES * (1 - point / (POINTS - 1))));
  const grid_Pa = over_Pa.map((over) => least_Pa + over);
  const flows = new Map<TreeNode, number[]>(tree.nodes.map((node) => [node, grid_Pa.map(() => 0)]));
  const add = (node: TreeNode, flowAt: (pressure_Pa: number) => number): void => {
    const sums = flows.get(node) ?? [];
    for (const [point, pressure_Pa] of grid_Pa.entries()) sums[point] = (sums[point] ?? 0) + flowAt(pressure_Pa);
  };
  for (const [index, { node, effective_m2 }] of tree.outlets.entries()) add(node, (pressure_Pa) => nozzleFlow(effective_m2, gas, pressure_Pa, backs_Pa[index] ?? 0).flow_kg_s);

  const curves = new Map<TreeBranch, Curve>();
  for (const branch of tree.upwards) {
    const flow_kg_s = flows.get(branch.to) ?? [];
    const inlet_Pa = grid_Pa.map((pressure_Pa, point) => stretchInlet(branch.stretch, gas, pressure_Pa, flow_kg_s[point] ?? 0, meanPressure_Pa(source_Pa, pressure_Pa)).inlet_Pa);
    curves.set(branch, { inlet_Pa, flow_kg_s });
    add(branch.from, (pressure_Pa) => {
      const share = Math.min(1, (pressure_Pa - least_Pa) / ((inlet_Pa[0] ?? 0) - least_Pa));
      return share * between(flow_kg_s, placeOf(inlet_Pa, pressure_Pa, least_Pa));
    });
  }
  tree.root.pressure_Pa = source_Pa;
  for (const branch of tree.branches) {
    const inlet_Pa = curves.get(branch)?.inlet_Pa ?? grid_Pa;
    branch.to.pressure_Pa = least_Pa + between(over_Pa, placeOf(inlet_Pa, branch.from.pressure_Pa, least_Pa));
  }
}
