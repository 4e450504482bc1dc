import type { Plan } from '../../model/plan.ts';
import type { Finding } from '../finding.ts';

export const WHOLE_PLAN: Finding['subject'] = { kind: 'plan', id: 'plan' };

/** A plan under its project's name, with what a check looks at. */
export const planSubject = <S>({ info }: Pick<Plan, 'info'>, subject: S) => ({ subject, ref: WHOLE_PLAN, name: info.project || 'Plan' });
