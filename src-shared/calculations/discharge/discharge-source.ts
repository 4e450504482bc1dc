import type { DischargeInput, DischargeResult } from './discharge.ts';

/** A discharge as somebody has it at hand; stale when it is the last one while a new one is worked out. */
export interface KnownDischarge {
  readonly result: DischargeResult;
  readonly isStale: boolean;
}

/**
 * Where the discharge of a network comes from: worked out on the spot, or from a worker that may still be at it.
 * Answers undefined while there is none yet, or why there can be none. One that knows more is another function: what
 * it was asked before is asked anew only of another one.
 */
export type DischargeSource = (network: string, input: DischargeInput) => KnownDischarge | string | undefined;

/** A discharge that was asked for, and what the answer was. */
export interface AskedDischarge {
  readonly network: string;
  readonly input: DischargeInput;
  readonly answer: ReturnType<DischargeSource>;
}
