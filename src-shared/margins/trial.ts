import { makeLive } from '../live.ts';
import type { PlanPoint } from '../geometry/point.ts';
import type { Plan, RefOf } from '../model/plan.ts';
import { type Finding, type Verdict, findingKey } from '../rules/finding.ts';
import type { Findings } from '../rules/findings.ts';
import { RULES } from '../rules/index.ts';
import type { Rule } from '../rules/rule.ts';
import type { Command } from '../commands/command.ts';
import { movedTo } from './nozzle-motion.ts';

/** What a change would bring that is not there as drawn. */
export interface Trial {
  /** Why the program would not do it at all. */
  readonly refused: string | undefined;
  readonly stops: readonly Finding[];
  readonly warnings: readonly Finding[];
}

/**
 * A plan with nothing in it that a move of one network's pipe cannot touch: the other levels and the networks on them go.
 * What is left keeps its identity, and with that what was derived of it.
 */
export function aroundLevel(plan: Plan, level: string): Plan {
  const only = plan.levels[level];
  if (!only) return plan;
  const networks = Object.fromEntries(Object.entries(plan.networks).filter(([, network]) => network.level === level));
  const around = { ...plan, levels: { [level]: only }, networks };
  if (!Object.isFrozen(plan)) return around;
  Object.freeze(around.levels);
  Object.freeze(around.networks);
  return Object.freeze(around);
}

/** What some findings say that is in none of those before. */
const news = (now: Findings, verdict: Verdict, before: ReadonlySet<string>): Finding[] => now.of(verdict).filter((each) => !before.has(findingKey(each)));

/**
 * Tries changes on a plan: everything is worked out and checked as it is for the user, but for what a discharge would have to be
 * run for. Only what a change touches is looked at anew, as long as the plan is frozen.
 * @param rules  that are asked
 */
export function trialsOn(plan: Plan, rules: readonly Rule[] = RULES): (change: Command) => Trial {
  const live = makeLive(rules);
  const foundIn = (each: Plan): Findings => live.check(each, () => undefined).found;
  const drawn = foundIn(plan);
  const stopped = new Set(drawn.of('stop').map(findingKey));
  const warned = new Set([...stopped, ...drawn.of('warn').map(findingKey)]);
  return (change) => {
    const outcome = change(plan);
    if (!outcome.ok) return { refused: outcome.reason, stops: [], warnings: [] };
    const found = foundIn(outcome.next);
    return {
      refused: undefined,
      stops: news(found, 'stop', stopped),
      get warnings() {
        return news(found, 'warn', warned);
      },
    };
  };
}

/** Whether a change can be done and stops nothing. */
export const isSound = ({ refused, stops }: Trial): boolean => refused === undefined && stops.length === 0;

/** Tries places for a nozzle at the height that it has. */
export function placeTrials(plan: Plan, ref: RefOf<'nozzle'>, height_m: number): (at: PlanPoint) => Trial {
  const level = plan.networks[ref.network]?.level ?? '';
  const tried = trialsOn(aroundLevel(plan, level));
  return (at) => tried((around) => movedTo(around, ref, at, height_m));
}
