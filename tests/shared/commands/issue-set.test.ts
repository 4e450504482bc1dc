import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { approveSet } from '#shared/commands/approve-set';
import { deleteThings } from '#shared/commands/delete-things';
import { addUnderlay } from '#shared/commands/add-underlay';
import { holdAsset } from '#shared/commands/hold-asset';
import { record, startHistory, undo } from '#shared/commands/history';
import { type KeptIssue, issueSet } from '#shared/commands/issue-set';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { assetsInUse } from '#shared/model/assets-in-use';
import { parsePlan } from '#shared/model/parse-plan';
import { type Plan, newPlan } from '#shared/model/plan';
import { printPlan } from '#shared/model/print-plan';
import { frozenPlan } from '#shared/revisions/frozen-plan';
import { Dice, MAKERS, refsOf, smallStart } from '../../support/random-commands.ts';
import { done, doneAll, refusal } from '../../support/try-command.ts';
import '../../support/property-seed.ts';

const ISSUE = { mark: 'A', date: '2026-11-30', by: 'R. Vale', purpose: 'For approval' };
const kept = (letter: string): KeptIssue => ({
  sha256: letter.repeat(64),
  plan: { name: `Set ${letter}, plan`, file: `${letter}.nzw`, sha256: `1${letter.repeat(63)}` },
  sheets: { name: `Set ${letter}, sheets`, file: `${letter}.pdf`, sha256: `2${letter.repeat(63)}` },
});
const nozzleOf = (plan: Plan) => {
  const ref = refsOf(plan).find(({ kind }) => kind === 'nozzle');
  if (ref?.kind !== 'nozzle') throw new Error('No nozzle.');
  return ref;
};

describe('issuing a set', () => {
  test('is one step: revision, digests, log and files; and one step back', () => {
    const start = startHistory(smallStart());
    const outcome = done(start.present, issueSet(ISSUE, kept('a')));
    expect(outcome.label).toBe('Issue set A');
    const { info, lastIssue, issuedSets, assets } = outcome.next;
    expect(info.revisions).toEqual([{ mark: 'A', date: '2026-11-30', text: 'For approval' }]);
    expect(lastIssue).toMatchObject({ mark: 'A', changed: [] });
    expect(issuedSets).toMatchObject([{ number: 1, mark: 'A', by: 'R. Vale', purpose: 'For approval', sha256: 'a'.repeat(64), approved: null }]);
    expect(assets[issuedSets[0]?.plan ?? '']?.file).toBe('a.nzw');
    expect(assets[issuedSets[0]?.sheets ?? '']?.file).toBe('a.pdf');
    expect(undo(record(start, outcome)).present).toEqual(start.present);
  });

  test('numbers go on, clouds are those of the newest, and the plan reads back', () => {
    const first = doneAll(smallStart(), issueSet(ISSUE, kept('a')));
    const ref = nozzleOf(first);
    const next = doneAll(first, moveNozzle(ref, { x: 2.2, y: 1, z: 2.3 }), issueSet({ ...ISSUE, mark: ' B ', date: '2026-12-01' }, kept('b')));
    expect(next.issuedSets.map(({ number, mark }) => [number, mark])).toEqual([[1, 'A'], [2, 'B']]);
    expect(next.lastIssue?.mark).toBe('B');
    expect(next.lastIssue?.changed.length).toBeGreaterThan(0);
    const back = parsePlan(printPlan(next));
    expect(back.ok && back.plan).toEqual(next);
  });

  test('what is missing is asked for', () => {
    for (const [part, words] of [['mark', 'needs a mark'], ['date', 'date of issue'], ['by', 'name of whoever'], ['purpose', 'issued for']] as const) {
      expect(refusal(newPlan(), issueSet({ ...ISSUE, [part]: ' ' }, kept('a')))).toContain(words);
    }
    expect(refusal(newPlan(), issueSet({ ...ISSUE, by: 'x'.repeat(201) }, kept('a')))).toContain('By is longer');
    expect(refusal(newPlan(), issueSet(ISSUE, { ...kept('a'), sha256: 'no' }))).toContain('Sha256');
    expect(refusal(newPlan(), issueSet(ISSUE, { ...kept('a'), plan: { name: 'x', file: '../x', sha256: 'a'.repeat(64) } }))).toContain('could not be kept');
    expect(refusal(done(newPlan(), issueSet(ISSUE, kept('a'))).next, issueSet(ISSUE, kept('b')))).toContain('there already');
  });

  test('a set that was not kept is in the log without files', () => {
    expect(done(newPlan(), issueSet(ISSUE, { sha256: 'a'.repeat(64), plan: null, sheets: null })).next.issuedSets).toMatchObject([{ plan: null, sheets: null }]);
  });
});

describe('approval', () => {
  const issued = () => done(smallStart(), issueSet(ISSUE, kept('a'))).next;
  const approval = { by: 'Authority', date: '2026-12-02', reference: 'P-17' };

  test('is noted once and never written over', () => {
    const plan = issued();
    const id = plan.issuedSets[0]?.id ?? '';
    const approved = done(plan, approveSet(id, approval)).next;
    expect(approved.issuedSets[0]?.approved).toEqual(approval);
    expect(refusal(approved, approveSet(id, { ...approval, by: 'Other' }))).toContain('approved already');
    expect(refusal(plan, approveSet('gone', approval))).toContain('not in the log');
    expect(refusal(plan, approveSet(id, { ...approval, by: '' }))).toContain('who approved');
    expect(refusal(plan, approveSet(id, { ...approval, date: '' }))).toContain('date of the approval');
  });

  test('no command changes an approved set or drops its files', () => {
    const plan = issued();
    const start = done(plan, approveSet(plan.issuedSets[0]?.id ?? '', approval)).next;
    fc.assert(
      fc.property(fc.array(fc.nat(), { minLength: 30, maxLength: 80 }), (numbers) => {
        const dice = new Dice(numbers);
        let next = start;
        for (let i = 0; i < 12; i += 1) {
          const outcome = (i === 5 ? issueSet({ ...ISSUE, mark: 'Z' }, kept('c')) : dice.of(MAKERS)(next, dice))(next);
          if (outcome.ok) next = outcome.next;
        }
        expect(next.issuedSets[0]).toEqual(start.issuedSets[0]);
        for (const part of ['plan', 'sheets'] as const) {
          const id = start.issuedSets[0]?.[part] ?? '';
          expect(next.assets[id]).toEqual(start.assets[id]);
        }
      }),
      { numRuns: 40 },
    );
  });
});

describe('files of a plan', () => {
  test('one that an issue needs stays when its floor plan is deleted', () => {
    const same = { name: 'a', file: 'a.nzw', sha256: `1${'a'.repeat(63)}` };
    const laid = doneAll(newPlan(), addUnderlay('level-0', same, { kind: 'dxf', page: 1, metresPerUnit: 1, calibration: 'none', name: 'Floor' }), issueSet(ISSUE, kept('a')));
    const underlay = refsOf(laid).filter(({ kind }) => kind === 'underlay');
    const left = done(laid, deleteThings(underlay)).next;
    expect(Object.values(left.assets).map(({ file }) => file).sort()).toEqual(['a.nzw', 'a.pdf']);
    expect(assetsInUse(left).size).toBe(2);
  });

  test('pictures of the title block and photographs are in use', () => {
    const plan = newPlan();
    const sheets = { ...plan.settings.sheets, titleBlock: { logo: 'asset-1', lines: [] } };
    const measurement = { value_m: 1, by: '', at: '', instrument: '', reason: '', approvedBy: '', photos: ['asset-2'] };
    expect([...assetsInUse({ ...plan, settings: { ...plan.settings, sheets }, siteRecord: { ...plan.siteRecord, measurements: { a: measurement } } })]).toEqual(['asset-1', 'asset-2']);
  });

  test('a file is held once', () => {
    const draft = { assets: {}, nextSerial: 3 };
    const entry = { name: 'a', file: 'a.pdf', sha256: 'a'.repeat(64) };
    expect([holdAsset(draft, entry, ''), holdAsset(draft, entry, ''), draft.nextSerial]).toEqual(['asset-3', 'asset-3', 4]);
  });

  test('a set whose files have gone stays in the log, with a remark', () => {
    const issued = done(newPlan(), issueSet(ISSUE, kept('a'))).next;
    const back = parsePlan(printPlan({ ...issued, assets: {} }));
    expect(back.ok && back.plan.issuedSets).toMatchObject([{ mark: 'A', plan: null, sheets: null }]);
    expect(back.ok && back.remarks.join(' ')).toContain('issued set A');
  });

  test('a frozen plan names earlier sets without their files, and keeps its floor plans', () => {
    const laid = doneAll(smallStart(), issueSet(ISSUE, kept('a')));
    const frozen = frozenPlan(laid);
    expect(frozen.issuedSets).toMatchObject([{ mark: 'A', plan: null, sheets: null }]);
    expect(Object.values(frozen.assets).map(({ file }) => file)).toEqual(Object.values(smallStart().assets).map(({ file }) => file));
  });
});
