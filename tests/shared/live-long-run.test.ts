import { freeze } from 'immer';
import { expect, test } from 'vitest';
import type { DischargeSource } from '#shared/calculations/discharge/discharge-source';
import { acceptFinding, whyNotAccepted } from '#shared/commands/accept-finding';
import type { Command } from '#shared/commands/command';
import { editBasis } from '#shared/commands/edit-basis';
import { editLimit } from '#shared/commands/edit-limit';
import { type History, record, redo, startHistory, undo } from '#shared/commands/history';
import { saveProfileInPlan } from '#shared/commands/save-profile-in-plan';
import { setProfile } from '#shared/commands/set-profile';
import { type Evaluation, evaluate } from '#shared/evaluate';
import { makeLive } from '#shared/live';
import { DESIGN_SETS, SUPPORT_TABLES } from '#shared/model/basis-of-design';
import { parsePlan } from '#shared/model/parse-plan';
import type { Plan } from '#shared/model/plan';
import { printPlan } from '#shared/model/print-plan';
import { SAMPLE_PROFILE } from '#shared/profile/sample-profile';
import { numbers } from '../support/patch-trials.ts';
import { Dice, MAKERS, smallStart } from '../support/random-commands.ts';
import { wholePlan } from '../support/whole-plan.ts';

const STEPS = 500;
/** Every so many steps all is checked from nothing as well. */
const COLD_EACH = 25;
const SAID = { reason: 'Agreed with the authority.', by: 'A. Person', date: '2026-11-30' };

/** Another edition, another table, another manual, another figure in it: what every sum and check of the plan hangs on. */
const AT_ONCE: readonly ((plan: Plan, dice: Dice) => Command)[] = [
  (_, dice) => editBasis({ designSet: dice.of(DESIGN_SETS) }),
  (_, dice) => editBasis({ supportTable: dice.of(SUPPORT_TABLES), constants: dice.of(['iso', 'nfpa'] as const) }),
  (_, dice) => saveProfileInPlan({ ...SAMPLE_PROFILE, id: 'own', name: `Unit ${dice.below(9)}` }),
  (plan, dice) => setProfile(dice.of([...Object.keys(plan.networks), 'gone']), dice.of(['own', 'sample-80'])),
  (_, dice) => editLimit(dice.of(['own', 'sample-80']), dice.of(['nozzleToWall_m', 'freeJet_m', 'pathLength_m'] as const), dice.of([null, { value: 0.2 + dice.below(9) / 10, source: 'manual' }])),
];

/** A plan that comes in as a file. */
function readIn(dice: Dice, present: Plan): History {
  const parsed = parsePlan(printPlan(dice.of([() => present, smallStart, () => wholePlan().plan])()));
  return startHistory(freeze(parsed.ok ? parsed.plan : smallStart(), true));
}

/** What somebody reads of an evaluation. */
const read = ({ findings, lapsed, found, design }: Evaluation) => ({
  findings,
  lapsed: new Set(lapsed.map(({ waiver, because }) => `${waiver.finding} ${because}`)),
  counts: found.counts,
  open: found.open,
  asked: design.asked.length,
});

test(`after ${STEPS} random things done to one plan it is found what a check from nothing finds`, () => {
  const next = numbers(20_261_130);
  const live = makeLive();
  let source: DischargeSource = () => undefined;
  let history = startHistory(freeze(wholePlan().plan, true));
  const done = { command: 0, undo: 0, redo: 0, import: 0, manual: 0, accepted: 0 };
  for (let step = 1; step <= STEPS; step += 1) {
    const dice = new Dice(Array.from({ length: 24 }, () => Math.floor(next() * 1_000_000)));
    const before = history;
    const { present } = history;
    const what = Math.floor(next() * 100);
    const kind = history.future.length > 0 && what < 40 ? 'redo' : what < 12 ? 'undo' : what < 14 ? 'import' : what < 22 ? 'manual' : what < 24 ? 'accepted' : 'command';
    if (kind === 'undo') history = undo(history);
    else if (kind === 'redo') history = redo(history);
    else if (kind === 'import') history = readIn(dice, present);
    else {
      const finding = kind === 'accepted' ? live.check(present, source).findings.find((each) => whyNotAccepted(each) === null) : undefined;
      const outcome = (finding ? acceptFinding(finding, SAID) : dice.of(kind === 'manual' ? AT_ONCE : MAKERS)(present, dice))(present);
      if (outcome.ok) history = record(history, outcome);
    }
    if (history !== before) done[kind] += 1;
    if (next() < 0.02) source = next() < 0.5 ? () => undefined : () => 'the gas became too cold';
    // As in a drag: what is begun is often not finished before the next step comes.
    let left = Math.floor(next() * 600);
    live.check(history.present, source, () => {
      left -= 1;
      return left < 0;
    });
    if (step % COLD_EACH !== 0) continue;
    const finished = live.check(history.present, source);
    expect(finished.isStale).toBe(false);
    expect(read(finished), `after step ${step}`).toEqual(read(evaluate(structuredClone(history.present), source)));
  }
  for (const times of Object.values(done)) expect(times).toBeGreaterThan(3);
  expect(done.command).toBeGreaterThan(150);
}, 120_000);
