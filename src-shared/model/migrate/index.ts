import type { JsonObject } from '../guarded-json.ts';
import { type PlanFailure, planFailure } from '../plan-problem.ts';
import { PLAN_VERSION } from '../schema.ts';
import { withBasisOfDesign } from './001-basis-of-design.ts';
import { withPipeAsBuilt } from './002-pipe-as-built.ts';
import { withSurroundings } from './003-surroundings.ts';
import { withIssuedAndBuilt } from './004-issued-and-built.ts';

/** One step from a version of the plan file to the next. */
export interface Migration {
  /** Version that it reads; it makes the next one. */
  readonly from: number;
  /** What it does, for the user: "Pipe sizes were written in full." */
  readonly remark: string;
  /** Makes the next version from a plan of version `from`, without changing what it was given. */
  step(plan: JsonObject): JsonObject;
}

/** Every step, oldest first. */
export const MIGRATIONS: readonly Migration[] = [withBasisOfDesign, withPipeAsBuilt, withSurroundings, withIssuedAndBuilt];

/**
 * Brings a plan of an older version to the present one, step by step.
 * @param plan the plan as it was read; anything but its `version` is still unchecked
 * @returns the plan in the present version with a remark for every step; or why it cannot be read
 */
export function migrate(
  plan: JsonObject,
  migrations: readonly Migration[] = MIGRATIONS,
): { readonly ok: true; readonly plan: JsonObject; readonly remarks: string[] } | PlanFailure {
  const { version } = plan;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 0) {
    return planFailure('damaged', 'The plan does not say which version it is.', 'plan.json, version', 'Open an earlier copy of the plan.');
  }
  if (version > PLAN_VERSION) {
    return planFailure(
      'newer-version',
      'The plan was made with a newer version of this program.',
      `plan.json, version ${version}; this program reads up to version ${PLAN_VERSION}`,
      'Install the newer version of this program and open the plan with it.',
    );
  }
  let present = plan;
  const remarks: string[] = [];
  for (let at = version; at < PLAN_VERSION; at += 1) {
    const migration = migrations.find(({ from }) => from === at);
    if (!migration) {
      return planFailure('unsupported', 'The plan is of a version that this program no longer reads.', `plan.json, version ${version}`, 'Open it with an earlier version of this program and save it there.');
    }
    present = { ...migration.step(present), version: at + 1 };
    remarks.push(migration.remark);
  }
  return { ok: true, plan: present, remarks };
}
