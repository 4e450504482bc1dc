import type { Plan } from '../model/plan.ts';
import type { Derived } from './derived.ts';

/** Derives everything that follows from a plan without any limit or judgement. */
export const derivePlan = (plan: Plan): Derived => ({ plan, spaces: [], solids: [], networks: [], nozzles: [] });
