import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDrains } from '#shared/commands/add-drains';
import { applyCure } from '#shared/commands/apply-cure';
import { editNode } from '#shared/commands/edit-node';
import { derivePlan } from '#shared/derived/derive-plan';
import type { PlanPoint3 } from '#shared/geometry/point';
import { p24LowPoint as rule } from '#shared/rules/pipe/p24-low-point';
import { place3, planBuilder } from '../../../support/plan-builder.ts';
import { anyPlacing, at3, checkOne, layout, placedLayout } from '../../../support/layout.ts';
import { done, refusal } from '../../../support/try-command.ts';

/** Down by `down` metres, along 1 m, up again, and on to a nozzle. */
const sagging = (down: number): PlanPoint3[] => [at3(1, 2, 2.2), at3(1, 2, 2.5), at3(2, 2, 2.5), at3(2, 2, 2.5 - down), at3(3, 2, 2.5 - down), at3(3, 2, 2.5), at3(4, 2, 2.5), at3(4, 2, 2.2)];
const spec = (places: readonly PlanPoint3[]) => ({ runs: [{ places }], nozzles: [{ at: places.at(-1) ?? at3(0, 0, 0) }] });

describe('P24', () => {
  test.each([
    ['level pipe', 0, 'ok', 0],
    ['pipe that sags by two thousandths of a millimetre', 2e-6, 'warn', 1],
    ['pipe that sags by a metre', 1, 'warn', 1],
    ['pipe that goes over something', -0.1, 'ok', 0],
  ])('%s', (_, down, verdict, measured) => {
    expect(checkOne(rule, layout(spec(down === 0 ? sagging(0).filter((_place, i) => i < 3 || i > 5) : sagging(down))))).toMatchObject({ verdict, measured });
  });

  test('a level stretch is one place, shown with all of it', () => {
    const finding = checkOne(rule, layout(spec(sagging(1))));
    expect(finding.text).toBe('One place is lower than all pipe beside it and has no drain: water gathers there, 1.500 m above the floor. Put a drain there, or raise the pipe.');
    expect(finding.place?.at).toHaveLength(2);
  });

  test('a nozzle, a drain or a dirt trap there lets it out; a cap does not; where the pipe begins is not judged', () => {
    const low = [at3(1, 2, 2), at3(1, 2, 2.5), at3(4, 2, 2.5), at3(4, 2, 2)];
    expect(checkOne(rule, layout(spec(low))).verdict).toBe('ok');
    const capped = layout({ runs: [{ places: low }] });
    const end = Object.values(capped.networks.net?.nodes ?? {}).find(({ at }) => at.x === 4 && at.z === 2)?.id ?? '';
    expect(checkOne(rule, capped).verdict).toBe('warn');
    for (const [part, verdict] of [['cap', 'warn'], ['plug', 'warn'], ['drain', 'ok'], ['dirt-trap', 'ok']] as const) {
      expect(checkOne(rule, done(capped, editNode({ kind: 'node', network: 'net', id: end }, { part })).next).verdict).toBe(verdict);
    }
  });

  test('its cure hangs a drain under the pipe in one step, and the agent still turns there', () => {
    for (const plan of [layout(spec(sagging(0.5))), layout({ runs: [{ places: [at3(1, 2, 2), at3(1, 2, 2.5), at3(4, 2, 2.5), at3(4, 2, 2)] }] })]) {
      const { cure } = checkOne(rule, plan);
      expect(cure).toMatchObject({ kind: 'add-drains', text: 'Put a drain there' });
      if (!cure) continue;
      const { next } = done(plan, applyCure(cure));
      expect(checkOne(rule, next).verdict).toBe('ok');
      const [before, after] = [plan, next].map((each) => derivePlan(each).networks[0]);
      expect(after?.faults.length).toBeLessThanOrEqual(before?.faults.length ?? 0);
      expect(after?.paths.map(({ elbows, tees }) => [elbows, tees])).toEqual(before?.paths.map(({ elbows, tees }) => [elbows, tees]));
    }
  });

  test('where no drain can hang there is only advice', () => {
    const vee = layout(spec([at3(1, 2, 2.2), at3(1, 2, 2.5), at3(2, 2, 2), at3(3, 2, 2.5), at3(4, 2, 2.5)]));
    expect(checkOne(rule, vee).cure?.kind).toBe('advice');
    const [id] = Object.values(vee.networks.net?.nodes ?? {}).flatMap((node) => (node.at.z === 2 ? [node.id] : []));
    expect(refusal(vee, addDrains({ kind: 'network', id: 'net' }, [id ?? ''], []))).toContain('straight above');
    expect(refusal(vee, addDrains({ kind: 'network', id: 'net' }, [], [id ?? '']))).toContain('Pipe goes on');
    const floor = planBuilder().room(6, 4, 2.7).network().run([place3(1, 2, 2), place3(1, 2, 0.08), place3(3, 2, 0.08)]);
    expect(refusal(floor.plan, addDrains(floor.networkRef, [floor.nodeAt(1, 2, 0.08).id], []))).toContain('the floor');
  });

  test('turned, shifted and mirrored', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        expect(checkOne(rule, placedLayout(spec(sagging(0.001)), placing)).verdict).toBe('warn');
        expect(checkOne(rule, placedLayout(spec(sagging(-0.001)), placing)).verdict).toBe('ok');
      }),
      { numRuns: 20 },
    );
  });
});
