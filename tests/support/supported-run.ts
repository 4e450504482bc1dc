import type { HeldSupport, SupportSums } from '#shared/calculations/design/design';
import type { DerivedNetwork } from '#shared/derived/derived';
import type { PlanPoint3 } from '#shared/geometry/point';
import type { Plan, Support } from '#shared/model/plan';
import { at3, layout } from './layout.ts';

/** A support at a place; its id is its number in the list. */
export interface Held {
  readonly at: PlanPoint3;
  readonly kind?: Support['kind'];
  readonly capacity_N?: number | null;
}

const RUN = {
  // East, one elbow, north to the nozzle, all level: pipes p1 of 3 m and p2 of 2 m.
  runs: [{ places: [at3(0, 0, 2), at3(3, 0, 2), at3(3, 2, 2)] }],
  nozzles: [{ at: at3(3, 2, 2) }],
};

/** An elbow between a pipe of 3 m and one of 2 m that ends at nozzle N1, with supports. */
export const supportedRun = (held: readonly Held[]): Plan =>
  layout({
    ...RUN,
    network: {
      supports: Object.fromEntries(
        held.map(({ at: { x, y, z }, kind, capacity_N }, i) => [`s${i + 1}`, { id: `s${i + 1}`, at: { x, y, z }, kind: kind ?? 'rigid', capacity_N: capacity_N ?? null, brace: 'none' }]),
      ),
    },
  });

/** The drawn supports as sums see them, each on the pipe given by its id. */
export const heldOn = ({ network, pipes }: DerivedNetwork, pipeOf: Readonly<Record<string, string>>): HeldSupport[] =>
  Object.values(network.supports).map((support) => ({
    ref: { kind: 'support', network: network.id, id: support.id },
    support,
    pipe: pipes.find(({ pipe }) => pipe.id === pipeOf[support.id]),
  }));

/** Sums about supports, empty but for what a test gives. */
export const supportSums = (given: Partial<SupportSums>): SupportSums => ({ held: [], table: 'ISO 14520-1', spans: [], nozzles: [], turns: [], ...given });
