import { expect } from 'vitest';
import { applyCure } from '#shared/commands/apply-cure';
import { evaluate } from '#shared/evaluate';
import type { Plan } from '#shared/model/plan';
import { type Cure, type Finding, findingKey } from '#shared/rules/finding';
import type { Rule } from '#shared/rules/rule';
import { check } from './layout.ts';
import { done } from './try-command.ts';

const stopsOf = (plan: Plan): string[] => evaluate(plan).findings.filter(({ verdict }) => verdict === 'stop').map(findingKey);

/**
 * Carries out the cure of the first open finding of a rule, and expects that it is cleared, that fewer are open and that
 * nothing new is stopped.
 * @param kind what the cure must be
 */
export function expectCured(rule: Rule, plan: Plan, kind: Cure['kind']): Plan {
  const isOpen = ({ verdict }: Finding): boolean => verdict !== 'ok';
  const before = check(rule, plan).filter(isOpen);
  const open = before.find(({ cure }) => cure?.kind === kind);
  if (!open?.cure) throw new Error(`${rule.id} has no such cure: ${before.map(({ cure, text }) => `${text} > ${cure?.text ?? 'none'}`).join('; ')}`);
  expect(open.cure.text).not.toMatch(/\.$/);
  const { next } = done(plan, applyCure(open.cure));
  const after = check(rule, next).filter(isOpen);
  expect(after.map(findingKey)).not.toContain(findingKey(open));
  expect(after.length).toBeLessThan(before.length);
  const known = new Set(stopsOf(plan));
  expect(stopsOf(next).filter((key) => !known.has(key))).toEqual([]);
  return next;
}
