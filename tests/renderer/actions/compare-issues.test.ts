import type { Host } from '#shared/host/contract';
import { deleteThings } from '#shared/commands/delete-things';
import { issueSet } from '#shared/commands/issue-set';
import { moveNozzle } from '#shared/commands/move-nozzle';
import type { Plan } from '#shared/model/plan';
import { describe, expect, test } from 'vitest';
import { findAction, runAction } from '../../../src-renderer/actions/actions.ts';
import { compareIssues, showChange, stopComparing } from '../../../src-renderer/actions/compare-issues.ts';
import { makeDesk } from '../../../src-renderer/actions/desk.ts';
import { selectChanges } from '../../../src-renderer/store/compared-changes.ts';
import { startSession } from '../../../src-renderer/store/start-session.ts';
import { makeStore } from '../../../src-renderer/store/store.ts';
import type { UnderlayDrawings } from '../../../src-renderer/store/underlay-drawings.ts';
import { refsOf, smallStart } from '../../support/random-commands.ts';
import { done } from '../../support/try-command.ts';

const kept = (letter: string) => ({ sha256: letter.repeat(64), plan: { name: letter, file: `${letter}.nzw`, sha256: letter.repeat(64) }, sheets: null });
const issue = (plan: Plan, mark: string) => done(plan, issueSet({ mark, date: '2026-11-30', by: 'R. Vale', purpose: 'Approval' }, kept(mark.toLowerCase()))).next;
const nozzleIn = (plan: Plan) => refsOf(plan).flatMap((ref) => (ref.kind === 'nozzle' ? [ref] : []))[0] ?? { kind: 'nozzle' as const, network: '', id: '' };

function openWindow(plan: Plan, frozen: Readonly<Record<string, Plan>>) {
  const store = makeStore(plan, startSession('test'));
  const desk = makeDesk();
  const host = {
    readIssue: async ({ sha256 }: { sha256: string }) => {
      const found = frozen[sha256];
      return found ? { ok: true, value: { plan: found, remarks: [] } } : { ok: false, problem: { code: 'not-found', what: 'Gone.', where: '', remedy: '' } };
    },
  } as unknown as Host;
  return { store, desk, host, drawings: {} as UnderlayDrawings };
}

describe('comparing issues', () => {
  test('without an issue that was kept the action says so', async () => {
    const context = openWindow(smallStart(), {});
    const action = findAction('compare-issues');
    if (action) await runAction(context, action);
    expect(context.store.get().session.refusal).toContain('issue one first');
  });

  test('the last issue against the plan as it is follows the plan; a change leads to its place', async () => {
    const a = issue(smallStart(), 'A');
    const context = openWindow(a, { ['a'.repeat(64)]: smallStart() });
    const action = findAction('compare-issues');
    if (action) await runAction(context, action);
    expect(context.desk.get().bench).toEqual({ kind: 'compare' });
    expect(selectChanges(context.store.get())).toEqual([]);
    const nozzle = nozzleIn(a);
    context.store.commit(moveNozzle(nozzle, { x: 2.4, y: 1, z: 2.3 }));
    const [change] = selectChanges(context.store.get());
    expect(change).toMatchObject({ kind: 'moved', ref: nozzle });
    expect(selectChanges(context.store.get())).toBe(selectChanges(context.store.get()));
    if (change) showChange(context, change);
    const { session } = context.store.get();
    expect(session.selection).toEqual([nozzle]);
    expect(session.compared?.shown).toBe(change?.key);
    expect(session.camera.at.x).toBeCloseTo(2.2, 1);
    stopComparing(context);
    expect([context.store.get().session.compared, selectChanges(context.store.get())]).toEqual([null, []]);
  });

  test('what has gone is shown at its old place and nothing is selected; two issues are compared with each other', async () => {
    const a = smallStart();
    const b = done(a, deleteThings([nozzleIn(a)])).next;
    const context = openWindow(issue(issue(a, 'A'), 'B'), { ['a'.repeat(64)]: a, ['b'.repeat(64)]: b });
    const [one, two] = context.store.get().history.present.issuedSets;
    if (!one || !two) throw new Error('Not issued.');
    await compareIssues(context, one, two);
    const change = selectChanges(context.store.get()).find(({ kind }) => kind === 'removed');
    expect(change?.name).toBe('Nozzle N1');
    if (change) showChange(context, change);
    expect(context.store.get().session.selection).toEqual([]);
  });

  test('an issue that is no longer kept is a problem, and nothing is compared; another plan ends comparing', async () => {
    const a = issue(smallStart(), 'A');
    const context = openWindow(a, {});
    const [set] = a.issuedSets;
    if (set) await compareIssues(context, set, null);
    expect(context.store.get().session.message?.kind).toBe('problem');
    expect(context.store.get().session.compared).toBeNull();
    context.store.session({ compared: { before: { set: 'x', label: 'Set A', plan: a }, now: null, shown: null } });
    context.store.load(smallStart(), null);
    expect(context.store.get().session.compared).toBeNull();
  });
});
