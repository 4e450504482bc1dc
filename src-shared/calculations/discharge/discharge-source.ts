import type { DischargeInput, DischargeResult } from './discharge.ts';

/** A discharge as somebody has it at hand; stale when it is the last one while a new one is worked out. */
export interface KnownDischarge {
  readonly result: DischargeResult;
  readonly isStale: boolean;
}

/**
 * Where the discharge of a network comes from: worked out on the spot, or from a worker that may still be at it.
 * Answers undefined while there is none yet, or why there can be none.
 */
export type DischargeSource = (network: string, input: DischargeInput) => KnownDischarge | string | undefined;
