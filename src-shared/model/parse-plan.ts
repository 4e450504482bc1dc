import { type Issue, firstIssues, pathInWords } from './first-issues.ts';
import { parseGuardedJson } from './guarded-json.ts';
import { mendPlan } from './mend-plan.ts';
import { MIGRATIONS, type Migration, migrate } from './migrate/index.ts';
import type { Plan } from './plan.ts';
import { type PlanFailure, RESTORE_COPY, planFailure } from './plan-problem.ts';
import { planSchema } from './schema.ts';

/** A plan that was read, with what was migrated or mended on the way, in sentences; or why it cannot be read. */
export type ParsedPlan = { readonly ok: true; readonly plan: Plan; readonly remarks: string[] } | PlanFailure;

const NAME = 'plan.json';
/** A file with more remarks than this has lost its meaning to the reader of them. */
const MOST_REMARKS = 12;
const MOST_ISSUES = 3;

const notAPlan = (): PlanFailure =>
  planFailure('unsupported', 'This file is not a plan of this program.', NAME, 'Choose a plan file (.nzw), or import the file as a floor plan.');

/** The remarks that fit on a screen, and how many more there are. */
const shortened = (remarks: readonly string[]): string[] =>
  remarks.length <= MOST_REMARKS ? [...remarks] : [...remarks.slice(0, MOST_REMARKS - 1), `There are ${remarks.length - MOST_REMARKS + 1} more remarks like these.`];

/**
 * Reads a plan from the text of a plan.json that nobody vouches for: bounded in size and time, migrated from
 * older versions, checked part by part, and mended where something names a part that is not there.
 * @param migrations for tests; the program's own otherwise
 */
export function parsePlan(text: string, migrations: readonly Migration[] = MIGRATIONS): ParsedPlan {
  const json = parseGuardedJson(text, NAME);
  if (!json.ok) return json;
  const { value } = json;
  if (value === null || typeof value !== 'object' || Array.isArray(value) || value.format !== 'nozzlewright-plan') return notAPlan();
  const migrated = migrate(value, migrations);
  if (!migrated.ok) return migrated;

  const [first, ...others] = firstIssues(planSchema, migrated.plan, MOST_ISSUES);
  if (first) {
    const sentence = ({ path, text: fault }: Issue): string => `${pathInWords(migrated.plan, path) || 'the plan'} ${fault}`;
    const what = `The plan is damaged: ${[first, ...others].map(sentence).join('; ')}.`;
    return planFailure('damaged', what, `${NAME}, ${pathInWords(migrated.plan, first.path)}`, RESTORE_COPY);
  }
  // The one place where text from outside becomes a plan: the schema has just taken every part of it.
  const plan = migrated.plan as unknown as Plan;
  const mended = mendPlan(plan);
  return mended.ok ? { ok: true, plan, remarks: shortened([...migrated.remarks, ...mended.remarks]) } : mended;
}
