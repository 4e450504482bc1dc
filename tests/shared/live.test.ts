import fc from 'fast-check';
import { freeze } from 'immer';
import { describe, expect, test } from 'vitest';
import { notWorked } from '#shared/calculations/design/worked';
import type { DischargeSource } from '#shared/calculations/discharge/discharge-source';
import { acceptFinding, whyNotAccepted } from '#shared/commands/accept-finding';
import type { Outcome } from '#shared/commands/command';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { type History, record, redo, startHistory, undo } from '#shared/commands/history';
import { type Evaluation, evaluate } from '#shared/evaluate';
import { makeLive } from '#shared/live';
import { type Plan, refKey } from '#shared/model/plan';
import { countFindings } from '#shared/rules/count-findings';
import { VERDICTS } from '#shared/rules/finding';
import { building } from '../support/building.ts';
import { Dice, MAKERS, refsOf, smallStart } from '../support/random-commands.ts';
import { wholePlan } from '../support/whole-plan.ts';

const SAID = { reason: 'Agreed with the authority.', by: 'A. Person', date: '2026-11-30' };

/** Plans that are opened one after the other. */
const OPENED: readonly (() => Plan)[] = [smallStart, () => wholePlan().plan, () => structuredClone(building(0.004))];

/** Sources that know nothing, or why there can be no discharge: each is another function, as one that has learned is. */
const sourceOf = (dice: Dice): DischargeSource => (dice.below(2) === 0 ? () => undefined : () => 'the gas became too cold');

/** What somebody reads of an evaluation. */
const read = ({ findings, lapsed, found, design }: Evaluation) => ({
  findings,
  lapsed: new Set(lapsed.map(({ waiver, because }) => `${waiver.finding} ${because}`)),
  counts: found.counts,
  open: found.open,
  asked: design.asked.length,
});

/** One thing that a user does. */
function step(history: History, evaluation: () => Evaluation, what: number, dice: Dice): History {
  if (what === 0) return undo(history);
  if (what === 1) return redo(history);
  if (what === 2) return startHistory(freeze(dice.of(OPENED)(), true));
  const { present } = history;
  if (what === 3) {
    const finding = evaluation().findings.find((each) => whyNotAccepted(each) === null);
    return finding ? recorded(history, acceptFinding(finding, SAID)(present)) : history;
  }
  return recorded(history, dice.of(MAKERS)(present, dice)(present));
}

const recorded = (history: History, outcome: Outcome): History => (outcome.ok ? record(history, outcome) : history);

const anyStep = fc.record({ what: fc.nat(40), slice: fc.integer({ min: 0, max: 400 }), dice: fc.array(fc.nat(1_000_000), { minLength: 24, maxLength: 24 }) });

/** So many questions and then no more. */
function questions(count: number): () => boolean {
  let asked = 0;
  return () => {
    asked += 1;
    return asked > count;
  };
}

describe('checking a plan live', () => {
  test('comes to what a check from nothing comes to, whatever is done in whatever order', () => {
    let done = 0;
    fc.assert(
      fc.property(fc.array(anyStep, { minLength: 60, maxLength: 60 }), (steps) => {
        const live = makeLive();
        let history = startHistory(freeze(smallStart(), true));
        for (const [i, { what, slice, dice: numbers }] of steps.entries()) {
          const dice = new Dice(numbers);
          const source = sourceOf(dice);
          const before = history;
          history = step(history, () => live.check(before.present, source), what, dice);
          if (history !== before) done += 1;
          // As in a drag: what is begun is not finished before the next step comes.
          const begun = live.check(history.present, source, questions(slice));
          if (i % 6 !== 5) continue;
          const finished = live.check(history.present, source);
          expect(finished.isStale).toBe(false);
          const cold = read(evaluate(structuredClone(history.present), source));
          expect(read(finished)).toEqual(cold);
          if (!begun.isStale) expect(read(begun)).toEqual(cold);
        }
      }),
      { numRuns: 15 },
    );
    expect(done).toBeGreaterThan(450);
  }, 900_000);

  test('a plan seen before is answered from what is kept: the very same findings', () => {
    const plan = freeze(wholePlan().plan, true);
    const live = makeLive();
    const source: DischargeSource = () => undefined;
    const first = live.check(plan, source);
    const again = live.check(plan, source);
    expect(again.findings).toHaveLength(first.findings.length);
    for (const [i, finding] of again.findings.entries()) expect(finding).toBe(first.findings[i]);
  });

  test('while time is short it answers what was before, marked stale, and goes on where it stopped', () => {
    const live = makeLive();
    const source: DischargeSource = () => undefined;
    const [start, other] = [freeze(wholePlan().plan, true), freeze(smallStart(), true)];
    const before = live.check(start, source);
    const at = live.check(other, source, questions(0));
    expect(at.isStale).toBe(true);
    expect(at.derived.plan).toBe(other);
    expect(before.isStale).toBe(false);
    let slices = 0;
    let now = at;
    for (; now.isStale && slices < 1000; slices += 1) now = live.check(other, source, questions(5));
    expect(slices).toBeGreaterThan(10);
    expect(read(now)).toEqual(read(evaluate(structuredClone(other), source)));
  });

  test('a time that is up at once never finishes, and one that never is finishes at once', () => {
    const live = makeLive();
    const plan = freeze(smallStart(), true);
    const source: DischargeSource = () => undefined;
    for (let i = 0; i < 3; i += 1) expect(live.check(plan, source, () => true).isStale).toBe(true);
    expect(live.check(plan, source, () => true).findings).toEqual([]);
    expect(live.check(plan, source, () => false).isStale).toBe(false);
  });
});

describe('what is found otherwise than before', () => {
  const source: DischargeSource = () => undefined;
  const whole = wholePlan();
  const start = freeze(whole.plan, true);
  const accepting = (plan: Plan): Plan => {
    const finding = evaluate(plan, source).found.open.find((each) => whyNotAccepted(each) === null && each.subject.kind === 'nozzle') ?? evaluate(plan, source).found.open.find((each) => !whyNotAccepted(each));
    const outcome = finding && acceptFinding(finding, SAID)(plan);
    if (!outcome?.ok) throw new Error('Something can be accepted.');
    return outcome.next;
  };

  test.each([
    { what: 'a plan', first: start },
    { what: 'a plan of which something is accepted', first: accepting(start) },
  ])('$what: what was there, without what has gone and with what has come, is what is there', ({ first }) => {
    const live = makeLive();
    const before = live.check(first, source).found;
    const nozzle = whole.lastNozzle;
    const at = first.networks[nozzle.network]?.nodes[first.networks[nozzle.network]?.nozzles[nozzle.id]?.node ?? '']?.at;
    const outcome = at && moveNozzle(nozzle, { ...at, x: at.x + 0.3 })(first);
    if (!outcome?.ok) throw new Error('A nozzle can be moved.');
    for (const isTimeUp of [questions(3), () => false]) {
      const now = live.check(outcome.next, source, isTimeUp).found;
      const { gone, come } = now.since(before);
      const stays = new Set(before.all);
      for (const finding of gone) stays.delete(finding);
      for (const finding of come) stays.add(finding);
      expect(stays).toEqual(new Set(now.all));
      expect(come.length).toBeLessThan(now.size);
    }
    expect(before.since(before)).toEqual({ gone: [], come: [] });
  });
});

describe('what a check tells besides its one list', () => {
  const { findings, found } = evaluate(freeze(smallStart(), true));

  test('counts, lists by verdict, and what is open agree with it', () => {
    expect(found.counts).toEqual(countFindings(findings));
    expect(found.size).toBe(findings.length);
    expect(found.open).toEqual(findings.filter(({ verdict }) => verdict !== 'ok'));
    expect(VERDICTS.flatMap((verdict) => found.of(verdict))).toEqual(findings);
  });
  test('what is said about each thing is what the list says about it', () => {
    for (const ref of refsOf(smallStart())) {
      const about = findings.filter(({ subject }) => subject.kind !== 'plan' && subject.kind !== 'profile' && refKey(subject) === refKey(ref));
      expect(found.about(ref)).toEqual(about);
    }
  });
  test('discharges that were asked for come with what they were told', () => {
    const plan = freeze(wholePlan().plan, true);
    const { asked } = evaluate(plan, () => 'too cold').design;
    expect(asked.length).toBeGreaterThan(1);
    expect(asked.every(({ answer }) => answer === 'too cold')).toBe(true);
    expect(evaluate(plan, () => 'too cold').design.networks[0]?.discharge).toEqual(notWorked('too cold.'));
  });
});
