import type { FlowNozzle, FlowStretch } from './discharge.ts';
import type { NozzleFlow } from './nozzle-flow.ts';

/** A node with what Newton's step needs of all that lies behind it; written anew in every step. */
export interface TreeNode {
  pressure_Pa: number;
  /** Flow that all nozzles behind it draw at the pressures so far. */
  flow_kg_s: number;
  /** Its slope over the pressure of the node, and what it still changes by when that stays. */
  slope: number;
  rest_kg_s: number;
  step_Pa: number;
  /** Least pressure behind any nozzle that it feeds: below it nothing flows. */
  still_Pa: number;
}

export interface TreeBranch {
  readonly stretch: FlowStretch;
  readonly from: TreeNode;
  readonly to: TreeNode;
  gain: number;
  offset_Pa: number;
}

export interface TreeOutlet {
  readonly effective_m2: number;
  readonly node: TreeNode;
  flow: NozzleFlow;
}

/** The pipes of a unit from the source to its nozzles. */
export interface PipeTree {
  readonly nodes: readonly TreeNode[];
  readonly root: TreeNode;
  /** In flow order. */
  readonly branches: readonly TreeBranch[];
  /** Against it. */
  readonly upwards: readonly TreeBranch[];
  readonly outlets: readonly TreeOutlet[];
}

/** @throws {RangeError} a stretch or nozzle at a node that is none */
export function pipeTreeOf(stretches: readonly FlowStretch[], nodeCount: number, nozzles: readonly FlowNozzle[]): PipeTree {
  const nodes: TreeNode[] = Array.from({ length: nodeCount }, () => ({ pressure_Pa: 0, flow_kg_s: 0, slope: 0, rest_kg_s: 0, step_Pa: 0, still_Pa: 0 }));
  const nodeAt = (index: number): TreeNode => {
    const node = nodes[index];
    if (!node) throw new RangeError(`Node ${index} is not one of ${nodeCount} nodes.`);
    return node;
  };
  const branches = stretches.map((stretch) => ({ stretch, from: nodeAt(stretch.from), to: nodeAt(stretch.to), gain: 0, offset_Pa: 0 }));
  const outlets = nozzles.map(({ node, area_m2, dischargeCoefficient }) => ({
    effective_m2: area_m2 * dischargeCoefficient,
    node: nodeAt(node),
    flow: { flow_kg_s: 0, byPressure: 0, isChoked: false },
  }));
  return { nodes, root: nodeAt(0), branches, upwards: branches.toReversed(), outlets };
}
