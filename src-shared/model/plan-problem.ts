/** Why a plan file cannot be opened: what is wrong, where, and what to do. Shown to the user as it stands. */
export interface PlanProblem {
  readonly code: 'damaged' | 'too-large' | 'newer-version' | 'unsupported';
  readonly what: string;
  readonly where: string;
  readonly remedy: string;
}
export type PlanFailure = { readonly ok: false; readonly problem: PlanProblem };

/** Builds the answer of a reading that failed. */
export const planFailure = (code: PlanProblem['code'], what: string, where: string, remedy: string): PlanFailure => ({
  ok: false,
  problem: { code, what, where, remedy },
});

/** What to do about a file that is not as this program writes it. */
export const RESTORE_COPY = 'Open an earlier copy of the plan, or have the place named above corrected.';
