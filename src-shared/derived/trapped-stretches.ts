import type { AssemblyPart } from '../model/plan.ts';

/** A stretch of the discharge assembly that can be shut at both ends. */
export interface TrappedStretch {
  /** What keeps the agent from going back; null: the valve of the cylinder. */
  readonly from: AssemblyPart | null;
  /** What keeps it from going on. */
  readonly to: AssemblyPart;
  readonly hasRelief: boolean;
}

/**
 * The stretches of a discharge assembly in which agent can be shut in, in flow order: up to each stop valve, and to
 * each check valve that is turned against the flow, from the nearest check valve, stop valve or cylinder valve before it.
 */
export function trappedStretches(assembly: readonly AssemblyPart[]): TrappedStretch[] {
  const found: TrappedStretch[] = [];
  let from: AssemblyPart | null = null;
  let hasRelief = false;
  for (const part of assembly) {
    if (part.kind === 'relief-valve') hasRelief = true;
    if (part.kind !== 'stop-valve' && part.kind !== 'check-valve') continue;
    if (part.kind === 'stop-valve' || !part.arrowDownstream) found.push({ from, to: part, hasRelief });
    from = part;
    hasRelief = false;
  }
  return found;
}
