import type { FlowNozzle, FlowStretch } from './discharge.ts';
import { setPressuresNear } from './network-start.ts';
import { type PipeTree, pipeTreeOf } from './network-tree.ts';
import { type NozzleFlow, nozzleFlow } from './nozzle-flow.ts';
import type { PipeGas } from './pipe-gas.ts';
import { meanPressure_Pa, stretchInlet } from './stretch-flow.ts';

/** What flows through the network at one moment. Flows of the nozzles sum up to the flow of the source. */
export interface NetworkFlow {
  readonly flow_kg_s: number;
  /** By node [Pa]. */
  readonly pressures_Pa: readonly number[];
  /** By nozzle. */
  readonly nozzles: readonly NozzleFlow[];
  readonly isSolved: boolean;
}

export interface Network {
  /** @param backs_Pa  pressure behind each nozzle */
  solve(source_Pa: number, gas: PipeGas, backs_Pa: readonly number[]): NetworkFlow;
}

/** Steps from the pressures of the moment before; they need three or four. */
const WARM_STEPS = 12;
/** Steps from tabulated pressures and the share of the way they go: shorter after a while, should two states answer each other. */
const NEAR_SHARES: readonly number[] = [1, 0.5, 0.2, 0.05].flatMap((share) => Array.from({ length: 15 / share }, () => share));
const PRESSURE_TOLERANCE = 1e-9;
const FLOW_TOLERANCE = 1e-8;
/** Digits of a number do not go further. */
const ROUNDING = 2e-15;
const STILL_WITHIN_Pa = 1e-7;

function gatherNozzles({ nodes, outlets }: PipeTree, gas: PipeGas, backs_Pa: readonly number[]): void {
  for (const node of nodes) {
    node.flow_kg_s = 0;
    node.slope = 0;
    node.rest_kg_s = 0;
  }
  for (const [index, outlet] of outlets.entries()) {
    const { node } = outlet;
    outlet.flow = nozzleFlow(outlet.effective_m2, gas, node.pressure_Pa, backs_Pa[index] ?? 0);
    node.flow_kg_s += outlet.flow.flow_kg_s;
    node.slope += outlet.flow.byPressure;
  }
}

function gatherBranches({ upwards }: PipeTree, gas: PipeGas): void {
  for (const branch of upwards) {
    const { from, to } = branch;
    const inlet = stretchInlet(branch.stretch, gas, to.pressure_Pa, to.flow_kg_s, meanPressure_Pa(from.pressure_Pa, to.pressure_Pa));
    branch.gain = 1 / (inlet.byOutlet + inlet.byFlow * to.slope);
    branch.offset_Pa = (from.pressure_Pa - inlet.inlet_Pa - inlet.byFlow * to.rest_kg_s) * branch.gain;
    from.flow_kg_s += to.flow_kg_s;
    from.slope += to.slope * branch.gain;
    from.rest_kg_s += to.rest_kg_s + to.slope * branch.offset_Pa;
  }
}

/** @returns whether the step changed nothing that matters */
function movePressures({ root, branches }: PipeTree, least_Pa: number, share: number): boolean {
  let isStill = true;
  const flowTolerance = FLOW_TOLERANCE * root.flow_kg_s;
  for (const { from, to, gain, offset_Pa } of branches) {
    // No pressure passes that of the source, and what lies behind must know when one is held back.
    to.step_Pa = Math.min(offset_Pa + gain * from.step_Pa, (root.pressure_Pa - to.pressure_Pa) / share);
    const step = Math.abs(to.step_Pa) / to.pressure_Pa;
    if (step > PRESSURE_TOLERANCE || (step > ROUNDING && Math.abs(to.rest_kg_s + to.slope * to.step_Pa) > flowTolerance)) isStill = false;
  }
  for (const { to } of branches) {
    // A step that would stop a flow goes most of the way only: without flow nothing would say how to come back.
    const over_Pa = to.pressure_Pa - to.still_Pa;
    const floor_Pa = over_Pa > STILL_WITHIN_Pa ? to.still_Pa + 0.1 * over_Pa : least_Pa;
    to.pressure_Pa = Math.min(root.pressure_Pa, Math.max(floor_Pa, to.pressure_Pa + share * to.step_Pa));
  }
  return isStill;
}

/**
 * Steady flow through a tree of pipes to nozzles. The unknowns are the pressures of the nodes; every flow is the sum of
 * the nozzles behind it, so that no mass is lost. Newton's steps on "the inlet that each stretch needs is the pressure
 * of its node" are solved exactly from the leaves to the root and back.
 */
export function createNetwork(stretches: readonly FlowStretch[], nodeCount: number, nozzles: readonly FlowNozzle[]): Network {
  const tree = pipeTreeOf(stretches, nodeCount, nozzles);
  const { nodes, root, upwards, outlets } = tree;

  return {
    solve(source_Pa, gas, backs_Pa) {
      const least_Pa = Math.min(source_Pa, ...backs_Pa);
      for (const node of nodes) node.still_Pa = Number.POSITIVE_INFINITY;
      for (const [index, { node }] of outlets.entries()) node.still_Pa = Math.min(node.still_Pa, backs_Pa[index] ?? 0);
      for (const { from, to } of upwards) from.still_Pa = Math.min(from.still_Pa, to.still_Pa);
      const settle = (share: number): boolean => {
        gatherNozzles(tree, gas, backs_Pa);
        gatherBranches(tree, gas);
        return movePressures(tree, least_Pa, share);
      };
      let isSolved = false;
      if (root.pressure_Pa > 0) {
        const scale = source_Pa / root.pressure_Pa;
        for (const node of nodes) node.pressure_Pa = Math.min(source_Pa, Math.max(least_Pa, node.pressure_Pa * scale));
        root.pressure_Pa = source_Pa;
        for (let count = 0; count < WARM_STEPS && !isSolved; count += 1) isSolved = settle(1);
      }
      if (!isSolved) {
        setPressuresNear(tree, source_Pa, gas, backs_Pa, least_Pa);
        isSolved = NEAR_SHARES.some(settle);
      }
      if (!isSolved) {
        // The tables alone are right to a few hundredths; whoever asks is told.
        setPressuresNear(tree, source_Pa, gas, backs_Pa, least_Pa);
        gatherNozzles(tree, gas, backs_Pa);
        gatherBranches(tree, gas);
      }
      return { flow_kg_s: root.flow_kg_s, pressures_Pa: nodes.map(({ pressure_Pa }) => pressure_Pa), nozzles: outlets.map(({ flow }) => flow), isSolved };
    },
  };
}
