import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { acceptFinding } from '#shared/commands/accept-finding';
import { cureAll } from '#shared/commands/cure-all';
import { evaluate } from '#shared/evaluate';
import type { Plan } from '#shared/model/plan';
import { type Finding, type Verdict, findingKey } from '#shared/rules/finding';
import { type LayoutSpec, at3, layout } from '../../support/layout.ts';
import { done } from '../../support/try-command.ts';

const findingsOf = (plan: Plan): readonly Finding[] => evaluate(plan).findings;
const keysOf = (plan: Plan, verdict: Verdict): string[] => findingsOf(plan).filter((finding) => finding.verdict === verdict && !finding.waiver).map(findingKey);
const hasCure = ({ cure, verdict, waiver }: Finding): boolean => cure !== undefined && cure.kind !== 'advice' && verdict !== 'ok' && !waiver;

/** Two lines from a riser: a nozzle too near to a wall, one too low and blowing at a corner, a street elbow. */
const FAULTY: LayoutSpec = {
  room: [{ x: 0, y: 0 }, { x: 8, y: 0 }, { x: 8, y: 5 }, { x: 0, y: 5 }] as never,
  height_m: 2.7,
  runs: [
    { places: [at3(0.4, 2, 2), at3(0.4, 2, 2.5), at3(4, 2, 2.5), at3(4, 4.85, 2.5), at3(4, 4.85, 2.4)] },
    { places: [at3(4, 2, 2.5), at3(4, 0.9, 2.5), at3(7.4, 0.9, 2.5), at3(7.4, 0.9, 2.2)] },
  ],
  nozzles: [{ at: at3(4, 4.85, 2.4) }, { at: at3(7.4, 0.9, 2.2), rotation_rad: -0.7 }],
};

describe('curing all at once', () => {
  test('clears what has a ready cure, brings no stop, and says why it leaves the rest', () => {
    const plan = layout(FAULTY);
    const { outcome, cured, left } = cureAll(plan, findingsOf);
    if (!outcome) throw new Error('Nothing was cured.');
    expect(cured.length).toBeGreaterThan(2);
    expect(outcome.label).toBe(`Cure ${cured.length} findings`);
    const before = new Set(keysOf(plan, 'stop'));
    const after = keysOf(outcome.next, 'stop');
    expect(after.filter((key) => !before.has(key))).toEqual([]);
    expect(after.length).toBeLessThan(before.size);
    // Whatever is still open is told of, and only that.
    const open = findingsOf(outcome.next).filter(({ verdict, cure }) => verdict !== 'ok' && (verdict !== 'note' || cure));
    expect(left.map(({ finding }) => findingKey(finding)).toSorted()).toEqual(open.map(findingKey).toSorted());
    for (const { because } of left) expect(because).toMatch(/^[A-Z“].*\.$/s);
  });

  test('is one step that can be taken back', () => {
    const plan = layout(FAULTY);
    const { outcome } = cureAll(plan, findingsOf);
    if (!outcome) throw new Error('Nothing was cured.');
    expect(done(plan, () => outcome).next).toBe(outcome.next);
  });

  test('once more changes nothing', () => {
    const { outcome } = cureAll(layout(FAULTY), findingsOf);
    if (!outcome) throw new Error('Nothing was cured.');
    expect(cureAll(outcome.next, findingsOf)).toMatchObject({ outcome: null, cured: [] });
  });

  test('leaves what somebody accepted', () => {
    const plan = layout(FAULTY);
    const accepted = findingsOf(plan).find((finding) => finding.rule === 'N1' && hasCure(finding));
    if (!accepted) throw new Error('N1 has no cure.');
    const next = done(plan, acceptFinding(accepted, { reason: 'Agreed.', by: 'M. Orrin', date: '' })).next;
    const { cured, left } = cureAll(next, findingsOf);
    for (const finding of [...cured, ...left].map((each) => each.finding)) expect(findingKey(finding)).not.toBe(findingKey(accepted));
  });

  test('has nothing to do where nothing is drawn', () => {
    expect(cureAll(layout({ nozzles: [] }), findingsOf).outcome).toBeNull();
  });

  test('ends, and never leaves a stop that was not there, whatever the faults', () => {
    const inside = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });
    const anyNozzle = fc.record({ x: inside(0.1, 7.9), y: inside(0.1, 4.9), drop_m: inside(0.03, 0.7), rotation_rad: inside(0, 6.28) });
    fc.assert(
      fc.property(fc.array(anyNozzle, { minLength: 1, maxLength: 3 }), (nozzles) => {
        const plan = layout({
          room: [{ x: 0, y: 0 }, { x: 8, y: 0 }, { x: 8, y: 5 }, { x: 0, y: 5 }] as never,
          height_m: 2.7,
          runs: nozzles.map(({ x, y, drop_m }) => ({ places: [at3(0.05, 2.5, 2.6), at3(x, 2.5, 2.6), at3(x, y, 2.6), at3(x, y, 2.6 - drop_m)] })),
          nozzles: nozzles.map(({ x, y, drop_m, rotation_rad }) => ({ at: at3(x, y, 2.6 - drop_m), rotation_rad })),
        });
        const { outcome, cured } = cureAll(plan, findingsOf);
        if (!outcome) return;
        const before = new Set(keysOf(plan, 'stop'));
        expect(keysOf(outcome.next, 'stop').filter((key) => !before.has(key))).toEqual([]);
        expect(cured.length).toBeGreaterThan(0);
        expect(cureAll(outcome.next, findingsOf).outcome).toBeNull();
      }),
      { numRuns: 6 },
    );
  });
});
