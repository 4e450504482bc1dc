import { describe, expect, test } from 'vitest';
import { editEnclosure } from '#shared/commands/edit-enclosure';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { findingKey } from '#shared/rules/finding';
import { findingCounts, findingsOf, presentEvaluation, selectEvaluation, selectLedger, selectOpenFindings, selectShownFinding, shownPlan } from '../../../src-renderer/store/selectors.ts';
import { startSession } from '../../../src-renderer/store/start-session.ts';
import { makeStore } from '../../../src-renderer/store/store.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';

const built = planBuilder().room(6, 4, 2.7).network().cylinder(0.14, 2, Math.PI).run([place3(0.14, 2, 2), place3(0.14, 2, 2.5), place3(3, 2, 2.5)]).nozzle(3, 2, 2.5);
const open = () => makeStore(built.plan, startSession('test'));

describe('selectors', () => {
  test('show the preview while a gesture is under way, and evaluate it', () => {
    const store = open();
    const before = selectEvaluation(store.get());
    store.preview(moveNozzle(built.lastNozzle, { x: 4, y: 2, z: 2.5 }));
    expect(shownPlan(store.get())).toBe(store.get().preview);
    expect(selectEvaluation(store.get()).derived.nozzles[0]?.at?.x).toBe(4);
    expect(presentEvaluation(store.get())).toBe(before);
    store.preview(null);
    expect(selectEvaluation(store.get())).toBe(before);
  });

  test('answer the same object until the plan changes', () => {
    const store = open();
    store.session({ selection: [built.lastNozzle] });
    const first = { findings: selectOpenFindings(store.get()), ledger: selectLedger(store.get()), counts: findingCounts(store.get()), of: findingsOf(store.get(), built.lastNozzle) };
    store.session({ benchWidth_px: 500 });
    expect(selectOpenFindings(store.get())).toBe(first.findings);
    expect(selectLedger(store.get())).toBe(first.ledger);
    expect(findingCounts(store.get())).toBe(first.counts);
    expect(findingsOf(store.get(), built.lastNozzle)).toBe(first.of);
    store.commit(editEnclosure(built.enclosure, { height_m: 3 }));
    expect(selectLedger(store.get())).not.toBe(first.ledger);
  });

  test('findings of a thing are those about it, and all are counted', () => {
    const { findings } = selectEvaluation(open().get());
    const counts = findingCounts(open().get());
    expect(Object.values(counts).reduce((sum, count) => sum + count, 0)).toBe(findings.length);
    for (const finding of findingsOf(open().get(), built.lastNozzle)) expect(finding.subject).toMatchObject(built.lastNozzle);
    expect(findingsOf(open().get(), built.lastNozzle)).toHaveLength(findings.filter(({ subject }) => subject.kind === 'nozzle').length);
  });

  test('the finding shown in detail is found by its key, kept or not', () => {
    const store = open();
    for (const finding of selectEvaluation(store.get()).findings.slice(-3)) {
      store.session({ finding: findingKey(finding) });
      expect(selectShownFinding(store.get())).toBe(finding);
    }
    store.session({ finding: 'gone' });
    expect(selectShownFinding(store.get())).toBeUndefined();
    store.session({ finding: null });
    expect(selectShownFinding(store.get())).toBeUndefined();
  });
});
