import { designOf } from '../calculations/design/design-of.ts';
import { derivePlan } from '../derived/derive-plan.ts';
import { makeLive } from '../live.ts';
import type { PlanPoint } from '../geometry/point.ts';
import type { Plan, RefOf } from '../model/plan.ts';
import { type Finding, type Verdict, findingKey } from '../rules/finding.ts';
import type { Findings } from '../rules/findings.ts';
import type { Rule } from '../rules/rule.ts';
import type { RuleFindings } from '../rules/rule-findings.ts';
import type { Command } from '../commands/command.ts';
import { movedTo } from './nozzle-motion.ts';

/** What a change would bring that is not there as drawn. */
export interface Trial {
  /** Why the program would not do it at all. */
  readonly refused: string | undefined;
  /** Stops, warnings, and what can no longer be checked: a check that warns is not kept, and what nobody can check is not either. */
  readonly broken: readonly Finding[];
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

type Found = Pick<Findings, 'of'>;

/** What some findings say that is in none of those before. */
const news = (now: Found, verdict: Verdict, before: ReadonlySet<string>): Finding[] => now.of(verdict).filter((each) => !before.has(findingKey(each)));

/** Works out and checks plans one after another, as it is for the user but for what a discharge would have to be run for. */
function wholeCheck(): (plan: Plan) => readonly Found[] {
  const live = makeLive();
  return (plan) => [live.check(plan, () => undefined).found];
}

/** Asks some rules of plans one after another. */
function someRules(plan: Plan, rules: readonly Rule[]): (plan: Plan) => readonly Found[] {
  const sums = designOf(derivePlan(plan), () => undefined);
  const last: RuleFindings[] = [];
  return (changed) => {
    const derived = derivePlan(changed);
    return rules.map((rule, i) => {
      const now = rule.ask(derived, sums, last[i]);
      last[i] = now;
      return now;
    });
  };
}

/**
 * Tries changes on a plan. Only what a change touches is looked at anew, as long as the plan is frozen.
 * @param rules  that are asked, of such as look at no sum that the change touches: the sums are those of the plan as drawn. The whole
 *               catalogue, and all sums worked out, when none are given
 */
export function trialsOn(plan: Plan, rules?: readonly Rule[]): (change: Command) => Trial {
  const foundIn = rules ? someRules(plan, rules) : wholeCheck();
  const drawn = foundIn(plan);
  const keys = (verdict: Verdict): string[] => drawn.flatMap((each) => each.of(verdict).map(findingKey));
  const stopped = new Set(keys('stop'));
  const warned = new Set([...stopped, ...keys('warn')]);
  const unchecked = new Set([...warned, ...keys('not-checked')]);
  return (change) => {
    const outcome = change(plan);
    if (!outcome.ok) return { refused: outcome.reason, broken: [] };
    const broken = foundIn(outcome.next).flatMap((found) => [...news(found, 'stop', stopped), ...news(found, 'warn', warned), ...news(found, 'not-checked', unchecked)]);
    return { refused: undefined, broken };
  };
}

/** Whether a change can be done and breaks nothing. */
export const isSound = ({ refused, broken }: Trial): boolean => refused === undefined && broken.length === 0;

/** Tries places for a nozzle at the height that it has. */
export function placeTrials(plan: Plan, ref: RefOf<'nozzle'>, height_m: number, rules?: readonly Rule[]): (at: PlanPoint) => Trial {
  const level = plan.networks[ref.network]?.level ?? '';
  const tried = trialsOn(aroundLevel(plan, level), rules);
  return (at) => tried((around) => movedTo(around, ref, at, height_m));
}
