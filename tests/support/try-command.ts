import { applyPatches } from 'immer';
import { expect } from 'vitest';
import type { Command, Outcome } from '#shared/commands/command';
import { parsePlan } from '#shared/model/parse-plan';
import type { Level, Network, Plan } from '#shared/model/plan';
import { printPlan } from '#shared/model/print-plan';

export type Done = Extract<Outcome, { ok: true }>;

/** A plan fits the schema, and whatever one part of it names is there. */
export function expectSound(plan: Plan): void {
  const parsed = parsePlan(printPlan(plan));
  if (!parsed.ok) throw new Error(`${parsed.problem.what} ${parsed.problem.where}`);
  expect(parsed.remarks).toEqual([]);
}

/**
 * Does a command and answers its outcome, once it was seen that the plan it was given is untouched, that the next
 * plan is sound, and that its patches lead there and back.
 */
export function done(plan: Plan, command: Command): Done {
  const before = structuredClone(plan);
  const outcome = command(plan);
  if (!outcome.ok) throw new Error(`Refused: ${outcome.reason}`);
  expect(plan).toEqual(before);
  expectSound(outcome.next);
  expect(applyPatches(outcome.next, [...outcome.inverse])).toEqual(plan);
  expect(applyPatches(plan, [...outcome.patches])).toEqual(outcome.next);
  expect(outcome.label).not.toBe('');
  return outcome;
}

/** Does commands one after the other, and answers the last plan. */
export const doneAll = (plan: Plan, ...commands: readonly Command[]): Plan => commands.reduce((present, command) => done(present, command).next, plan);

/** The sentence with which a command is refused; the plan it was given is untouched. */
export function refusal(plan: Plan, command: Command): string {
  const before = structuredClone(plan);
  const outcome = command(plan);
  if (outcome.ok) throw new Error('It was not refused.');
  expect(plan).toEqual(before);
  expect(outcome.reason).toMatch(/^[A-Z“].*\.$/s);
  return outcome.reason;
}

/** The only entry of a record. */
export function only<T>(record: Readonly<Record<string, T>>): T {
  const [first, ...others] = Object.values(record);
  if (!first || others.length > 0) throw new Error(`Expected one entry, got ${Object.keys(record).join(', ') || 'none'}.`);
  return first;
}

/** The only level of a plan. */
export const levelIn = (plan: Plan): Level => only(plan.levels);
/** The only network of a plan. */
export const networkIn = (plan: Plan): Network => only(plan.networks);

/** Every pipe as a text from place to place, shortest writing, in a fixed order: for comparing networks by shape. */
export function pipesAsText({ nodes, pipes }: Network): string[] {
  const round = (value: number): number => Math.round(value * 1e4) / 1e4 + 0;
  const place = (id: string): string => {
    const at = nodes[id]?.at;
    return at ? `${round(at.x)},${round(at.y)},${round(at.z)}` : 'lost';
  };
  return Object.values(pipes)
    .map(({ from, to }) => `${place(from)} → ${place(to)}`)
    .sort();
}

/** Where a nozzle is: [x, y, z], rounded to a tenth of a millimetre. */
export function nozzlePlace(network: Network, id: string): number[] {
  const at = network.nodes[network.nozzles[id]?.node ?? '']?.at;
  return at ? [at.x, at.y, at.z].map((value) => Math.round(value * 1e4) / 1e4 + 0) : [];
}
