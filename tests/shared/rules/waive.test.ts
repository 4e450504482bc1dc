import { describe, expect, test } from 'vitest';
import { acceptFinding, whyNotAccepted } from '#shared/commands/accept-finding';
import { editSettings } from '#shared/commands/edit-settings';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { withdrawWaiver } from '#shared/commands/withdraw-waiver';
import { evaluate } from '#shared/evaluate';
import { digestOf } from '#shared/model/digest';
import type { Plan } from '#shared/model/plan';
import { countFindings } from '#shared/rules/count-findings';
import { type Finding, findingKey, restsOn } from '#shared/rules/finding';
import { waive } from '#shared/rules/waive';
import { at3, layout } from '../../support/layout.ts';
import { done, doneAll, refusal } from '../../support/try-command.ts';

const SAID = { reason: 'Agreed with the authority.', by: 'M. Orrin', date: '2026-11-30' };
/** N1 stands 0.2 m from the west wall; 0.254 m is asked. */
const plan = layout({ nozzles: [{ at: at3(0.2, 2, 2.5), holes_rad: [Math.PI / 2, -Math.PI / 2] }], height_m: 2.7 });
const asked = (of: Plan, rule = 'N1'): Finding => {
  const finding = evaluate(of).findings.find((each) => each.rule === rule);
  if (!finding) throw new Error(`${rule} was not asked.`);
  return finding;
};
const accepted = (of: Plan, rule = 'N1'): Plan => done(of, acceptFinding(asked(of, rule), SAID)).next;

describe('an accepted finding', () => {
  test('stays in the list with reason, name and date, and is counted by itself', () => {
    const before = countFindings(evaluate(plan).findings);
    const { findings, lapsed } = evaluate(accepted(plan));
    expect(findings.find(({ rule }) => rule === 'N1')).toMatchObject({ verdict: 'stop', waiver: SAID });
    expect(lapsed).toEqual([]);
    expect(countFindings(findings)).toEqual({ ...before, stop: before.stop - 1, accepted: 1 });
  });
  test('is still accepted when lengths are shown another way, whatever it is', () => {
    const open = evaluate(plan).findings.filter((finding) => whyNotAccepted(finding) === null);
    expect(open.length).toBeGreaterThan(20);
    const all = doneAll(plan, ...open.map((finding) => acceptFinding(finding, SAID)));
    expect(evaluate(all).lapsed).toEqual([]);
    const shown = evaluate(doneAll(all, editSettings({ lengths: 'feet' })));
    expect(shown.lapsed.map(({ waiver, finding }) => [waiver.rule, finding?.text])).toEqual([]);
    expect(shown.findings.filter(({ waiver }) => waiver)).toHaveLength(open.length);
  });
  test.each<[string, number, boolean]>([
    ['a hair', 0.200_000_04, true],
    ['farther in, but not far enough', 0.21, false],
    ['nearer to the wall', 0.19, false],
  ])('and its nozzle moved %s', (_, x, holds) => {
    const next = doneAll(accepted(plan), moveNozzle({ kind: 'nozzle', network: 'net', id: 'n1' }, at3(x, 2, 2.5)));
    expect(asked(next).waiver !== undefined).toBe(holds);
  });
  test('has lapsed once it is kept', () => {
    const next = doneAll(accepted(plan), moveNozzle({ kind: 'nozzle', network: 'net', id: 'n1' }, at3(3, 2, 2.5)));
    expect(asked(next)).toMatchObject({ verdict: 'ok' });
    expect(asked(next).waiver).toBeUndefined();
    expect(evaluate(next).lapsed).toMatchObject([{ because: 'kept', waiver: { rule: 'N1', name: 'N1' } }]);
  });
  test('has lapsed when its limit comes from elsewhere', () => {
    const other = structuredClone(accepted(plan));
    for (const profile of Object.values(other.profiles)) if (profile.limits.nozzleToWall_m) profile.limits.nozzleToWall_m.source = 'another page';
    expect(evaluate(other).lapsed).toMatchObject([{ because: 'changed' }]);
    expect(asked(other).waiver).toBeUndefined();
  });
  test('has lapsed when its thing has gone', () => {
    const other = structuredClone(accepted(plan));
    if (other.networks.net) other.networks.net.nozzles = {};
    expect(evaluate(other).lapsed).toMatchObject([{ because: 'gone' }]);
  });
});

describe('accepting', () => {
  test('replaces an earlier acceptance of the same finding', () => {
    const next = done(accepted(plan), acceptFinding(asked(plan), { ...SAID, reason: 'Agreed again.' })).next;
    expect(Object.values(next.waivers)).toMatchObject([{ reason: 'Agreed again.' }]);
  });
  test('takes reason, name and date without blanks around them', () => {
    expect(Object.values(done(plan, acceptFinding(asked(plan), { reason: ' a ', by: ' b ', date: ' c ' })).next.waivers)).toMatchObject([{ reason: 'a', by: 'b', date: 'c' }]);
  });
  test('is refused without a reason or a name, for what is kept, and for what cannot be accepted', () => {
    expect(refusal(plan, acceptFinding(asked(plan), { ...SAID, reason: '  ' }))).toContain('Say why');
    expect(refusal(plan, acceptFinding(asked(plan), { ...SAID, by: '' }))).toContain('Say who');
    expect(refusal(plan, acceptFinding(asked(plan), { ...SAID, by: 'x'.repeat(201) }))).toContain('200');
    expect(refusal(plan, acceptFinding(asked(plan), { ...SAID, reason: 'x'.repeat(20_001) }))).toContain('20000');
    expect(refusal(plan, acceptFinding(asked(plan, 'N4'), SAID))).toContain('nothing to accept');
    expect(refusal(plan, acceptFinding(asked(plan, 'D5'), SAID))).toContain('cannot be accepted');
  });
});

describe('withdrawing', () => {
  test('opens the finding again', () => {
    const next = accepted(plan);
    const ids = Object.keys(next.waivers);
    expect(asked(done(next, withdrawWaiver(ids)).next).waiver).toBeUndefined();
    expect(done(next, withdrawWaiver(ids)).label).toBe('Withdraw acceptance');
  });
  test('is refused when it has gone, and when there is none', () => {
    expect(refusal(plan, withdrawWaiver(['waiver-1']))).toContain('no longer');
    expect(refusal(plan, withdrawWaiver([]))).toContain('has lapsed');
  });
});

describe('what a finding rests on', () => {
  const finding = asked(plan);
  test('tells places apart from a tenth of a millimetre on, and figures in six digits', () => {
    const moved = (by_m: number): Finding => ({ ...finding, place: { level: 'level-0', at: [{ x: 0.2 + by_m, y: 2 }] } });
    expect(restsOn(moved(0.000_01))).toBe(restsOn(moved(0)));
    expect(restsOn(moved(0.000_2))).not.toBe(restsOn(moved(0)));
    expect(restsOn({ ...finding, measured: 0.2 * (1 + 1e-9) })).toBe(restsOn(finding));
    expect(restsOn({ ...finding, measured: 0.2001 })).not.toBe(restsOn(finding));
  });
  test('is its sentence where it has no figures', () => {
    const bare: Finding = { ...finding, measured: undefined, limit: undefined };
    expect(restsOn({ ...bare, text: 'Other.' })).not.toBe(restsOn(bare));
    expect(restsOn({ ...finding, text: 'Other.' })).toBe(restsOn(finding));
  });
  test('waiving nothing answers the very same list', () => {
    const findings = [finding];
    expect(waive(findings, {}).findings).toBe(findings);
    expect(findingKey(finding)).toBe('N1/net/nozzle/n1/N1');
  });
  test('a digest is 16 digits, and differs where a text does', () => {
    expect(digestOf('')).toMatch(/^[0-9a-f]{16}$/);
    const many = new Set(Array.from({ length: 5000 }, (_, i) => digestOf(`N1/net/nozzle/n${i}`)));
    expect(many.size).toBe(5000);
  });
});
